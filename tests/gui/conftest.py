"""Windows without a screen for the tests of this folder."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from baywright.app.files import RecentFiles
from baywright.app.session import Session
from baywright.gui.bridge import Bridge
from baywright.gui.dialogs import Unsaved
from baywright.gui.preferences import Preferences
from baywright.gui.theme import Theme, apply_theme
from baywright.gui.window import MainWindow
from baywright.model.project import Project
from tests.gui.desk import Answers, Desk, OpenDesk, workshop


@pytest.fixture
def session(qapp: QApplication) -> Iterator[Session]:
    """A session on the workshop that plans at once."""
    made = Session(workshop(), synchronous=True)
    yield made
    made.close()


@pytest.fixture
def open_desk(qtbot: QtBot, qapp: QApplication, tmp_path: Path) -> Iterator[OpenDesk]:
    """Opens windows; they are closed after the test without a question."""
    apply_theme(qapp, Theme.LIGHT)
    desks: list[Desk] = []

    def open_one(project: Project | None = None, *, synchronous: bool = True, demo: Path | None = None) -> Desk:
        bridge = Bridge()
        session = Session(
            workshop() if project is None else project,
            deliver=None if synchronous else bridge.deliver,
            synchronous=synchronous,
            recent=RecentFiles(tmp_path / "state"),
        )
        window = MainWindow(session, bridge, Preferences(tmp_path / "state"), demo, synchronous=synchronous)
        answers = Answers(window)
        window.use_dialogs(answers)
        window.resize(1280, 800)
        with qtbot.waitExposed(window):
            window.show()
        window.activateWindow()
        desk = Desk(window, answers, tmp_path)
        desks.append(desk)
        return desk

    yield open_one
    for desk in desks:
        if desk.window.isVisible():
            desk.answers.unsaved = [Unsaved.DISCARD]
            desk.window.close()
        desk.window.deleteLater()
    qapp.processEvents()


@pytest.fixture
def desk(open_desk: OpenDesk) -> Desk:
    """A window on the workshop."""
    return open_desk()
