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
_MEASURED_SIZE = 64.0
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


@lru_cache(maxsize=4096)
def _advance(letter: str, bold: bool) -> float:
    """Width of a character in parts of the font size; of one without a picture that of a full square."""
    if ord(letter) not in _glyphs():
        return 1.0
    face = get_font(_file(bold))
    face.set_size(_MEASURED_SIZE, 72)
    return float(face.load_char(ord(letter)).linearHoriAdvance) / 65536.0 / _MEASURED_SIZE


def width_of(text: str, size: float, bold: bool = False) -> float:
    """Width in points of a line of text at a font size in points; kerning, which only draws letters closer, aside."""
    return size * sum(_advance(letter, bold) for letter in text)


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


def wrapped(text: str, room: float, size: float, bold: bool = False) -> list[str]:
    """The text in lines of at most `room` points, broken between words; a longer word is shortened."""
    lines: list[str] = []
    line = ""
    for word in printable(text).split():
        longer = f"{line} {word}" if line else word
        if line and width_of(longer, size, bold) > room:
            lines.append(line)
            longer = word
        line = longer
    return [shortened(each, room, size, bold) for each in (*lines, line) if each]
