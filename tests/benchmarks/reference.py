"""The plain model that the planner is measured against: one 0/1 variable for every (box, bay, row), in CP-SAT.

Equal bays are told apart, which is what makes it slow; it is kept here as the yardstick and nowhere used.
"""

from ortools.sat.python import cp_model

from baywright.planner.problem import Problem


def solve_plainly(problem: Problem, seconds: float) -> tuple[str, int | None]:
    """Status name and cost of the plain model of a problem with one kind of bay, within a time limit."""
    kind = problem.kinds[0]
    model = cp_model.CpModel()
    costs = []
    covering: dict[tuple[int, int], list[cp_model.IntVar]] = {}
    drawers: dict[int, list[cp_model.IntVar]] = {}
    for item in problem.items:
        shape = problem.shapes[item.shape]
        span = shape.spans[0]
        choices = []
        for bay in range(kind.bays):
            for row in kind.starts(span):
                choice = model.new_bool_var("")
                choices.append(choice)
                drawers.setdefault(bay, []).append(choice)
                costs.append(item.weight * shape.penalty(row) * choice)
                for taken in range(row, min(row + (span.rows if span else 0), kind.rows)):
                    covering.setdefault((bay, taken), []).append(choice)
        model.add_exactly_one(choices)
    for group in covering.values():
        model.add_at_most_one(group)
    if kind.drawers is not None:
        for group in drawers.values():
            model.add(sum(group) <= kind.drawers)
    model.minimize(sum(costs))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.max_time_in_seconds = seconds
    status = solver.solve(model)
    found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    return solver.status_name(status), round(solver.objective_value) if found else None
