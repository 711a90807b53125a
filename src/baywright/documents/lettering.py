"""Text on drawings: measured before it is drawn, and shortened with “…” rather than left to run over something.

Laws: only the fonts that matplotlib brings along are used, so that a drawing looks alike on every machine; a
shortened text is never wider than the room it was given.
"""

from functools import lru_cache
from pathlib import Path

import matplotlib
from matplotlib.font_manager import FontProperties, get_font

ELLIPSIS = "…"
_NO_PICTURE = "□"
_FINENESS = 16
_FILES = {False: "DejaVuSans.ttf", True: "DejaVuSans-Bold.ttf"}


@lru_cache
def _file(bold: bool) -> str:
    return str(Path(matplotlib.get_data_path()) / "fonts" / "ttf" / _FILES[bold])


@lru_cache
def sized_font(size: float, bold: bool = False) -> FontProperties:
    """The drawing's own font, plain or bold, at a size in points."""
    return FontProperties(fname=_file(bold), size=size)


@lru_cache
def _glyphs() -> frozenset[int]:
    return frozenset(get_font(_file(False)).get_charmap()) & frozenset(get_font(_file(True)).get_charmap())


def printable(text: str) -> str:
    """The text on one line, with an empty square for every character that the font has no picture of."""
    return "".join(letter if ord(letter) in _glyphs() else _NO_PICTURE for letter in " ".join(text.split()))


def width_of(text: str, size: float, bold: bool = False) -> float:
    """Width in points of a text at a font size in points."""
    face = get_font(_file(bold))
    # Measured large, so that hinting to whole pixels does not round every letter.
    face.set_size(size, 72 * _FINENESS)
    face.set_text(text, 0.0)
    return float(face.get_width_height()[0]) / 64.0 / _FINENESS


def shortened(text: str, room: float, size: float, bold: bool = False) -> str:
    """The text, or as much of its beginning as fits into `room` points with “…” behind it; nothing if not even that."""
    text = printable(text)
    if width_of(text, size, bold) <= room:
        return text
    low, high = 0, len(text)
    while low < high:
        middle = (low + high + 1) // 2
        if width_of(text[:middle].rstrip() + ELLIPSIS, size, bold) <= room:
            low = middle
        else:
            high = middle - 1
    return text[:low].rstrip() + ELLIPSIS if low else ""
