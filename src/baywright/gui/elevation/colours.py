"""The elevation's own colours, a light and a dark set, beside the window's (`baywright.gui.theme`).

Laws: text stands out at least 4.5 : 1 from the fill it lies on, lines that carry meaning at least 3 : 1 from the
ground; nothing is told by colour alone.
"""

from dataclasses import dataclass

from PySide6.QtGui import QPalette

from baywright.gui.theme import DARK, LIGHT, Colours, colours_of


@dataclass(frozen=True)
class ElevationColours:
    """Fills and lines as `#rrggbb`; `window` holds the roles shared with the rest of the window."""

    window: Colours
    ground: str
    """Behind everything."""
    bay: str
    """The empty bay."""
    board: str
    """Uprights, base, top, shelves, seen on their edges."""
    board_line: str
    row: str
    """Ticks of the hole rows, on boards and on the ground."""
    tray: str
    """A drawer's sides and bottom."""
    box: str
    box_line: str
    box_text: str
    box_detail: str
    selected: str
    selected_line: str
    selected_text: str
    clearance: str
    runner: str
    dimension: str
    limit: str
    """The dashed limits of the space."""
    zone: str
    """Zones of the wall: outline, hatching and label."""
    change: str
    """What a re-plan would move: outlines, arrows, numbers."""
    trouble: str
    trouble_fill: str
    fits: str
    fits_fill: str


LIGHT_ELEVATION = ElevationColours(
    window=LIGHT,
    ground="#fbfaf6",
    bay="#f1efe8",
    board="#d9c6a0",
    board_line="#8a7446",
    row="#5f4f2c",
    tray="#c9b288",
    box="#dfe7ea",
    box_line="#62747c",
    box_text="#1b2326",
    box_detail="#3f4c52",
    selected="#c4e3e3",
    selected_line="#0f5c63",
    selected_text="#10292b",
    clearance="#8fa3ab",
    runner="#4d585d",
    dimension="#4a524c",
    limit="#7a3e8c",
    zone="#2c4f8f",
    change="#9a3f00",
    trouble="#9c1c12",
    trouble_fill="#fbe6e2",
    fits="#1d6132",
    fits_fill="#dcefe0",
)
"""For the light window."""

DARK_ELEVATION = ElevationColours(
    window=DARK,
    ground="#16191b",
    bay="#1e2326",
    board="#5e4f33",
    board_line="#a48d5c",
    row="#d9c79c",
    tray="#75633f",
    box="#33424a",
    box_line="#8ea2ab",
    box_text="#f0f4f5",
    box_detail="#c6d2d7",
    selected="#1d5a60",
    selected_line="#6cc3cc",
    selected_text="#f1fbfb",
    clearance="#75878f",
    runner="#a9b6bc",
    dimension="#b6beb9",
    limit="#cf9ae0",
    zone="#9dbcf0",
    change="#ffb37a",
    trouble="#ff9d90",
    trouble_fill="#41231f",
    fits="#8cd6a0",
    fits_fill="#1d3a26",
)
"""For the dark window."""


def elevation_colours(palette: QPalette) -> ElevationColours:
    """The set that goes with a palette of the window."""
    return LIGHT_ELEVATION if colours_of(palette) is LIGHT else DARK_ELEVATION
