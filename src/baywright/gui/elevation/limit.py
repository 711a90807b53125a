"""How the space is painted: floor, ends of the wall and height limit, over everything, as the run may reach beyond."""

from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen

from baywright.gui.elevation.captions import short_length
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.frame import Frame
from baywright.gui.elevation.lettering import Line, draw_lines, smaller, text_width
from baywright.gui.elevation.pixels import in_pixels

_BEYOND_PX = 8.0


def paint_limits(painter: QPainter, frame: Frame, style: FaceStyle) -> None:
    """Paint the floor, and the limits of the space as dashed lines with their words."""
    colours = style.colours
    with in_pixels(painter) as pixels:
        space = pixels.rect(frame.wall)
        painter.setPen(QPen(QColor(colours.limit), 1.4, Qt.PenStyle.DashLine))
        painter.drawLines([
            QLineF(space.topLeft(), space.topRight()),
            QLineF(space.topLeft(), space.bottomLeft()),
            QLineF(space.topRight(), space.bottomRight()),
        ])  # fmt: skip
        floor_right = max(space.right(), pixels.x(frame.top.right))
        painter.setPen(QPen(QColor(colours.dimension), 2.0))
        painter.drawLine(QLineF(space.left() - _BEYOND_PX, space.bottom(), floor_right + _BEYOND_PX, space.bottom()))
        font = smaller(style.font, 0.9)
        text = f"height limit {short_length(frame.wall.height, style.unit)}"
        width, height = text_width(text, font) + 6.0, QFontMetricsF(font).height()
        place = QRectF(space.right() - width, space.top() - height - 1.0, width, height)
        painter.fillRect(place, QColor(colours.ground))
        draw_lines(painter, place, [Line(text, font, QColor(colours.limit))])
