"""How the front panels of the drawers are painted: in outline, as if they were glass, so that the boxes can be seen.

Law: painted in pixels over the drawers; each carries its part number where there is room.
"""

from collections.abc import Iterable

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen

from baywright.gui.elevation.area import Area
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.lettering import smaller, text_width
from baywright.gui.elevation.pixels import in_pixels
from baywright.model.making import FrontPanel

_GLASS = 0.10
_LEAST_WIDTH_PX, _LEAST_HEIGHT_PX = 110.0, 30.0


def front_area(panel: FrontPanel) -> Area:
    """Where a front panel hangs in the picture."""
    return Area(panel.left_mm, panel.bottom_mm, panel.width_mm, panel.height_mm)


def paint_fronts(painter: QPainter, fronts: Iterable[FrontPanel], style: FaceStyle) -> None:
    """Paint all front panels."""
    font = smaller(style.font, 0.72)
    height = QFontMetricsF(font).height()
    with in_pixels(painter) as pixels:
        painter.setFont(font)
        for panel in fronts:
            rect = pixels.rect(front_area(panel))
            painter.setOpacity(_GLASS)
            painter.fillRect(rect, QColor(style.colours.board))
            painter.setOpacity(1.0)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(QColor(style.colours.board_line), 1.6))
            painter.drawRect(rect.adjusted(0.5, 0.5, -0.5, -0.5))
            if rect.width() >= _LEAST_WIDTH_PX and rect.height() >= _LEAST_HEIGHT_PX:
                wide = text_width(panel.number, font) + 4.0
                place = QRectF(rect.right() - wide - 1.0, rect.top() + 1.5, wide, height)
                painter.fillRect(place, QColor(style.colours.ground))
                painter.setPen(QColor(style.colours.dimension))
                painter.drawText(place, Qt.AlignmentFlag.AlignCenter, panel.number)
