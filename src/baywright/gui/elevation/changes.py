"""What a re-plan would change, marked on the elevation: a number at each box that moves, an outline where it stands on
the other side of the change, and an arrow from the old place to the new one.

Law: the marks carry numbers and lines, so that nothing is told by colour alone; many arrows are left out but of the
boxes that are chosen, for they would hide the run.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum
from math import atan2, cos, pi, sin

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen, QPolygonF

from baywright.gui.elevation.area import Area
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.layout import Layout
from baywright.gui.elevation.lettering import bold, smaller, text_width
from baywright.gui.elevation.pixels import Pixels, in_pixels
from baywright.model.difference import BoxMove

MOST_ARROWS = 12
"""With more boxes moving, only those that are chosen have arrows."""
_HEAD_PX = 9.0


class Side(Enum):
    """Which side of the change is drawn."""

    BEFORE = "as it is"
    AFTER = "re-planned"


@dataclass(frozen=True)
class Mark:
    """A box that moves; `before` and `after` are its faces, None where it has no place there."""

    number: int
    box_id: str
    before: Area | None
    after: Area | None


@dataclass(frozen=True)
class Changes:
    """All marks, and the side of the change that is drawn."""

    marks: tuple[Mark, ...]
    side: Side


def marks_of(moves: Iterable[BoxMove], before: Layout, after: Layout) -> tuple[Mark, ...]:
    """A mark for each move, numbered from 1, with the faces in both layouts."""

    def face(layout: Layout, box_id: str) -> Area | None:
        drawer = layout.drawer(box_id)
        return drawer.areas.box if drawer else None

    return tuple(
        Mark(number, move.box_id, face(before, move.box_id), face(after, move.box_id))
        for number, move in enumerate(moves, 1)
    )


def paint_changes(painter: QPainter, changes: Changes, style: FaceStyle, chosen: frozenset[str]) -> None:
    """Paint the marks; arrows and outlines of the chosen boxes are stronger."""
    is_after = changes.side is Side.AFTER
    with in_pixels(painter) as pixels:
        for mark in changes.marks:
            here, there = (mark.after, mark.before) if is_after else (mark.before, mark.after)
            is_chosen = mark.box_id in chosen
            if there is not None:
                _paint_outline(painter, pixels.rect(there), style, is_chosen=is_chosen)
            if is_chosen or len(changes.marks) <= MOST_ARROWS:
                _paint_arrow(painter, mark, style, pixels, is_chosen=is_chosen)
        for mark in changes.marks:
            here, there = (mark.after, mark.before) if is_after else (mark.before, mark.after)
            if there is not None:
                _paint_number(painter, mark.number, pixels.rect(there), style, is_filled=False)
            if here is not None:
                _paint_number(painter, mark.number, pixels.rect(here), style, is_filled=True)


def _paint_outline(painter: QPainter, rect: QRectF, style: FaceStyle, *, is_chosen: bool) -> None:
    painter.setPen(QPen(QColor(style.colours.change), 3.0 if is_chosen else 2.0, Qt.PenStyle.DashLine))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(rect.adjusted(1, 1, -1, -1))


def _paint_arrow(painter: QPainter, mark: Mark, style: FaceStyle, pixels: Pixels, *, is_chosen: bool) -> None:
    if mark.before is None or mark.after is None:
        return
    start, end = pixels.rect(mark.before).center(), pixels.rect(mark.after).center()
    colour = QColor(style.colours.change)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.setOpacity(1.0 if is_chosen else 0.75)
    painter.setPen(QPen(colour, 3.0 if is_chosen else 1.8))
    painter.drawLine(start, end)
    angle = atan2(end.y() - start.y(), end.x() - start.x())
    sides = [end - QPointF(cos(angle + turn) * _HEAD_PX, sin(angle + turn) * _HEAD_PX) for turn in (pi / 7, -pi / 7)]
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    painter.drawPolygon(QPolygonF([end, *sides]))
    painter.restore()


def _paint_number(painter: QPainter, number: int, face: QRectF, style: FaceStyle, *, is_filled: bool) -> None:
    """A small plate at the face's upper left corner: filled where the box is drawn, hollow on the other side."""
    font = bold(smaller(style.font, 0.8))
    text = str(number)
    height = QFontMetricsF(font).height()
    width = max(height, text_width(text, font) + 6.0)
    colour, ground = QColor(style.colours.change), QColor(style.colours.ground)
    left = face.left() + 1.0 if is_filled else face.right() - width - 1.0
    plate = QRectF(left, face.top() + 1.0, width, height)
    painter.setFont(font)
    painter.setPen(QPen(colour, 1.4))
    painter.setBrush(colour if is_filled else ground)
    painter.drawRect(plate)
    painter.setPen(ground if is_filled else colour)
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, text)
