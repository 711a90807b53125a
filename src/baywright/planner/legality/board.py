"""The present arrangement of one document, laid out bay by bay and drawer by drawer for quick questions.

Law: bays stand as the arrangement has them; before there is one, as many as there may be at most.
"""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from baywright.model.inventory import Box
from baywright.model.length import format_length
from baywright.model.plan import Conflict, LimitKind
from baywright.model.project import Project
from baywright.planner.framing.bay import Face, faces
from baywright.planner.framing.fitting import Fitting, Room, Stand
from baywright.planner.framing.grid import Grid, read_grid
from baywright.planner.framing.widths import WidthChoice, Widths
from baywright.planner.legality.content import Contents
from baywright.planner.legality.misfit import box_obstacles
from baywright.planner.legality.obstacle import most_bays, most_rows
from baywright.workings import derive


@dataclass(frozen=True)
class Drawer:
    """The boxes at one row of one bay; `stands` says how each stands there, where that is known."""

    bay: int
    row: int
    boxes: tuple[Box, ...]
    stands: tuple[Stand, ...] = ()

    def without(self, box_id: str) -> "Drawer":
        """The drawer with a box taken out; the others may then stand in another way."""
        if all(box.id != box_id for box in self.boxes):
            return self
        return Drawer(self.bay, self.row, tuple(box for box in self.boxes if box.id != box_id))


class Board:
    """One document's bays and drawers."""

    def __init__(self, project: Project) -> None:
        self.project = project
        self.workings = derive(project)
        self.grid: Grid = read_grid(project, self.workings)
        arrangement = project.arrangement
        self.choice = WidthChoice(project, self.workings)
        self.bays = arrangement.bay_count or most_bays(project, self.grid)
        self.rows = arrangement.upright_rows or most_rows(project, self.grid)
        self.boxes = {box.id: box for box in project.boxes}
        self.to_place = {box.id for box in project.boxes_to_place}
        self.fitting = Fitting(project, self.workings)
        self.contents = Contents(self.fitting, self.workings)
        self.by_bay: dict[int, list[Drawer]] = defaultdict(list)
        for (bay, row), there in arrangement.drawers.items():
            boxes = tuple(self.boxes[p.box_id] for p in there)
            stands = tuple(Stand(p.abreast, p.behind, p.turned) for p in there)
            self.by_bay[bay].append(Drawer(bay, row, boxes, stands))

    @cached_property
    def widths(self) -> Widths:
        """The width of box that each bay is made for."""
        chosen = self.project.arrangement.box_widths_mm
        usual = self.choice.usual(self.bays)
        return tuple(chosen[bay] if bay < len(chosen) else usual[bay] for bay in range(self.bays))

    @cached_property
    def faces(self) -> list[Face]:
        """What each bay is to drawers."""
        return faces(self.project, self.workings, self.widths, self.rows)

    @cached_property
    def _rooms(self) -> tuple[Room, ...] | None:
        """Every drawer there may be in the bays as they stand."""
        found: dict[Room, None] = {}
        for face in self.faces:
            zones = () if face.place is None else face.place.zones
            for depth in sorted({0.0, *(zone.depth_mm for zone in zones)}):
                found[self.fitting.room(face.box_width_mm, depth)] = None
        return tuple(found) or None

    @cached_property
    def box_conflicts(self) -> tuple[Conflict, ...]:
        """What is wrong with boxes wherever they stand."""
        highest = max((face.rows for face in self.faces), default=self.rows)
        return box_obstacles(self.project, self.workings, self.grid, self.rows, self._rooms, highest)

    @cached_property
    def conflicts_of_box(self) -> dict[str, list[Conflict]]:
        """The same, by box."""
        found: dict[str, list[Conflict]] = defaultdict(list)
        for conflict in self.box_conflicts:
            for box_id in conflict.box_ids:
                found[box_id].append(conflict.replace(box_ids=(box_id,)))
        return found

    def rows_of(self, drawer: Drawer) -> int:
        """Rows the drawer takes in an inner place."""
        return max(self.grid.sizes[box.size_id].rows for box in drawer.boxes)

    def contents_of(self, drawer: Drawer) -> tuple[Conflict, ...]:
        """What is wrong with what stands in a drawer; how it could stand at best, where that is left open."""
        if not 0 <= drawer.bay < len(self.faces):
            return ()
        spot = self.contents.spot(self.faces[drawer.bay], drawer.bay, drawer.row, self.rows_of(drawer))
        if spot.room.inside_mm <= 0 and not spot.zone_mm:
            return ()  # that no runner fits is said once for the whole run
        if drawer.stands:
            return self.contents.as_they_stand(drawer.boxes, drawer.stands, spot)
        return self.contents.as_could_be(drawer.boxes, spot)

    def outside(self, box: Box, bay: int, row: int) -> tuple[Conflict, ...]:
        """What keeps a box from that place even in an empty run."""
        if not 0 <= bay < self.bays:
            there = "there is only 1 bay" if self.bays == 1 else f"there are only {self.bays} bays"
            return (Conflict(
                kind=LimitKind.BAY_COUNT, message=f"“{box.label}” cannot stand in bay {bay + 1}; {there}.",
                mend="Choose another bay.", box_ids=(box.id,), needed=bay + 1, available=self.bays, unit="bays",
            ),)  # fmt: skip
        rows = self.faces[bay].rows
        highest = self.grid.highest(box.size_id, rows)
        if row < self.grid.lowest:
            return (Conflict(
                kind=LimitKind.PLACE,
                message=f"“{box.label}” cannot stand at row {row + 1}: its drawer would meet the base; the lowest row "
                f"a drawer can use is {self.grid.lowest + 1}.",
                mend=f"Choose row {self.grid.lowest + 1} or higher.", box_ids=(box.id,),
            ),)  # fmt: skip
        if row <= highest or (highest < self.grid.lowest and box.id in self.conflicts_of_box):
            return ()
        if highest < self.grid.lowest:
            return (Conflict(
                kind=LimitKind.HEIGHT, box_ids=(box.id,), mend="Choose a higher bay.",
                message=f"“{box.label}” cannot stand in bay {bay + 1}: with {rows} rows it fits at no row there.",
            ),)  # fmt: skip
        return (Conflict(
            kind=LimitKind.HEIGHT,
            message=f"“{box.label}” cannot stand at row {row + 1}: it would meet the top; the highest row for its "
            f"size is {highest + 1} of {rows}.",
            mend=f"Choose row {highest + 1} or lower.", box_ids=(box.id,),
            needed=row + 1, available=highest + 1, unit="rows",
        ),)  # fmt: skip

    def overlap(self, lower: Drawer, upper: Drawer) -> Conflict | None:
        """Whether the drawer `lower` reaches into `upper` over it."""
        rows = self.rows_of(lower)
        if lower.row + rows <= upper.row:
            return None
        under = max(lower.boxes, key=lambda box: self.grid.sizes[box.size_id].rows)
        over = upper.boxes[0]
        return Conflict(
            kind=LimitKind.PLACE,
            message=f"“{under.label}” at row {lower.row + 1} takes {rows} row{'s' * (rows != 1)}, up to row "
            f"{lower.row + rows}; “{over.label}” stands at row {upper.row + 1}.",
            mend=f"Put “{over.label}” at row {lower.row + rows + 1} or higher, or one of them elsewhere.",
            box_ids=(under.id, over.id), needed=rows, available=upper.row - lower.row, unit="rows",
        )  # fmt: skip

    def too_many(self, bay: int, drawers: Iterable[Drawer]) -> Conflict | None:
        """Whether there are more drawers than a bay may have."""
        there = list(drawers)
        limit = self.project.limits.drawers_in(bay)
        if limit is None or len(there) <= limit:
            return None
        return Conflict(
            kind=LimitKind.DRAWERS_PER_BAY,
            message=f"Bay {bay + 1} would have {len(there)} drawers, allowed {limit}.",
            mend="Put a box elsewhere, or allow more drawers in a bay.",
            box_ids=tuple(box.id for drawer in there for box in drawer.boxes),
            needed=len(there), available=limit, unit="drawers",
        )  # fmt: skip

    # Room that is used and free

    @cached_property
    def rows_total(self) -> int:
        """Usable rows of all bays together."""
        if not self.project.arrangement.bay_count or not self.rows:
            return 0
        return sum(self.grid.usable_rows(face.rows) for face in self.faces)

    @cached_property
    def rows_used(self) -> int:
        """The usable rows that drawers take."""
        return sum(self.taken(drawer) for stack in self.by_bay.values() for drawer in stack)

    def taken(self, drawer: Drawer, rows: int | None = None) -> int:
        """The usable rows that a drawer takes; what a top drawer reaches beyond them does not count."""
        if not 0 <= drawer.bay < len(self.faces) or not drawer.boxes:
            return 0
        end = self.grid.lowest + self.grid.usable_rows(self.faces[drawer.bay].rows)
        start = max(drawer.row, self.grid.lowest)
        return max(0, min(drawer.row + (rows or self.rows_of(drawer)), end) - start)

    def spare_with(self, box_id: str, mine: Drawer, rows: int) -> Conflict | None:
        """Whether too few rows stay free where a box goes into a drawer of its new place."""
        used = self.taken(mine, rows)
        for stack in self.by_bay.values():
            for drawer in stack:
                if (drawer.bay, drawer.row) != (mine.bay, mine.row):
                    used += self.taken(drawer.without(box_id))
        free = self.rows_total - used
        return self.too_few_spare(free) if 0 <= free < self.project.limits.spare_rows else None

    def too_few_spare(self, free: int) -> Conflict:
        """That fewer rows stay free than are wished for."""
        wished = self.project.limits.spare_rows
        return Conflict(
            kind=LimitKind.SPARE_ROWS,
            message=f"{max(0, free)} row{'s' * (free != 1)} would stay free; {wished} are wished for.",
            mend="Have more rows or bays, or keep fewer rows free.",
            needed=wished, available=max(0, free), unit="rows",
        )  # fmt: skip

    def other_widths(self) -> list[Conflict]:
        """Bays that are not made for the boxes that they are wished for."""
        found = []
        for bay, width in enumerate(self.widths):
            wished = self.project.limits.wish(bay).box_width_mm
            if wished is not None and abs(wished - width) > 1e-6:
                is_now, was = (format_length(mm, self.project.unit) for mm in (width, wished))
                found.append(Conflict(
                    kind=LimitKind.BOX_WIDTH,
                    message=f"Bay {bay + 1} is made for boxes {is_now} wide; {was} are wished for.",
                    mend="Plan again, or leave out the wish.", needed=wished, available=width, unit="mm",
                ))  # fmt: skip
        return found
