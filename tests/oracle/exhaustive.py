"""The best plan of a small problem by trying everything; shares no code with the planner but the problem's numbers."""

from collections.abc import Iterator
from functools import cache
from itertools import permutations

from baywright.planner.problem import Problem


def least_cost(problem: Problem) -> int | None:
    """The least cost of placing every item of a problem with one kind of bay, None where it cannot be done."""
    kind = problem.kinds[0]
    count = len(problem.items)
    everything = (1 << count) - 1

    @cache
    def alone(group: int) -> int | None:
        """The least cost of one bay that holds exactly this group."""
        members = [i for i in range(count) if group >> i & 1]
        if kind.drawers is not None and len(members) > kind.drawers:
            return None
        costs = [cost for order in permutations(members) if (cost := _stacked(problem, order)) is not None]
        return min(costs, default=None)

    @cache
    def best(left: int, bays: int) -> int | None:
        if not left:
            return 0
        if not bays:
            return None
        lowest = left & -left
        found = []
        for group in _subsets(left & ~lowest):
            mine = alone(group | lowest)
            rest = best(left & ~(group | lowest), bays - 1) if mine is not None else None
            if mine is not None and rest is not None:
                found.append(mine + rest)
        return min(found, default=None)

    return best(everything, kind.bays)


def _subsets(mask: int) -> Iterator[int]:
    subset = mask
    while True:
        yield subset
        if not subset:
            return
        subset = (subset - 1) & mask


def _stacked(problem: Problem, order: tuple[int, ...]) -> int | None:
    """The least cost of a stack in this order from the bottom, by a table over rows."""
    reach: dict[int, int] = {0: 0}
    for index in order:
        item = problem.items[index]
        shape = problem.shapes[item.shape]
        span = shape.spans[0]
        if span is None:
            return None
        after: dict[int, int] = {}
        for row in range(span.lowest, span.highest + 1):
            under = [cost for free, cost in reach.items() if free <= row]
            if under:
                cost = min(under) + item.weight * shape.penalty(row)
                end = row + span.rows
                after[end] = min(cost, after.get(end, cost))
        reach = after
    return min(reach.values(), default=None)
