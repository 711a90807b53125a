"""From a flow to bays: the starts of a solution are dealt out, row by row upwards, to single bays.

Because intervals of rows form an interval graph (or, with drawers counted, because a flow splits into paths), a
sweep upwards that hands every start to any bay that stands ready never gets stuck. So the sweep is free to follow the
present arrangement: an item goes to the bay where it stands already whenever that bay is ready.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping

from baywright.planner.flow import Start, counted_drawers
from baywright.planner.problem import Place, Problem

Present = Mapping[int, tuple[int, int, int]]
"""For items that stand somewhere now: kind, bay within the kind, row."""


def split(
    problem: Problem,
    family_of: tuple[int, ...],
    starts: Iterable[Start],
    rows: tuple[int, ...],
    present: Present,
) -> tuple[Place, ...]:
    """The places of all items: `starts` say how many of each family start where, `rows` where each item starts."""
    takers = _takers(problem, family_of, rows)
    counted = [counted_drawers(problem, kind) is not None for kind in range(len(problem.kinds))]
    ready: dict[int, list[list[int]]] = {
        number: [[0, 0] for _ in range(kind.bays)] for number, kind in enumerate(problem.kinds)
    }
    places: list[Place] = []
    slots: dict[int, list[tuple[int, int, int]]] = defaultdict(list)
    for start in starts:
        slots[start.arc.row].extend([(start.arc.kind, start.arc.drawer, start.arc.family)] * start.count)
    for row in sorted(slots):
        dealt: set[tuple[int, int]] = set()
        for follow in (True, False):
            rest = []
            for kind, drawer, family in slots[row]:
                bays = [
                    bay
                    for bay, (free, drawers) in enumerate(ready[kind])
                    if free <= row and (not counted[kind] or drawers == drawer) and (kind, bay) not in dealt
                ]
                choice = _choice(takers[family, row], kind, bays, row, present, follow=follow)
                if choice is None:
                    rest.append((kind, drawer, family))
                    continue
                item, bay = choice
                takers[family, row].remove(item)
                dealt.add((kind, bay))
                span = problem.span(item, kind)
                ready[kind][bay] = [row + (span.rows if span else 0), ready[kind][bay][1] + 1]
                places.append(Place(item, kind, bay, row))
            slots[row] = rest
    return tuple(sorted(places, key=lambda p: p.item))


def _takers(problem: Problem, family_of: tuple[int, ...], rows: tuple[int, ...]) -> dict[tuple[int, int], list[int]]:
    takers: dict[tuple[int, int], list[int]] = defaultdict(list)
    for index, item in enumerate(problem.items):
        takers[family_of[item.shape], rows[index]].append(index)
    return takers


def _choice(
    items: list[int], kind: int, bays: list[int], row: int, present: Present, *, follow: bool
) -> tuple[int, int] | None:
    """An item and a ready bay for it: with `follow` only where the item stands now, else the first of each.

    Without `follow`, an item whose own bay is ready goes there though its row changes: it stays in its stack.
    """
    if not items or not bays:
        return None
    if follow:
        here = set(bays)
        for item in items:
            old = present.get(item)
            if old is not None and old[0] == kind and old[2] == row and old[1] in here:
                return item, old[1]
        return None
    for item in items:
        old = present.get(item)
        if old is not None and old[0] == kind and old[1] in bays:
            return item, old[1]
    return items[0], bays[0]
