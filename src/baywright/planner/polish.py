"""A plan made easier to handle without a solver: boxes change places, one bay or one size at a time.

What this finds is only good, not best; it is the plan shown first, and the answer where the solver finds none in
time. Laws: the number of bays and rows stays, every rule is kept, and the cost never grows.
"""

from collections import defaultdict
from collections.abc import Callable
from dataclasses import replace

from baywright.planner.problem import Place, Problem

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
            better += stack if problem.kinds[kind].blocked else _ordered(problem, sorted(stack, key=lambda p: p.row))
        found = exchanged(problem, tuple(better))
        if problem.cost(found) >= problem.cost(best):
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


def _ordered(problem: Problem, stack: list[Place]) -> list[Place]:
    """One bay's stack in a cheaper order: neighbours change places as long as that helps."""
    kind, bay = stack[0].kind, stack[0].bay
    order = [place.item for place in stack]
    best = stack
    cost = problem.cost(stack)
    is_better = True
    while is_better:
        is_better = False
        for lower in range(len(order) - 1):
            order[lower], order[lower + 1] = order[lower + 1], order[lower]
            found = _cheapest_set(problem, kind, bay, order)
            if found is not None and (mine := problem.cost(found)) < cost:
                best, cost, is_better = found, mine, True
            else:
                order[lower], order[lower + 1] = order[lower + 1], order[lower]
    return best


def _cheapest_set(problem: Problem, kind: int, bay: int, order: list[int]) -> list[Place] | None:
    """The items in this order from the bottom, set as low or as high as they go, whichever costs less."""
    low = _set_low(problem, kind, bay, order)
    if low is None:
        return None
    high, lid = [], problem.kinds[kind].rows
    is_top = True
    for place in reversed(low):
        span = problem.span(place.item, kind)
        assert span is not None
        row = span.highest if is_top else min(span.highest, lid - span.rows)
        high.append(replace(place, row=row))
        lid, is_top = row, False
    return low if problem.cost(low) <= problem.cost(high) else high


def _set_low(problem: Problem, kind: int, bay: int, order: list[int]) -> list[Place] | None:
    free = 0
    places = []
    for item in order:
        span = problem.span(item, kind)
        if span is None or max(free, span.lowest) > span.highest:
            return None
        row = max(free, span.lowest)
        places.append(Place(item, kind, bay, row))
        free = row + span.rows
    return places
