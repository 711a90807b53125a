"""How pieces, rests and waste of a layout are painted: words and hatchings tell them apart, never colour alone."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFontMetricsF, QPainter, QPen

from baywright.gui.elevation.captions import bare_length
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.lettering import Line, bold, draw_lines, draw_upright_text, smaller, text_width

KEEP = "keep"
_AIR_PX = 3.0
_STEPS = (1.0, 0.86, 0.74, 0.64)


@dataclass(frozen=True)
class Lettered:
    """What stands on a piece: its number, then lines that follow where there is room."""

    number: str
    more: tuple[str, ...] = ()


def size_on_drawing(length_mm: float, width_mm: float, style: FaceStyle) -> str:
    """A size as short as it goes: the unit stands beside the drawing."""
    return f"{bare_length(length_mm, style.unit)} × {bare_length(width_mm, style.unit)}"


def paint_piece(painter: QPainter, rect: QRectF, words: Lettered, style: FaceStyle, *, chosen: bool) -> None:
    """A piece with its words; a chosen one in a thick outline with a sign before its number."""
    colours = style.colours
    painter.fillRect(rect, QColor(colours.selected if chosen else colours.board))
    pen = QPen(QColor(colours.selected_line if chosen else colours.board_line), 3.0 if chosen else 1.0)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    half = pen.widthF() / 2
    painter.drawRect(rect.adjusted(half, half, -half, -half))
    ink = QColor(colours.selected_text if chosen else colours.box_text)
    number = f"▸ {words.number}" if chosen else words.number
    write(painter, rect, (number, *words.more), ink, style)


def paint_rest(painter: QPainter, rect: QRectF, words: Sequence[str], style: FaceStyle, *, is_reusable: bool) -> None:
    """A rest: hatched, with words where it is worth keeping; waste is hatched crosswise and has none."""
    colours = style.colours
    painter.fillRect(rect, QColor(colours.ground))
    pattern = Qt.BrushStyle.BDiagPattern if is_reusable else Qt.BrushStyle.DiagCrossPattern
    painter.setOpacity(0.6)
    painter.fillRect(rect, QBrush(QColor(colours.fits if is_reusable else colours.clearance), pattern))
    painter.setOpacity(1.0)
    painter.setPen(QPen(QColor(colours.fits if is_reusable else colours.clearance), 1.2 if is_reusable else 0.8))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(rect.adjusted(0.5, 0.5, -0.5, -0.5))
    if is_reusable:
        write(painter, rect, words, QColor(colours.fits), style, ground=QColor(colours.ground))


def write(
    painter: QPainter,
    rect: QRectF,
    words: Sequence[str],
    ink: QColor,
    style: FaceStyle,
    *,
    ground: QColor | None = None,
) -> None:
    """As many of the lines as have room, level or upright, in the largest letters in which the first one fits."""
    room = rect.adjusted(_AIR_PX, 1.0, -_AIR_PX, -1.0)
    for upright in (False, True):
        along, across = (room.height(), room.width()) if upright else (room.width(), room.height())
        for step in _STEPS:
            font = bold(smaller(style.font, step))
            height = QFontMetricsF(font).height()
            if text_width(words[0], font) <= along and height <= across + 1.0:
                if upright:
                    whole = " ".join(words)
                    shown = whole if text_width(whole, font) <= along else words[0]
                    if ground is not None:
                        card = QRectF(0.0, 0.0, height, text_width(shown, font) + 6.0)
                        card.moveCenter(rect.center())
                        painter.fillRect(card, ground)
                    draw_upright_text(painter, rect.center(), Line(shown, font, ink))
                else:
                    _write_level(painter, room, words, (ink, ground), step, style)
                return


def _write_level(
    painter: QPainter,
    room: QRectF,
    words: Sequence[str],
    colours: tuple[QColor, QColor | None],
    step: float,
    style: FaceStyle,
) -> None:
    ink, ground = colours
    plain = smaller(style.font, step * 0.9)
    lines = [Line(words[0], bold(smaller(style.font, step)), ink)]
    fitting = (text for text in words[1:] if text and text_width(text, plain) <= room.width())
    lines += [Line(text, plain, ink) for text in fitting]
    if ground is not None:
        high = sum(QFontMetricsF(line.font).height() for line in lines)
        wide = max(text_width(line.text, line.font) for line in lines) + 6.0
        card = QRectF(0.0, 0.0, min(wide, room.width()), min(high, room.height()))
        card.moveCenter(room.center())
        painter.fillRect(card, ground)
    draw_lines(painter, room, lines)


def paint_grain(painter: QPainter, start: QPointF, style: FaceStyle) -> None:
    """An arrow along the sheet with the word “grain”."""
    font = smaller(style.font, 0.85)
    painter.setFont(font)
    painter.setPen(QPen(QColor(style.colours.dimension), 1.2))
    end = start + QPointF(34.0, 0.0)
    painter.drawLine(start, end)
    for tip, back in ((end, -5.0), (start, 5.0)):
        painter.drawLine(tip, tip + QPointF(back, 3.0))
        painter.drawLine(tip, tip + QPointF(back, -3.0))
    painter.drawText(end + QPointF(6.0, QFontMetricsF(font).ascent() / 2 - 1.0), "grain")
