"""A hand that drags over the elevation with real mouse events."""

from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

from baywright.gui.elevation.view import ElevationView


class Hand:
    """Presses, moves and releases the left button over the elevation; positions are global pixels."""

    def __init__(self, view: ElevationView) -> None:
        self._view = view
        self._source: QWidget = view.canvas.viewport()
        self._at = QPoint()
        self._lift = 0.0

    def on_box(self, box_id: str) -> QPoint:
        """The middle of a box in its drawer."""
        return self._view.canvas.middle_of(box_id)

    def at_place(self, bay: int, row: int) -> QPoint:
        """Where to go so that the box that was taken by its middle lands at that bay and row."""
        frame = self._view.shown.frame
        assert frame is not None
        edge = frame.row_height(row) - frame.line_offset
        canvas = self._view.canvas
        pixel = canvas.mapFromScene(QPointF(frame.bays[bay].centre.x(), edge + self._lift))
        return canvas.viewport().mapToGlobal(pixel)

    def on_tray(self) -> QPoint:
        """The middle of the tray."""
        return self._view.tray.mapToGlobal(self._view.tray.rect().center())

    def press_box(self, box_id: str, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
        """Press on a box in its drawer."""
        drawer = self._view.shown.drawer(box_id)
        assert drawer is not None
        self._lift = drawer.areas.box.centre.y() - drawer.lower_edge
        self._press(self._view.canvas.viewport(), self.on_box(box_id), modifier)

    def press_chip(self, index: int) -> None:
        """Press on a box on the tray."""
        trays = self._view.tray.list
        measures = self._view.session.workings.value("seat")
        box = self._view.session.project.box(self._view.shown.unplaced[index])
        self._lift = measures + self._view.session.project.size_of(box).height_mm / 2
        pixel = trays.visualItemRect(trays.item(index)).center()
        self._press(trays.viewport(), trays.viewport().mapToGlobal(pixel), Qt.KeyboardModifier.NoModifier)

    def _press(self, source: QWidget, position: QPoint, modifier: Qt.KeyboardModifier) -> None:
        self._source, self._at = source, position
        QTest.mousePress(source, Qt.MouseButton.LeftButton, modifier, source.mapFromGlobal(position))

    def move_to(self, position: QPoint) -> None:
        """Move with the button down, in a few steps as a hand does."""
        start = self._at
        for step in (0.3, 0.7, 1.0):
            here = QPoint(
                round(start.x() + (position.x() - start.x()) * step),
                round(start.y() + (position.y() - start.y()) * step),
            )
            QTest.mouseMove(self._source, self._source.mapFromGlobal(here))
        self._at = position

    def release(self) -> None:
        """Let go."""
        where = self._source.mapFromGlobal(self._at)
        QTest.mouseRelease(self._source, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, where)
