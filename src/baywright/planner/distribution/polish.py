"""A plan made easier to handle without a solver: boxes change places, one bay or one size at a time.

What this finds is only good, not best; it is the plan shown first, and the answer where the solver finds none in
time. Laws: the number of bays and rows stays, every rule is kept, and the cost never grows.
"""

from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass, replace

from baywright.planner.distribution.problem import Place, Problem, Span, drawers_of, is_kept

ROUNDS = 3
"""How often bays are set in order and sizes exchanged in turn."""


def polished(problem: Problem, places: tuple[Place, ...], check: Callable[[], None]) -> tuple[Place, ...]:
    """A plan with the same bays that costs no more; `check` is called now and then."""
    best = exchanged(problem, places)
    for _ in range(ROUNDS):
        stacks: dict[tuple[int, int], list[Place]] = defaultdict(list)
        for place in best:
            stacks[place.kind, place.bay].append(place)
        better: list[Place] = []
        for (kind, _), stack in stacks.items():
            check()
            better += stack if problem.kinds[kind].blocked else _ordered(problem, stack)
        found = exchanged(problem, tuple(better))
        if problem.cost(found) >= problem.cost(best) or (problem.spare_rows and not is_kept(problem, found)):
            break
        best = found
    return best


def exchanged(problem: Problem, places: tuple[Place, ...]) -> tuple[Place, ...]:
    """The same places with the items of each shape exchanged among them so that the heaviest stand best."""
    by_shape: dict[int, list[Place]] = defaultdict(list)
    for place in places:
        by_shape[problem.items[place.item].shape].append(place)
    found: list[Place] = []
    for shape, group in by_shape.items():
        group.sort(key=lambda p: (problem.shapes[shape].penalty(p.row), p.kind, p.bay, p.row))
        members = problem.members[shape]
        found += [replace(place, item=item) for place, item in zip(group, members, strict=True)]
    return tuple(sorted(found, key=lambda p: p.item))


@dataclass(frozen=True, slots=True)
class _Drawer:
    """One drawer of a bay: its span, and what it costs at each row: weight times penalty for each item in it."""

    items: tuple[int, ...]
    span: Span
    prices: tuple[tuple[int, tuple[int, ...]], ...]

    def cost(self, row: int) -> int:
        return sum(weight * penalties[row] for weight, penalties in self.prices if row < len(penalties))


def _ordered(problem: Problem, stack: list[Place]) -> list[Place]:
    """One bay's stack in a cheaper order: neighbours change places as long as that helps."""
    kind, bay = stack[0].kind, stack[0].bay
    drawers = drawers_of(sorted(stack, key=lambda p: p.row))
    order = [drawer for items in drawers.values() if (drawer := _drawer(problem, items, kind)) is not None]
    rows = [row for _, _, row in drawers]
    best, set_down = list(zip(order, rows, strict=True)), False
    cost = _cost(best)
    is_better = True
    while is_better:
        is_better = False
        for lower in range(len(order) - 1):
            order[lower], order[lower + 1] = order[lower + 1], order[lower]
            found = _cheapest_set(order, problem.kinds[kind].rows)
            if found is not None and (mine := _cost(found)) < cost:
                best, cost, is_better, set_down = found, mine, True, True
            else:
                order[lower], order[lower + 1] = order[lower + 1], order[lower]
    return [Place(item, kind, bay, row) for drawer, row in best for item in drawer.items] if set_down else stack


def _drawer(problem: Problem, items: list[int], kind: int) -> _Drawer | None:
    span = problem.drawer_span(items, kind)
    shapes = [(problem.items[item].weight, problem.shapes[problem.items[item].shape].penalties) for item in items]
    return None if span is None else _Drawer(tuple(items), span, tuple(shapes))


_Set = list[tuple[_Drawer, int]]


def _cheapest_set(order: list[_Drawer], rows: int) -> _Set | None:
    """The drawers in this order from the bottom, set as low or as high as they go, whichever costs less."""
    low = _set_low(order)
    if low is None:
        return None
    high: _Set = []
    lid, is_top = rows, True
    for drawer, least in reversed(low):
        span = drawer.span
        row = span.highest if is_top else min(span.highest, lid - span.rows)
        while row in span.barred and row > least:
            row -= 1
        high.append((drawer, row))
        lid, is_top = row, False
    return low if _cost(low) <= _cost(high) else high


def _set_low(order: list[_Drawer]) -> _Set | None:
    free = 0
    found: _Set = []
    for drawer in order:
        row = max(free, drawer.span.lowest)
        while row in drawer.span.barred:
            row += 1
        if row > drawer.span.highest:
            return None
        found.append((drawer, row))
        free = row + drawer.span.rows
    return found


def _cost(drawers: _Set) -> int:
    return sum(drawer.cost(row) for drawer, row in drawers)
