"""Arithmetic that settles most questions before any search: what is needed against what is there.

Each check is a counting argument that a person can follow: rows over rows, boxes over drawers, large boxes over
bays, boxes of a locked bay over that bay, spare rows over what is left. A shortage found here is a proof; none found
proves nothing. A box that may share a drawer counts with its share of the best drawer that it could be in: half the
rows of a drawer of two, a third of one of three.
"""

from collections import Counter
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from math import ceil

from baywright.planner.distribution.flow import most_drawers
from baywright.planner.distribution.problem import Kind, Problem, Span


class Lack(Enum):
    """What there is too little of."""

    PLACE = "place"
    """An item that no bay can take, whatever else stands there."""
    ROWS = "rows"
    DRAWERS = "drawers"
    BAYS = "bays"
    """Items of which no two fit in one bay, over bays."""
    SPARE = "spare"
    """Rows needed and rows to be left free together, over rows."""


@dataclass(frozen=True, slots=True)
class Shortage:
    """`needed` > `available`, counted over `items`; `kind` where it is about the bays of one kind only.

    For rows, `extra` of the available ones are gained by top drawers that reach beyond the last whole opening.
    """

    lack: Lack
    needed: int
    available: int
    items: tuple[int, ...] = ()
    kind: int | None = None
    extra: int = 0


def shortage(problem: Problem) -> Shortage | None:
    """The first shortage found, or None where the counting arguments leave it open."""
    if homeless := problem.homeless():
        return Shortage(Lack.PLACE, len(homeless), 0, homeless)
    found = _over(problem, tuple(range(len(problem.kinds))), tuple(range(len(problem.items))), None)
    found = found or _spare(problem)
    if found is not None or len(problem.kinds) == 1:
        return found
    for number in range(len(problem.kinds)):
        only = tuple(i for i in range(len(problem.items)) if _only_kind(problem, i) == number)
        if only and (found := _over(problem, (number,), only, number)) is not None:
            return found
    return None


def _only_kind(problem: Problem, item: int) -> int | None:
    kinds = [k for k, span in enumerate(problem.shapes[problem.items[item].shape].spans) if span is not None]
    return kinds[0] if len(kinds) == 1 else None


def _over(problem: Problem, kinds: tuple[int, ...], items: tuple[int, ...], about: int | None) -> Shortage | None:
    rows = rows_needed(problem, items)
    room = [rows_available(problem, number, items) for number in kinds]
    available, extra = sum(base for base, _ in room), sum(more for _, more in room)
    if rows > available + extra:
        return Shortage(Lack.ROWS, rows, available + extra, items, about, extra)
    drawers = 0
    for number in kinds:
        kind, most = problem.kinds[number], most_drawers(problem, number)
        drawers += kind.bays * (most if kind.drawers is None else min(most, kind.drawers))
    if (needed := drawers_needed(problem, items)) > drawers:
        return Shortage(Lack.DRAWERS, needed, drawers, items, about)
    return _large(problem, kinds, items, about)


def rows_needed(problem: Problem, items: tuple[int, ...]) -> int:
    """The rows that items take at least, each in the kind of bay that suits it best."""
    least = [Fraction(min((s.rows for s in shape.spans if s is not None), default=0)) for shape in problem.shapes]
    for shapes, rows in _teams(problem):
        for shape in shapes:
            least[shape] = min(least[shape], Fraction(rows, len(shapes)))
    return ceil(sum(least[problem.items[i].shape] for i in items))


def drawers_needed(problem: Problem, items: tuple[int, ...]) -> int:
    """The drawers that items take at least."""
    least = [Fraction(1)] * len(problem.shapes)
    for shapes, _ in _teams(problem):
        for shape in shapes:
            least[shape] = min(least[shape], Fraction(1, len(shapes)))
    return ceil(sum(least[problem.items[i].shape] for i in items))


def _teams(problem: Problem) -> list[tuple[tuple[int, ...], int]]:
    """The teams for which there are enough items, each with the fewest rows it takes anywhere."""
    if not problem.teams:
        return []
    there = Counter(item.shape for item in problem.items)
    return [
        (team.shapes, min(span.rows for span in team.spans if span is not None))
        for team in problem.teams
        if any(span is not None for span in team.spans) and not Counter(team.shapes) - there
    ]


def _spare(problem: Problem) -> Shortage | None:
    """The rows to be left free, against what is left when every drawer takes as few rows as it can."""
    if not problem.spare_rows:
        return None
    items = tuple(range(len(problem.items)))
    extra = 0
    for number, kind in enumerate(problem.kinds):
        end = kind.usable[1] if kind.usable is not None else kind.rows
        spans = [shape.spans[number] for shape in problem.shapes]
        beyond = [max(0, s.highest + s.rows - end) for i in items if (s := spans[problem.items[i].shape]) is not None]
        extra += sum(sorted(beyond, reverse=True)[: kind.bays])
    needed, available = rows_needed(problem, items) + problem.spare_rows, problem.room + extra
    return Shortage(Lack.SPARE, needed, available, items, None, extra) if needed > available else None


def rows_available(problem: Problem, number: int, items: tuple[int, ...]) -> tuple[int, int]:
    """The rows of all bays of a kind that whole openings can use, and those that top drawers gain over that."""
    kind = problem.kinds[number]
    shapes = {problem.items[i].shape for i in items}
    spans = {s: span for s in shapes if (span := problem.shapes[s].spans[number]) is not None and kind.starts(span)}
    if not spans or not kind.bays:
        return 0, 0
    lowest = min(span.lowest for span in spans.values())
    top = min(span.highest + span.rows for span in spans.values())
    lost = sum(max(0, min(last, top) - max(first, lowest)) for first, last in kind.blocked)
    gains = sorted(
        (g for i in items if (span := spans.get(problem.items[i].shape)) and (g := span.highest + span.rows - top)),
        reverse=True,
    )
    return kind.bays * max(0, top - lowest - lost), sum(gains[: kind.bays])


def _large(problem: Problem, kinds: tuple[int, ...], items: tuple[int, ...], about: int | None) -> Shortage | None:
    """Items no two of which fit in one bay of any kind, against the bays there are."""
    bays = sum(problem.kinds[number].bays for number in kinds)
    shapes = {problem.items[i].shape for i in items}
    large = {shape for shape in shapes if not any(_pair_fits(problem, shape, shape, n) for n in kinds)}
    ordered = sorted(large, key=lambda s: min((p.rows for p in problem.shapes[s].spans if p is not None), default=0))
    for position in range(len(ordered)):
        alone = set(ordered[position:])
        if any(_pair_fits(problem, a, b, n) for a in alone for b in alone for n in kinds):
            continue
        found = tuple(i for i in items if problem.items[i].shape in alone)
        if len(found) > bays:
            return Shortage(Lack.BAYS, len(found), bays, found, about)
        return None
    return None


def _pair_fits(problem: Problem, lower: int, upper: int, number: int) -> bool:
    kind = problem.kinds[number]
    below, above = problem.shapes[lower].spans[number], problem.shapes[upper].spans[number]
    if any(
        Counter((lower, upper)) <= Counter(team.shapes) and kind.starts(team.spans[number]) for team in problem.teams
    ):
        return True
    return _fits_over(kind, below, above) or _fits_over(kind, above, below)


def _fits_over(kind: Kind, below: Span | None, above: Span | None) -> bool:
    if not kind.bays or below is None or above is None:
        return False
    return below.lowest <= below.highest and max(below.lowest + below.rows, above.lowest) <= above.highest
