"""Drawing in device pixels on a view that is scaled in mm: crisp lines, letters that keep their size, no mirrored text.

The view's transform turns y over, so letters and hatchings are never drawn through it.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QTransform

from baywright.gui.elevation.area import Area


@dataclass(frozen=True)
class Pixels:
    """Turns mm of the elevation into pixels of the device: x' = across·x + left, y' = up·y + floor."""

    across: float
    left: float
    up: float
    floor: float

    @classmethod
    def of(cls, transform: QTransform) -> "Pixels":
        """Those of a view's transform, which never turns or shears."""
        return cls(transform.m11(), transform.dx(), transform.m22(), transform.dy())

    @property
    def scale(self) -> float:
        """Pixels a mm."""
        return abs(self.across)

    def x(self, x_mm: float) -> float:
        """The pixel column of a place along the wall."""
        return self.across * x_mm + self.left

    def y(self, y_mm: float) -> float:
        """The pixel line of a height over the floor."""
        return self.up * y_mm + self.floor

    def rect(self, area: Area) -> QRectF:
        """An area on the device, its edges on whole pixels and at least one pixel across."""
        left, right = sorted((round(self.x(area.left)), round(self.x(area.right))))
        top, bottom = sorted((round(self.y(area.top)), round(self.y(area.bottom))))
        return QRectF(left, top, max(1, right - left), max(1, bottom - top))


@contextmanager
def in_pixels(painter: QPainter) -> Iterator[Pixels]:
    """Within the block, `painter` draws in pixels; its state is restored afterwards."""
    transform = QTransform(painter.worldTransform())
    painter.save()
    painter.setWorldTransform(QTransform())
    try:
        yield Pixels.of(transform)
    finally:
        painter.restore()
