"""The parts of the run in the picture: where those with a number are seen, and how chosen ones stand out.

Laws: a part stands out by a thick outline and its number in words, never by colour alone; what lies behind others is
outlined in broken lines. Places along the wall come from the part itself where it has them.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen

from baywright.gui.elevation.area import Area
from baywright.gui.elevation.drawers import Drawer
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.frame import Frame
from baywright.gui.elevation.fronts import front_area
from baywright.gui.elevation.lettering import text_width
from baywright.gui.elevation.pixels import in_pixels
from baywright.model.making import FrontPanel, Part

OUTLINE = 3.0
_SAME_MM = 0.01
_IN_FRONT = "STBUPE"
"""First letters of the boards that are seen, and can be pointed at, from before the run."""


@dataclass(frozen=True)
class ShownPart:
    """A chosen part: its number, where it is, and whether it lies behind what is seen there."""

    number: str
    areas: tuple[Area, ...]
    is_behind: bool = False


def shown_part(part: Part, frame: Frame, drawers: Iterable[Drawer], fronts: Iterable[FrontPanel] = ()) -> ShownPart:
    """Where the pieces of a part are; no areas for what cannot be told apart in the picture."""
    letter = part.number[:1]
    if letter == "D":
        return ShownPart(part.number, _of_drawers(part, drawers), is_behind=part.number.startswith("D2"))
    if letter == "F":
        return ShownPart(part.number, tuple(front_area(front) for front in fronts if front.number == part.number))
    if letter == "R":
        return ShownPart(part.number, _of_rear(part, frame), is_behind=True)
    return ShownPart(part.number, part_areas(part, frame))


def part_areas(part: Part, frame: Frame) -> tuple[Area, ...]:
    """Where the boards of a part are seen from before the run; nothing for other parts."""
    match part.number[:1]:
        case "S":
            return frame.shelves
        case "T":
            return _along(part, frame.tops)
        case "B":
            return _along(part, frame.bases)
        case "U":
            return _uprights(part, frame)
        case "P":
            return _along(part, frame.stand) if part.number.startswith("P1") else ()
        case "E":
            return _end_panels(part, frame)
        case _:
            return ()


def part_at(x_mm: float, y_mm: float, parts: Sequence[Part], frame: Frame) -> Part | None:
    """The part that is seen at a place of the picture; None where there is none that can be pointed at."""
    for part in parts:
        if any(a.left <= x_mm <= a.right and a.bottom <= y_mm <= a.top for a in part_areas(part, frame)):
            return part
    return None


def parts_in_reach(parts: Sequence[Part], frame: Frame) -> tuple[Part, ...]:
    """The parts that can be chosen in the picture, in the order of the list."""
    return tuple(part for part in parts if part.number[:1] in _IN_FRONT and part_areas(part, frame))


def _along(part: Part, boards: Sequence[Area]) -> tuple[Area, ...]:
    """The pieces of a board that runs along the wall, cut out of the boards that are drawn."""
    if not part.lefts_mm:
        return tuple(boards)
    found = []
    for left in part.lefts_mm:
        middle = left + part.length_mm / 2
        board = next((b for b in boards if b.left - _SAME_MM <= middle <= b.right + _SAME_MM), None)
        if board is not None:
            found.append(Area(left, board.bottom, part.length_mm, board.height))
    return tuple(found)


def _uprights(part: Part, frame: Frame) -> tuple[Area, ...]:
    """The uprights of a part by their places along the wall."""
    return tuple(
        upright for upright in frame.uprights if any(abs(upright.left - left) < _SAME_MM for left in part.lefts_mm)
    )


def _end_panels(part: Part, frame: Frame) -> tuple[Area, ...]:
    """Those of the same height at the same end: the left one touches an upright with its right face."""
    lefts = [upright.left for upright in frame.uprights]
    return tuple(
        panel
        for panel in frame.end_panels
        if abs(panel.height - part.length_mm) < _SAME_MM
        and any(abs(panel.right - left) < _SAME_MM for left in lefts) == part.number.startswith("E1L")
    )


def _of_drawers(part: Part, drawers: Iterable[Drawer]) -> tuple[Area, ...]:
    """The pieces of the drawers in the bays of a part: its sides, its bottom, or the whole drawer."""
    found: list[Area] = []
    for drawer in _made_in(part, drawers):
        if part.number.startswith("D1"):
            found += drawer.areas.sides
        else:
            found.append(drawer.areas.bottom if part.number.startswith("D3") else drawer.areas.outside)
    return tuple(found)


def _of_rear(part: Part, frame: Frame) -> tuple[Area, ...]:
    """Rails and braces by their places along the wall: the lower brace on the base, the others under the tops."""
    found = []
    for left in part.lefts_mm:
        middle = left + part.length_mm / 2
        top = next((t for t in frame.tops if t.left <= middle <= t.right), frame.tops[0])
        low = frame.bases[0].top if part.number.startswith("R3") else top.bottom - part.width_mm
        found.append(Area(left, low, part.length_mm, part.width_mm))
    return tuple(found)


def _made_in(part: Part, drawers: Iterable[Drawer]) -> Iterable[Drawer]:
    bays = set(part.bays)
    return (d for d in drawers if d.has_tray and not d.is_wished and (not bays or d.bay in bays))


def paint_parts(painter: QPainter, shown: Iterable[ShownPart], style: FaceStyle) -> None:
    """Outline chosen parts and write the number of each beside the first of its pieces."""
    with in_pixels(painter) as pixels:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setFont(style.font)
        for part in shown:
            stroke = Qt.PenStyle.DashLine if part.is_behind else Qt.PenStyle.SolidLine
            painter.setPen(QPen(QColor(style.colours.selected_line), OUTLINE, stroke))
            for area in part.areas:
                painter.drawRect(pixels.rect(area).adjusted(-1, -1, 1, 1))
            if part.areas:
                _paint_number(painter, pixels.rect(part.areas[0]), part.number, style)


def _paint_number(painter: QPainter, rect: QRectF, number: str, style: FaceStyle) -> None:
    """The number on a ground of its own, over the upper left corner of the piece."""
    height = QFontMetricsF(style.font).height()
    place = QRectF(rect.left() + 4.0, rect.top() - height - 3.0, text_width(number, style.font) + 8.0, height)
    painter.fillRect(place, QColor(style.colours.ground))
    painter.drawText(place.topLeft() + QPointF(4.0, QFontMetricsF(style.font).ascent()), number)
