"""How the run is built: boards, drawers, runners, hole rows, top, stand and back.

Which measures mean what is drawn in DEVELOPERS.md; the sums made from them are declared in `baywright.workings`.
"""

from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, model_validator

from baywright.model.base import BoardThicknessMillimetres, Frozen, Millimetres, PositiveMillimetres


class Uprights(StrEnum):
    """Whether neighbouring bays share the upright between them or each bay is a carcass with two of its own."""

    SHARED = "shared"
    OWN = "own"


class FirstRowRule(StrEnum):
    """Where the first hole row lies over the upright's lower end."""

    HALF_PITCH = "half_pitch"
    HALF_BASE_THICKNESS = "half_base_thickness"
    SET = "set"


class Stand(StrEnum):
    """What the run stands on."""

    PLINTH = "plinth"
    FEET = "feet"


class Back(StrEnum):
    """What closes or stiffens the rear."""

    EXISTING_WALL = "existing_wall"
    FULL_BACK = "full_back"
    TWO_BRACES = "two_braces"


class DrawerForm(StrEnum):
    """How the drawer's front and rear are made."""

    TRAY = "tray"
    """Front and rear rails as high as is set, lower than the sides where the owner likes to see the boxes."""
    FULL_BOX = "full_box"
    """Front and rear as high as the sides."""


class Fronts(StrEnum):
    """Whether drawers have front panels, and where these lie."""

    NONE = "none"
    INSET = "inset"
    """Between the uprights, flush with their front edges."""
    OVERLAY = "overlay"
    """Before the uprights' front edges."""


class FrontEdge(StrEnum):
    """The shape of the top's front edge."""

    SQUARE = "square"
    ROUNDED = "rounded"
    CHAMFERED = "chamfered"


class EdgingKind(StrEnum):
    """What covers edges that are seen."""

    NONE = "none"
    BAND = "band"
    """A thin band, ironed or glued on."""
    LIPPING = "lipping"
    """Solid strips, glued on."""


class Drilling(StrEnum):
    """Which holes of the rows are drilled."""

    WHOLE_ROWS = "whole_rows"
    USED_ONLY = "used_only"


class Jointing(StrEnum):
    """How boards are joined where an end meets a face."""

    LOOSE_TENON = "loose_tenon"
    DOWEL = "dowel"
    POCKET_SCREW = "pocket_screw"
    SCREW = "screw"


class Boards(Frozen):
    """Board thicknesses in mm, as measured, and the longest board that can be cut in one piece.

    Where the stock has a measured batch for a board, that one's thickness is in force instead (`Project.boards`).
    """

    upright_mm: BoardThicknessMillimetres = 18.0
    base_mm: BoardThicknessMillimetres = 18.0
    top_mm: BoardThicknessMillimetres = 27.0
    drawer_side_mm: BoardThicknessMillimetres = 15.0
    drawer_bottom_mm: BoardThicknessMillimetres = 9.0
    back_mm: BoardThicknessMillimetres = 9.0
    brace_mm: BoardThicknessMillimetres = 18.0
    shelf_mm: BoardThicknessMillimetres = 18.0
    plinth_mm: BoardThicknessMillimetres = 18.0
    front_mm: BoardThicknessMillimetres = 15.0
    end_panel_mm: BoardThicknessMillimetres = 18.0
    longest_mm: Annotated[float, Field(ge=500.0, le=20_000.0)] = 2500.0
    """Longest piece to be had, in mm; a longer top, base or plinth is joined over an upright."""


class Drawers(Frozen):
    """A drawer is a low tray: two sides, a front and a rear rail, a bottom let into grooves (all mm)."""

    side_height_mm: PositiveMillimetres = 60.0
    groove_depth_mm: Millimetres = 6.0
    groove_offset_mm: Millimetres = 8.0
    """From the drawer's lower edge to the lower face of the groove; the box stands on the bottom in that groove."""
    bottom_play_mm: Annotated[float, Field(ge=0, le=20.0)] = 1.0
    """How much smaller than from groove ground to groove ground the bottom is cut, so that it goes in."""
    lateral_play_mm: Millimetres = 2.0
    """Air between the box and each drawer side."""
    stop_mm: Millimetres = 5.0
    """Air front to back between the box and the rails."""
    clearance_mm: Millimetres = 12.0
    """Air over the box that lid, latch and handle need."""
    gap_over_side_mm: Millimetres = 3.0
    """Air over a drawer side where the side, not the box, is the highest thing in the drawer."""
    form: DrawerForm = DrawerForm.FULL_BOX
    rail_height_mm: PositiveMillimetres = 60.0
    """Height of the front and rear rail of a tray."""
    has_box_stop: bool = False
    """Whether a strip on the bottom keeps the box from sliding back where the drawer is deeper than the box."""
    fronts: Fronts = Fronts.NONE
    reveal_mm: Annotated[float, Field(ge=0, le=30.0)] = 2.0
    """Air round a front panel: half the joint between two that meet, the whole beside an upright."""


class Runners(Frozen):
    """The side-mounted drawer runners (all mm)."""

    thickness_mm: PositiveMillimetres = 12.7
    """Room that the runner takes on each side of the drawer."""
    line_offset_mm: Millimetres = 14.0
    """From the drawer's lower edge up to the line of the runner's fixing holes, which lies on a hole row."""
    lengths_mm: Annotated[tuple[PositiveMillimetres, ...], Field(min_length=1, max_length=50)] = (
        250.0, 300.0, 350.0, 400.0, 450.0, 500.0, 550.0, 600.0, 650.0, 700.0,
    )  # fmt: skip
    """Lengths to be had; 250 to 700 by 50 is common practice, from memory."""
    length_mm: PositiveMillimetres | None = None
    """A length to use; None takes the longest that fits."""
    load_classes_kg: Annotated[
        tuple[Annotated[float, Field(gt=0, le=1_000.0)], ...], Field(min_length=1, max_length=20)
    ] = (35.0, 45.0, 68.0)
    """Rated loads a pair, in kg; 35 to 45 and from 68 up are common practice, from memory."""
    rear_gap_mm: Millimetres = 10.0
    """Air behind the closed drawer, to the back or the wall."""
    gap_under_lowest_mm: Millimetres = 2.0
    """Least air between the base and the lowest drawer."""


class HoleRows(Frozen):
    """The rows of shelf-pin and runner holes in the uprights (all mm)."""

    pitch_mm: Annotated[float, Field(ge=5.0, le=500.0)] = 32.0
    first_row_rule: FirstRowRule = FirstRowRule.HALF_PITCH
    first_row_mm: PositiveMillimetres = 16.0
    """Height of the first row over the upright's lower end where the rule is `set`."""
    front_setback_mm: PositiveMillimetres = 37.0
    rear_setback_mm: PositiveMillimetres = 37.0
    drilling: Drilling = Drilling.WHOLE_ROWS
    hole_diameter_mm: Annotated[float, Field(ge=2.0, le=15.0)] = 5.0
    """5 mm is common practice for rows of 32 mm pitch."""
    hole_depth_mm: Annotated[float, Field(ge=3.0, le=50.0)] = 12.0
    """As deep as is wanted; less where a board is thinner or holes of both its sides meet."""


class Top(Frozen):
    """How far the top stands out beyond the uprights or end panels, and its front edge (all mm)."""

    overhang_front_mm: Millimetres = 20.0
    overhang_side_mm: Millimetres = 0.0
    front_edge: FrontEdge = FrontEdge.SQUARE
    front_edge_size_mm: Annotated[float, Field(ge=0.5, le=50.0)] = 3.0
    """Radius of the rounding, or leg of the chamfer."""


class Standing(Frozen):
    """What lifts the base off the floor, and how far (all mm)."""

    kind: Stand = Stand.PLINTH
    height_mm: Millimetres = 80.0
    plinth_setback_mm: Millimetres = 40.0


class Rear(Frozen):
    """What closes or stiffens the rear; `brace_width_mm` is the width of each of two braces."""

    kind: Back = Back.EXISTING_WALL
    brace_width_mm: PositiveMillimetres = 100.0


class Edging(Frozen):
    """What covers the edges that are seen; its thickness is taken off the boards before they are cut (mm)."""

    kind: EdgingKind = EdgingKind.BAND
    thickness_mm: Annotated[float, Field(ge=0.1, le=30.0)] = 1.0
    overlength_mm: Annotated[float, Field(ge=0, le=200.0)] = 20.0
    """What a strip is cut longer than its edge, to be trimmed flush afterwards; common practice."""


class EndPanels(Frozen):
    """Panels that cover the run's outer uprights from the floor to under the top."""

    left: bool = False
    right: bool = False


class Construction(Frozen):
    """All choices and measures of how the run is built."""

    uprights: Uprights = Uprights.SHARED
    boards: Boards = Boards()
    drawers: Drawers = Drawers()
    runners: Runners = Runners()
    hole_rows: HoleRows = HoleRows()
    top: Top = Top()
    standing: Standing = Standing()
    rear: Rear = Rear()
    edging: Edging = Edging()
    end_panels: EndPanels = EndPanels()
    jointing: Jointing = Jointing.LOOSE_TENON

    @model_validator(mode="after")
    def _groove_leaves_wood(self) -> Self:
        if self.drawers.groove_depth_mm >= self.boards.drawer_side_mm:
            raise ValueError(
                f"The groove ({self.drawers.groove_depth_mm:g} mm deep) would cut through the drawer side "
                f"({self.boards.drawer_side_mm:g} mm thick); make it shallower than the side."
            )
        drawers, bottom = self.drawers, self.boards.drawer_bottom_mm
        if drawers.groove_offset_mm + bottom > drawers.side_height_mm:
            raise ValueError(
                f"The drawer bottom's groove (offset {drawers.groove_offset_mm:g} mm, bottom {bottom:g} mm) does not "
                f"fit in a side {drawers.side_height_mm:g} mm high; make the side higher or the offset smaller."
            )
        return self

    @model_validator(mode="after")
    def _tray_has_rails(self) -> Self:
        drawers, bottom = self.drawers, self.boards.drawer_bottom_mm
        if drawers.form is not DrawerForm.TRAY:
            return self
        if drawers.rail_height_mm > drawers.side_height_mm:
            raise ValueError(
                f"The rails of a tray ({drawers.rail_height_mm:g} mm) must not be higher than its sides "
                f"({drawers.side_height_mm:g} mm); make the rails lower or the sides higher."
            )
        if drawers.groove_offset_mm + bottom > drawers.rail_height_mm:
            raise ValueError(
                f"The drawer bottom's groove (offset {drawers.groove_offset_mm:g} mm, bottom {bottom:g} mm) does not "
                f"fit in a rail {drawers.rail_height_mm:g} mm high; make the rail higher or the offset smaller."
            )
        return self
