"""A second first try, for bays that are all alike: bay after bay filled as full as can be, in number and in rows.

Best fit (`distribution.greedy`) takes the large items first and is left with more small ones than drawers may
hold. Here every bay takes about as many items as come to a bay on average, chosen by a table over rows and drawers
so that as few rows as can be are wasted; a good filling is used for as many bays as it lasts.
"""

from collections.abc import Callable

from baywright.planner.distribution.problem import Place, Problem, Span

ONCE_MORE = 4
"""A filling is used at once for at most this part of the bays left, so that the later ones find a mixture, too."""

Filling = tuple[int, ...]
"""How many items of each family a bay takes."""


def fill(problem: Problem, check: Callable[[], None] = lambda: None) -> tuple[Place, ...] | None:
    """Places for all items, or None where this way does not find them or does not apply."""
    if len(problem.kinds) != 1 or problem.kinds[0].blocked:
        return None
    kind = problem.kinds[0]
    waiting: dict[Span, list[int]] = {}
    for index in range(len(problem.items)):
        span = problem.span(index, 0)
        if span is None or span.barred:
            return None
        waiting.setdefault(span, []).append(index)
    spans = sorted(waiting, key=lambda s: (-s.rows, s.lowest, s.highest))
    if not spans:
        return ()
    floor, roof = max(s.lowest for s in spans), min(s.highest + s.rows for s in spans)
    places: list[Place] = []
    bay = 0
    while any(waiting.values()):
        check()
        counts = [len(waiting[span]) for span in spans]
        chosen = _best(spans, counts, roof - floor, kind.drawers or len(problem.items), kind.bays - bay)
        if chosen is None:
            return None
        lasts = min(have // take for have, take in zip(counts, chosen, strict=True) if take)
        for _ in range(max(1, min(lasts, (kind.bays - bay) // ONCE_MORE))):
            row = floor
            for span, take in zip(spans, chosen, strict=True):
                for _ in range(take):
                    places.append(Place(waiting[span].pop(), 0, bay, row))
                    row += span.rows
            bay += 1
    return tuple(sorted(places, key=lambda p: p.item))


def _best(spans: list[Span], counts: list[int], rows: int, drawers: int, bays: int) -> Filling | None:
    """The filling of one bay that wastes least and leaves the bays after it enough rows and drawers."""
    if bays < 1:
        return None
    all_rows = sum(span.rows * count for span, count in zip(spans, counts, strict=True))
    least_rows, least_drawers = all_rows - rows * (bays - 1), sum(counts) - drawers * (bays - 1)
    average = sum(counts) / bays
    best: tuple[float, Filling] | None = None
    for (used, number), filling in _fillings(spans, counts, rows, drawers).items():
        if number and used >= least_rows and number >= least_drawers:
            waste = (rows - used) + abs(number - average)
            if best is None or waste < best[0]:
                best = (waste, filling)
    return best[1] if best else None


def _fillings(spans: list[Span], counts: list[int], rows: int, drawers: int) -> dict[tuple[int, int], Filling]:
    """For every (rows used, drawers used) that can be had one filling, with as many large items as come first."""
    found: dict[tuple[int, int], Filling] = {(0, 0): ()}
    for span, count in zip(spans, counts, strict=True):
        further: dict[tuple[int, int], Filling] = {}
        for (used, number), filling in found.items():
            most = min(count, (rows - used) // span.rows, drawers - number)
            for take in range(most, -1, -1):
                key = used + take * span.rows, number + take
                if key not in further or further[key] < (*filling, take):
                    further[key] = (*filling, take)
        found = further
    return found
