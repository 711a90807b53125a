"""How the run without its drawers is painted: stand, base, uprights with hole rows, top, shelves.

Law: painted in pixels behind the drawers; hole rows thin out as the view zooms out and never turn into a grey blur.
"""

from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPen

from baywright.gui.elevation.area import Area
from baywright.gui.elevation.colours import ElevationColours
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.frame import Frame
from baywright.gui.elevation.lettering import Line, draw_lines, smaller
from baywright.gui.elevation.pixels import Pixels, in_pixels

NUMBERED_ROWS = 5
"""Every fifth row carries its number."""
_LEAST_TICK_DISTANCE_PX = 3.5


def paint_carcass(painter: QPainter, frame: Frame, style: FaceStyle) -> None:
    """Paint everything that stands behind the drawers."""
    colours = style.colours
    with in_pixels(painter) as pixels:
        for bay in frame.bays:
            painter.fillRect(pixels.rect(bay), QColor(colours.bay))
        for board in frame.boards:
            _paint_board(painter, pixels.rect(board), colours)
        _paint_rows(painter, frame, colours, pixels)
        _paint_row_numbers(painter, frame, colours, style.font, pixels)
        _paint_shelf_bay(painter, frame.shelf_bay, frame, style, pixels)


def row_number_step(pitch_px: float, font_height_px: float) -> int:
    """Every how many rows a number is written, so that numbers do not touch."""
    step = NUMBERED_ROWS
    while step * pitch_px < font_height_px:
        step *= 2
    return step


def numbered_rows(count: int, step: int) -> list[int]:
    """The rows (0-based) that carry a number: the first, and every `step`-th as people count."""
    return [0, *(row for row in range(step - 1, count, step) if row)] if count else []


def _paint_board(painter: QPainter, rect: QRectF, colours: ElevationColours) -> None:
    painter.fillRect(rect, QColor(colours.board))
    if min(rect.width(), rect.height()) >= 3:
        painter.setPen(QPen(QColor(colours.board_line), 1.0))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(rect.adjusted(0.5, 0.5, -0.5, -0.5))


def _paint_rows(painter: QPainter, frame: Frame, colours: ElevationColours, pixels: Pixels) -> None:
    pitch_px = frame.pitch * pixels.scale
    every = 1 if pitch_px >= _LEAST_TICK_DISTANCE_PX else NUMBERED_ROWS
    if every * pitch_px < _LEAST_TICK_DISTANCE_PX:
        return
    heights = [pixels.y(height) for height in frame.rows[every - 1 :: every]]
    lines = []
    for upright in frame.uprights:
        rect = pixels.rect(upright)
        tick = max(1.0, min(4.0, rect.width() / 3))
        for y in heights:
            if y <= rect.top():
                break
            lines.append(QLineF(rect.left(), y, rect.left() + tick, y))
            lines.append(QLineF(rect.right() - tick, y, rect.right(), y))
    painter.setPen(QPen(QColor(colours.row), 1.0))
    painter.drawLines(lines)


def _paint_row_numbers(painter: QPainter, frame: Frame, colours: ElevationColours, font: QFont, pixels: Pixels) -> None:
    small = smaller(font, 0.85)
    painter.setFont(small)
    height = painter.fontMetrics().height()
    step = row_number_step(frame.pitch * pixels.scale, height * 0.9)
    right = pixels.x(min(frame.uprights[0].left, frame.wall.left)) - 4.0
    painter.setPen(QColor(colours.dimension))
    for row in numbered_rows(len(frame.rows), step):
        y = pixels.y(frame.rows[row])
        painter.drawLine(QLineF(right, y, right + 4.0, y))
        place = QRectF(right - 3 * height - 2.0, y - height / 2, 3 * height, height)
        painter.drawText(place, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, str(row + 1))


def _paint_shelf_bay(painter: QPainter, shelf_bay: Area | None, frame: Frame, style: FaceStyle, pixels: Pixels) -> None:
    """The words in the largest free field between the shelves."""
    if shelf_bay is None:
        return
    edges = [shelf_bay.bottom, *(height for shelf in frame.shelves for height in (shelf.bottom, shelf.top))]
    edges.append(shelf_bay.top)
    gaps = [
        Area(shelf_bay.left, low, shelf_bay.width, high - low)
        for low, high in zip(edges[::2], edges[1::2], strict=True)
    ]
    widest = max(gaps, key=lambda gap: gap.height)
    colour = QColor(style.colours.dimension)
    lines = [Line("Shelf bay", style.font, colour)]
    draw_lines(painter, pixels.rect(widest).adjusted(3, 0, -3, 0), lines)
