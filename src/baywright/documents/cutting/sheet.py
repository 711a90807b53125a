"""One sheet to scale: its parts with numbers and sizes, what is left, the cuts with their numbers.

Laws: places and sizes come from the layout, nothing is measured here; pieces, rests and waste are told apart by
hatching and words, so that a black-and-white print shows all; no text runs over its piece.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from baywright.documents.lengths import plain_length
from baywright.documents.lettering import width_of
from baywright.documents.sketch import FAINT, INK, Scale, Sketch
from baywright.model.count import count_words
from baywright.model.cutting import CutPiece, RestPiece, SawCut, SheetLayout
from baywright.model.length import LengthUnit

MARGIN = 22.0
PICTURE_WIDTH, _MOST_HEIGHT, _HEADING, _FOOT = 790.0, 400.0, 42.0, 34.0
_SIZES = (7.5, 6.5, 5.5, 4.6)
_PITCH, _AIR = 1.25, 3.0
_PIECE, _KEPT, _WASTE = "#f4eddc", "white", "#e4e6ea"
_KEPT_HATCH, _WASTE_HATCH = "//", "xxxx"


@dataclass(frozen=True)
class Words:
    """What a drawing of a sheet says that does not stand in its layout."""

    material: str
    unit: LengthUnit
    names: Mapping[str, str]
    """The parts' names by their numbers."""
    grain_runs: bool = True

    def length(self, length_mm: float) -> str:
        """A length as written on the drawing."""
        return plain_length(length_mm, self.unit)

    def size(self, length_mm: float, width_mm: float) -> str:
        """Two lengths, the one along the sheet first."""
        return f"{self.length(length_mm)} × {self.length(width_mm)}"


def picture_height(layout: SheetLayout) -> float:
    """Height in points that the drawing of a layout takes, heading and foot included."""
    return _HEADING + layout.width_mm * _points_per_mm(layout) + _FOOT


def sheet_drawing(layout: SheetLayout, words: Words) -> Sketch:
    """The drawing of one sheet, as wide as a page."""
    sheet = Sketch(PICTURE_WIDTH, picture_height(layout))
    draw_sheet(sheet, layout, words, upper=sheet.height)
    return sheet


def draw_sheet(sheet: Sketch, layout: SheetLayout, words: Words, *, upper: float) -> None:
    """Draw a layout onto a sheet, its heading's upper edge at `upper` points."""
    per_mm = _points_per_mm(layout)
    scale = Scale(per_mm, MARGIN, upper - _HEADING - layout.width_mm * per_mm)
    _heading(sheet, layout, words, upper)
    sheet.rectangle(
        scale.x(0.0), scale.y(0.0), layout.length_mm * per_mm, layout.width_mm * per_mm, fill="white", line=1.1
    )
    for rest in layout.rests:
        _rest(sheet, scale, rest, words)
    for piece in layout.pieces:
        _piece(sheet, scale, piece, words)
    _cut_numbers(sheet, scale, layout)
    _foot(sheet, scale, layout, words)


def _points_per_mm(layout: SheetLayout) -> float:
    return min((PICTURE_WIDTH - 2 * MARGIN) / layout.length_mm, _MOST_HEIGHT / layout.width_mm)


def _heading(sheet: Sketch, layout: SheetLayout, words: Words, upper: float) -> None:
    room = sheet.width - 2 * MARGIN
    source = "owned" if layout.is_owned else "to buy"
    name = f" “{layout.sheet_name}”" if layout.sheet_name else ""
    sheet.text(MARGIN, upper - 13.0, f"{layout.number}: {words.material}", 10.5, room=room * 0.6, bold=True)
    right = f"{words.size(layout.length_mm, layout.width_mm)} {_unit(words.unit)}, {source}{name}"
    sheet.text(sheet.width - MARGIN, upper - 13.0, right, 8.0, across="right", room=room * 0.38)
    pieces = sum(piece.length_mm * piece.width_mm for piece in layout.pieces)
    facts = [
        count_words(len(layout.pieces), "piece"),
        f"{pieces / (layout.length_mm * layout.width_mm):.0%} of the sheet",
        f"{count_words(len(layout.cuts), 'cut')} in {count_words(layout.stages, 'stage')}",
    ]
    if words.grain_runs:
        facts.append("grain runs from left to right")
    if layout.trim_mm > 0:
        facts.append(f"{words.length(layout.trim_mm)} {_unit(words.unit)} trimmed off all round")
    sheet.text(MARGIN, upper - 29.0, "; ".join(facts), 7.5, room=room, colour=INK)


def _unit(unit: LengthUnit) -> str:
    return "inches" if unit is LengthUnit.INCH else "mm"


def _piece(sheet: Sketch, scale: Scale, piece: CutPiece, words: Words) -> None:
    per_mm = scale.points_per_mm
    left, lower = scale.x(piece.x_mm), scale.y(piece.y_mm)
    width, height = piece.length_mm * per_mm, piece.width_mm * per_mm
    sheet.rectangle(left, lower, width, height, fill=_PIECE, line=0.8)
    number = f"{piece.part_number} · {piece.piece}"
    size = words.size(piece.length_mm, piece.width_mm)
    name = words.names.get(piece.part_number, "")
    turned = "turned" if piece.is_turned else ""
    lines = [(number, True), (size, False), *((line, False) for line in (name, turned) if line)]
    _write(sheet, left, lower, width, height, lines)


def _rest(sheet: Sketch, scale: Scale, rest: RestPiece, words: Words) -> None:
    per_mm = scale.points_per_mm
    left, lower = scale.x(rest.x_mm), scale.y(rest.y_mm)
    width, height = rest.length_mm * per_mm, rest.width_mm * per_mm
    hatch, fill = (_KEPT_HATCH, _KEPT) if rest.is_reusable else (_WASTE_HATCH, _WASTE)
    sheet.rectangle(left, lower, width, height, fill=fill, edge=FAINT, line=0.5, hatch=hatch)
    if not rest.is_reusable:
        return
    lines = [("keep", True), (words.size(rest.length_mm, rest.width_mm), False)]
    wide = max(width_of(line, _SIZES[0], bold) for line, bold in lines) + 2 * _AIR
    high = 2 * _SIZES[0] * _PITCH + _AIR
    if wide <= width and high <= height:  # words never stand on a hatching
        sheet.blank(left + (width - wide) / 2, lower + (height - high) / 2, wide, high)
        _write(sheet, left, lower, width, height, lines)


def _write(
    sheet: Sketch, left: float, lower: float, width: float, height: float, lines: list[tuple[str, bool]]
) -> None:
    """As many of the lines as have room, in the largest letters in which the first has; upright where only that helps.

    Where one line is all the room there is, the second stands beside the first if it can.
    """
    for upright in (False, True):
        along, across = (height, width) if upright else (width, height)
        for size in _SIZES:
            if width_of(lines[0][0], size, True) + 2 * _AIR <= along and size * _PITCH <= across:
                shown = _fitting(lines, size, along - 2 * _AIR, across)
                _stack(sheet, left + width / 2, lower + height / 2, shown, size, upright)
                return


def _fitting(lines: list[tuple[str, bool]], size: float, along: float, across: float) -> list[tuple[str, bool]]:
    most = max(1, int((across - 1.0) // (size * _PITCH)))
    beside = f"{lines[0][0]}: {lines[1][0]}" if len(lines) > 1 else ""
    if most == 1 and beside and width_of(beside, size, True) <= along:
        return [(beside, True)]
    shown = [line for line in lines if width_of(line[0], size, line[1]) <= along]
    return shown[:most]


def _stack(sheet: Sketch, x: float, y: float, lines: list[tuple[str, bool]], size: float, upright: bool) -> None:
    pitch = size * _PITCH
    first = pitch * (len(lines) - 1) / 2
    for index, (line, bold) in enumerate(lines):
        away = first - index * pitch
        place = (x - away, y) if upright else (x, y + away)
        sheet.text(*place, line, size, bold=bold, across="center", upright=upright)


def _cut_numbers(sheet: Sketch, scale: Scale, layout: SheetLayout) -> None:
    """The number of each cut of the whole sheet, at the edge where the blade enters."""
    size, last = 6.0, {True: float("-inf"), False: float("-inf")}
    for cut in layout.cuts:
        if not _is_of_whole(cut, layout):
            continue
        across = cut.is_across
        place = scale.x(cut.at_mm) if across else scale.y(cut.at_mm)
        if abs(place - last[across]) < size * 1.6:
            continue
        last[across] = place
        if across:
            sheet.line((place, scale.y(0.0) - 4.0), (place, scale.y(0.0)), 0.7)
            sheet.text(place, scale.y(0.0) - 8.0, str(cut.number), size, across="center")
        else:
            sheet.line((scale.x(0.0) - 4.0, place), (scale.x(0.0), place), 0.7)
            sheet.text(scale.x(0.0) - 6.0, place, str(cut.number), size, across="right")


def _is_of_whole(cut: SawCut, layout: SheetLayout) -> bool:
    """Whether a cut runs over the sheet from edge to edge, but for what was trimmed off."""
    run, whole = (cut.width_mm, layout.width_mm) if cut.is_across else (cut.length_mm, layout.length_mm)
    return run >= whole - 2 * layout.trim_mm - 1e-6


def _foot(sheet: Sketch, scale: Scale, layout: SheetLayout, words: Words) -> None:
    kept = [rest for rest in layout.rests if rest.is_reusable]
    text = "Figures at the edges are the numbers of the cuts that run through the whole sheet. Crossed: waste"
    if kept:
        text += "; hatched: rest pieces to keep, " + ", ".join(words.size(r.length_mm, r.width_mm) for r in kept)
    sheet.text(MARGIN, scale.y(0.0) - 22.0, text + ".", 6.8, room=sheet.width - 2 * MARGIN)
