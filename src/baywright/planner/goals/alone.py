"""How many bays a group needs for itself once easy handling is held, whatever becomes of the other groups.

Some bays are set apart, the group's boxes may stand only there, and the flow of alike bays is asked whether handling
can still be held. Where it cannot, whichever bays are set apart, the group needs one bay more. Law: what is not settled
within the effort raises nothing.
"""

from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations_with_replacement

from baywright.model.goals import Goal
from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.flow import FlowModel
from baywright.planner.distribution.pricing import Pricing
from baywright.planner.distribution.problem import Problem
from baywright.planner.distribution.solving import Verdict
from baywright.planner.goals.bound import bays_of_groups
from baywright.planner.goals.task import Held, Task

MOST_CHOICES = 8
"""With more choices of bays to set apart than this a group is left as it was."""
EFFORT_OF_QUESTION = 0.4
SHARE = 0.25
"""Share of the effort left that all questions together may take."""


def bays_with_handling(task: Task, held: list[Held], budget: Budget) -> dict[str, int]:
    """The bays that each group needs at least while the handling that is held stays; counted where nothing is held."""
    fewest = bays_of_groups(task)
    handling = next((h.value for h in held if h.goal is Goal.HANDLING), None)
    if handling is None or task.problem.teams:
        return fewest
    locked = {task.scale.boxes[p.box_id].group for p in task.frame.pinned if p.box_id in task.scale.boxes}
    members: dict[str, list[int]] = defaultdict(list)
    for item, box in enumerate(task.boxes):
        members[box.group].append(item)
    left = budget.left * SHARE
    for group, bays in fewest.items():
        if group in locked or len(members[group]) <= bays or left <= 0:
            continue
        before = budget.spent
        if all(_is_refused(task, problem, handling, budget) for problem in _choices(task, members[group], bays)):
            fewest[group] = bays + 1
        left -= budget.spent - before
    return fewest


def _choices(task: Task, items: list[int], bays: int) -> Iterator[Problem | None]:
    """The problem with so many bays set apart for some items, in every way; None where there are too many ways."""
    kinds = range(len(task.frame.problem.kinds))
    ways = [
        way
        for way in combinations_with_replacement(kinds, bays)
        if all(task.frame.problem.kinds[kind].bays >= count for kind, count in Counter(way).items())
    ]
    if len(ways) > MOST_CHOICES:
        yield None
        return
    for way in ways:
        yield _set_apart(task.frame.problem, items, Counter(way))


def _set_apart(problem: Problem, items: list[int], apart: Counter[int]) -> Problem:
    kinds = [replace(kind, bays=kind.bays - apart[number]) for number, kind in enumerate(problem.kinds)]
    kinds += [replace(problem.kinds[number], bays=count) for number, count in apart.items()]
    shapes = [replace(s, spans=(*s.spans, *(s.spans[number] for number in apart))) for s in problem.shapes]
    found, own = list(problem.items), dict[int, int]()
    for item in items:
        shape = problem.items[item].shape
        if shape not in own:
            own[shape] = len(shapes)
            nowhere = (None,) * len(problem.kinds)
            shapes.append(replace(shapes[shape], spans=(*nowhere, *shapes[shape].spans[len(problem.kinds) :])))
        found[item] = replace(found[item], shape=own[shape])
    return replace(problem, kinds=tuple(kinds), shapes=tuple(shapes), items=tuple(found))


def _is_refused(task: Task, problem: Problem | None, handling: int, budget: Budget) -> bool:
    """Whether it is proved that handling cannot be held."""
    if problem is None:
        return False
    if problem.homeless():
        return True
    budget.check()
    flow = FlowModel(problem)
    cost = Pricing(flow).cost
    flow.model.add(cost <= handling - task.frame.pinned_cost)
    flow.model.minimize(0)
    part = Budget(min(EFFORT_OF_QUESTION, budget.left), budget.stop)
    try:
        return part.minimise(flow.model, 1.0).verdict is Verdict.NONE
    finally:
        budget.spend(part.spent)
