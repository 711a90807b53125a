"""Which values of the project are set in the form: path, plain label, what it is, and kind of field.

The paths are those that the command `SetField` takes. A test holds that every settable value of space, construction and
limits stands here once and that no path is wrong.
"""

from baywright.gui.dimensions.entry import FormEntry, FormSection, choice, count, flag, length, text
from baywright.gui.dimensions.safety import SAFETY
from baywright.gui.fields.kinds import (
    LengthsKind,
    MassesKind,
    NoteKind,
)
from baywright.gui.wording import BACKS, FIRST_ROWS, STANDS, UNITS, UPRIGHTS
from baywright.model.limits import MOST_BAYS, MOST_ROWS

_B, _D, _R, _H = "construction.boards.", "construction.drawers.", "construction.runners.", "construction.hole_rows."
_THICKNESS = "Measured, not nominal: 18 mm plywood is often 17.5 mm thick."

SECTIONS: tuple[FormSection, ...] = (
    FormSection(
        "Project",
        (
            text("name", "Name", "Stands in the title and on every sheet of the workbook.", may_be_empty=False),
            choice("unit", "Lengths in", "The unit for reading and for numbers typed without one.", UNITS),
            FormEntry("note", "Note", "Anything to remember about the whole project.", NoteKind()),
        ),
        is_open=True,
    ),
    FormSection(
        "Space",
        (
            length("space.length_mm", "Wall length", "Room for the whole run, uprights included."),
            length(
                "space.depth_mm",
                "Depth of the space",
                "From the wall to the foremost point that anything fixed may reach, the top's front edge included.",
            ),
            length(
                "space.height_limit_mm", "Height limit", "From the floor to the upper side of the top, at the most."
            ),
            flag(
                "space.existing_wall",
                "A wall stands behind",
                "Tick it where the run stands against a wall that it can be fixed to.",
            ),
        ),
        is_open=True,
    ),
    FormSection(
        "Limits",
        (
            count(
                "limits.bay_count",
                "Drawer bays",
                "Exactly so many drawer bays. Empty: the fewest that hold every box.",
                1,
                MOST_BAYS,
                "as few as hold everything",
            ),
            count(
                "limits.upright_rows",
                "Hole rows in an upright",
                "Exactly so many rows, which sets the height. Empty: the lowest run that holds every box.",
                1,
                MOST_ROWS,
                "as few as hold everything",
            ),
            count(
                "limits.drawers_per_bay",
                "Drawers in a bay",
                "At most so many drawers in one bay. Empty: as many as fit.",
                1,
                MOST_ROWS,
                "as many as fit",
            ),
            length(
                "limits.bay_box_width_mm",
                "Box width the bays are made for",
                "Width of box that the drawers are made for. Empty: the widest box in the inventory.",
                "as wide as the widest box",
            ),
            FormEntry(
                "limits.other_box_widths_mm",
                "Other widths for bays",
                "Further widths of box that some bays may be made for, separated by semicolons. Empty: one width.",
                LengthsKind("all bays of one width"),
            ),
            length(
                "limits.worktop_least_mm",
                "Worktop at least",
                "The top's upper side must be at least so high over the floor. Empty: however low.",
                "however low",
            ),
            length(
                "limits.worktop_most_mm",
                "Worktop at most",
                "The top's upper side must be at most so high over the floor. Empty: up to the height limit.",
                "up to the height limit",
            ),
            count(
                "limits.spare_rows",
                "Spare rows",
                "So many usable hole rows of the run must stay free for what comes later, wherever they are.",
                0,
                MOST_BAYS * MOST_ROWS,
            ),
            flag(
                "limits.shelf_bay",
                "Shelf bay in the rest of the wall",
                "Tick it to turn what is left of the wall into a bay with adjustable shelves.",
            ),
            count("limits.shelf_count", "Shelves in it", "Adjustable shelves in the shelf bay.", 0, 50),
            length(
                "limits.shelf_bay_least_width_mm",
                "Least width of a shelf bay",
                "A rest narrower than this becomes no shelf bay.",
            ),
            length(
                "limits.shelf_bay_clear_width_mm",
                "Clear width of the shelf bay",
                "Clear width that the shelf bay shall have. Empty: whatever the drawer bays leave.",
                "what the drawer bays leave",
            ),
            length(
                "limits.shelf_play_mm", "Air at each end of a shelf", "Air at each end of a shelf, so that it goes in."
            ),
        ),
        is_open=True,
    ),
    FormSection(
        "Uprights, base and top",
        (
            choice(
                "construction.uprights",
                "Uprights",
                "Whether two bays share the upright between them, or each bay is a carcass of its own.",
                UPRIGHTS,
            ),
            length(_B + "upright_mm", "Upright thickness", _THICKNESS),
            length(_B + "base_mm", "Base thickness", f"The board that the uprights stand on. {_THICKNESS}"),
            length(_B + "top_mm", "Top thickness", f"The board that lies on the uprights. {_THICKNESS}"),
            length(_B + "shelf_mm", "Shelf thickness", _THICKNESS),
            length(
                "construction.top.overhang_front_mm",
                "Front overhang of the top",
                "How far the top stands out at the front.",
            ),
            length(
                "construction.top.overhang_side_mm",
                "Side overhang of the top",
                "How far the top stands out at each end.",
            ),
            length(
                _B + "longest_mm",
                "Longest board",
                "The longest piece to be had; a longer top, base or plinth is joined over an upright.",
            ),
        ),
    ),
    FormSection(
        "Drawers",
        (
            length(_B + "drawer_side_mm", "Drawer side thickness", f"Sides and rails. {_THICKNESS}"),
            length(_B + "drawer_bottom_mm", "Drawer bottom thickness", _THICKNESS),
            length(_D + "side_height_mm", "Drawer side height", "Height of the tray's sides."),
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
    ),
    FormSection(
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
    ),
    FormSection(
        "Hole rows",
        (
            length(
                _H + "pitch_mm", "Pitch of the hole rows", "From one hole row to the next; 32 mm is common practice."
            ),
            choice(
                _H + "first_row_rule",
                "First row lies",
                "Where the first hole row lies over the upright's lower end.",
                FIRST_ROWS,
            ),
            length(_H + "first_row_mm", "First row that is set", "Counts where the first row lies at the height set."),
            length(
                _H + "front_setback_mm", "Front row set-back", "From the upright's front edge to the front hole line."
            ),
            length(_H + "rear_setback_mm", "Rear row set-back", "From the upright's rear edge to the rear hole line."),
        ),
    ),
    FormSection(
        "Stand and back",
        (
            choice("construction.standing.kind", "Stands on", "What lifts the base off the floor.", STANDS),
            length("construction.standing.height_mm", "Height of plinth or feet", "From the floor to the base."),
            length(
                "construction.standing.plinth_setback_mm",
                "Plinth set back",
                "How far the plinth stands behind the base's front edge; room for the toes.",
            ),
            length(_B + "plinth_mm", "Plinth thickness", _THICKNESS),
            choice("construction.rear.kind", "Back", "What closes or stiffens the rear.", BACKS),
            length(_B + "back_mm", "Back thickness", f"Counts where there is a full back. {_THICKNESS}"),
            length("construction.rear.brace_width_mm", "Width of a brace", "Counts where two braces hold the rear."),
            length(_B + "brace_mm", "Brace thickness", _THICKNESS),
        ),
    ),
    SAFETY,
)


ENTRIES: dict[str, FormEntry] = {entry.path: entry for section in SECTIONS for entry in section.entries}
"""Every entry by its path."""


def value_at(project: object, path: str) -> object:
    """The value at a dotted path of the project; AttributeError where there is none."""
    value = project
    for name in path.split("."):
        value = getattr(value, name)
    return value
