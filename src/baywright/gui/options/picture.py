"""The run of one option as a small picture: boards, drawers and boxes, in the elevation's colours, without letters.

Law: all pictures are drawn to one scale, so that what is lower or shorter looks it.
"""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QTransform

from baywright.gui.elevation.area import Area
from baywright.gui.elevation.colours import ElevationColours
from baywright.gui.elevation.layout import Layout
from baywright.gui.elevation.pixels import Pixels, in_pixels

LEAST_OUTLINED_PX = 4.0
"""Boxes smaller than this are drawn without an outline, which would fill them."""


def paint_picture(painter: QPainter, layout: Layout, room: QRectF, extent: Area, colours: ElevationColours) -> None:
    """Paint the run at the bottom of `room`, its left end at the left; `extent` is what all pictures make room for."""
    frame = layout.frame
    if frame is None:
        return
    scale = min(room.width() / max(1.0, extent.width), room.height() / max(1.0, extent.height))
    left = room.left() + (room.width() - extent.width * scale) / 2 - extent.left * scale
    painter.save()
    painter.setWorldTransform(QTransform(scale, 0, 0, -scale, left, room.bottom()) * painter.worldTransform())
    with in_pixels(painter) as pixels:
        _paint_space(painter, frame.wall, pixels, colours)
        for bay in frame.bays:
            painter.fillRect(pixels.rect(bay), QColor(colours.bay))
        for board in frame.boards:
            painter.fillRect(pixels.rect(board), QColor(colours.board_line))
        for drawer in layout.drawers:
            _paint_box(painter, pixels.rect(drawer.areas.box), colours)
    painter.restore()


def _paint_space(painter: QPainter, wall: Area, pixels: Pixels, colours: ElevationColours) -> None:
    """The space that the run must fit, dashed, with the floor."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(QColor(colours.limit), 1.0, Qt.PenStyle.DashLine))
    painter.drawRect(pixels.rect(wall).adjusted(0.5, 0.5, -0.5, -0.5))
    painter.setPen(QPen(QColor(colours.dimension), 1.0))
    floor = pixels.y(0.0) - 0.5
    painter.drawLine(
        pixels.rect(wall).bottomLeft().toPoint().x(), round(floor), round(pixels.x(wall.right)), round(floor)
    )


def _paint_box(painter: QPainter, face: QRectF, colours: ElevationColours) -> None:
    painter.fillRect(face, QColor(colours.box))
    if min(face.width(), face.height()) >= LEAST_OUTLINED_PX:
        painter.setPen(QPen(QColor(colours.box_line), 1.0))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(face.adjusted(0.5, 0.5, -0.5, -0.5))
