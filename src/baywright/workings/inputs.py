"""The inputs of the workings: each a name, a label, a unit, and where in the project it stands.

An input is read from one field of the document (`field`, then it can be edited from its place in the workings) or
gathered from the inventory (`field` is empty, `note` says how).
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import reduce

from baywright.model.construction import Back, DrawerForm, FirstRowRule, Fronts, Uprights
from baywright.model.inventory import BoxSize
from baywright.model.project import Project
from baywright.model.stock import BoardRole
from baywright.workings.kinds import BayKind
from baywright.workings.material import reckoned_kg_m3, told_density, told_thickness

NO_BOX_WIDTH_MM = 400.0
NO_BOX_DEPTH_MM = 300.0
NO_BOX_HEIGHT_MM = 300.0
GROOVE_PLAY_MM = 0.2
"""How much wider the bottom's groove is than the bottom is thick; common practice."""
BOX_STOP_HEIGHT_MM = 20.0
"""Height of a box stop over the bottom; common practice, enough for the foot of a box."""
BOX_STOP_PLAY_MM = 1.0
"""How much shorter a box stop is than the drawer is wide inside, so that it goes in; common practice."""


@dataclass(frozen=True)
class Input:
    """One input; `read` takes it out of the project as a number (choices and switches as 1 or 0)."""

    name: str
    label: str
    unit: str
    read: Callable[[Project], float]
    field: str = ""
    note: str = ""
    group: str = "Inputs"
    told: Callable[[Project], str] | None = None
    """What is to be said of the value in a document besides; empty where nothing is."""


@dataclass(frozen=True)
class SizeInput:
    """An input that each box size has its own value of."""

    name: str
    label: str
    unit: str
    read: Callable[[BoxSize], float]
    field: str
    group: str = "Box sizes"


@dataclass(frozen=True)
class FamilyInput:
    """An input that is a list of numbers, e.g. the runner lengths to be had."""

    name: str
    label: str
    unit: str
    read: Callable[[Project], tuple[float, ...]]
    field: str
    group: str = "Inputs"


def _at(path: str) -> Callable[[Project], float]:
    in_force = path.removeprefix("construction.") if path.startswith("construction.boards.") else path

    def read(project: Project) -> float:
        value = reduce(getattr, in_force.split("."), project)
        return 0.0 if value is None else float(value)  # type: ignore[arg-type]

    return read


def _field(name: str, label: str, path: str, unit: str = "mm", note: str = "") -> Input:
    return Input(name, label, unit, _at(path), path, note)


def _board(name: str, label: str, role: BoardRole) -> Input:
    path = f"construction.boards.{role.value}_mm"
    return Input(name, label, "mm", _at(path), path, told=lambda project: told_thickness(project, role))


def _density(name: str, label: str, role: BoardRole) -> Input:
    return Input(
        name, label, "kg/m³", lambda project: reckoned_kg_m3(project, role),
        told=lambda project: told_density(project, role),
    )  # fmt: skip


def sizes_in_use(project: Project) -> tuple[BoxSize, ...]:
    """The box sizes that at least one box has; all sizes while there are no boxes."""
    used = {box.size_id for box in project.boxes_to_place}
    return tuple(size for size in project.box_sizes if size.id in used) or project.box_sizes


def _bay_box_width(project: Project) -> float:
    if project.limits.bay_box_width_mm is not None:
        return project.limits.bay_box_width_mm
    return max((size.width_mm for size in sizes_in_use(project)), default=NO_BOX_WIDTH_MM)


def _deepest_box(project: Project) -> float:
    return max((size.depth_mm for size in sizes_in_use(project)), default=NO_BOX_DEPTH_MM)


INPUTS: tuple[Input, ...] = (
    _field("wall_length", "wall length", "space.length_mm"),
    _field("space_depth", "depth of the space", "space.depth_mm"),
    _field("height_limit", "height limit", "space.height_limit_mm"),
    Input(
        "bay_box_width",
        "box width the bays are made for",
        "mm",
        _bay_box_width,
        "limits.bay_box_width_mm",
        "Left empty, it is the width of the widest box in the inventory (400 mm while there is none).",
    ),
    Input(
        "deepest_box",
        "deepest box",
        "mm",
        _deepest_box,
        note="The depth of the deepest box in the inventory (300 mm while there is none).",
    ),
    Input(
        "highest_box",
        "highest box",
        "mm",
        lambda project: max((size.height_mm for size in sizes_in_use(project)), default=NO_BOX_HEIGHT_MM),
        note="The height of the highest box in the inventory (300 mm while there is none).",
    ),
    Input(
        "lowest_box",
        "lowest box",
        "mm",
        lambda project: min((size.height_mm for size in sizes_in_use(project)), default=NO_BOX_HEIGHT_MM),
        note="The height of the lowest box in the inventory (300 mm while there is none).",
    ),
    Input(
        "own_uprights",
        "each bay has its own uprights (1) or shares them (0)",
        "",
        lambda project: float(project.construction.uprights is Uprights.OWN),
        "construction.uprights",
    ),
    _board("upright_thickness", "upright thickness", BoardRole.UPRIGHT),
    _board("base_thickness", "base thickness", BoardRole.BASE),
    _board("top_thickness", "top thickness", BoardRole.TOP),
    _board("drawer_side_thickness", "drawer side thickness", BoardRole.DRAWER_SIDE),
    _board("drawer_bottom_thickness", "drawer bottom thickness", BoardRole.DRAWER_BOTTOM),
    _board("back_thickness", "back thickness", BoardRole.BACK),
    _board("front_thickness", "front panel thickness", BoardRole.FRONT),
    _board("end_panel_thickness", "end panel thickness", BoardRole.END_PANEL),
    _field("drawer_side_height", "drawer side height", "construction.drawers.side_height_mm"),
    Input(
        "tray",
        "the drawer's rails have a height of their own (1) or that of the sides (0)",
        "",
        lambda project: float(project.construction.drawers.form is DrawerForm.TRAY),
        "construction.drawers.form",
    ),
    _field("set_rail_height", "rail height that is set", "construction.drawers.rail_height_mm"),
    _field("groove_depth", "groove depth", "construction.drawers.groove_depth_mm"),
    _field("groove_offset", "groove offset", "construction.drawers.groove_offset_mm"),
    _field("bottom_play", "play of the bottom in its grooves", "construction.drawers.bottom_play_mm"),
    Input(
        "groove_play",
        "play of the bottom's thickness in its groove",
        "mm",
        lambda _: GROOVE_PLAY_MM,
        note="So that it slides in without force: common practice.",
    ),
    _field("has_box_stop", "drawers have a box stop (1) or not (0)", "construction.drawers.has_box_stop", ""),
    Input("box_stop_height", "height of the box stop", "mm", lambda _: BOX_STOP_HEIGHT_MM, note="Common practice."),
    Input("box_stop_play", "play of the box stop", "mm", lambda _: BOX_STOP_PLAY_MM, note="Between the sides."),
    Input(
        "fronts",
        "front panels (0 none, 1 between the uprights, 2 before them)",
        "",
        lambda project: float(list(Fronts).index(project.construction.drawers.fronts)),
        "construction.drawers.fronts",
    ),
    _field("reveal", "air round a front panel", "construction.drawers.reveal_mm"),
    _field("lateral_play", "lateral play", "construction.drawers.lateral_play_mm"),
    _field("stop", "air front to back", "construction.drawers.stop_mm"),
    _field("clearance", "clearance over the box", "construction.drawers.clearance_mm"),
    _field("gap_over_side", "air over the drawer side", "construction.drawers.gap_over_side_mm"),
    _field("runner_thickness", "runner thickness", "construction.runners.thickness_mm"),
    _field("line_offset", "runner line offset", "construction.runners.line_offset_mm"),
    _field(
        "set_runner_length",
        "runner length that is set",
        "construction.runners.length_mm",
        note="0: none is set, the longest that fits is taken.",
    ),
    _field("rear_gap", "air behind the drawer", "construction.runners.rear_gap_mm"),
    _field("gap_under_lowest", "least air under the lowest drawer", "construction.runners.gap_under_lowest_mm"),
    _field("pitch", "pitch of the hole rows", "construction.hole_rows.pitch_mm"),
    Input(
        "first_row_rule",
        "first row rule (1 half a pitch, 2 half the base thickness, 3 set)",
        "",
        lambda project: float(list(FirstRowRule).index(project.construction.hole_rows.first_row_rule) + 1),
        "construction.hole_rows.first_row_rule",
    ),
    _field("set_first_row", "first row that is set", "construction.hole_rows.first_row_mm"),
    _field("front_setback", "front row set-back", "construction.hole_rows.front_setback_mm"),
    _field("rear_setback", "rear row set-back", "construction.hole_rows.rear_setback_mm"),
    _field("overhang_front", "front overhang of the top", "construction.top.overhang_front_mm"),
    _field("overhang_side", "side overhang of the top", "construction.top.overhang_side_mm"),
    _field("left_panel", "an end panel covers the left end (1) or not (0)", "construction.end_panels.left", ""),
    _field("right_panel", "an end panel covers the right end (1) or not (0)", "construction.end_panels.right", ""),
    _field("stand_height", "height of plinth or feet", "construction.standing.height_mm"),
    Input(
        "full_back",
        "a full back closes the rear (1) or not (0)",
        "",
        lambda project: float(project.construction.rear.kind is Back.FULL_BACK),
        "construction.rear.kind",
    ),
    _density("drawer_side_density", "density of the drawer sides", BoardRole.DRAWER_SIDE),
    _density("drawer_bottom_density", "density of the drawer bottom", BoardRole.DRAWER_BOTTOM),
    _density("front_density", "density of the front panels", BoardRole.FRONT),
    _field("shelf_bay_wanted", "the rest becomes a shelf bay (1) or not (0)", "limits.shelf_bay", ""),
    _field("shelf_bay_least_width", "least width of a shelf bay", "limits.shelf_bay_least_width_mm"),
    _field(
        "wished_shelf_width",
        "clear width wished for the shelf bay",
        "limits.shelf_bay_clear_width_mm",
        note="0: none is wished, it takes what is left.",
    ),
    _field("shelf_play", "air at each end of a shelf", "limits.shelf_play_mm"),
    _field("fixed_bays", "bays that are fixed", "limits.bay_count", "bays", "0: the number is free."),
    _field("fixed_rows", "rows that are fixed", "limits.upright_rows", "rows", "0: the number is free."),
    Input(
        "planned_bays",
        "bays of the present plan",
        "bays",
        lambda project: float(project.arrangement.bay_count),
        note="0: nothing is planned yet.",
    ),
    Input(
        "planned_rows",
        "rows of the present plan",
        "rows",
        lambda project: float(project.arrangement.upright_rows),
        note="0: nothing is planned yet.",
    ),
)

SIZE_INPUTS: tuple[SizeInput, ...] = (
    SizeInput("box_width", "box width", "mm", lambda size: size.width_mm, "width_mm"),
    SizeInput("box_depth", "box depth", "mm", lambda size: size.depth_mm, "depth_mm"),
    SizeInput("box_height", "box height", "mm", lambda size: size.height_mm, "height_mm"),
)


@dataclass(frozen=True)
class KindInput:
    """An input that each further kind of bay has its own value of; the ordinary kind has `ordinary`."""

    name: str
    label: str
    unit: str
    read: Callable[[BayKind], float]
    ordinary: float = 0.0
    note: str = ""
    group: str = "Inputs"


KIND_INPUTS: tuple[KindInput, ...] = (
    KindInput("kind_bays", "bays of this kind", "bays", lambda kind: kind.bays),
    KindInput("bay_rows", "rows of this bay alone", "rows", lambda kind: kind.rows, note="0: as many as the run has."),
    KindInput(
        "zone_depth",
        "depth that a zone of the wall takes",
        "mm",
        lambda kind: kind.zone_depth_mm,
        note="Drawers that cross the zone stay in front of it.",
    ),
)


@dataclass(frozen=True)
class PlaceInput:
    """An input that follows from where the bays come to stand along the wall; `ordinary` where all are alike."""

    name: str
    label: str
    unit: str
    ordinary: float
    note: str = ""
    group: str = "Inputs"


PLACE_INPUTS: tuple[PlaceInput, ...] = (
    PlaceInput(
        "laid_out",
        "the bays are laid out one by one (1) or all alike (0)",
        "",
        0.0,
        "One by one where bays have wishes of their own, or zones or a sloping ceiling are in the way.",
    ),
    PlaceInput(
        "laid_out_bays",
        "bays that fit as they are laid out",
        "bays",
        0.0,
        "Counted from the left till the wall is full.",
    ),
    PlaceInput("other_bays", "bays of other kinds", "bays", 0.0, "Bays that are not of the ordinary kind."),
    PlaceInput(
        "sections", "sections of the run", "", 1.0, "More than one where a zone that is kept clear interrupts the run."
    ),
    PlaceInput("gaps", "wall left out between bays", "mm", 0.0, "For zones that are kept clear."),
    PlaceInput("closed_wall", "wall beyond a zone that is kept clear", "mm", 0.0, "To the right of the bays."),
)

OWN_INPUTS: tuple[KindInput | PlaceInput, ...] = (*KIND_INPUTS, *PLACE_INPUTS)
"""What is the same for all bays unless they are laid out one by one."""

FAMILY_INPUTS: tuple[FamilyInput, ...] = (
    FamilyInput(
        "standard_runner_length",
        "runner length to be had",
        "mm",
        lambda project: project.construction.runners.lengths_mm,
        "construction.runners.lengths_mm",
    ),
)
