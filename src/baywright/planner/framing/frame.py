"""From a project document to the distribution problem in numbers, and from its places back to an arrangement.

A frame is one choice of shape for the run: so many bays of such widths with so many hole rows. Bays that are alike,
also in what is locked in them, become one kind; boxes of one size that may go to the same drawers share a shape.

Laws: a box locked to its drawer is no item, its rows are blocked; only where other boxes may share its drawer, or the
width of its bay is yet to be chosen, it is an item that has one place. Where the widths of bays are to be chosen, the
frame is the shortest run in which the first try finds a plan, else one that arithmetic leaves open, and `others` are
the further ones that it leaves open.
"""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cached_property

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.limits import MOST_BAYS
from baywright.model.project import Project
from baywright.planner.distribution.bounds import shortage
from baywright.planner.distribution.greedy import greedy
from baywright.planner.distribution.problem import Item, Kind, Place, Problem, is_kept
from baywright.planner.framing.bay import Face, faces, zone_depth
from baywright.planner.framing.fitting import Fitting, Room, Stand, is_orderly, most_together
from baywright.planner.framing.grid import Grid, read_grid
from baywright.planner.framing.shaping import Home, KnownSorts, Shaping
from baywright.planner.framing.widths import WidthChoice, Widths, as_built
from baywright.planner.handling import masses, weight
from baywright.planner.legality.built import built_rows
from baywright.planner.legality.obstacle import most_bays, most_rows
from baywright.workings import Workings, derive


@dataclass(frozen=True)
class Frame:
    """The problem for one shape of the run. `indices` are the bay numbers of each kind, lowest first."""

    problem: Problem
    indices: tuple[tuple[int, ...], ...]
    bays: int
    rows: int
    pinned: tuple[Placement, ...]
    """Boxes locked to their drawers that are no items of the problem."""
    pinned_cost: int
    widths: Widths = ()
    """Width of box that each bay is made for."""
    faces: tuple[Face, ...] = ()
    """What the bays of each kind are to drawers."""
    others: tuple["Frame", ...] = ()
    """Frames with bays of other widths that may hold everything, where this one does not."""
    is_complete: bool = True
    """Whether nothing fits when it fits neither this frame nor one of the others."""


class Framer:
    """Makes frames of one project; reads the document once."""

    def __init__(self, project: Project, grid: Grid | None = None, workings: Workings | None = None) -> None:
        self.project = project
        self.workings: Workings = workings if workings is not None else derive(project)
        self.grid = grid if grid is not None else read_grid(project, self.workings)
        self.fitting = Fitting(project, self.workings)
        self.choice = WidthChoice(project, self.workings)
        self.boxes = {box.id: box for box in project.boxes_to_place}
        there = [p for p in project.arrangement.placements if p.box_id in self.boxes]
        self.pinned = tuple(p for p in there if p.lock is Lock.DRAWER)
        is_settled = len(self.choice.widths) == 1  # else whether its drawer takes it is still to be seen
        self._blocking = tuple(p for p in self.pinned if is_settled and most_together(self._size(p.box_id)) == 1)
        self.held = {p.box_id: p.bay for p in there if p.lock is Lock.BAY}
        self._sharing = {p.box_id: p for p in self.pinned if p not in self._blocking}
        blocking = {p.box_id for p in self._blocking}
        self.free = tuple(box for box in self.boxes.values() if box.id not in blocking)
        self.locks = {p.box_id: p.lock for p in there}
        self._placed = {p.box_id: p for p in there}
        self._frames: dict[tuple[int, int], Frame] = {}
        self._sorts: KnownSorts = {}

    def _size(self, box_id: str) -> BoxSize:
        return self.project.size_of(self.boxes[box_id])

    @cached_property
    def weights(self) -> dict[str, int]:
        """Each box's weight in the handling cost."""
        mass = masses(self.project)
        return {box.id: weight(mass[box.id], box.use) for box in self.boxes.values()}

    @property
    def fewest_bays(self) -> int:
        """How many bays there must be for every lock, wish and bay as built to have its bay."""
        locked = [p.bay for p in self.pinned] + list(self.held.values())
        return max(max(locked, default=0) + 1, len(self.project.limits.bays), len(as_built(self.project)))

    @cached_property
    def least_rows(self) -> int:
        """The rows of the run at least: as built, else what locked boxes and the worktop's wished height ask for."""
        if (built := built_rows(self.project)) is not None:
            return built
        rows = self.grid.least_rows
        for pinned in self.pinned:
            if self.project.limits.wish(pinned.bay).rows is None:
                size_id = self.boxes[pinned.box_id].size_id
                while self.grid.highest(size_id, rows) < pinned.row:
                    rows += 1
        return rows

    def frame(self, bays: int, rows: int) -> Frame:
        """The problem with that many bays and rows; locks must lie within them. Where bays of several widths are to be
        had and their number is free, it may have fewer that are wider.
        """
        key = bays, rows
        if key not in self._frames:
            self._frames[key] = self._chosen(bays, rows)
        return self._frames[key]

    def present_frame(self) -> Frame | None:
        """The frame of the run as the document has it; None where there is none, or one of other numbers or widths
        than the limits allow.
        """
        project, now = self.project, self.project.arrangement
        bays, rows = now.bay_count, now.upright_rows
        allowed = range(max(1, self.fewest_bays), most_bays(project, self.grid) + 1)
        if bays not in allowed or project.limits.bay_count not in (None, bays):
            return None
        if not self.least_rows <= rows <= most_rows(project, self.grid):
            return None
        widths = (*now.box_widths_mm, *self.choice.usual(bays)[len(now.box_widths_mm) :])[:bays]
        return self.frame_of(widths, rows) if self.choice.allows(widths, rows) else None

    def rivals(self, frame: Frame, *, ordered: bool) -> tuple[tuple[Widths, ...], bool]:
        """The widths of as many bays among which there are the best by all goals, and whether that is certain."""
        choices = self.choice.rivals(frame.bays, frame.rows, ordered=ordered, wide_is_best=self._wide_is_best)
        return choices.widths, choices.is_complete

    @cached_property
    def _wide_is_best(self) -> bool:
        """Whether no box is so heavy that the heavier drawer of a wider bay takes it no more."""
        loads = {(box.loaded_mass_kg, most_together(self.project.size_of(box))) for box in self.boxes.values()}
        rooms = [self.fitting.room(width) for width in self.choice.every_width(MOST_BAYS)]
        return all(len({min(most, self.fitting.share(mass, room)) for room in rooms}) <= 1 for mass, most in loads)

    def _chosen(self, bays: int, rows: int) -> Frame:
        choices = self.choice.choices(bays, rows, self.fewest_bays, wide_is_best=self._wide_is_best)
        if len(choices.widths) == 1 and choices.is_complete:
            return self.frame_of(choices.widths[0], rows)
        open_ones: list[Frame] = []
        short_ones: list[tuple[float, Frame]] = []
        for widths in choices.widths:
            frame = self.frame_of(widths, rows)
            if (lack := shortage(frame.problem)) is not None:
                short_ones.append(((lack.needed - lack.available) / lack.needed, frame))
                continue
            first = greedy(frame.problem)
            if first is not None and is_kept(frame.problem, first):
                return frame
            open_ones.append(frame)
        frames = open_ones or [min(short_ones, key=lambda entry: entry[0])[1]]  # the one that lacks least tells most
        is_one = len(frames) > 1 or not choices.is_complete
        frames = [replace(f, problem=replace(f.problem, is_one_of_many=is_one)) for f in frames]
        return replace(frames[0], others=tuple(frames[1:]), is_complete=choices.is_complete)

    def frame_of(self, widths: Widths, rows: int) -> Frame:
        """The problem with bays for boxes of those widths, from the left."""
        places = faces(self.project, self.workings, widths, rows)
        blocked, held = self._locked_rows(places, rows)
        alike: dict[tuple[object, ...], list[int]] = defaultdict(list)
        for bay, place in enumerate(places):
            own = bay if bay in held else -1
            alike[(*place.likeness, self._drawers(bay), tuple(sorted(blocked[bay])), own)].append(bay)
        indices = tuple(tuple(numbers) for numbers in alike.values())
        kinds = tuple(self._kind(numbers, places[numbers[0]], blocked[numbers[0]]) for numbers in indices)
        kind_faces = tuple(places[numbers[0]] for numbers in indices)
        problem = self._problem(kinds, kind_faces, indices)
        return Frame(problem, indices, len(widths), rows, self._blocking, self._pinned_cost(), widths, kind_faces)

    def _drawers(self, bay: int) -> int | None:
        return self.project.limits.drawers_in(bay)

    def _locked_rows(self, places: list[Face], rows: int) -> tuple[dict[int, list[tuple[int, int]]], set[int]]:
        """The rows that locked drawers block in each bay, and the bays that boxes are held to."""
        blocked: dict[int, list[tuple[int, int]]] = defaultdict(list)
        for p in self._blocking:
            there = places[p.bay].rows if p.bay < len(places) else rows
            end = min(there, p.row + self.grid.sizes[self.boxes[p.box_id].size_id].rows)
            blocked[p.bay].append((p.row, end))
        return blocked, {*self.held.values(), *(p.bay for p in self._sharing.values())}

    def _kind(self, numbers: tuple[int, ...], face: Face, blocked: list[tuple[int, int]]) -> Kind:
        limit = self._drawers(numbers[0])
        lowest = self.grid.lowest
        return Kind(
            len(numbers),
            face.rows,
            None if limit is None else max(0, limit - len(blocked)),
            tuple(sorted(blocked)),
            (lowest, lowest + self.grid.usable_rows(face.rows)),
        )

    def _problem(
        self, kinds: tuple[Kind, ...], kind_faces: tuple[Face, ...], indices: tuple[tuple[int, ...], ...]
    ) -> Problem:
        kind_of = {bay: number for number, bays in enumerate(indices) for bay in bays}
        shaping = Shaping(self.fitting, self.grid, self.workings, kind_faces, self._sorts)
        items = tuple(
            Item(box.id, shaping.shape_of(box, self._home(box, kind_of)), self.weights[box.id]) for box in self.free
        )
        return Problem(kinds, shaping.shapes(), items, shaping.teams(), self.project.limits.spare_rows)

    def _home(self, box: Box, kind_of: dict[int, int]) -> Home | None:
        if box.id in self.held:
            return Home(kind_of[self.held[box.id]])
        if box.id in self._sharing:
            placement = self._sharing[box.id]
            return Home(kind_of[placement.bay], placement.row)
        return None

    def _pinned_cost(self) -> int:
        total = 0
        for p in self._blocking:
            penalties = self.grid.penalties(self.boxes[p.box_id].size_id, p.row + 1)
            total += self.weights[p.box_id] * penalties[p.row]
        return total

    def present(self, frame: Frame) -> dict[int, tuple[int, int, int]]:
        """Where the items of a frame stand now: kind, bay within the kind, row."""
        where = {bay: (number, i) for number, bays in enumerate(frame.indices) for i, bay in enumerate(bays)}
        found = {}
        for index, item in enumerate(frame.problem.items):
            placement = self._placed.get(item.name)
            if placement is not None and placement.bay in where:
                found[index] = (*where[placement.bay], placement.row)
        return found

    def arrangement(self, frame: Frame, places: Iterable[Place]) -> Arrangement:
        """The arrangement of a plan, in the order of the inventory; locks stay."""
        drawers: dict[tuple[int, int], list[str]] = defaultdict(list)
        for place in places:
            spot = frame.indices[place.kind][place.bay], place.row
            drawers[spot].append(frame.problem.items[place.item].name)
        kind_of = {bay: number for number, bays in enumerate(frame.indices) for bay in bays}
        for pinned in frame.pinned:
            drawers[pinned.bay, pinned.row].append(pinned.box_id)
        by_box: dict[str, Placement] = {}
        for (bay, row), box_ids in drawers.items():
            room = self._room(frame.faces[kind_of[bay]], row, box_ids)
            for box_id, stand in zip(box_ids, self._stands(box_ids, (bay, row), room), strict=True):
                by_box[box_id] = Placement(
                    box_id=box_id, bay=bay, row=row, lock=self.locks.get(box_id, Lock.NONE),
                    abreast=stand.abreast, behind=stand.behind, turned=stand.turned,
                )  # fmt: skip
        return Arrangement(
            bay_count=frame.bays,
            upright_rows=frame.rows,
            placements=tuple(by_box[box_id] for box_id in self.boxes),
            box_widths_mm=self.choice.written(frame.widths),
        )

    def _room(self, face: Face, row: int, box_ids: list[str]) -> Room:
        rows = max(self.grid.sizes[self.boxes[box_id].size_id].rows for box_id in box_ids)
        return self.fitting.room(face.box_width_mm, zone_depth(self.workings, face, row, rows))

    def _stands(self, box_ids: list[str], spot: tuple[int, int], room: Room) -> tuple[Stand, ...]:
        """How boxes stand in their drawer: as they do now where that will do."""
        sizes = [self._size(box_id) for box_id in box_ids]
        there = [self._placed.get(box_id) for box_id in box_ids]
        now = tuple(Stand(p.abreast, p.behind, p.turned) for p in there if p is not None and (p.bay, p.row) == spot)
        is_whole = len(now) == len(box_ids) and is_orderly(sizes, now)
        if is_whole and self.fitting.goes_in(self.fitting.extent(sizes, now), room):
            return now
        return self.fitting.stands(sizes, room) or tuple(Stand(place) for place in range(len(box_ids)))
