"""Drawing in device pixels on a view that is scaled in mm: crisp lines, letters that keep their size, no mirrored text.

The view's transform turns y over, so letters and hatchings are never drawn through it.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QTransform

from baywright.gui.elevation.area import Area


@dataclass(frozen=True)
class Pixels:
    """Turns mm of the elevation into pixels of the device."""

    transform: QTransform

    @property
    def scale(self) -> float:
        """Pixels a mm."""
        return abs(self.transform.m11())

    def x(self, x_mm: float) -> float:
        """The pixel column of a place along the wall."""
        return self.transform.map(QPointF(x_mm, 0.0)).x()

    def y(self, y_mm: float) -> float:
        """The pixel line of a height over the floor."""
        return self.transform.map(QPointF(0.0, y_mm)).y()

    def rect(self, area: Area) -> QRectF:
        """An area on the device, its edges on whole pixels and at least one pixel across."""
        raw = self.transform.mapRect(area.rect())
        left, top = round(raw.left()), round(raw.top())
        return QRectF(left, top, max(1, round(raw.right()) - left), max(1, round(raw.bottom()) - top))


@contextmanager
def in_pixels(painter: QPainter) -> Iterator[Pixels]:
    """Within the block, `painter` draws in pixels; its state is restored afterwards."""
    transform = QTransform(painter.worldTransform())
    painter.save()
    painter.setWorldTransform(QTransform())
    try:
        yield Pixels(transform)
    finally:
        painter.restore()
