"""Where a drawer, its box and the air over it stand in the elevation, for a box placed at a bay and row.

The tray is drawn cut open, without its front rail, so that the box standing in it can be seen. Every dimension comes
from the workings or straight from the document; here they are only added up to places on the drawing.
"""

from dataclasses import dataclass

from baywright.gui.elevation.area import Area
from baywright.gui.elevation.frame import Frame
from baywright.model.arrangement import Lock, Placement
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.project import Project
from baywright.workings import Workings


@dataclass(frozen=True)
class DrawerMeasures:
    """What the drawers of one box size measure, all mm."""

    side_thickness: float
    side_height: float
    bottom_offset: float
    bottom_thickness: float
    seat: float
    box_width: float
    box_depth: float
    box_height: float
    play: float
    """Air between boxes that stand side by side."""
    clearance: float
    opening_height: float
    opening_rows: int
    row_over_edge: float
    """From the drawer's lower edge up to its row."""


@dataclass(frozen=True)
class Span:
    """Where a box stands across its drawer, mm: its left edge from the drawer's middle, and its width."""

    left: float
    width: float


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
    """A box in its drawer, as the elevation shows it; boxes that share a drawer have one each."""

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
    team: tuple[Placement, ...] = ()
    """All boxes in this drawer, from the left or from the front."""
    has_tray: bool = True
    """Whether the tray is drawn with this box: with the first of a team, and not where it is only wished for."""
    is_built: bool = False
    """Whether its bay stands as built."""
    lifting_index: float | None = None
    """How hard the box is to lift there; over 1 is too hard. None where it was not weighed."""

    @property
    def is_hard_to_lift(self) -> bool:
        """Whether its lifting index is over 1."""
        return self.lifting_index is not None and self.lifting_index > 1

    @property
    def is_behind(self) -> int:
        """How many boxes stand before this one in its drawer."""
        return next((p.behind for p in self.team if p.box_id == self.box.id), 0)

    @property
    def is_turned(self) -> bool:
        """Whether the box stands turned by a quarter."""
        return any(p.turned for p in self.team if p.box_id == self.box.id)

    @property
    def count_behind(self) -> int:
        """How many boxes stand behind this one, which is the front one of its drawer; 0 for any other."""
        return 0 if self.is_behind else sum(p.behind > 0 for p in self.team)

    @property
    def is_wished(self) -> bool:
        """Whether the box is only wished for, so that room is kept and no drawer made."""
        return self.box.status is BoxStatus.WISHED

    @property
    def lower_edge(self) -> float:
        """Height of the drawer's lower edge over the floor, mm."""
        return self.areas.outside.bottom


def drawer_measures(project: Project, workings: Workings, size: BoxSize) -> DrawerMeasures:
    """The measures of the drawers for one box size."""
    construction = project.construction
    return DrawerMeasures(
        side_thickness=project.boards.drawer_side_mm,
        side_height=construction.drawers.side_height_mm,
        bottom_offset=construction.drawers.groove_offset_mm,
        bottom_thickness=project.boards.drawer_bottom_mm,
        seat=workings.value("seat"),
        box_width=size.width_mm,
        box_depth=size.depth_mm,
        box_height=size.height_mm,
        play=construction.drawers.lateral_play_mm,
        clearance=construction.drawers.clearance_mm,
        opening_height=workings.value("opening_height", size.id),
        opening_rows=round(workings.value("opening_rows", size.id)),
        row_over_edge=workings.value("line_offset"),
    )


def drawer_areas(
    frame: Frame,
    measures: DrawerMeasures,
    bay: int,
    row: int,
    *,
    is_top: bool = False,
    span: Span | None = None,
    opening_height: float = 0.0,
) -> DrawerAreas:
    """The pieces of a drawer at that bay and row; a top drawer's opening ends at the top's underside.

    `span` is where the box stands across its drawer, in the middle where it is None; `opening_height` counts where a
    higher box stands in the same drawer.
    """
    field, tray = frame.bays[bay], frame.trays[bay]
    edge = frame.row_height(row) - measures.row_over_edge
    middle = field.centre.x()
    left, right = middle - tray.outside / 2, middle + tray.outside / 2
    side = measures.side_thickness
    opening_top = max(field.top, edge + 1.0) if is_top else edge + max(measures.opening_height, opening_height)
    across = span or Span(-measures.box_width / 2, measures.box_width)
    box = Area(middle + across.left, edge + measures.seat, across.width, measures.box_height)
    return DrawerAreas(
        opening=Area(field.left, edge, field.width, opening_top - edge),
        sides=(Area(left, edge, side, measures.side_height), Area(right - side, edge, side, measures.side_height)),
        bottom=Area(middle - tray.bottom / 2, edge + measures.bottom_offset, tray.bottom, measures.bottom_thickness),
        box=box,
        clearance=Area(box.left, box.top, box.width, measures.clearance),
        runners=(
            Area(field.left, frame.row_height(row), left - field.left, 0.0),
            Area(right, frame.row_height(row), field.right - right, 0.0),
        ),
        outside=Area(left, edge, tray.outside, measures.side_height),
    )
