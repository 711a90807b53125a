"""A small run of three bays, shown in an elevation, and a hand that drags over it with real mouse events."""

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from baywright.app.session import Session
from baywright.gui.elevation.view import ElevationView
from baywright.gui.theme import Theme, apply_theme
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project
from baywright.model.space import Space

LOW = BoxSize(id="low", name="Low", width_mm=300, depth_mm=300, height_mm=120)
HIGH = BoxSize(id="high", name="High", width_mm=300, depth_mm=300, height_mm=220)


def small_project() -> Project:
    """Three bays of 20 rows; boxes a to e stand in drawers, f has none. A low box takes 5 rows, a high one 8."""
    boxes = (
        Box(id="a", label="Brake blocks", size_id="low", loaded_mass_kg=3.5, contents="40 pairs"),
        Box(id="b", label="Cables", size_id="low", loaded_mass_kg=4),
        Box(id="c", label="Chains", size_id="high", loaded_mass_kg=11),
        Box(id="d", label="Pedals", size_id="low"),
        Box(id="e", label="Saddles", size_id="low", loaded_mass_kg=4.8),
        Box(id="f", label="Tubes", size_id="high", loaded_mass_kg=9),
    )
    places = (("a", 0, 0), ("b", 0, 5), ("c", 1, 0), ("d", 1, 8), ("e", 2, 3))
    placements = tuple(Placement(box_id=box_id, bay=bay, row=row) for box_id, bay, row in places)
    return Project(
        box_sizes=(LOW, HIGH),
        boxes=boxes,
        space=Space(length_mm=1500, height_limit_mm=900),
        arrangement=Arrangement(bay_count=3, upright_rows=20, placements=placements),
    )


@pytest.fixture
def session(qapp: QApplication) -> Iterator[Session]:
    apply_theme(qapp, Theme.LIGHT)
    session = Session(small_project(), synchronous=True)
    yield session
    session.close()


@pytest.fixture
def view(qtbot: QtBot, session: Session) -> ElevationView:
    view = ElevationView(session)
    qtbot.addWidget(view)
    view.resize(900, 640)
    with qtbot.waitExposed(view):
        view.show()
    view.activateWindow()
    view.canvas.setFocus()
    return view


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


@pytest.fixture
def hand(view: ElevationView) -> Hand:
    return Hand(view)


@pytest.fixture
def place_of(session: Session) -> Callable[[str], tuple[int, int] | None]:
    """Bay and row of a box in the session's present document."""

    def look(box_id: str) -> tuple[int, int] | None:
        placement = session.project.arrangement.placement_of(box_id)
        return (placement.bay, placement.row) if placement else None

    return look
