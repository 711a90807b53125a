"""From a flow to bays: the starts of a solution are dealt out, row by row upwards, to single bays.

Because intervals of rows form an interval graph (or, with drawers counted, because a flow splits into paths), a
sweep upwards that hands every start to any bay that stands ready never gets stuck. So the sweep is free to follow the
present arrangement: an item goes to the bay where it stands already whenever that bay is ready, and items that share
a drawer stay together where they can.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping

from baywright.planner.distribution.family import families
from baywright.planner.distribution.flow import Start, counted_drawers
from baywright.planner.distribution.problem import Place, Problem

Present = Mapping[int, tuple[int, int, int]]
"""For items that stand somewhere now: kind, bay within the kind, row."""
Takers = Mapping[tuple[int, int], list[int]]
"""The items that wait for a start, by family and row."""


def split(
    problem: Problem,
    family_of: tuple[int, ...],
    starts: Iterable[Start],
    rows: tuple[int, ...],
    present: Present,
) -> tuple[Place, ...]:
    """The places of all items: `starts` say how many of each filling start where, `rows` where each item starts."""
    takers = _takers(problem, family_of, rows)
    fillings = families(problem).fillings
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
            for kind, drawer, number in slots[row]:
                bays = [
                    bay
                    for bay, (free, drawers) in enumerate(ready[kind])
                    if free <= row and (not counted[kind] or drawers == drawer) and (kind, bay) not in dealt
                ]
                members = fillings[number].families
                choice = _choice(members, takers, kind, bays, row, present, follow=follow)
                if choice is None:
                    rest.append((kind, drawer, number))
                    continue
                items, bay = choice
                for family, item in zip(members, items, strict=True):
                    takers[family, row].remove(item)
                    places.append(Place(item, kind, bay, row))
                dealt.add((kind, bay))
                span = fillings[number].spans[kind]
                ready[kind][bay] = [row + (span.rows if span else 0), ready[kind][bay][1] + 1]
            slots[row] = rest
    return tuple(sorted(places, key=lambda p: p.item))


def _takers(problem: Problem, family_of: tuple[int, ...], rows: tuple[int, ...]) -> Takers:
    takers: dict[tuple[int, int], list[int]] = defaultdict(list)
    for index, item in enumerate(problem.items):
        takers[family_of[item.shape], rows[index]].append(index)
    return takers


def _choice(
    members: tuple[int, ...],
    takers: Takers,
    kind: int,
    bays: list[int],
    row: int,
    present: Present,
    *,
    follow: bool,
) -> tuple[tuple[int, ...], int] | None:
    """Items for a drawer and a ready bay for it: with `follow` only where they stand now, else the first of each.

    Without `follow`, an item whose own bay is ready goes there though its row changes: it stays in its stack.
    """
    if not bays:
        return None
    if len(members) > 1:
        return _crew(members, takers, kind, bays, row, present, follow=follow)
    items = takers[members[0], row]
    if not items:
        return None
    if follow:
        here = set(bays)
        for item in items:
            old = present.get(item)
            if old is not None and old[0] == kind and old[2] == row and old[1] in here:
                return (item,), old[1]
        return None
    for item in items:
        old = present.get(item)
        if old is not None and old[0] == kind and old[1] in bays:
            return (item,), old[1]
    return (items[0],), bays[0]


def _crew(
    members: tuple[int, ...],
    takers: Takers,
    kind: int,
    bays: list[int],
    row: int,
    present: Present,
    *,
    follow: bool,
) -> tuple[tuple[int, ...], int] | None:
    """Items for a shared drawer, as many as can be that stand in its bay now; with `follow` all, at this very row."""
    best: tuple[int, tuple[int, ...], int] | None = None
    waiting = [item for family in set(members) for item in takers[family, row]]
    old_bays = {old[1] for item in waiting if (old := present.get(item)) is not None and old[0] == kind}
    for bay in [bay for bay in bays if bay in old_bays] or bays[:1]:
        score, crew = 0, []
        for family in members:
            near = {item: _nearness(present.get(item), kind, bay, row) for item in takers[family, row]}
            item = max((i for i in takers[family, row] if i not in crew), key=lambda i, n=near: n[i])  # type: ignore[misc]
            score += near[item]
            crew.append(item)
        if best is None or score > best[0]:
            best = (score, tuple(crew), bay)
    if best is None or (follow and best[0] < _THERE * len(members)):
        return None
    return best[1], best[2]


_THERE = 10


def _nearness(old: tuple[int, int, int] | None, kind: int, bay: int, row: int) -> int:
    """How well an item that stands at `old` would be left where it is by a drawer at that place."""
    if old is None or old[:2] != (kind, bay):
        return 0
    return _THERE if old[2] == row else 1
