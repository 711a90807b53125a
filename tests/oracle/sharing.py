"""The least cost of a small problem with shared drawers, barred rows and spare rows, by walking up every bay every way.

Shares no code with the planner but the problem's numbers.
"""

from functools import cache
from itertools import combinations

from baywright.planner.distribution.problem import Problem, Span


def least_cost(problem: Problem) -> int | None:
    """The least cost of placing every item, None where it cannot be done."""
    bays = [number for number, kind in enumerate(problem.kinds) for _ in range(kind.bays)]
    room = [_free_rows(problem, number) for number in range(len(problem.kinds))]
    most_used = sum(len(room[number]) for number in bays) - problem.spare_rows
    teams = {team.shapes: team.spans for team in problem.teams}

    def span_of(group: tuple[int, ...], number: int) -> Span | None:
        shapes = tuple(sorted(problem.items[i].shape for i in group))
        if len(shapes) == 1:
            return problem.shapes[shapes[0]].spans[number]
        return teams[shapes][number] if shapes in teams else None

    @cache
    def best(bay: int, row: int, drawers: int, left: frozenset[int], used: int) -> int | None:
        if used > most_used:
            return None
        if bay == len(bays):
            return None if left else 0
        number = bays[bay]
        kind = problem.kinds[number]
        if row >= kind.rows:
            return best(bay + 1, 0, 0, left, used)
        found = [best(bay, row + 1, drawers, left, used)]
        if kind.drawers is None or drawers < kind.drawers:
            for size in (1, 2, 3):
                for group in combinations(sorted(left), size):
                    span = span_of(group, number)
                    if span is None or not _may_start(problem, number, span, row):
                        continue
                    end = row + span.rows
                    taken = len(room[number] & set(range(row, end)))
                    rest = best(bay, end, drawers + 1, left - set(group), used + taken)
                    if rest is not None:
                        items = [problem.items[i] for i in group]
                        found.append(rest + sum(i.weight * problem.shapes[i.shape].penalty(row) for i in items))
        return min((cost for cost in found if cost is not None), default=None)

    return best(0, 0, 0, frozenset(range(len(problem.items))), 0)


def _free_rows(problem: Problem, number: int) -> set[int]:
    kind = problem.kinds[number]
    rows = set(range(*(kind.usable or (0, kind.rows)))) & set(range(kind.rows))
    return rows - {row for first, last in kind.blocked for row in range(first, last)}


def _may_start(problem: Problem, number: int, span: Span, row: int) -> bool:
    if row < span.lowest or row > span.highest or row in span.barred:
        return False
    kind = problem.kinds[number]
    return not any(first <= r < last for first, last in kind.blocked for r in range(row, row + span.rows))
