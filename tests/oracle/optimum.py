"""The best plan of a small project by trying everything in millimetres: every shape, every drawer, every row.

Shares no code with the program's planner or workings. Goals by their definitions: fewest bays, then fewest rows, then
the others in the document's order. From all arrangements of a shape only those are kept that no other one of the same
boxes in the same bay beats in every figure, so that trying everything ends.

Laws: moves are boxes that had a place and have another bay or row; pairs that are re-screwed serve a new place of a
drawer instead of an old one; boxes only wished for count in neither; handling is tenths of kg × lifts a month × what
lifting a kilogram there strains the back (`tests.oracle.back`); groups split count every bay after a group's first; the
free piece is the longest stretch of free usable rows in one bay.
"""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations, product

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.goals import Goal
from baywright.model.inventory import Box, BoxStatus, Use
from baywright.model.project import Project
from tests.oracle.back import grip_in_box_mm, strain
from tests.oracle.drawer import Standing, content_faults, lower_edge_mm, need_mm, rows_taken, zone_mm
from tests.oracle.measure import shape_faults, usable
from tests.oracle.wall import TINY_MM, Bay, base_mm, bays, ordinary_width_mm, upright_mm

LIFTS = {Use.DAILY: 20, Use.WEEKLY: 4, Use.SELDOM: 1}
MOST_TOGETHER = 3

Spot = tuple[int, int]
Legal = dict[tuple[float, float, int], bool]
"""Whether boxes, as bits, may share a drawer for boxes so wide, so far in front of the wall; as far as was asked."""


@dataclass(frozen=True)
class Tally:
    """Figures of one way to fill some bays; `old` and `new` count drawers at places that had one and that had none."""

    moves: int = 0
    old: int = 0
    new: int = 0
    handling: int = 0
    groups: int = 0
    free: int = 0
    used: int = 0

    def beats(self, other: "Tally") -> bool:
        """Whether it is at least as good whatever the other bays are."""
        return (
            (self.old, self.new) == (other.old, other.new)
            and self.moves <= other.moves
            and self.handling <= other.handling
            and self.groups <= other.groups
            and self.free >= other.free
            and self.used <= other.used
        )

    def with_bay(self, other: "Tally") -> "Tally":
        """Both together, in different bays."""
        return Tally(
            self.moves + other.moves,
            self.old + other.old,
            self.new + other.new,
            self.handling + other.handling,
            self.groups + other.groups,
            max(self.free, other.free),
            self.used + other.used,
        )


@dataclass(frozen=True)
class Option:
    """One drawer at one row of a bay: its boxes as bits, the row after it, and what it adds."""

    boxes: int
    row: int
    next_row: int
    moves: int
    is_old: bool
    is_new: bool
    handling: int
    used: int


@dataclass(frozen=True)
class Before:
    """What stands before the plan is made: places of boxes that are there, drawers, and what is locked."""

    places: dict[str, Spot]
    drawers: frozenset[Spot]
    locks: dict[str, Placement]


def before(project: Project, *, keep: bool) -> Before:
    locks = {p.box_id: p for p in project.arrangement.placements if p.lock is not Lock.NONE}
    stands = project.built.project if project.built is not None else project
    if project.built is None and not keep:
        return Before({}, frozenset(), locks)
    without = {box.id for box in stands.boxes if box.status is BoxStatus.WISHED}
    if project.built is not None:
        without |= {box.id for box in stands.boxes if box.status is BoxStatus.ELSEWHERE}
    there = {p.box_id: (p.bay, p.row) for p in stands.arrangement.placements if p.box_id not in without}
    owned = {box.id for box in project.boxes if box.status is BoxStatus.OWNED}
    return Before({i: spot for i, spot in there.items() if i in owned}, frozenset(there.values()), locks)


def best(
    project: Project, *, keep: bool, most_bays: int, most_rows: int, counted: Collection[Goal] | None = None
) -> dict[Goal, int] | None:
    """The figures of the best plan, in the order in which goals count; None where there is no plan at all.

    Where `counted` is given, only those goals count.
    """
    stands, legal = before(project, keep=keep), Legal()
    changes = keep or project.built is not None
    goals = tuple(g for g in project.goals if changes or g not in (Goal.MOVES, Goal.RESCREWS))
    goals = goals if counted is None else tuple(g for g in goals if g in counted)
    for bay_count, rows in product(range(1, most_bays + 1), range(1, most_rows + 1)):
        shapes = [s for s in _shapes(project, bay_count, rows) if Trial(s, stands, (), legal).tallies()]
        if shapes:
            found = [figures for s in shapes for figures in Trial(s, stands, goals, legal).figures()]
            return {Goal.BAYS: bay_count, Goal.ROWS: rows, **min(found, key=lambda f: _rank(f, goals))}
    return None


def _rank(figures: dict[Goal, int], goals: Sequence[Goal]) -> list[int]:
    return [-figures[g] if g is Goal.FREE_PIECE else figures[g] for g in goals]


def _shapes(project: Project, bay_count: int, rows: int) -> Iterator[Project]:
    """The document with an empty run of that shape; every choice of widths for the bays that have none of their own."""
    limits, built = project.limits, _built_widths(project)
    widths = sorted({ordinary_width_mm(project), *limits.other_box_widths_mm})
    choices = [[own] if (own := limits.wish(b).box_width_mm) else widths for b in range(bay_count)]
    choices[: len(built)] = [[width] for width in built[:bay_count]]
    for chosen in product(*choices) if built or limits.other_box_widths_mm else [()]:
        shape = project.replace(arrangement=Arrangement(bay_count=bay_count, upright_rows=rows, box_widths_mm=chosen))
        if not shape_faults(shape, bays(shape)):
            yield shape


def _built_widths(project: Project) -> list[float]:
    """Widths of the bays that stand and of all to the left of them, which hold them in their place."""
    if project.built is None:
        return []
    return [bay.box_width_mm for bay in bays(project.built.project)[: project.built.bays[-1] + 1]]


class Trial:
    """Every way to fill one shape of the run; figures are kept only for the goals that are asked for."""

    def __init__(self, shape: Project, stands: Before, goals: Sequence[Goal], legal: Legal) -> None:
        self._shape = shape
        self._stands = stands
        self._goals = tuple(goals)
        self._boxes = shape.boxes_to_place
        self._bays = bays(shape)
        self._spare = shape.limits.spare_rows
        self._needs = [need_mm(shape, shape.size_of(box).height_mm) for box in self._boxes]
        self._rows = [rows_taken(shape, shape.size_of(box).height_mm) for box in self._boxes]
        self._legal = legal
        self._fronts: dict[object, dict[int, list[Tally]]] = {}

    def figures(self) -> list[dict[Goal, int]]:
        """The figures of all plans that no other plan beats in everything."""
        found = []
        for tally in self.tallies():
            all_figures = {
                Goal.MOVES: tally.moves,
                Goal.RESCREWS: min(tally.new, len(self._stands.drawers) - tally.old),
                Goal.HANDLING: tally.handling,
                Goal.GROUPS: tally.groups - len({box.group for box in self._boxes} - {""}),
                Goal.FREE_PIECE: tally.free,
            }
            found.append({goal: all_figures[goal] for goal in self._goals})
        return found

    def tallies(self) -> list[Tally]:
        """The tallies of all plans that no other plan beats in everything; none where there is no plan."""
        if self._is_too_low():
            return []
        room = sum(len(usable(self._shape, bay.rows)) for bay in self._bays)
        filled: dict[int, list[Tally]] = {0: [Tally()]}
        for bay in self._bays:
            front = self._front_of(bay)
            after: dict[int, list[Tally]] = {}
            for boxes, tallies in filled.items():
                for more, further in front.items():
                    if not boxes & more:
                        here = after.setdefault(boxes | more, [])
                        for tally in tallies:
                            for other in further:
                                self._keep(here, tally.with_bay(other))
            filled = after
        everything = filled.get((1 << len(self._boxes)) - 1, [])
        return [tally for tally in everything if room - tally.used >= self._spare]

    def _is_too_low(self) -> bool:
        """Whether the drawers are higher than all bays together, even if as many boxes as may shared each of them."""
        sizes = [self._shape.size_of(box) for box in self._boxes]
        together = [max(size.most_abreast, size.most_behind) for size in sizes]
        height = sum(upright_mm(self._shape, bay.rows) for bay in self._bays if bay.rows > 0)
        return sum(need / most for need, most in zip(self._needs, together, strict=True)) > height + TINY_MM

    def _keep(self, kept: list[Tally], tally: Tally) -> None:
        """Add a tally to those that are kept unless one of them beats it; those that it beats go."""
        if not any(other.beats(tally) for other in kept):
            kept[:] = [other for other in kept if not tally.beats(other)]
            kept.append(tally)

    def _front_of(self, bay: Bay) -> dict[int, list[Tally]]:
        """For every set of boxes what one bay that holds just them can come to; shared by bays that are alike."""
        own = [p for p in self._stands.locks.values() if p.bay == bay.number]
        old = {spot for spot in (*self._stands.drawers, *self._stands.places.values()) if spot[0] == bay.number}
        elsewhere = tuple(i for i, p in self._stands.locks.items() if p.bay != bay.number)
        limit = self._shape.limits.drawers_in(bay.number)
        key = bay.number if own or old else -1, bay.rows, bay.box_width_mm, bay.zones, limit, elsewhere
        if key not in self._fronts:
            self._fronts[key] = self._front(bay)
        return self._fronts[key]

    def _front(self, bay: Bay) -> dict[int, list[Tally]]:
        """Drawers upon drawers: a state is the boxes so far, the drawers so far and the next row that is free."""
        limit = self._shape.limits.drawers_in(bay.number)
        there = usable(self._shape, bay.rows)
        options = self._options(bay, there)
        states: dict[tuple[int, int, int], list[Tally]] = {(0, 0, 0): [Tally()]}
        front: dict[int, list[Tally]] = {}
        for row in range(max(bay.rows, 1) + 1):
            for (boxes, count, _), tallies in [item for item in states.items() if item[0][2] == row]:
                for option in options:
                    if option.row < row or option.boxes & boxes or count == limit:
                        continue
                    gap = len(range(max(row, there.start), min(option.row, there.stop)))
                    key = boxes | option.boxes, 0 if limit is None else count + 1, option.next_row
                    here = states.setdefault(key, [])
                    for tally in tallies:
                        self._keep(here, self._with(tally, option, gap))
        for (boxes, _, row), tallies in states.items():
            gap = len(range(max(row, there.start), there.stop))
            here = front.setdefault(boxes, [])
            for tally in tallies:
                self._keep(here, self._closed(tally, boxes, gap))
        return front

    def _with(self, tally: Tally, option: Option, gap: int) -> Tally:
        return Tally(
            tally.moves + option.moves,
            tally.old + option.is_old,
            tally.new + option.is_new,
            tally.handling + option.handling,
            0,
            max(tally.free, gap) if Goal.FREE_PIECE in self._goals else 0,
            tally.used + option.used,
        )

    def _closed(self, tally: Tally, boxes: int, gap: int) -> Tally:
        groups = {box.group for n, box in enumerate(self._boxes) if boxes >> n & 1 and box.group}
        free = max(tally.free, gap) if Goal.FREE_PIECE in self._goals else 0
        counted = len(groups) if Goal.GROUPS in self._goals else 0
        return Tally(tally.moves, tally.old, tally.new, tally.handling, counted, free, tally.used)

    def _options(self, bay: Bay, there: range) -> list[Option]:
        """Every drawer at every row of a bay that may be there by itself."""
        ceiling = upright_mm(self._shape, bay.rows) + TINY_MM
        least = self._shape.construction.runners.gap_under_lowest_mm - TINY_MM
        edges = [(row, lower_edge_mm(self._shape, row)) for row in range(bay.rows)]
        found = []
        for numbers in self._together():
            need, taken = max(self._needs[n] for n in numbers), max(self._rows[n] for n in numbers)
            for row, edge in edges:
                if edge < least or edge + need > ceiling or self._is_locked_away(numbers, bay.number, row):
                    continue
                if self._may(bay, numbers, zone_mm(self._shape, bay, row, taken)):
                    used = len(range(max(row, there.start), min(row + taken, there.stop))) if self._spare else 0
                    found.append(self._option(numbers, bay.number, row, self._row_after(row, edge + need), used))
        return found

    def _together(self) -> Iterator[tuple[int, ...]]:
        """Every choice of boxes that their sizes let into one drawer, by number alone."""
        sizes = [self._shape.size_of(box) for box in self._boxes]
        for count in range(1, min(MOST_TOGETHER, len(sizes)) + 1):
            for numbers in combinations(range(len(sizes)), count):
                if count == 1 or all(max(sizes[n].most_abreast, sizes[n].most_behind) >= count for n in numbers):
                    yield numbers

    def _row_after(self, row: int, top: float) -> int:
        while lower_edge_mm(self._shape, row) < top - TINY_MM:
            row += 1
        return row

    def _is_locked_away(self, numbers: Sequence[int], bay: int, row: int) -> bool:
        for n in numbers:
            lock = self._stands.locks.get(self._boxes[n].id)
            if lock is not None and (lock.bay != bay or (lock.lock is Lock.DRAWER and lock.row != row)):
                return True
        return False

    def _option(self, numbers: Sequence[int], bay: int, row: int, next_row: int, used: int) -> Option:
        stands, goals = self._stands, self._goals
        boxes = [self._boxes[n] for n in numbers]
        moves = sum(box.id in stands.places and stands.places[box.id] != (bay, row) for box in boxes)
        counts = Goal.RESCREWS in goals and any(box.status is BoxStatus.OWNED for box in boxes)
        is_there = (bay, row) in stands.drawers
        return Option(
            boxes=sum(1 << n for n in numbers),
            row=row,
            next_row=next_row,
            moves=moves if Goal.MOVES in goals else 0,
            is_old=counts and is_there,
            is_new=counts and not is_there,
            handling=sum(self._strain(box, row) for box in boxes) if Goal.HANDLING in goals else 0,
            used=used,
        )

    def _strain(self, box: Box, row: int) -> int:
        made = self._shape.construction
        assert box.loaded_mass_kg is not None, "boxes are weighed here, so that nothing is assumed"
        size = self._shape.size_of(box)
        seat = made.drawers.groove_offset_mm + made.boards.drawer_bottom_mm
        grip = Fraction(base_mm(self._shape) + lower_edge_mm(self._shape, row) + seat) + grip_in_box_mm(size.height_mm)
        return max(1, round(box.loaded_mass_kg * 10)) * LIFTS[box.use] * strain(size, grip, self._shape.safety)

    def _may(self, bay: Bay, numbers: Sequence[int], zone: float) -> bool:
        """Whether these boxes go into one drawer in some way, turned or not, in a row or in a file."""
        key = bay.box_width_mm, zone, sum(1 << n for n in numbers)
        if key not in self._legal:
            ways = product(*(self._ways(n) for n in numbers))
            self._legal[key] = any(
                not content_faults(self._shape, bay.box_width_mm, zone, inside, is_file=is_file)
                for inside in ways
                for is_file in (False, True)
            )
        return self._legal[key]

    def _ways(self, number: int) -> list[Standing]:
        box = self._boxes[number]
        size, kg = self._shape.size_of(box), box.loaded_mass_kg or 0.0
        found = [Standing(box.id, size.width_mm, size.depth_mm, size.height_mm, kg)]
        if size.may_turn:
            found.append(Standing(box.id, size.depth_mm, size.width_mm, size.height_mm, kg))
        return found
