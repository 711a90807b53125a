"""The best plan of a small problem by trying everything; shares no code with the planner but the problem's numbers."""

from collections.abc import Iterator
from functools import cache
from itertools import permutations

from baywright.planner.distribution.problem import Problem


def least_cost(problem: Problem) -> int | None:
    """The least cost of placing every item of a problem, None where it cannot be done."""
    count = len(problem.items)
    bays = [number for number, kind in enumerate(problem.kinds) for _ in range(kind.bays)]

    @cache
    def alone(kind: int, group: int) -> int | None:
        """The least cost of one bay of a kind that holds exactly this group."""
        members = [i for i in range(count) if group >> i & 1]
        limit = problem.kinds[kind].drawers
        if limit is not None and len(members) > limit:
            return None
        costs = [cost for order in permutations(members) if (cost := _stacked(problem, kind, order)) is not None]
        return min(costs, default=None)

    @cache
    def best(left: int, bay: int) -> int | None:
        if bay == len(bays):
            return None if left else 0
        found = []
        for group in _subsets(left):
            mine = alone(bays[bay], group)
            rest = best(left & ~group, bay + 1) if mine is not None else None
            if mine is not None and rest is not None:
                found.append(mine + rest)
        return min(found, default=None)

    return best((1 << count) - 1, 0)


def _subsets(mask: int) -> Iterator[int]:
    subset = mask
    while True:
        yield subset
        if not subset:
            return
        subset = (subset - 1) & mask


def _stacked(problem: Problem, kind: int, order: tuple[int, ...]) -> int | None:
    """The least cost of a stack in this order from the bottom, by a table over rows."""
    blocked = [row for first, last in problem.kinds[kind].blocked for row in range(first, last)]
    reach: dict[int, int] = {0: 0}
    for index in order:
        item = problem.items[index]
        shape = problem.shapes[item.shape]
        span = shape.spans[kind]
        if span is None:
            return None
        after: dict[int, int] = {}
        for row in range(span.lowest, span.highest + 1):
            end = row + span.rows
            under = [cost for free, cost in reach.items() if free <= row]
            if under and not any(row <= taken < end for taken in blocked):
                cost = min(under) + item.weight * shape.penalty(row)
                after[end] = min(cost, after.get(end, cost))
        reach = after
    return min(reach.values(), default=None)
