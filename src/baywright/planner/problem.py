"""The distribution problem in bare numbers: drawers as intervals of hole rows, bays that are alike as one kind.

Nothing of boards, boxes or millimetres is left here, so that the solving modules can be tested against published
bin-packing problems. Laws:

- An item takes `rows` rows from its start row on; the next item in the same bay starts at or above their end.
- A start lies in the item's span for that kind of bay: never under `lowest`, never over `highest`, always at a row
  that there is. Only the highest item of a bay may reach beyond the last row; `highest` alone limits it (the top
  drawer's exemption).
- A bay of a kind holds at most `drawers` items. Bays of one kind are interchangeable.
- What is locked is no rule of its own: an item locked to a bay has a span in that bay's kind only; an item locked to
  its drawer is no item at all, its rows are blocked in that bay and the bay's limit on drawers is one less.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property


@dataclass(frozen=True, slots=True)
class Span:
    """The rows an item takes in an inner place, and the lowest and highest row it may start at (none if crossed)."""

    rows: int
    lowest: int
    highest: int


@dataclass(frozen=True, slots=True)
class Kind:
    """`bays` bays that are alike, each with rows 0 … `rows` − 1 and at most `drawers` items (None: no limit).

    `blocked` are the stretches of rows, first and one past the last, that nothing may start or reach into.
    """

    bays: int
    rows: int
    drawers: int | None = None
    blocked: tuple[tuple[int, int], ...] = ()

    def admits(self, span: Span, row: int) -> bool:
        """Whether an item may start at `row` as far as span and blocked stretches go."""
        if not span.lowest <= row <= span.highest:
            return False
        end = min(row + span.rows, self.rows)
        return all(end <= first or row >= last for first, last in self.blocked)

    def starts(self, span: Span | None) -> tuple[int, ...]:
        """The rows at which an item may start, lowest first; none where it has no span."""
        if span is None or not self.bays or self.drawers == 0:
            return ()
        return tuple(row for row in range(span.lowest, span.highest + 1) if self.admits(span, row))


@dataclass(frozen=True, slots=True)
class Shape:
    """What items of one size and one lock share: a span for each kind of bay (None: not there), and the penalty a
    unit of weight has at each start row.
    """

    spans: tuple[Span | None, ...]
    penalties: tuple[int, ...] = ()

    def penalty(self, row: int) -> int:
        """The penalty of starting at `row`; 0 where none is given."""
        return self.penalties[row] if row < len(self.penalties) else 0


@dataclass(frozen=True, slots=True)
class Item:
    """One box as an interval of rows; placing it at a row costs its weight times the shape's penalty there."""

    name: str
    shape: int
    weight: int = 0


@dataclass(frozen=True)
class Problem:
    """Kinds of bays, shapes and items. Every item's shape has one span (or None) for each kind."""

    kinds: tuple[Kind, ...]
    shapes: tuple[Shape, ...]
    items: tuple[Item, ...]

    @cached_property
    def members(self) -> tuple[tuple[int, ...], ...]:
        """For each shape the indices of its items, heaviest first (then in the order given)."""
        groups: list[list[int]] = [[] for _ in self.shapes]
        for index, item in enumerate(self.items):
            groups[item.shape].append(index)
        return tuple(tuple(sorted(group, key=lambda i: (-self.items[i].weight, i))) for group in groups)

    @cached_property
    def bays(self) -> int:
        """All bays together."""
        return sum(kind.bays for kind in self.kinds)

    def span(self, item: int, kind: int) -> Span | None:
        """The span of an item in a kind of bay; None where it may not stand there at all."""
        return self.shapes[self.items[item].shape].spans[kind]

    def homeless(self) -> tuple[int, ...]:
        """Items that no bay can take, whatever else stands there."""
        live = [any(k.starts(s) for s, k in zip(shape.spans, self.kinds, strict=True)) for shape in self.shapes]
        return tuple(i for i, item in enumerate(self.items) if not live[item.shape])

    def cost(self, places: Iterable["Place"]) -> int:
        """The cost of items at their places."""
        total = 0
        for place in places:
            item = self.items[place.item]
            total += item.weight * self.shapes[item.shape].penalty(place.row)
        return total

    @cached_property
    def has_costs(self) -> bool:
        """Whether any place costs anything."""
        return any(item.weight and any(self.shapes[item.shape].penalties) for item in self.items)


@dataclass(frozen=True, slots=True)
class Place:
    """An item that starts at `row` of the `bay`-th bay of a kind (counted within the kind)."""

    item: int
    kind: int
    bay: int
    row: int


def is_kept(problem: Problem, places: Iterable[Place]) -> bool:
    """Whether the places put every item somewhere once and keep every rule of the problem."""
    stacks: dict[tuple[int, int], list[Place]] = {}
    seen: set[int] = set()
    for place in places:
        span = problem.span(place.item, place.kind)
        kind = problem.kinds[place.kind]
        if place.item in seen or span is None or not kind.admits(span, place.row) or not 0 <= place.bay < kind.bays:
            return False
        seen.add(place.item)
        stacks.setdefault((place.kind, place.bay), []).append(place)
    return len(seen) == len(problem.items) and all(_stack_is_kept(problem, s) for s in stacks.values())


def _stack_is_kept(problem: Problem, stack: list[Place]) -> bool:
    drawers = problem.kinds[stack[0].kind].drawers
    if drawers is not None and len(stack) > drawers:
        return False
    free = 0
    for place in sorted(stack, key=lambda p: p.row):
        if place.row < free:
            return False
        span = problem.span(place.item, place.kind)
        free = place.row + (span.rows if span else 0)
    return True
