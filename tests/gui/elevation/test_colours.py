"""Every text of the elevation can be read, and every line that carries meaning seen, in light and dark."""

import pytest
from PySide6.QtGui import QColor

from baywright.gui.contrast import LEAST_FOR_TEXT, contrast
from baywright.gui.elevation.colours import DARK_ELEVATION, LIGHT_ELEVATION, ElevationColours

LEAST_FOR_LINES = 3.0
"""WCAG 2.1, section 1.4.11, from memory."""

SETS = pytest.mark.parametrize("colours", [LIGHT_ELEVATION, DARK_ELEVATION], ids=["light", "dark"])


def _ratio(colours: ElevationColours, one: str, other: str) -> float:
    def colour(name: str) -> QColor:
        return QColor(getattr(colours, name) if hasattr(colours, name) else getattr(colours.window, name))

    return contrast(colour(one), colour(other))


@SETS
@pytest.mark.parametrize(
    ("text", "ground"),
    [
        ("box_text", "box"),
        ("box_detail", "box"),
        ("selected_text", "selected"),
        ("dimension", "ground"),
        ("limit", "ground"),
        ("zone", "ground"),
        ("change", "ground"),
        ("text", "ground"),
        ("text", "base"),
        ("text", "note_ground"),
        ("fits", "fits_fill"),
        ("fits", "ground"),
        ("box_text", "board"),
        ("row", "board"),
        ("dimension", "note_ground"),
        ("trouble", "trouble_fill"),
        ("trouble", "window"),
    ],
)
def test_texts_can_be_read(colours: ElevationColours, text: str, ground: str) -> None:
    if ground == "window":
        assert contrast(QColor(colours.trouble), QColor(colours.window.window)) >= LEAST_FOR_TEXT
    else:
        assert _ratio(colours, text, ground) >= LEAST_FOR_TEXT


@SETS
@pytest.mark.parametrize(
    ("line", "ground"),
    [
        ("row", "board"),
        ("change", "board"),
        ("selected_line", "board"),
        ("limit", "board"),
        ("fits", "ground"),
        ("selected_line", "ground"),
        ("selected_line", "bay"),
        ("box_line", "bay"),
        ("trouble", "box"),
        ("runner", "bay"),
        ("limit", "bay"),
        ("zone", "bay"),
        ("change", "bay"),
        ("change", "box"),
        ("zone", "board"),
        ("zone", "box"),
    ],
)
def test_lines_can_be_seen(colours: ElevationColours, line: str, ground: str) -> None:
    assert _ratio(colours, line, ground) >= LEAST_FOR_LINES
