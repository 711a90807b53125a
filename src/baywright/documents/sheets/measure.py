"""How wide and how high cells must be so that nothing is cut, in the spreadsheet's own units.

Laws: texts are measured in a font wider than that of the cells, of which only a part is taken off again, so that the
measure errs to the wide side.
"""

from baywright.documents.lettering import width_of
from baywright.documents.sheets.style import FONT_SIZE

_CHARACTER = 5.25
"""Points of one unit of column width: a digit of the usual font, 7 pixels of 1/96 inch."""
_PADDING = 2.6
"""Cell margins and the indent of text, in units of column width."""
_NARROWER = 0.92
"""The cells' font is about 0.88 times as wide as the one measured."""
_SLACK = 0.5
"""Points by which a text that just fits may miss by rounding."""
LINE_POINTS = 12.8


def characters(text: str, bold: bool = False) -> float:
    """Column width that shows the text on one line."""
    return max(_points(line, bold) for line in text.split("\n")) / _CHARACTER + _PADDING


def line_count(text: str, width: float, bold: bool = False) -> int:
    """Lines that the text takes when wrapped at a column width."""
    room = (width - _PADDING) * _CHARACTER + _SLACK
    return sum(_lines_of(paragraph, room, bold) for paragraph in text.split("\n"))


def _lines_of(paragraph: str, room: float, bold: bool) -> int:
    lines, used = 1, 0.0
    space = _points(" ", bold)
    for word in paragraph.split(" "):
        width = _points(word, bold)
        if used and used + space + width > room:
            lines, used = lines + 1, 0.0
        used += width + (space if used else 0.0)
        # A word longer than the line is broken wherever the line ends.
        extra = int(used // room) if room > 0 else 0
        lines, used = lines + extra, used - extra * room
    return lines


def height_for(lines: int) -> float:
    """Row height in points for so many lines."""
    return lines * LINE_POINTS + 3.0


def _points(text: str, bold: bool) -> float:
    return width_of(text, FONT_SIZE, bold) * _NARROWER
