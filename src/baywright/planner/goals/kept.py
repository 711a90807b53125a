"""A first plan when planning again: what can stay where it stands stays, the rest goes where there is room.

It may fail where few moves would do; where nothing has to move, that needs no further proof.
"""

from collections.abc import Callable
from dataclasses import replace

from baywright.planner.distribution.greedy import greedy
from baywright.planner.distribution.problem import Kind
from baywright.planner.goals.task import Spots, Task
from baywright.planner.replanning.standing import Spot


def kept(task: Task, check: Callable[[], None]) -> Spots | None:
    """A plan in which items keep their places as far as these do not clash; None where this simple way finds none."""
    problem = task.problem
    stay, taken = _staying(task)
    kinds = tuple(_filled(kind, taken[bay]) for bay, kind in enumerate(problem.kinds))
    rest = [item for item in range(len(problem.items)) if item not in stay]
    places = greedy(replace(problem, kinds=kinds, items=tuple(problem.items[item] for item in rest)), check)
    if places is None:
        return None
    found = stay | {rest[p.item]: (p.kind, p.row) for p in places}
    spots = tuple(found[item] for item in range(len(problem.items)))
    return spots if task.is_legal(spots) else None


def _staying(task: Task) -> tuple[dict[int, Spot], list[list[tuple[int, int]]]]:
    """The items that stay, from the lowest drawer of each bay upwards, and the rows that they take in each bay."""
    drawers: dict[Spot, list[int]] = {}
    for item, spot in enumerate(task.present):
        if spot is not None:
            drawers.setdefault(spot, []).append(item)
    stay: dict[int, Spot] = {}
    taken: list[list[tuple[int, int]]] = [[] for _ in task.problem.kinds]
    for (bay, row), items in sorted(drawers.items()):
        kind, span = task.problem.kinds[bay], task.problem.drawer_span(items, bay)
        here = taken[bay]
        is_free = not here or here[-1][1] <= row
        is_few = kind.drawers is None or len(here) < kind.drawers
        if span is not None and kind.admits(span, row) and is_free and is_few:
            here.append((row, row + span.rows))
            stay |= dict.fromkeys(items, (bay, row))
    return stay, taken


def _filled(kind: Kind, taken: list[tuple[int, int]]) -> Kind:
    """A bay with drawers that stay: their rows are blocked."""
    drawers = None if kind.drawers is None else max(0, kind.drawers - len(taken))
    return replace(kind, drawers=drawers, blocked=tuple(sorted((*kind.blocked, *taken))))
