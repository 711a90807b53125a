"""The hole-row grid of a project: which rows a box of each size may take, read once from the workings.

The vertical law: a drawer at row k has its lower edge at `first + pitch·k − line offset` over the base; an inner
drawer takes whole rows; the top one only has to stay under the top. Laws: nothing here repeats a sum that the
workings declare, except for uprights of another number of rows than the project has now, which the search needs.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from baywright.model.limits import MOST_BAYS, MOST_ROWS
from baywright.model.project import Project
from baywright.planner.distribution.problem import Span
from baywright.planner.framing.widths import WidthChoice
from baywright.planner.handling import Habits, grip_height_in_box, habits, over_comfort
from baywright.workings import Workings, derive

TOLERANCE = 1e-9
"""What rounding to whole rows forgives, so that noise in the last digit never costs a row."""


@dataclass(frozen=True, slots=True)
class SizeRows:
    """One box size on the grid: height needed over the drawer's lower edge, rows taken in an inner place."""

    need_mm: float
    rows: int
    height_mm: float
    depth_mm: float


@dataclass(frozen=True)
class Grid:
    """Measures in mm that do not depend on how many bays there are or how many rows the uprights have."""

    pitch_mm: float
    first_row_mm: float
    line_offset_mm: float
    lowest: int
    """First row that a drawer may sit at."""
    sizes: Mapping[str, SizeRows]
    floor_mm: float
    """The base's upper side over the floor."""
    seat_mm: float
    habits: Habits
    """How boxes are lifted, on which the cost of a row rests."""
    rows_that_fit: int
    """Rows that an upright may have at most under the height limit and the wished height of the worktop."""
    bays_that_fit: int
    least_rows: int = 1
    """Rows that the wished height of the worktop asks for at least."""
    rows_under_limit: int = MOST_ROWS
    """Rows that fit under the height limit alone."""

    def upright_mm(self, rows: int) -> float:
        """Height of an upright with that many rows."""
        return self.pitch_mm * (rows - 1) + 2 * self.first_row_mm

    def usable_rows(self, rows: int) -> int:
        """The rows of such an upright that whole openings can use."""
        room = self.upright_mm(rows) - self.lower_edge_mm(self.lowest)
        return max(0, math.floor(room / self.pitch_mm + TOLERANCE))

    def lower_edge_mm(self, row: int) -> float:
        """A drawer's lower edge over the base, for a drawer at that row."""
        return self.first_row_mm + self.pitch_mm * row - self.line_offset_mm

    def highest(self, size_id: str, rows: int) -> int:
        """The highest row at which a box of that size stays under the top of uprights of `rows` rows; −1 or less
        where there is none.
        """
        room = self.upright_mm(rows) - self.sizes[size_id].need_mm - self.first_row_mm + self.line_offset_mm
        return min(rows - 1, math.floor(room / self.pitch_mm + TOLERANCE))

    def span(self, size_id: str, rows: int) -> Span:
        """The span of a box of that size in uprights of `rows` rows."""
        return Span(self.sizes[size_id].rows, self.lowest, self.highest(size_id, rows))

    def penalties(self, size_id: str, rows: int) -> tuple[int, ...]:
        """For each row how much harder a box of that size is to lift there than at the edge of the comfortable band."""
        size = self.sizes[size_id]
        grip = self.floor_mm + self.seat_mm + grip_height_in_box(size.height_mm)
        return tuple(
            over_comfort(size.depth_mm, size.height_mm, grip + self.lower_edge_mm(row), self.habits)
            for row in range(rows)
        )


def read_grid(project: Project, workings: Workings | None = None) -> Grid:
    """The grid of a project."""
    w = workings if workings is not None else derive(project)
    used = {box.size_id for box in project.boxes}
    under_limit = min(MOST_ROWS, max(0, round(w.value("rows_that_fit"))))
    least, most = _worktop_rows(project, w)
    return Grid(
        pitch_mm=w.value("pitch"),
        first_row_mm=w.value("first_row"),
        line_offset_mm=w.value("line_offset"),
        lowest=max(0, round(w.value("lowest_start_row"))),
        sizes={
            size.id: SizeRows(
                w.value("need_height", size.id),
                max(1, round(w.value("opening_rows", size.id))),
                size.height_mm,
                size.depth_mm,
            )
            for size in project.box_sizes
            if size.id in used
        },
        floor_mm=w.value("base_upper_height"),
        seat_mm=w.value("seat"),
        habits=habits(project.safety),
        rows_that_fit=min(under_limit, most),
        bays_that_fit=min(MOST_BAYS, max(0, WidthChoice(project, w).bays_that_fit)),
        least_rows=least,
        rows_under_limit=under_limit,
    )


def _worktop_rows(project: Project, workings: Workings) -> tuple[int, int]:
    """The fewest and the most rows with which the top's upper side is as high as is wished."""
    least_mm, most_mm = project.limits.worktop_least_mm, project.limits.worktop_most_mm
    around = workings.value("base_upper_height") + workings.value("top_thickness") + 2 * workings.value("first_row")
    pitch = workings.value("pitch")

    def rows(height_mm: float) -> float:
        return (height_mm - around) / pitch + 1

    least = 1 if least_mm is None else max(1, math.ceil(rows(least_mm) - TOLERANCE))
    most = MOST_ROWS if most_mm is None else max(0, math.floor(rows(most_mm) + TOLERANCE))
    return least, most
