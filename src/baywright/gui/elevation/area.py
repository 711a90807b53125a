"""Upright rectangles of the elevation, in mm: x from the run's left end, y upwards from the floor."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF


@dataclass(frozen=True)
class Area:
    """A rectangle by its left and lower edge, width and height, all mm."""

    left: float
    bottom: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """The x of the right edge."""
        return self.left + self.width

    @property
    def top(self) -> float:
        """The y of the upper edge."""
        return self.bottom + self.height

    @property
    def centre(self) -> QPointF:
        """The middle."""
        return QPointF(self.left + self.width / 2, self.bottom + self.height / 2)

    def rect(self) -> QRectF:
        """The same for Qt. The view turns y over, so Qt's “top” is the lower edge here."""
        return QRectF(self.left, self.bottom, self.width, self.height)

    def moved(self, right_mm: float, up_mm: float) -> "Area":
        """The same area elsewhere."""
        return Area(self.left + right_mm, self.bottom + up_mm, self.width, self.height)
