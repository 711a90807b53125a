"""When the program itself fails, the document is saved beside its file, the failure told, and the program ends."""

import sys
from pathlib import Path

import pytest
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from baywright.app.commands import SetField
from baywright.app.files import open_project
from baywright.app.session import Session
from baywright.gui.rescue import EXIT_CODE, FailureHook, rescue
from tests.gui.desk import workshop


@pytest.fixture
def changed(session: Session, tmp_path: Path) -> Session:
    session.save_as(tmp_path / "wall.baywright")
    session.do(SetField("space.length_mm", 1600.0))
    return session


def fail(hook: FailureHook) -> None:
    try:
        raise ZeroDivisionError("on purpose")
    except ZeroDivisionError:
        hook(*sys.exc_info())


def test_the_copy_lies_beside_the_projects_file_which_is_left_alone(changed: Session, tmp_path: Path) -> None:
    copy = rescue(changed, tmp_path / "state")
    assert copy == tmp_path / "wall-rescued-1.baywright"
    assert open_project(copy) == changed.project
    assert open_project(tmp_path / "wall.baywright") == workshop()
    assert rescue(changed, tmp_path / "state").name == "wall-rescued-2.baywright"


def test_a_project_without_a_file_is_rescued_into_the_state_folder(session: Session, tmp_path: Path) -> None:
    session.do(SetField("space.length_mm", 1600.0))
    copy = rescue(session, tmp_path / "state")
    assert copy.parent == tmp_path / "state"
    assert open_project(copy) == session.project


def test_where_the_projects_folder_cannot_be_written_the_state_folder_is_used(changed: Session, tmp_path: Path) -> None:
    changed.path = tmp_path / "gone" / "wall.baywright"
    assert rescue(changed, tmp_path / "state").parent == tmp_path / "state"


def test_a_failure_is_reported_once_with_where_the_work_is(changed: Session, tmp_path: Path) -> None:
    reports: list[tuple[str, str]] = []
    hook = FailureHook(changed, tmp_path / "state", lambda message, details: reports.append((message, details)))
    fail(hook)
    fail(hook)
    assert len(reports) == 1
    assert "wall-rescued-1.baywright" in reports[0][0]
    assert "on purpose" in reports[0][1]
    assert hook.has_failed


def test_a_saved_project_needs_no_copy(session: Session, tmp_path: Path) -> None:
    reports: list[str] = []
    fail(FailureHook(session, tmp_path, lambda message, _details: reports.append(message)))
    assert "nothing of it is lost" in reports[0]
    assert list(tmp_path.iterdir()) == []


def test_a_rescue_that_fails_is_told_too(session: Session, tmp_path: Path) -> None:
    session.do(SetField("space.length_mm", 1600.0))
    blocked = tmp_path / "state"
    blocked.write_text("a file where a folder should be")
    reports: list[str] = []
    fail(FailureHook(session, blocked, lambda message, _details: reports.append(message)))
    assert "could not be written to a rescue copy" in reports[0]


def test_the_program_ends_with_its_own_exit_code(qtbot: QtBot, changed: Session, tmp_path: Path) -> None:
    hook = FailureHook(changed, tmp_path / "state", lambda _message, _details: None)
    application = QApplication.instance()
    assert application is not None
    QTimer.singleShot(0, lambda: fail(hook))
    assert application.exec() == EXIT_CODE
