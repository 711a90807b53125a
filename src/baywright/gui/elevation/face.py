"""How a drawer with its box is painted: tray, box, air over it, runners, lock and trouble signs, text.

Laws: painted in pixels, outlines inside their areas; a state is told by sign, line and word, never by colour alone.
"""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QBrush, QColor, QFont, QFontMetricsF, QPainter, QPainterPath, QPen, QPolygonF

from baywright.gui.elevation.captions import drawer_details
from baywright.gui.elevation.colours import ElevationColours
from baywright.gui.elevation.drawers import Drawer, DrawerAreas
from baywright.gui.elevation.lettering import SLACK_PX, Line, bold, draw_lines, draw_upright_text, smaller, split_in_two
from baywright.gui.elevation.pixels import Pixels, in_pixels
from baywright.model.arrangement import Lock
from baywright.model.length import LengthUnit

SIGN_WIDTH_PX = 14.0
_LEAST_SIGN_HEIGHT_PX = 12.0
_LEAST_SIGN_FACE_PX = 30.0
_WIDE_FACE_PX, _NARROW_FACE_PX = 150.0, 96.0
_LOW_FACTORS = (0.82, 0.74, 0.66, 0.58)
"""Steps by which the label of a low face gets smaller; lower ones have their label in the tool tip only."""
_LEAST_FACE_PX = 20.0
"""Narrower faces show nothing but what they are and whether something is wrong; runs of hundreds of bays have such."""


@dataclass(frozen=True)
class FaceStyle:
    """What a face is painted with."""

    colours: ElevationColours
    font: QFont
    unit: LengthUnit


def paint_drawer(painter: QPainter, drawer: Drawer, style: FaceStyle, *, selected: bool) -> None:
    """Paint one drawer in its place."""
    with in_pixels(painter) as pixels:
        if pixels.scale * drawer.areas.box.width < _LEAST_FACE_PX:
            if drawer.has_tray:
                painter.fillRect(pixels.rect(drawer.areas.outside), QColor(style.colours.tray))
            _paint_box(painter, pixels.rect(drawer.areas.box), drawer, style.colours, selected=selected)
            return
        if drawer.has_tray:
            _paint_tray(painter, drawer.areas, style.colours, pixels)
        _paint_clearance(painter, pixels.rect(drawer.areas.clearance), style.colours)
        face = pixels.rect(drawer.areas.box)
        _paint_box(painter, face, drawer, style.colours, selected=selected)
        if drawer.is_behind:
            _paint_strip_label(painter, face, drawer, style, selected=selected)
            return
        inner = face.adjusted(4, 1, -4, -1)
        if face.width() >= _LEAST_SIGN_FACE_PX and face.height() >= _LEAST_SIGN_HEIGHT_PX:
            inner.setLeft(inner.left() + _paint_signs(painter, inner, drawer, style.colours, selected=selected))
        draw_lines(painter, inner, face_lines(drawer, style, inner.size(), selected=selected))


def face_lines(drawer: Drawer, style: FaceStyle, room: QSizeF, *, selected: bool) -> list[Line]:
    """The text of a face: label, then details as far as there is room; a long label takes two lines of a high face."""
    colours = style.colours
    strong = QColor(colours.selected_text if selected else colours.box_text)
    weak = QColor(colours.selected_text if selected else colours.box_detail)
    small = smaller(style.font)
    font = label_font(style.font, room)
    label = Line(drawer.box.label, font, strong)
    is_high = room.height() >= QFontMetricsF(font).height() * 2 + QFontMetricsF(small).height()
    labels = split_in_two(label, room.width()) if is_high else [label]
    details = drawer_details(drawer, style.unit)
    return [*labels, *(Line(wordings[0], small, weak, wordings[1:]) for wordings in details)]


def _paint_strip_label(painter: QPainter, face: QRectF, drawer: Drawer, style: FaceStyle, *, selected: bool) -> None:
    """The label of a box that stands behind another, read from below upwards."""
    font = smaller(style.font, 0.82)
    metrics = QFontMetricsF(font)
    if metrics.height() > face.width() + SLACK_PX:
        return
    colour = QColor(style.colours.selected_text if selected else style.colours.box_text)
    text = metrics.elidedText(drawer.box.label, Qt.TextElideMode.ElideRight, face.height() - 6.0)
    draw_upright_text(painter, face.center(), Line(text, font, colour))


def label_font(font: QFont, room: QSizeF) -> QFont:
    """The type of the label: lighter in narrow faces, smaller in low ones; the same for all boxes of one size."""
    if room.width() >= _WIDE_FACE_PX:
        chosen = bold(font)
    elif room.width() >= _NARROW_FACE_PX:
        chosen = bold(smaller(font))
    else:
        chosen = smaller(font)
    if QFontMetricsF(chosen).height() <= room.height() + SLACK_PX:
        return chosen
    for factor in _LOW_FACTORS:
        chosen = smaller(font, factor)
        if QFontMetricsF(chosen).height() <= room.height() + SLACK_PX:
            break
    return chosen


def _paint_tray(painter: QPainter, areas: DrawerAreas, colours: ElevationColours, pixels: Pixels) -> None:
    painter.setPen(QPen(QColor(colours.runner), 2.0))
    for runner in areas.runners:
        y = pixels.y(runner.bottom)
        painter.drawLine(QPointF(pixels.x(runner.left), y), QPointF(pixels.x(runner.right), y))
    for piece in (*areas.sides, areas.bottom):
        painter.fillRect(pixels.rect(piece), QColor(colours.tray))
    painter.setPen(QPen(QColor(colours.board_line), 1.0))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(pixels.rect(areas.outside).adjusted(0.5, 0.5, -0.5, -0.5))


def _paint_clearance(painter: QPainter, band: QRectF, colours: ElevationColours) -> None:
    painter.fillRect(band, QBrush(QColor(colours.clearance), Qt.BrushStyle.Dense6Pattern))
    painter.setPen(QPen(QColor(colours.clearance), 1.0, Qt.PenStyle.DashLine))
    painter.drawLine(band.topLeft(), band.topRight())


def _paint_box(painter: QPainter, face: QRectF, drawer: Drawer, colours: ElevationColours, *, selected: bool) -> None:
    width, line = 1.0, colours.box_line
    if selected:
        width, line = 3.0, colours.selected_line
    fill = colours.bay if drawer.is_wished else colours.box
    painter.fillRect(face, QColor(colours.selected if selected else fill))
    if drawer.is_behind:
        painter.fillRect(face, QBrush(QColor(colours.clearance), Qt.BrushStyle.Dense7Pattern))
    # What is only wished for stands there in broken lines.
    stroke = Qt.PenStyle.DashLine if drawer.is_wished else Qt.PenStyle.SolidLine
    _outline(painter, face, QPen(QColor(line), max(width, 1.6) if drawer.is_wished else width, stroke))
    if drawer.troubles:
        inside = face.adjusted(width, width, -width, -width) if selected else face
        _outline(painter, inside, QPen(QColor(colours.trouble), 2.0, Qt.PenStyle.DashLine))


def _outline(painter: QPainter, rect: QRectF, pen: QPen) -> None:
    """A line along the inside of a rectangle."""
    half = pen.widthF() / 2
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(rect.adjusted(half, half, -half, -half))


def _paint_signs(
    painter: QPainter, face: QRectF, drawer: Drawer, colours: ElevationColours, *, selected: bool
) -> float:
    """Paint the signs at the face's left; returns the width they take."""
    used = 0.0
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    if drawer.troubles:
        paint_warning(painter, QPointF(face.left() + SIGN_WIDTH_PX / 2, face.center().y()), QColor(colours.trouble))
        used += SIGN_WIDTH_PX
    if drawer.lock is not Lock.NONE:
        colour = QColor(colours.selected_text if selected else colours.box_text)
        paint_padlock(painter, QPointF(face.left() + used + SIGN_WIDTH_PX / 2, face.center().y()), colour)
        used += SIGN_WIDTH_PX
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    return used


def paint_padlock(painter: QPainter, centre: QPointF, colour: QColor) -> None:
    """A small padlock."""
    painter.setPen(QPen(colour, 1.6))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawArc(QRectF(centre.x() - 2.6, centre.y() - 5.5, 5.2, 7.0), 0, 180 * 16)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    painter.drawRoundedRect(QRectF(centre.x() - 4.2, centre.y() - 1.6, 8.4, 6.8), 1.2, 1.2)


def paint_warning(painter: QPainter, centre: QPointF, colour: QColor) -> None:
    """A small triangle with an exclamation mark."""
    triangle = QPainterPath()
    x, y = centre.x(), centre.y()
    triangle.addPolygon(QPolygonF([QPointF(x, y - 5.5), QPointF(x + 5.8, y + 4.8), QPointF(x - 5.8, y + 4.8)]))
    triangle.closeSubpath()
    painter.setPen(QPen(colour, 1.4))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPath(triangle)
    painter.drawLine(QPointF(x, y - 2.0), QPointF(x, y + 1.4))
    painter.drawPoint(QPointF(x, y + 3.2))
