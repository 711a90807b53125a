"""Boxes that no drawer of the run can take, wherever they are put: too wide, too deep, too high, too heavy.

Laws: a box is judged by the widest bay, the deepest drawer and the highest upright that the limits allow, turned where
it may be; each limit is named once with all boxes that break it, and as an inequality needed > available.
"""

from collections import defaultdict

from baywright.model.inventory import Box, BoxSize
from baywright.model.length import format_length, shown_up
from baywright.model.limits import MOST_ROWS
from baywright.model.plan import Conflict, LimitKind
from baywright.model.project import Project
from baywright.model.space import HIGHEST_LIMIT_MM, ZoneEffect
from baywright.planner.framing.fitting import TOLERANCE_MM, Fitting, Room
from baywright.planner.framing.grid import Grid
from baywright.planner.framing.widths import WidthChoice
from baywright.workings import Workings


def box_obstacles(
    project: Project, workings: Workings, grid: Grid, rows: int, rooms: tuple[Room, ...] | None = None,
    highest_rows: int | None = None,
) -> tuple[Conflict, ...]:  # fmt: skip
    """Findings about boxes that no drawer of a run of `rows` rows can take. `rooms` are the drawers there are, where
    the run stands already, and `highest_rows` the rows of its highest bay.
    """
    bays = project.limits.bay_count or grid.bays_that_fit
    choice, fitting = WidthChoice(project, workings), Fitting(project, workings)
    if rooms is None:
        # In front of a zone a drawer is shorter and lighter.
        depths = {0.0, *(z.depth_mm for z in project.space.zones if z.effect is ZoneEffect.STAY_IN_FRONT)}
        widths = choice.every_width(max(1, bays))
        rooms = tuple(fitting.room(width, depth) for width in widths for depth in sorted(depths))
    most = highest_rows if highest_rows is not None else choice.most_rows_of_bays(max(1, bays), rows)
    judge = _Judge(project, workings, grid, fitting, rooms, most)
    by_size: dict[str, list[Box]] = defaultdict(list)
    for box in project.boxes_to_place:
        by_size[box.size_id].append(box)
    found: list[Conflict] = []
    for size in project.box_sizes:
        if boxes := by_size.get(size.id):
            ids = tuple(box.id for box in boxes)
            found += [conflict.replace(box_ids=ids) for conflict in judge.size(size)]
    if 1 <= most <= grid.lowest and by_size:
        found.append(judge.no_row())
    return (*found, *judge.too_heavy())


class _Judge:
    """The drawers of one run, and what does not go into any of them."""

    def __init__(
        self, project: Project, workings: Workings, grid: Grid, fitting: Fitting, rooms: tuple[Room, ...], rows: int
    ) -> None:
        self._project = project
        self._workings = workings
        self._grid = grid
        self._fitting = fitting
        self._rooms = rooms
        self._rows = rows

    def size(self, size: BoxSize) -> list[Conflict]:
        """What is wrong with boxes of a size."""
        found = []
        has_runner = any(room.inside_mm > 0 for room in self._rooms)  # that there is none is said for the whole run
        if has_runner and all(self._fitting.stands([size], room) is None for room in self._rooms):
            found += self._across_and_along(size)
        if (high := self._too_high(size)) is not None:
            found.append(high)
        return found

    def _across_and_along(self, size: BoxSize) -> list[Conflict]:
        """Too wide, or too deep, or both; a box that may be turned fits neither way."""
        width = max(room.box_width_mm for room in self._rooms)
        room = max(self._rooms, key=lambda r: (r.inside_mm, r.box_width_mm))
        needed = size.depth_mm + self._fitting.stop_mm
        neither = "; turned it does not fit either" if size.may_turn else ""
        found = []
        if size.width_mm > width + TOLERANCE_MM:
            found.append(Conflict(
                kind=LimitKind.BOX_WIDTH,
                message=f"“{size.name}” is {self._mm(size.width_mm)} wide; the {self._widest()} made for boxes "
                f"{self._mm(width)} wide{neither}.",
                mend=f"Make the bays for boxes {self._least(size.width_mm)} wide.",
                needed=size.width_mm, available=width, unit="mm",
            ))  # fmt: skip
        if needed > room.inside_mm + TOLERANCE_MM:
            found.append(Conflict(
                kind=LimitKind.DEPTH,
                message=f"“{size.name}” is {self._mm(size.depth_mm)} deep and needs {self._mm(needed)} in the drawer; "
                f"with {self._mm(room.runner_mm)} runners there are {self._mm(room.inside_mm)} inside{neither}.",
                mend=f"Take runners of {self._least(room.runner_mm + needed - room.inside_mm)} or more, and make the "
                "space deep enough for them.",
                needed=needed, available=room.inside_mm, unit="mm",
            ))  # fmt: skip
        return found

    def _widest(self) -> str:
        return "bays are" if len({room.box_width_mm for room in self._rooms}) == 1 else "widest bay is"

    def _too_high(self, size: BoxSize) -> Conflict | None:
        grid, rows = self._grid, self._rows
        if rows <= grid.lowest or grid.highest(size.id, rows) >= grid.lowest:
            return None  # uprights without a row for any drawer are told of once, for the whole run
        edge = grid.lower_edge_mm(grid.lowest)
        needed = edge + grid.sizes[size.id].need_mm
        there = grid.upright_mm(rows)
        return Conflict(
            kind=LimitKind.BOX_HEIGHT,
            message=f"“{size.name}” needs {self._mm(needed)} between base and top (lower edge of the lowest drawer "
            f"{self._mm(edge)}, then seat, box and clearance); uprights of {rows} rows give {self._mm(there)}.",
            mend=self._mend_height(_rows_for(grid, size.id, rows)),
            needed=needed, available=there, unit="mm",
        )  # fmt: skip

    def no_row(self) -> Conflict:
        """The runner line lies so high on the drawers that the uprights have no row for even the lowest of them."""
        runners, grid, rows = self._project.construction.runners, self._grid, self._rows
        return Conflict(
            kind=LimitKind.CONSTRUCTION,
            message=f"No drawer can be hung: the runner line is {self._mm(runners.line_offset_mm)} over the drawer's "
            f"lower edge and {self._mm(runners.gap_under_lowest_mm)} stay free under the lowest drawer, so its runner "
            f"comes to row {grid.lowest + 1}; the uprights have {rows} {'row' if rows == 1 else 'rows'}.",
            mend="Make the runner line offset or the air under the lowest drawer smaller.",
            needed=grid.lowest + 1, available=rows, unit="rows",
        )  # fmt: skip

    def _mend_height(self, rows: int) -> str:
        """How to come to uprights of `rows` rows."""
        grid = self._grid
        height = grid.floor_mm + grid.upright_mm(rows) + self._workings.value("top_thickness")
        if rows > MOST_ROWS or height > HIGHEST_LIMIT_MM:
            return "Make the box or the clearance over it lower: no run may be so high."
        if rows <= grid.rows_that_fit:
            return f"Give the uprights {rows} rows."
        if rows <= grid.rows_under_limit:
            return f"Allow a worktop {self._least(height)} high, for uprights of {rows} rows."
        return f"Raise the height limit to {self._least(height)}, for uprights of {rows} rows."

    def too_heavy(self) -> list[Conflict]:
        """Boxes that with their drawer are more than any runner carries."""
        strongest = self._fitting.strongest_kg
        left = max((room.left_kg for room in self._rooms if room.inside_mm > 0), default=strongest)
        drawer = strongest - left
        return [
            Conflict(
                kind=LimitKind.LOAD,
                message=f"“{box.label}” has a loaded mass of {box.loaded_mass_kg:g} kg, with its drawer "
                f"{box.loaded_mass_kg + drawer:.1f} kg; the strongest runners in the list are rated for "
                f"{strongest:g} kg a pair.",
                mend="Make the box lighter, or add a stronger load class that the runners' maker states.",
                box_ids=(box.id,), needed=box.loaded_mass_kg + drawer, available=strongest, unit="kg",
            )
            for box in self._project.boxes_to_place
            if box.loaded_mass_kg is not None and box.loaded_mass_kg > left + 1e-9
        ]  # fmt: skip

    def _mm(self, length_mm: float) -> str:
        return format_length(length_mm, self._project.unit)

    def _least(self, length_mm: float) -> str:
        """A length that something must have: what is shown can be typed and is enough."""
        return format_length(shown_up(length_mm, self._project.unit), self._project.unit)


def _rows_for(grid: Grid, size_id: str, rows: int) -> int:
    while grid.highest(size_id, rows) < grid.lowest:
        rows += 1
    return rows
