"""How dimensions are painted: extension lines, the line between with strokes at its ends, and the figure on it."""

from dataclasses import dataclass

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen

from baywright.gui.elevation.area import Area
from baywright.gui.elevation.captions import opening_caption
from baywright.gui.elevation.dimension import ACROSS_CHAINS, UP_CHAINS, Dimension, Dimensions
from baywright.gui.elevation.drawers import Drawer
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.frame import Frame
from baywright.gui.elevation.lettering import Line, bold, draw_upright_text, longest_that_fits, smaller, text_width
from baywright.gui.elevation.pixels import Pixels, in_pixels

_STROKE_PX = 3.0
_PLATE_GAP_PX = 11.0
_ROOMY_LINES, _LEAST_LINES = 17, 12
"""A view this many lines of text high has room for all dimensions, or for the bays' own."""


@dataclass(frozen=True)
class Chains:
    """How many chains of dimensions there is room for, below the floor and at the right, and how far apart they are."""

    across: int
    up: int
    step: float
    """From one chain to the next, in pixels."""

    @property
    def margins(self) -> tuple[float, float, float, float]:
        """Room left, over, right of and below the run, in pixels."""
        below = (self.across + 1) * self.step + 10.0
        return 2.2 * self.step + 4.0, 1.1 * self.step + 3.0, self.up * self.step + 16.0, below


def chains_for(size: QSize, font: QFont) -> Chains:
    """The chains that a view of that size shows; a small one keeps the room for the run."""
    line = QFontMetricsF(font).height()
    across = ACROSS_CHAINS if size.height() >= _ROOMY_LINES * line else 1 if size.height() >= _LEAST_LINES * line else 0
    up = UP_CHAINS if min(size.width(), size.height()) >= _ROOMY_LINES * line else 0
    return Chains(across, up, line + 3.0)


def paint_dimensions(
    painter: QPainter,
    frame: Frame,
    dimensions: Dimensions,
    chains: Chains,
    style: FaceStyle,
    built: frozenset[int] = frozenset(),
) -> None:
    """Paint bay numbers, a mark at those that stand as built and, as far as there is room, dimensions."""
    with in_pixels(painter) as pixels:
        _paint_bay_numbers(painter, frame, chains, style, pixels, built)
        font = smaller(style.font, 0.9)
        painter.setFont(font)
        floor = pixels.y(0.0)
        for dimension in dimensions.across:
            if dimension.chain < chains.across:
                _paint_across(painter, dimension, floor, chains, style, font, pixels)
        edge = pixels.x(frame.extent.right)
        for dimension in dimensions.up:
            if dimension.chain < chains.up:
                _paint_up(painter, dimension, edge, chains, style, font, pixels)


def paint_opening(painter: QPainter, drawer: Drawer, frame: Frame, style: FaceStyle) -> None:
    """Paint beside a drawer what height it takes of its bay: at the right, or at the left where no room is left."""
    with in_pixels(painter) as pixels:
        opening = pixels.rect(drawer.areas.opening)
        font = bold(smaller(style.font, 0.9))
        text = opening_caption(drawer, style.unit)
        width, height = text_width(text, font) + 10.0, QFontMetricsF(font).height() + 4.0
        at_right = opening.right() + _PLATE_GAP_PX + width <= pixels.x(frame.top.right)
        x = opening.right() + 3.0 if at_right else opening.left() - 3.0
        painter.setPen(QPen(QColor(style.colours.selected_line), 1.6))
        painter.drawLines([
            QLineF(x, opening.top(), x, opening.bottom()),
            QLineF(x - 4.0, opening.top(), x + 4.0, opening.top()),
            QLineF(x - 4.0, opening.bottom(), x + 4.0, opening.bottom()),
        ])  # fmt: skip
        left = opening.right() + _PLATE_GAP_PX if at_right else opening.left() - _PLATE_GAP_PX - width
        _paint_plate(painter, QRectF(left, opening.center().y() - height / 2, width, height), text, font, style)


def _paint_plate(painter: QPainter, plate: QRectF, text: str, font: QFont, style: FaceStyle) -> None:
    """A line of text on a ground that hides what is behind it."""
    painter.setFont(font)
    painter.setPen(QPen(QColor(style.colours.selected_line), 1.0))
    painter.setBrush(QColor(style.colours.window.base))
    painter.drawRect(plate)
    painter.setPen(QColor(style.colours.window.text))
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, text)


def _paint_bay_numbers(
    painter: QPainter, frame: Frame, chains: Chains, style: FaceStyle, pixels: Pixels, built: frozenset[int]
) -> None:
    font = bold(style.font)
    painter.setFont(font)
    painter.setPen(QColor(style.colours.window.text))
    top = pixels.y(0.0) + 2.0
    for number, bay in enumerate(frame.bays, start=1):
        place = _columns(bay, pixels, top, chains.step)
        wordings: tuple[str, ...] = (f"Bay {number}", str(number))
        if number - 1 in built:
            wordings = (f"Bay {number} ✓ built", f"{number} ✓ built", f"{number} ✓", str(number))
            painter.fillRect(QRectF(place.left(), top - 2.0, place.width(), 4.0), QColor(style.colours.window.good))
        text = longest_that_fits(wordings, font, place.width())
        painter.drawText(place, Qt.AlignmentFlag.AlignCenter, text)


def _columns(area: Area, pixels: Pixels, top: float, height: float) -> QRectF:
    left, right = pixels.x(area.left), pixels.x(area.right)
    return QRectF(left, top, right - left, height)


def _paint_across(
    painter: QPainter,
    dimension: Dimension,
    floor: float,
    chains: Chains,
    style: FaceStyle,
    font: QFont,
    pixels: Pixels,
) -> None:
    left, right = pixels.x(dimension.start), pixels.x(dimension.end)
    y = floor + (dimension.chain + 1.7) * chains.step
    text = longest_that_fits(dimension.texts, font, right - left - 6.0)
    painter.setPen(QPen(QColor(style.colours.dimension), 1.0))
    painter.drawLines([
        QLineF(left, y, right, y),
        QLineF(left, y - _STROKE_PX * 2, left, y + _STROKE_PX),
        QLineF(right, y - _STROKE_PX * 2, right, y + _STROKE_PX),
    ])  # fmt: skip
    middle = (left + right) / 2
    if not text and dimension.is_last:
        text = longest_that_fits(dimension.texts, font, chains.margins[2] - _PLATE_GAP_PX)
        middle = right + _STROKE_PX * 2 + text_width(text, font) / 2
    if text:
        height = painter.fontMetrics().height()
        width = text_width(text, font) + 6.0
        place = QRectF(middle - width / 2, y - height / 2, width, height)
        painter.fillRect(place, QColor(style.colours.ground))
        painter.drawText(place, Qt.AlignmentFlag.AlignCenter, text)


def _paint_up(
    painter: QPainter,
    dimension: Dimension,
    edge: float,
    chains: Chains,
    style: FaceStyle,
    font: QFont,
    pixels: Pixels,
) -> None:
    low, high = pixels.y(dimension.start), pixels.y(dimension.end)
    x = edge + (dimension.chain + 0.8) * chains.step
    text = longest_that_fits(dimension.texts, font, low - high - 16.0)
    colour = QColor(style.colours.dimension)
    painter.setPen(QPen(colour, 1.0))
    painter.drawLines([
        QLineF(x, low, x, high),
        QLineF(x - _STROKE_PX * 2, low, x + _STROKE_PX, low),
        QLineF(x - _STROKE_PX * 2, high, x + _STROKE_PX, high),
    ])  # fmt: skip
    if text:
        height, length = painter.fontMetrics().height(), text_width(text, font) + 6.0
        middle = (low + high) / 2
        painter.fillRect(QRectF(x - height / 2, middle - length / 2, height, length), QColor(style.colours.ground))
        draw_upright_text(painter, QPointF(x, middle), Line(text, font, colour))
