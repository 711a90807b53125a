"""The fixed parts of the run, by their part numbers: where they are in the picture, and how a chosen one stands out.

Law: a part stands out by a thick outline and its number in words, never by colour alone.
"""

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from baywright.gui.elevation.area import Area
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.frame import Frame
from baywright.gui.elevation.pixels import in_pixels

OUTLINE = 3.0


def part_areas(number: str, frame: Frame) -> tuple[Area, ...]:
    """Where the parts with that number (or a section's, as T1.2) are seen; nothing for parts behind others."""
    match number[:1]:
        case "S":
            return frame.shelves
        case "T":
            return frame.tops
        case "B":
            return frame.bases
        case "U":
            return frame.uprights
        case "P":
            return frame.stand
        case _:
            return ()


def paint_parts(painter: QPainter, number: str, frame: Frame, style: FaceStyle) -> None:
    """Outline the parts with that number and write it beside the first of them."""
    areas = part_areas(number, frame)
    if not areas:
        return
    with in_pixels(painter) as pixels:
        painter.setPen(QPen(QColor(style.colours.selected_line), OUTLINE))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for area in areas:
            painter.drawRect(pixels.rect(area).adjusted(-1, -1, 1, 1))
        painter.setFont(style.font)
        painter.drawText(pixels.rect(areas[0]).topLeft() + QPointF(4.0, -4.0), number)
