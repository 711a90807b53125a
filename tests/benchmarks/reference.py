"""The plain model that the planner is measured against: one 0/1 variable for every (box, bay, row), in CP-SAT.

Equal bays are told apart, which is what makes it slow; it is kept here as the yardstick and nowhere used. It seeks the
easiest handling alone, in a run whose shape is given to it, where the planner finds the shape and settles every goal.
"""

import time
from collections import defaultdict

from ortools.sat.python import cp_model

from baywright.model.project import Project
from baywright.planner.distribution.problem import Problem
from baywright.planner.framing.frame import Framer


def solve_plainly(problem: Problem, seconds: float) -> tuple[str, int | None]:
    """Status name and cost of the plain model of a problem without shared drawers, within a limit of effort."""
    model = cp_model.CpModel()
    costs: list[cp_model.LinearExprT] = []
    covering: dict[tuple[int, int, int], list[cp_model.IntVar]] = defaultdict(list)
    drawers: dict[tuple[int, int], list[cp_model.IntVar]] = defaultdict(list)
    for item in problem.items:
        shape = problem.shapes[item.shape]
        choices = []
        for number, kind in enumerate(problem.kinds):
            span = shape.spans[number]
            for bay in range(kind.bays):
                for row in kind.starts(span):
                    choice = model.new_bool_var("")
                    choices.append(choice)
                    drawers[number, bay].append(choice)
                    costs.append(item.weight * shape.penalty(row) * choice)
                    for taken in range(row, min(row + (span.rows if span else 0), kind.rows)):
                        covering[number, bay, taken].append(choice)
        model.add_exactly_one(choices)
    for group in covering.values():
        model.add_at_most_one(group)
    for (number, _), group in drawers.items():
        limit = problem.kinds[number].drawers
        if limit is not None:
            model.add(sum(group) <= limit)
    model.minimize(sum(costs))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    # By the solver's own count, about a second of the processor a unit here: on a busy machine it gets as much.
    solver.parameters.max_deterministic_time = seconds
    solver.parameters.max_time_in_seconds = 10 * seconds
    status = solver.solve(model)
    found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    return solver.status_name(status), round(solver.objective_value) if found else None


def beside(project: Project, bays: int, rows: int, mine_s: float, limit_s: float = 20.0) -> str:
    """How the plain model does on the same run, as words for a table: the processor's time, how many times as long."""
    problem = Framer(project).frame(bays, rows).problem
    began = time.process_time()
    status, _ = solve_plainly(problem, limit_s)
    taken = time.process_time() - began
    words = f"{taken:.1f} s, {'' if status == 'OPTIMAL' else 'over '}{taken / mine_s:.0f} times as long"
    return words if status == "OPTIMAL" else f"not proved in {words}"
