"""How the carried box is painted: its outline where it would land, and in words whether it fits or why not.

Law: legal and illegal differ in hatching, line and words, not in colour alone.
"""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPen

from baywright.gui.elevation.drag import Ghost
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.lettering import bold, smaller
from baywright.gui.elevation.pixels import in_pixels

FITS_SIGN, REFUSED_SIGN = "✓", "✕"
_WIDEST_LABEL_PX = 300.0
_GAP_PX = 6.0


def paint_ghost(painter: QPainter, ghost: Ghost, style: FaceStyle, room: QRectF) -> None:
    """Paint the carried box and its message; the message stays within `room`, the view's pixels."""
    colours = style.colours
    line = QColor(colours.fits if ghost.is_legal else colours.trouble)
    fill = QColor(colours.fits_fill if ghost.is_legal else colours.trouble_fill)
    with in_pixels(painter) as pixels:
        box, tray = pixels.rect(ghost.areas.box), pixels.rect(ghost.areas.outside)
        fill.setAlphaF(0.85)
        painter.setPen(QPen(line, 2.0, Qt.PenStyle.SolidLine if ghost.is_legal else Qt.PenStyle.DashLine))
        for rect in (tray, box):
            painter.setBrush(fill)
            painter.drawRect(rect.adjusted(1, 1, -1, -1))
            if not ghost.is_legal:
                painter.setBrush(QBrush(line, Qt.BrushStyle.BDiagPattern))
                painter.drawRect(rect.adjusted(1, 1, -1, -1))
        painter.setPen(QPen(line, 1.0, Qt.PenStyle.DotLine))
        painter.drawLine(pixels.rect(ghost.areas.clearance).topLeft(), pixels.rect(ghost.areas.clearance).topRight())
        _paint_message(painter, ghost, style, box.united(tray), room)


def _paint_message(painter: QPainter, ghost: Ghost, style: FaceStyle, beside: QRectF, room: QRectF) -> None:
    colours = style.colours
    text = f"{FITS_SIGN if ghost.is_legal else REFUSED_SIGN} {ghost.message}"
    painter.setFont(bold(smaller(style.font, 0.95)))
    wrap = Qt.TextFlag.TextWordWrap
    widest = min(_WIDEST_LABEL_PX, room.width() - 16.0)
    needed = QRectF(painter.fontMetrics().boundingRect(0, 0, int(widest), 1000, wrap, text)).adjusted(-6, -4, 6, 4)
    plate = QRectF(beside.center().x() - needed.width() / 2, beside.bottom() + _GAP_PX, needed.width(), needed.height())
    if plate.bottom() > room.bottom():
        plate.moveBottom(beside.top() - _GAP_PX)
    plate.moveLeft(max(room.left() + 2, min(plate.left(), room.right() - plate.width() - 2)))
    plate.moveTop(max(room.top() + 2, min(plate.top(), room.bottom() - plate.height() - 2)))
    painter.setPen(QPen(QColor(colours.fits if ghost.is_legal else colours.trouble), 1.5))
    painter.setBrush(QColor(colours.fits_fill if ghost.is_legal else colours.trouble_fill))
    painter.drawRect(plate)
    painter.setPen(QColor(colours.fits if ghost.is_legal else colours.trouble))
    painter.drawText(plate.adjusted(6, 4, -6, -4), wrap | Qt.AlignmentFlag.AlignCenter, text)
