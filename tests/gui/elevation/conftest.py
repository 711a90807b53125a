"""A small run of three bays, shown in an elevation, and a hand that drags over it."""

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from baywright.app.session import Session
from baywright.gui.elevation.view import ElevationView
from baywright.gui.theme import Theme, apply_theme
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project
from baywright.model.space import Space
from tests.gui.elevation.hand import Hand

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
