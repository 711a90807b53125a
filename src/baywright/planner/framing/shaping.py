"""Boxes and bays turned into numbers: shapes with their spans, and the teams that may share a drawer.

Laws: boxes of one size that may stand in the same drawers at the same places, alone and with others, are one shape;
what a team may do, each of its members may do alone.
"""

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations_with_replacement, product

from baywright.model.inventory import Box, BoxSize
from baywright.planner.distribution.problem import Shape, Span, Spans, Team
from baywright.planner.framing.bay import Face
from baywright.planner.framing.fitting import MOST_TOGETHER, Fitting, Room, may_abreast, may_behind, most_together
from baywright.planner.framing.grid import Grid
from baywright.workings import Workings


@dataclass(frozen=True, slots=True)
class Home:
    """A kind of bay (by number) that boxes are held to, and the row where they are held to that, too."""

    kind: int
    row: int | None = None


@dataclass(frozen=True, slots=True)
class Sort:
    """Boxes of one size and one lot: `shares` tells, room by room, with how many they may stand in a drawer."""

    size_id: str
    shares: tuple[int, ...]


KnownSorts = dict[tuple[Room, ...], dict[str, Sort]]
"""The sort of each box by its id, for each set of drawers that bays may have."""


class Shaping:
    """The shapes and teams of boxes before bays of some faces; `shape_of` gives each box its number."""

    def __init__(
        self, fitting: Fitting, grid: Grid, workings: Workings, faces: Sequence[Face], known: KnownSorts
    ) -> None:
        """`known` keeps the sorts of boxes from one set of bays to the next that have the same drawers."""
        self._known = known
        self._fitting = fitting
        self._grid = grid
        self._workings = workings
        self._faces = faces
        self._sizes: Mapping[str, BoxSize] = fitting.project.sizes_by_id
        self._numbers: dict[tuple[Sort, Home | None], int] = {}
        self._counts: Counter[tuple[Sort, Home | None]] = Counter()
        self._depths: dict[tuple[Face, int], tuple[float, ...]] = {}
        self._own_spans: dict[tuple[Sort, Face], Span | None] = {}

    def shape_of(self, box: Box, home: Home | None) -> int:
        """The number of a box's shape."""
        key = self._sort(box), home
        self._counts[key] += 1
        return self._numbers.setdefault(key, len(self._numbers))

    @cached_property
    def _rooms(self) -> tuple[Room, ...]:
        """Every room that a drawer in one of the bays may have."""
        found: dict[Room, None] = {}
        for face in self._faces:
            depths = {0.0} | ({zone.depth_mm for zone in face.place.zones} if face.place is not None else set())
            for depth in sorted(depths):
                found[self._fitting.room(face.box_width_mm, depth)] = None
        return tuple(found)

    @cached_property
    def _sorts(self) -> dict[str, Sort]:
        return self._known.setdefault(self._rooms, {})

    def _sort(self, box: Box) -> Sort:
        known = self._sorts.get(box.id)
        if known is None:
            most = most_together(self._sizes[box.size_id])
            shares = tuple(min(most, self._fitting.share(box.loaded_mass_kg, room)) for room in self._rooms)
            known = self._sorts[box.id] = Sort(box.size_id, shares)
        return known

    def _share(self, sort: Sort, room: Room) -> int:
        return sort.shares[self._rooms.index(room)]

    # Spans

    def shapes(self) -> tuple[Shape, ...]:
        """Every shape that was asked for, in the order of the numbers."""
        rows = max((face.rows for face in self._faces), default=0)
        penalties = {sort.size_id: self._grid.penalties(sort.size_id, rows) for sort, _ in self._numbers}
        return tuple(Shape(self._spans((sort,), home), penalties[sort.size_id]) for sort, home in self._numbers)

    def _spans(self, sorts: tuple[Sort, ...], home: Home | None) -> Spans:
        return tuple(
            self._held(sorts, face, home) if home is None or home.kind == number else None
            for number, face in enumerate(self._faces)
        )

    def _held(self, sorts: tuple[Sort, ...], face: Face, home: Home | None) -> Span | None:
        span = self._span(sorts, face)
        if span is None or home is None or home.row is None:
            return span
        if not span.lowest <= home.row <= span.highest or home.row in span.barred:
            return None
        return Span(span.rows, home.row, home.row)

    def _span(self, sorts: tuple[Sort, ...], face: Face) -> Span | None:
        """Where a drawer with boxes of these sorts may start in a bay; None where nowhere."""
        own = [self._grid.span(sort.size_id, face.rows) for sort in sorts]
        rows, lowest, highest = max(s.rows for s in own), own[0].lowest, min(s.highest for s in own)
        if highest < lowest:
            return None
        depths = self._zone_depths(face, rows)
        fits = {depth: self._go_in(sorts, face, depth) for depth in set(depths[lowest : highest + 1])}
        barred = {row for row in range(lowest, highest + 1) if not fits[depths[row]]}
        if len(sorts) > 1:
            for sort in sorts:
                alone = self._alone(sort, face)
                barred |= set(range(lowest, highest + 1)) if alone is None else set(alone.barred)
        if len(barred & set(range(lowest, highest + 1))) == highest + 1 - lowest:
            return None
        return Span(rows, lowest, highest, tuple(sorted(row for row in barred if lowest <= row <= highest)))

    def _alone(self, sort: Sort, face: Face) -> Span | None:
        key = sort, face
        if key not in self._own_spans:
            self._own_spans[key] = self._span((sort,), face)
        return self._own_spans[key]

    def _zone_depths(self, face: Face, rows: int) -> tuple[float, ...]:
        """For every row of a bay the depth that zones take from a drawer that starts there."""
        place = face.place
        if place is None:
            return (0.0,) * face.rows
        key = face, rows
        if key not in self._depths:
            self._depths[key] = tuple(self._workings.zone_depth(place, row, rows) for row in range(face.rows))
        return self._depths[key]

    def _go_in(self, sorts: tuple[Sort, ...], face: Face, depth_mm: float) -> bool:
        room = self._fitting.room(face.box_width_mm, depth_mm)
        if any(self._share(sort, room) < len(sorts) for sort in sorts):
            return False
        return self._fitting.stands([self._sizes[sort.size_id] for sort in sorts], room) is not None

    # Teams

    def teams(self) -> tuple[Team, ...]:
        """Every team of the shapes that were asked for."""
        return tuple(Team(shapes, spans) for shapes, spans in sorted(self._all_teams().items()))

    def _all_teams(self) -> dict[tuple[int, ...], Spans]:
        by_home: dict[Home | None, dict[Sort, int]] = defaultdict(dict)
        for (sort, home), number in self._numbers.items():
            if most_together(self._sizes[sort.size_id]) > 1:
                by_home[home][sort] = number
        found: dict[tuple[int, ...], Spans] = {}
        for home in by_home:
            for sorts, members in self._companies(by_home, home):
                shapes = tuple(sorted(members))
                if shapes in found or not self._are_enough(shapes):
                    continue
                spans = self._spans(sorts, home)
                if any(span is not None for span in spans):
                    found[shapes] = spans
        return found

    def _companies(
        self, by_home: Mapping[Home | None, Mapping[Sort, int]], home: Home | None
    ) -> Iterator[tuple[tuple[Sort, ...], tuple[int, ...]]]:
        """Sorts that may share a drawer, with a shape for each: of that home at least one, the others as free or of a
        home that lets them be there, too.
        """
        homes: list[Home | None] = [home, None] if home is not None else [None]
        if home is not None and home.row is not None:
            homes.append(Home(home.kind))
        there = sorted({sort for h in homes for sort in by_home.get(h, {})}, key=lambda s: (s.size_id, s.shares))
        for count in range(2, MOST_TOGETHER + 1):
            for sorts in combinations_with_replacement(there, count):
                if not self._may_share(sorts):
                    continue
                pools = [[by_home[h][sort] for h in homes if sort in by_home.get(h, {})] for sort in sorts]
                own = set(by_home[home].values())
                for members in product(*pools):
                    if home is None or own & set(members):
                        yield sorts, members

    def _may_share(self, sorts: tuple[Sort, ...]) -> bool:
        sizes = [self._sizes[sort.size_id] for sort in sorts]
        light = all(max(sort.shares) >= len(sorts) for sort in sorts)
        return light and (may_abreast(sizes) or may_behind(sizes))

    def _are_enough(self, shapes: tuple[int, ...]) -> bool:
        counts = list(self._counts.values())
        return all(counts[shape] >= shapes.count(shape) for shape in set(shapes))
