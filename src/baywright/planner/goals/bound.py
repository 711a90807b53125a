"""Bounds for goals that need no search: what no plan in the frame can beat, whatever the other goals ask.

Each is an argument that a person can follow: a box that cannot stay must move, a group fills at least so many bays, a
free piece is no longer than the rows that are left over.
"""

from dataclasses import replace

from baywright.model.goals import Goal
from baywright.planner.distribution.bounds import rows_needed, shortage
from baywright.planner.distribution.cheapest import least_cost
from baywright.planner.distribution.problem import Kind, Problem, Span, Spans
from baywright.planner.goals.task import Task


def easy_bounds(task: Task) -> dict[Goal, int]:
    """The easy bound of every goal."""
    return {goal: easy_bound(task, goal) for goal in task.goals}


def easy_bound(task: Task, goal: Goal) -> int:
    """A bound for the figure of a goal: a lower one, but for the free piece an upper one."""
    if goal is Goal.MOVES:
        return _must_move(task)
    if goal is Goal.HANDLING:
        return task.frame.pinned_cost + least_cost(task.frame.problem)
    if goal is Goal.GROUPS:
        return sum(max(0, bays - 1) for bays in bays_of_groups(task).values())
    if goal is Goal.FREE_PIECE:
        return _most_free(task)
    return 0


def _must_move(task: Task) -> int:
    """Boxes whose place is no place for them in this run."""
    places = task.scale.standing.places
    count = sum(1 for p in task.frame.pinned if places.get(p.box_id, (p.bay, p.row)) != (p.bay, p.row))
    for item, box in enumerate(task.boxes):
        if box.id in places and (spot := task.stood[item]) is not None:
            shape = task.problem.items[item].shape
            spans = [task.problem.shapes[shape].spans[spot[0]]]
            spans += [team.spans[spot[0]] for team in task.problem.teams if shape in team.shapes]
            count += not any(span is not None and spot[1] in task.problem.kinds[spot[0]].starts(span) for span in spans)
        else:
            count += box.id in places
    return count


def bays_of_groups(task: Task) -> dict[str, int]:
    """The bays that each group needs at least, if it had the run to itself."""
    pinned: dict[str, set[int]] = {}
    for p in task.frame.pinned:
        box = task.scale.boxes.get(p.box_id)
        if box is not None and box.group:
            pinned.setdefault(box.group, set()).add(p.bay)
    members: dict[str, list[int]] = {group: [] for group in pinned}
    for item, box in enumerate(task.boxes):
        if box.group:
            members.setdefault(box.group, []).append(item)
    best = _most_roomy(task.problem)
    return {
        group: max(len(pinned.get(group, ())), _fewest(best, tuple(items))) for group, items in sorted(members.items())
    }


def _most_roomy(problem: Problem) -> Problem:
    """A run of one kind of bay that takes whatever any bay of the problem takes."""
    rows = max((kind.rows for kind in problem.kinds), default=0)
    limits = [kind.drawers for kind in problem.kinds]
    drawers = None if None in limits else max((limit for limit in limits if limit is not None), default=0)
    shapes = tuple(replace(shape, spans=(_widest(shape.spans),)) for shape in problem.shapes)
    teams = tuple(replace(team, spans=(_widest(team.spans),)) for team in problem.teams)
    return replace(
        problem, kinds=(Kind(1, rows, drawers),), shapes=shapes, teams=teams, items=problem.items, spare_rows=0
    )


def _widest(spans: Spans) -> Span | None:
    there = [span for span in spans if span is not None]
    if not there:
        return None
    return Span(min(s.rows for s in there), min(s.lowest for s in there), max(s.highest for s in there))


def _fewest(best: Problem, items: tuple[int, ...]) -> int:
    """The fewest bays of the roomiest kind in which counting leaves room for these items."""
    alone = replace(best, items=tuple(best.items[item] for item in items))
    for bays in range(1, len(items)):
        kinds = (replace(best.kinds[0], bays=bays),)
        if shortage(replace(alone, kinds=kinds)) is None:
            return bays
    return len(items)


def _most_free(task: Task) -> int:
    """No longer than the longest stretch of a bay that is not locked, nor than all rows that are left over."""
    longest = 0
    for bay, usable in enumerate(task.usable):
        run = 0
        for row in usable:
            is_taken = any(first <= row < last for first, last in task.problem.kinds[bay].blocked)
            run = 0 if is_taken else run + 1
            longest = max(longest, run)
    problem = task.problem
    room = sum(
        1
        for bay, usable in enumerate(task.usable)
        for row in usable
        if not any(first <= row < last for first, last in problem.kinds[bay].blocked)
    )
    gained = 0
    for bay, usable in enumerate(task.usable):
        spans = [s for shape in problem.shapes if (s := shape.spans[bay]) is not None]
        spans += [s for team in problem.teams if (s := team.spans[bay]) is not None]
        gained += max((max(0, s.highest + s.rows - usable.stop) for s in spans), default=0)
    return max(0, min(longest, room + gained - rows_needed(problem, tuple(range(len(problem.items))))))
