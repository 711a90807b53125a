"""A first plan at once: largest items first, each into the stretch of free rows that it fills best.

It may fail where a plan exists; it is where the solver starts from, and the answer where a run is too large for one.
"""

from dataclasses import dataclass, field

from baywright.planner.problem import Place, Problem, Span


@dataclass
class Stretch:
    """Free rows `first` … `last` − 1 of one bay, and the items put there; the top stretch of a bay has no lid but
    each item's own highest row.
    """

    kind: int
    bay: int
    first: int
    last: int
    is_top: bool
    used: int = 0
    items: list[int] = field(default_factory=list)


def greedy(problem: Problem) -> tuple[Place, ...] | None:
    """Places for all items, or None where this simple way does not find them."""
    stretches = _stretches(problem)
    left = {(s.kind, s.bay): problem.kinds[s.kind].drawers for s in stretches}
    for item in _order(problem):
        best: tuple[int, int] | None = None
        for number, stretch in enumerate(stretches):
            drawers = left[stretch.kind, stretch.bay]
            if drawers == 0:
                continue
            slack = _slack(problem, stretch, item)
            if slack is not None and (best is None or slack < best[0]):
                best = (slack, number)
                if slack == 0:
                    break
        if best is None:
            return None
        chosen = stretches[best[1]]
        span = problem.span(item, chosen.kind)
        chosen.items.append(item)
        chosen.used += span.rows if span else 0
        drawers = left[chosen.kind, chosen.bay]
        left[chosen.kind, chosen.bay] = None if drawers is None else drawers - 1
    return tuple(sorted((p for s in stretches for p in _stack(problem, s)), key=lambda p: p.item))


def _order(problem: Problem) -> list[int]:
    """Items with the fewest kinds to go to first, then the largest."""
    choice = [sum(1 for span in shape.spans if span is not None) for shape in problem.shapes]
    rows = [max((span.rows for span in shape.spans if span is not None), default=0) for shape in problem.shapes]
    numbers = range(len(problem.items))
    return sorted(numbers, key=lambda i: (choice[s := problem.items[i].shape], -rows[s], -problem.items[i].weight, i))


def _stretches(problem: Problem) -> list[Stretch]:
    found = []
    for number, kind in enumerate(problem.kinds):
        edges, free = [], 0
        for first, last in kind.blocked:
            edges.append((free, first, False))
            free = last
        edges.append((free, kind.rows, True))
        for bay in range(kind.bays):
            found += [Stretch(number, bay, first, last, top) for first, last, top in edges if first < last]
    return found


def _slack(problem: Problem, stretch: Stretch, item: int) -> int | None:
    """Rows left over once the item is in, or None where it does not fit in."""
    span = problem.span(item, stretch.kind)
    if span is None:
        return None
    bottom = max(stretch.first, span.lowest)
    end = bottom + stretch.used + span.rows
    if not stretch.is_top:
        return stretch.last - end if end <= stretch.last and bottom + stretch.used <= span.highest else None
    gains = [end - s.rows <= s.highest for s in (span, *_spans(problem, stretch))]
    return max(0, stretch.last - end) if any(gains) else None


def _spans(problem: Problem, stretch: Stretch) -> list[Span]:
    return [span for i in stretch.items if (span := problem.span(i, stretch.kind)) is not None]


def _stack(problem: Problem, stretch: Stretch) -> list[Place]:
    """The items of a stretch set down: what can stand highest goes to the top, the rest as they came."""
    spans = {i: span for i in stretch.items if (span := problem.span(i, stretch.kind)) is not None}
    if not spans:
        return []
    order = list(stretch.items)
    top = max(order, key=lambda i: (spans[i].highest + spans[i].rows, -i))
    order.remove(top)
    row = stretch.first
    places = []
    for i in (*order, top):
        row = max(row, spans[i].lowest)
        places.append(Place(i, stretch.kind, stretch.bay, row))
        row += spans[i].rows
    return places
