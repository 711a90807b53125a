"""Bars and strips to scale, one under the other: what is cut from each, from its left end, and what is left.

Law: places and sizes come from the layouts; rests are hatched and named, so that no colour is needed.
"""

from collections.abc import Sequence

from baywright.documents.cutting.sheet import MARGIN, PICTURE_WIDTH, Words
from baywright.documents.lettering import width_of
from baywright.documents.sketch import FAINT, Sketch
from baywright.model.cutting import BarCutting, BarLayout

_HEADING, _LINE, _BAR, _LABEL = 36.0, 30.0, 15.0, 118.0
BARS_A_PAGE = 15


def bar_drawings(cutting: BarCutting, words: Words, page: tuple[float, float] | None = None) -> list[Sketch]:
    """The bars of one kind, a sheet for each fifteen: of a page's width and height in points, or as large as needed."""
    layouts = cutting.layouts
    return [
        _drawing(cutting.name, layouts[first : first + BARS_A_PAGE], words, page)
        for first in range(0, len(layouts), BARS_A_PAGE)
    ]


def _drawing(name: str, layouts: Sequence[BarLayout], words: Words, page: tuple[float, float] | None) -> Sketch:
    sheet = Sketch(*(page or (PICTURE_WIDTH, _HEADING + _LINE * len(layouts) + 8.0)))
    sheet.text(MARGIN, sheet.height - 14.0, name, 10.5, room=sheet.width - 2 * MARGIN, bold=True)
    longest = max(layout.length_mm for layout in layouts)
    per_mm = (sheet.width - 2 * MARGIN - _LABEL) / longest
    for index, layout in enumerate(layouts):
        _bar(sheet, layout, sheet.height - _HEADING - _LINE * (index + 1) + 8.0, per_mm, words)
    return sheet


def _bar(sheet: Sketch, layout: BarLayout, lower: float, per_mm: float, words: Words) -> None:
    middle, left = lower + _BAR / 2, MARGIN + _LABEL
    source = "owned" if layout.is_owned else "to buy"
    sides = [words.length(side) for side in (layout.length_mm, layout.width_mm) if side is not None]
    sheet.text(MARGIN, middle + 4.0, f"{layout.number}: {' × '.join(sides)}", 7.5, room=_LABEL, bold=True)
    named = f"{source} “{layout.bar_name}”" if layout.bar_name else source
    sheet.text(MARGIN, middle - 5.0, named, 6.5, room=_LABEL - 6.0)
    sheet.rectangle(left, lower, layout.length_mm * per_mm, _BAR, fill="white", line=0.9)
    for piece in layout.pieces:
        start, length = left + piece.from_mm * per_mm, piece.length_mm * per_mm
        sheet.rectangle(start, lower, length, _BAR, fill="#f4eddc", line=0.7)
        choices = (f"{piece.part_number}: {words.length(piece.length_mm)}", piece.part_number)
        shown = next((text for text in choices if width_of(text, 6.0) <= length - 2.0), "")
        sheet.text(start + length / 2, middle, shown, 6.0, across="center")
    end = max((piece.from_mm + piece.length_mm for piece in layout.pieces), default=0.0)
    start, width = left + end * per_mm, (layout.length_mm - end) * per_mm
    if width > 0.5:
        sheet.rectangle(
            start, lower, width, _BAR, edge=FAINT, line=0.4, hatch="//" if layout.is_rest_reusable else "xxxx"
        )
    text = f"keep {words.length(layout.rest_mm)}"
    wide = width_of(text, 6.0) + 4.0
    if layout.is_rest_reusable and wide <= width:
        sheet.blank(start + (width - wide) / 2, lower + 3.0, wide, _BAR - 6.0)
        sheet.text(start + width / 2, middle, text, 6.0, across="center")
