"""Where a drawer, its box and the air over it stand in the elevation, for a box placed at a bay and row.

The tray is drawn cut open, without its front rail, so that the box standing in it can be seen. Every dimension comes
from the workings or straight from the document; here they are only added up to places on the drawing.
"""

from dataclasses import dataclass

from baywright.gui.elevation.area import Area
from baywright.gui.elevation.frame import Frame
from baywright.model.arrangement import Lock
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project
from baywright.workings import Workings


@dataclass(frozen=True)
class DrawerMeasures:
    """What the drawers of one box size measure, all mm."""

    outside_width: float
    side_thickness: float
    side_height: float
    bottom_offset: float
    bottom_thickness: float
    bottom_width: float
    seat: float
    box_width: float
    box_height: float
    clearance: float
    opening_height: float
    opening_rows: int
    row_over_edge: float
    """From the drawer's lower edge up to its row."""


@dataclass(frozen=True)
class DrawerAreas:
    """The pieces of one drawer in its place."""

    opening: Area
    """What the drawer takes of its bay, between the uprights."""
    sides: tuple[Area, Area]
    bottom: Area
    box: Area
    clearance: Area
    runners: tuple[Area, Area]
    """Between upright and drawer side, as thin as a line, at the runner's row."""
    outside: Area
    """The tray's outline."""


@dataclass(frozen=True)
class Drawer:
    """A drawer with its box, as the elevation shows it."""

    box: Box
    size: BoxSize
    bay: int
    row: int
    number: int
    """Counted from 1 at the bottom of its bay."""
    is_top: bool
    lock: Lock
    areas: DrawerAreas
    opening_rows: int
    troubles: tuple[str, ...] = ()
    """What is wrong with this place, in words."""

    @property
    def lower_edge(self) -> float:
        """Height of the drawer's lower edge over the floor, mm."""
        return self.areas.outside.bottom


def drawer_measures(project: Project, workings: Workings, size: BoxSize) -> DrawerMeasures:
    """The measures of the drawers for one box size."""
    construction = project.construction
    return DrawerMeasures(
        outside_width=workings.value("drawer_outside_width"),
        side_thickness=construction.boards.drawer_side_mm,
        side_height=construction.drawers.side_height_mm,
        bottom_offset=construction.drawers.groove_offset_mm,
        bottom_thickness=construction.boards.drawer_bottom_mm,
        bottom_width=workings.value("bottom_width"),
        seat=workings.value("seat"),
        box_width=size.width_mm,
        box_height=size.height_mm,
        clearance=construction.drawers.clearance_mm,
        opening_height=workings.value("opening_height", size.id),
        opening_rows=round(workings.value("opening_rows", size.id)),
        row_over_edge=workings.value("line_offset"),
    )


def drawer_areas(frame: Frame, measures: DrawerMeasures, bay: int, row: int, *, is_top: bool = False) -> DrawerAreas:
    """The pieces of a drawer at that bay and row; a top drawer's opening ends at the top's underside."""
    field = frame.bays[bay]
    edge = frame.row_height(row) - measures.row_over_edge
    left = field.left + (field.width - measures.outside_width) / 2
    right = left + measures.outside_width
    middle = field.centre.x()
    side = measures.side_thickness
    opening_top = max(field.top, edge + 1.0) if is_top else edge + measures.opening_height
    box = Area(middle - measures.box_width / 2, edge + measures.seat, measures.box_width, measures.box_height)
    return DrawerAreas(
        opening=Area(field.left, edge, field.width, opening_top - edge),
        sides=(Area(left, edge, side, measures.side_height), Area(right - side, edge, side, measures.side_height)),
        bottom=Area(
            middle - measures.bottom_width / 2,
            edge + measures.bottom_offset,
            measures.bottom_width,
            measures.bottom_thickness,
        ),
        box=box,
        clearance=Area(box.left, box.top, box.width, measures.clearance),
        runners=(
            Area(field.left, frame.row_height(row), left - field.left, 0.0),
            Area(right, frame.row_height(row), field.right - right, 0.0),
        ),
        outside=Area(left, edge, measures.outside_width, measures.side_height),
    )
