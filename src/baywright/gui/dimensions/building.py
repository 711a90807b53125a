"""The sections of the form with how the run is built: boards, edges, joints, drawers, fronts, runners, hole rows."""

from baywright.gui.dimensions.entry import FormEntry, FormSection, choice, flag, length
from baywright.gui.fields.kinds import LengthsKind, MassesKind
from baywright.gui.wording import (
    BACKS,
    DRAWER_FORMS,
    DRILLINGS,
    EDGINGS,
    FIRST_ROWS,
    FRONT_EDGES,
    FRONTS,
    JOINTINGS,
    STANDS,
    UPRIGHTS,
)

_C = "construction."
_B, _D, _R, _H = f"{_C}boards.", f"{_C}drawers.", f"{_C}runners.", f"{_C}hole_rows."
_THICKNESS = "Measured, not nominal: 18 mm plywood is often 17.5 mm thick."

_CARCASS = FormSection(
    "Uprights, base and top",
    (
        choice(
            f"{_C}uprights",
            "Uprights",
            "Whether two bays share the upright between them, or each bay is a carcass of its own.",
            UPRIGHTS,
        ),
        length(_B + "upright_mm", "Upright thickness", _THICKNESS),
        length(_B + "base_mm", "Base thickness", f"The board that the uprights stand on. {_THICKNESS}"),
        length(_B + "top_mm", "Top thickness", f"The board that lies on the uprights. {_THICKNESS}"),
        length(_B + "shelf_mm", "Shelf thickness", _THICKNESS),
        length(f"{_C}top.overhang_front_mm", "Front overhang of the top", "How far the top stands out at the front."),
        length(f"{_C}top.overhang_side_mm", "Side overhang of the top", "How far the top stands out at each end."),
        choice(f"{_C}top.front_edge", "Front edge of the top", "How its front edge is shaped.", FRONT_EDGES),
        length(
            f"{_C}top.front_edge_size_mm",
            "Radius or chamfer",
            "Radius of the rounding or width of the chamfer; counts where the front edge of the top is not square.",
        ),
        length(
            _B + "longest_mm",
            "Longest board",
            "The longest piece to be had; a longer top, base or plinth is joined over an upright.",
        ),
    ),
)

_ENDS = FormSection(
    "End panels, edges and joints",
    (
        flag(f"{_C}end_panels.left", "End panel at the left", "A board over the outermost upright, floor to top."),
        flag(f"{_C}end_panels.right", "End panel at the right", "A board over the outermost upright, floor to top."),
        length(_B + "end_panel_mm", "End panel thickness", f"Counts where there is one. {_THICKNESS}"),
        choice(f"{_C}edging.kind", "Edges that are seen", "What covers the edges that are seen.", EDGINGS),
        length(
            f"{_C}edging.thickness_mm",
            "Thickness of the edging",
            "It is taken off the boards before they are cut; counts where edges are covered.",
        ),
        length(
            f"{_C}edging.overlength_mm",
            "Overlength of a strip",
            "What a strip is cut longer than its edge, to be trimmed flush afterwards.",
        ),
        choice(
            f"{_C}jointing",
            "Joints",
            "How boards are joined where the end of one meets the face of another.",
            JOINTINGS,
        ),
    ),
)

_DRAWERS = FormSection(
    "Drawers",
    (
        length(_B + "drawer_side_mm", "Drawer side thickness", f"Sides and rails. {_THICKNESS}"),
        length(_B + "drawer_bottom_mm", "Drawer bottom thickness", _THICKNESS),
        choice(_D + "form", "Form of the drawer", "How high its front and rear are.", DRAWER_FORMS),
        length(_D + "side_height_mm", "Drawer side height", "Height of the tray's sides."),
        length(
            _D + "rail_height_mm", "Height of front and rear rail", "Counts where the drawer is a tray with low rails."
        ),
        flag(
            _D + "has_box_stop",
            "Box stop behind the box",
            "A strip on the bottom that keeps a box from sliding back in a drawer deeper than the box.",
        ),
        length(_D + "groove_depth_mm", "Groove depth", "How deep the bottom goes into sides and rails."),
        length(
            _D + "groove_offset_mm",
            "Groove offset",
            "From the drawer's lower edge to the lower face of the groove that holds the bottom.",
        ),
        length(
            _D + "bottom_play_mm",
            "Play of the bottom in its grooves",
            "How much smaller the bottom is cut than from groove to groove, so that it goes in.",
        ),
        length(_D + "lateral_play_mm", "Lateral play", "Air between the box and each drawer side."),
        length(_D + "stop_mm", "Air front to back", "Air between the box and the rails, front to back."),
        length(_D + "clearance_mm", "Clearance over the box", "What lid, latch and handle need over the box."),
        length(
            _D + "gap_over_side_mm",
            "Air over the drawer side",
            "Counts where the drawer side is higher than the box in it.",
        ),
    ),
)

_FRONTS = FormSection(
    "Front panels",
    (
        choice(_D + "fronts", "Front panels", "Whether drawers have front panels, and where these lie.", FRONTS),
        length(_B + "front_mm", "Front panel thickness", f"Counts where there are front panels. {_THICKNESS}"),
        length(
            _D + "reveal_mm",
            "Reveal",
            "Air round a front panel: half the joint between two that meet, the whole beside an upright.",
        ),
    ),
)

_RUNNERS = FormSection(
    "Runners",
    (
        length(
            _R + "thickness_mm",
            "Runner thickness",
            "Room that a runner takes on each side of the drawer; see its maker's data sheet.",
        ),
        length(
            _R + "line_offset_mm",
            "Runner line offset",
            "From the drawer's lower edge up to the line of the runner's holes, which lies on a hole row.",
        ),
        length(
            _R + "length_mm",
            "Runner length to use",
            "Empty: the longest of the lengths below that fits the depth.",
            "the longest that fits",
        ),
        FormEntry(
            _R + "lengths_mm",
            "Runner lengths to be had",
            "Lengths that your supplier has, separated by semicolons.",
            LengthsKind(),
        ),
        FormEntry(
            _R + "load_classes_kg",
            "Load classes",
            "Rated loads of a pair, in kg, separated by semicolons, from the maker's data sheet.",
            MassesKind(),
        ),
        length(_R + "rear_gap_mm", "Air behind the drawer", "Behind the closed drawer, to the back or the wall."),
        length(
            _R + "gap_under_lowest_mm",
            "Least air under the lowest drawer",
            "Least air between the base and the lowest drawer.",
        ),
    ),
)

_HOLES = FormSection(
    "Hole rows",
    (
        length(_H + "pitch_mm", "Pitch of the hole rows", "From one hole row to the next; 32 mm is common practice."),
        choice(
            _H + "first_row_rule",
            "First row lies",
            "Where the first hole row lies over the upright's lower end.",
            FIRST_ROWS,
        ),
        length(_H + "first_row_mm", "First row that is set", "Counts where the first row lies at the height set."),
        length(_H + "front_setback_mm", "Front row set-back", "From the upright's front edge to the front hole line."),
        length(_H + "rear_setback_mm", "Rear row set-back", "From the upright's rear edge to the rear hole line."),
        choice(
            _H + "drilling",
            "Holes to drill",
            "Whole rows let drawers and shelves be put elsewhere later; used holes only are less work.",
            DRILLINGS,
        ),
        length(_H + "hole_diameter_mm", "Diameter of a hole", "5 mm is common practice for rows of 32 mm pitch."),
        length(
            _H + "hole_depth_mm",
            "Depth of a hole",
            "As deep as is wanted; less is drilled where a board is thinner or holes of both its sides would meet.",
        ),
    ),
)

_STAND = FormSection(
    "Stand and back",
    (
        choice(f"{_C}standing.kind", "Stands on", "What lifts the base off the floor.", STANDS),
        length(f"{_C}standing.height_mm", "Height of plinth or feet", "From the floor to the base."),
        length(
            f"{_C}standing.plinth_setback_mm",
            "Plinth set back",
            "How far the plinth stands behind the base's front edge; room for the toes.",
        ),
        length(_B + "plinth_mm", "Plinth thickness", _THICKNESS),
        choice(f"{_C}rear.kind", "Back", "What closes or stiffens the rear.", BACKS),
        length(_B + "back_mm", "Back thickness", f"Counts where there is a full back. {_THICKNESS}"),
        length(f"{_C}rear.brace_width_mm", "Width of a brace", "Counts where two braces hold the rear."),
        length(_B + "brace_mm", "Brace thickness", _THICKNESS),
    ),
)

BUILDING: tuple[FormSection, ...] = (_CARCASS, _ENDS, _DRAWERS, _FRONTS, _RUNNERS, _HOLES, _STAND)
"""The sections in the order of the form."""
