"""Which values of the project are set in the form: path, plain label, what it is, and kind of field.

The paths are those that the command `SetField` takes. A test holds that every settable value of space, construction and
limits stands here once and that no path is wrong.
"""

from baywright.gui.dimensions.building import BUILDING
from baywright.gui.dimensions.entry import FormEntry, FormSection, choice, count, flag, length, text
from baywright.gui.dimensions.safety import SAFETY
from baywright.gui.fields.kinds import LengthsKind, NoteKind
from baywright.gui.wording import UNITS
from baywright.model.limits import MOST_BAYS, MOST_ROWS

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
    *BUILDING,
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
