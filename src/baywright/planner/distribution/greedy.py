"""A first plan at once: largest items first, each into the stretch of free rows that it fills best.

It may fail where a plan exists; it is where the search starts from, and the answer where a run is too large for the
solver. Of stretches that are alike and still empty only the first is looked at, and full ones are not looked at again,
so that thousands of items take a fraction of a second.
"""

from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass, field

from baywright.planner.distribution.problem import Place, Problem, Span


@dataclass
class Stretch:
    """Free rows `first` … `last` − 1 of one bay and the items put there.

    The top stretch of a bay has no lid but each item's own highest row: `reach` is as far as the item that can
    reach highest lets the stack grow. With an item that has barred rows the order is kept as it came (`is_fixed`).
    """

    kind: int
    bay: int
    first: int
    last: int
    is_top: bool
    used: int = 0
    reach: int = 0
    is_fixed: bool = False
    items: list[int] = field(default_factory=list)

    def bottom(self, span: Span) -> int:
        """The row at which an item of that span would come to stand."""
        row = max(self.first, span.lowest) + self.used
        while row in span.barred:
            row += 1
        return row

    def slack(self, span: Span) -> int | None:
        """Rows left over once an item of that span is in, or None where it does not fit in."""
        bottom = self.bottom(span)
        end = bottom + span.rows
        if span.barred and bottom > span.highest:
            return None
        if self.is_top:
            return max(0, self.last - end) if end <= max(self.reach, span.highest + span.rows) else None
        return self.last - end if end <= self.last and bottom <= span.highest else None

    def put(self, item: int, span: Span) -> None:
        """Put an item in."""
        self.items.append(item)
        self.used = self.bottom(span) + span.rows - max(self.first, span.lowest)
        self.is_fixed |= bool(span.barred)
        self.reach = max(self.reach, span.highest + span.rows)


def greedy(problem: Problem, check: Callable[[], None] = lambda: None) -> tuple[Place, ...] | None:
    """Places for all items, or None where this simple way does not find them; `check` is called now and then."""
    fresh = _stretches(problem)
    begun: list[Stretch] = []
    left = {(number, bay): kind.drawers for number, kind in enumerate(problem.kinds) for bay in range(kind.bays)}
    done: list[Stretch] = []
    for count, item in enumerate(_order(problem)):
        if count % 50 == 0:
            check()
        chosen = _best(problem, item, [*begun, *(group[-1] for group in fresh if group)], left)
        if chosen is None:
            return None
        if not chosen.items:
            next(group for group in fresh if group and group[-1] is chosen).pop()
            begun.append(chosen)
            done.append(chosen)
        span = problem.span(item, chosen.kind)
        assert span is not None
        chosen.put(item, span)
        bay = chosen.kind, chosen.bay
        if (drawers := left[bay]) is not None:
            left[bay] = drawers - 1
            if drawers == 1:
                begun = [s for s in begun if (s.kind, s.bay) != bay]
        if chosen.first + chosen.used >= max(chosen.last, chosen.reach):
            begun = [s for s in begun if s is not chosen]
    return tuple(sorted((p for s in done for p in _stack(problem, s)), key=lambda p: p.item))


def _best(
    problem: Problem, item: int, stretches: list[Stretch], left: dict[tuple[int, int], int | None]
) -> Stretch | None:
    """The stretch that the item fills best, the earlier of two alike."""
    spans = problem.shapes[problem.items[item].shape].spans
    best: Stretch | None = None
    least = 0
    for stretch in stretches:
        span = spans[stretch.kind]
        if span is None or left[stretch.kind, stretch.bay] == 0:
            continue
        slack = stretch.slack(span)
        if slack is not None and (best is None or slack < least):
            best, least = stretch, slack
            if slack == 0:
                break
    return best


def _order(problem: Problem) -> list[int]:
    """Items with the fewest kinds to go to first, then the largest."""
    choice = [sum(1 for span in shape.spans if span is not None) for shape in problem.shapes]
    rows = [max((span.rows for span in shape.spans if span is not None), default=0) for shape in problem.shapes]
    numbers = range(len(problem.items))
    return sorted(numbers, key=lambda i: (choice[s := problem.items[i].shape], -rows[s], -problem.items[i].weight, i))


def _stretches(problem: Problem) -> list[list[Stretch]]:
    """The free stretches of all bays in groups that are alike, each with the first bay last."""
    groups: dict[tuple[int, int, int], list[Stretch]] = defaultdict(list)
    for number, kind in enumerate(problem.kinds):
        edges, free = [], 0
        for first, last in kind.blocked:
            edges.append((free, first, False))
            free = last
        edges.append((free, kind.rows, True))
        for bay in reversed(range(kind.bays)):
            for first, last, is_top in edges:
                if first < last:
                    groups[number, first, last].append(Stretch(number, bay, first, last, is_top))
    return list(groups.values())


def _stack(problem: Problem, stretch: Stretch) -> list[Place]:
    """The items of a stretch set down: what can stand highest goes to the top, the rest as they came."""
    spans = {i: span for i in stretch.items if (span := problem.span(i, stretch.kind)) is not None}
    order = list(stretch.items)
    if not stretch.is_fixed:
        top = max(order, key=lambda i: (spans[i].highest + spans[i].rows, -i))
        order.remove(top)
        order.append(top)
    row = stretch.first
    places = []
    for i in order:
        row = max(row, spans[i].lowest)
        while row in spans[i].barred:
            row += 1
        places.append(Place(i, stretch.kind, stretch.bay, row))
        row += spans[i].rows
    return places
