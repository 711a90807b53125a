"""The distribution problem in bare numbers: drawers as intervals of hole rows, bays that are alike as one kind.

Nothing of boards, boxes or millimetres is left here, so that the solving modules can be tested against published
bin-packing problems. Laws:

- An item takes `rows` rows from its start row on; the next drawer in the same bay starts at or above their end.
- A start lies in the item's span for that kind of bay: never under `lowest`, never over `highest`, never at a barred
  row, always at a row that there is. Only the highest drawer of a bay may reach beyond the last row; `highest` alone
  limits it (the top drawer's exemption).
- A bay of a kind holds at most `drawers` drawers. Bays of one kind are interchangeable.
- Items that start at the same row of the same bay share one drawer. Their shapes must be a team; the drawer keeps the
  team's span and is one drawer, however many items are in it.
- Of the rows that count as room, `spare_rows` stay free, all bays taken together.
- What is locked is no rule of its own: an item locked to a bay has a span in that bay's kind only; an item locked to
  its drawer is no item at all, its rows are blocked in that bay and the bay's limit on drawers is one less; or, where
  others may share its drawer, it is an item with a span of one row.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property


@dataclass(frozen=True, slots=True)
class Span:
    """The rows a drawer takes in an inner place, and the lowest and highest row it may start at (none if crossed).

    `barred` are rows between these at which it may not start, rising.
    """

    rows: int
    lowest: int
    highest: int
    barred: tuple[int, ...] = ()


Spans = tuple[Span | None, ...]
"""A span for each kind of bay; None: not there."""


@dataclass(frozen=True, slots=True)
class Kind:
    """`bays` bays that are alike, each with rows 0 … `rows` − 1 and at most `drawers` drawers (None: no limit).

    `blocked` are the stretches of rows, first and one past the last, that nothing may start or reach into. `usable`
    is the stretch of rows that counts as room; None counts all.
    """

    bays: int
    rows: int
    drawers: int | None = None
    blocked: tuple[tuple[int, int], ...] = ()
    usable: tuple[int, int] | None = None

    def admits(self, span: Span, row: int) -> bool:
        """Whether a drawer may start at `row` as far as span and blocked stretches go."""
        if not span.lowest <= row <= span.highest or row in span.barred:
            return False
        end = min(row + span.rows, self.rows)
        return all(end <= first or row >= last for first, last in self.blocked)

    def starts(self, span: Span | None) -> tuple[int, ...]:
        """The rows at which a drawer may start, lowest first; none where it has no span."""
        if span is None or not self.bays or self.drawers == 0:
            return ()
        return tuple(row for row in range(span.lowest, span.highest + 1) if self.admits(span, row))

    def room_taken(self, row: int, rows: int) -> int:
        """How many of the rows that count as room lie in `rows` rows from `row` on."""
        first, last = self.usable if self.usable is not None else (0, self.rows)
        return max(0, min(row + rows, last) - max(row, first))

    @property
    def room(self) -> int:
        """The rows of all its bays that count as room and are not blocked."""
        blocked = sum(self.room_taken(first, last - first) for first, last in self.blocked)
        return self.bays * (self.room_taken(0, max(self.rows, 0)) - blocked)


@dataclass(frozen=True, slots=True)
class Shape:
    """What items of one size and one lock share: a span for each kind of bay (None: not there), and the penalty a
    unit of weight has at each start row.
    """

    spans: Spans
    penalties: tuple[int, ...] = ()

    def penalty(self, row: int) -> int:
        """The penalty of starting at `row`; 0 where none is given."""
        return self.penalties[row] if row < len(self.penalties) else 0


@dataclass(frozen=True, slots=True)
class Team:
    """Two or more items that may share one drawer: their shapes, rising, and the drawer's span in each kind of bay.

    The drawer's starts must be starts of every member, its rows at least those of every member.
    """

    shapes: tuple[int, ...]
    spans: Spans


@dataclass(frozen=True, slots=True)
class Item:
    """One box as an interval of rows; placing it at a row costs its weight times the shape's penalty there."""

    name: str
    shape: int
    weight: int = 0


@dataclass(frozen=True)
class Problem:
    """Kinds of bays, shapes and items. Every item's shape and every team has one span (or None) for each kind."""

    kinds: tuple[Kind, ...]
    shapes: tuple[Shape, ...]
    items: tuple[Item, ...]
    teams: tuple[Team, ...] = ()
    spare_rows: int = 0
    is_one_of_many: bool = False
    """Whether other bays are to be had instead, so that what does not fit here may fit all the same."""

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

    @cached_property
    def room(self) -> int:
        """The rows of all bays that count as room and are not blocked."""
        return sum(kind.room for kind in self.kinds)

    def span(self, item: int, kind: int) -> Span | None:
        """The span of an item alone in a kind of bay; None where it may not stand there at all."""
        return self.shapes[self.items[item].shape].spans[kind]

    def drawer_span(self, items: Iterable[int], kind: int) -> Span | None:
        """The span of a drawer with these items; None where they may not share one in that kind of bay."""
        shapes = tuple(sorted(self.items[item].shape for item in items))
        spans = self.shapes[shapes[0]].spans if len(shapes) == 1 else self._team_spans.get(shapes)
        return None if spans is None else spans[kind]

    @cached_property
    def _team_spans(self) -> dict[tuple[int, ...], Spans]:
        return {team.shapes: team.spans for team in self.teams}

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


@dataclass(frozen=True, slots=True)
class Place:
    """An item that starts at `row` of the `bay`-th bay of a kind (counted within the kind)."""

    item: int
    kind: int
    bay: int
    row: int


Drawers = dict[tuple[int, int, int], list[int]]
"""The items of each drawer by kind, bay and row."""


def drawers_of(places: Iterable[Place]) -> Drawers:
    """The drawers of a plan, in the order in which the places come."""
    found: Drawers = {}
    for place in places:
        found.setdefault((place.kind, place.bay, place.row), []).append(place.item)
    return found


def room_used(problem: Problem, places: Iterable[Place]) -> int:
    """The rows counting as room that the drawers of a plan take."""
    return sum(
        problem.kinds[kind].room_taken(row, span.rows)
        for (kind, _, row), items in drawers_of(places).items()
        if (span := problem.drawer_span(items, kind)) is not None
    )


def is_kept(problem: Problem, places: Iterable[Place]) -> bool:
    """Whether the places put every item somewhere once and keep every rule of the problem."""
    drawers = drawers_of(places)
    items = [item for members in drawers.values() for item in members]
    if len(items) != len(problem.items) or len(set(items)) != len(items):
        return False
    stacks: dict[tuple[int, int], list[tuple[int, int]]] = {}
    used = 0
    for (number, bay, row), members in drawers.items():
        kind, span = problem.kinds[number], problem.drawer_span(members, number)
        if span is None or not kind.admits(span, row) or not 0 <= bay < kind.bays:
            return False
        used += kind.room_taken(row, span.rows)
        stacks.setdefault((number, bay), []).append((row, row + span.rows))
    if problem.spare_rows and problem.room - used < problem.spare_rows:
        return False
    return all(_stack_is_kept(problem.kinds[number], stack) for (number, _), stack in stacks.items())


def _stack_is_kept(kind: Kind, stack: list[tuple[int, int]]) -> bool:
    if kind.drawers is not None and len(stack) > kind.drawers:
        return False
    free = 0
    for row, end in sorted(stack):
        if row < free:
            return False
        free = end
    return True
