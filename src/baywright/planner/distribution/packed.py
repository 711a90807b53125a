"""Fewer starts to choose from, where it only matters whether everything fits.

A stack of drawers can be set down without gaps, largest first, without another bay noticing; so it is enough to let a
drawer start where larger ones before it can end. Only the top drawer, which may reach beyond the others' roof, need
not be the smallest. The idea is that of reachable positions in arc-flow models of bin packing: J. M. Valério de
Carvalho, “Exact solution of bin-packing problems using column generation and branch-and-bound”, Annals of Operations
Research 86 (1999); from memory.

Laws: a kind of bays is packed only where that takes no plan away: its fillings have one lowest row, none is barred
from a row, nothing is blocked, and whatever is not the top drawer ends under every filling's own roof. Spare rows are
counted where drawers really stand, so with them nothing is packed.
"""

from baywright.planner.distribution.family import Families, families
from baywright.planner.distribution.flow import Point, Starts, counted_drawers, every_start
from baywright.planner.distribution.problem import Problem, Span


def packed_starts(problem: Problem) -> Starts:
    """For each kind and filling the starts that are enough to find out whether everything fits."""
    known = families(problem)
    starts = every_start(problem)
    if problem.spare_rows:
        return starts
    for number in range(len(problem.kinds)):
        spans = _spans(problem, known, number)
        if spans and _can_be_packed(problem, number, list(spans.values())):
            starts.update(_packed(problem, known, number, spans))
    return starts


def _spans(problem: Problem, known: Families, number: int) -> dict[int, Span]:
    """The spans of the fillings that have a start in bays of a kind, largest first."""
    kind = problem.kinds[number]
    found = {
        f: span for f, filling in enumerate(known.fillings) if (span := filling.spans[number]) and kind.starts(span)
    }
    return dict(sorted(found.items(), key=lambda pair: (-pair[1].rows, pair[0])))


def _can_be_packed(problem: Problem, number: int, spans: list[Span]) -> bool:
    roof = min(span.highest + span.rows for span in spans)
    return (
        not problem.kinds[number].blocked
        and not any(span.barred for span in spans)
        and len({span.lowest for span in spans}) == 1
        and max(span.highest for span in spans) <= roof
    )


def _packed(
    problem: Problem, known: Families, number: int, spans: dict[int, Span]
) -> dict[tuple[int, int], tuple[Point, ...]]:
    limit = counted_drawers(problem, number)
    counts = [0] * known.count
    for item in problem.items:
        counts[known.of_shape[item.shape]] += 1
    lowest, roof = next(iter(spans.values())).lowest, min(span.highest + span.rows for span in spans.values())
    most = len(problem.items) if limit is None else limit
    reached: set[Point] = {(lowest, 0)}
    starts: dict[int, set[Point]] = {}
    for filling, span in spans.items():
        members = known.fillings[filling].families
        times = min(counts[family] // members.count(family) for family in members)
        starts[filling] = set()
        ends = reached
        for _ in range(times):
            begun = {(row, drawer) for row, drawer in ends if row + span.rows <= roof and drawer < most}
            begun -= starts[filling]
            if not begun:
                break
            starts[filling] |= begun
            ends = {(row + span.rows, drawer + (limit is not None)) for row, drawer in begun}
            reached = reached | ends
    for filling, span in spans.items():
        tops = range(max(lowest, roof - span.rows + 1), span.highest + 1)
        starts[filling] |= {(row, drawer) for row, drawer in reached if row in tops and drawer < most}
    return {(number, filling): tuple(sorted(points)) for filling, points in starts.items()}
