"""What is not saved survives a failure of the program, and Ctrl+C in the terminal: it is in a rescue copy."""

import os
import signal
from pathlib import Path

import pytest
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from baywright.app.commands import SetField
from baywright.app.files import FileTrouble, open_project, save_project
from baywright.app.session import Session
from baywright.gui import application
from baywright.gui.rescue import EXIT_CODE, FailureHook, rescue, rescue_path, rescue_words
from baywright.gui.window import MainWindow
from tests.gui.desk import workshop


def _changed(path: Path | None = None) -> Session:
    session = Session(workshop(), path, synchronous=True)
    session.do(SetField("name", "Changed"))
    return session


def test_the_rescue_copy_lies_beside_the_projects_file_and_replaces_nothing(tmp_path: Path) -> None:
    own = tmp_path / "shed.baywright"
    save_project(own, workshop())
    before = own.read_bytes()
    first, second = rescue(_changed(own), tmp_path / "state"), rescue(_changed(own), tmp_path / "state")
    assert [first.name, second.name] == ["shed-rescued-1.baywright", "shed-rescued-2.baywright"]
    assert open_project(first).name == open_project(second).name == "Changed"
    assert own.read_bytes() == before


def test_without_a_file_the_copy_goes_into_the_state_folder(tmp_path: Path) -> None:
    path = rescue(_changed(), tmp_path / "state")
    assert path == tmp_path / "state" / "rescued-1.baywright"


def test_where_the_projects_folder_is_gone_the_state_folder_is_taken(tmp_path: Path) -> None:
    path = rescue(_changed(tmp_path / "gone" / "shed.baywright"), tmp_path / "state")
    assert path.parent == tmp_path / "state"


def test_where_nothing_can_be_written_that_is_said(tmp_path: Path) -> None:
    (tmp_path / "state").write_text("a file where the folder should be")
    assert "could not be written to a rescue copy" in rescue_words(_changed(), tmp_path / "state")


def test_what_is_saved_needs_no_copy(tmp_path: Path) -> None:
    assert "is saved" in rescue_words(Session(workshop(), synchronous=True), tmp_path)
    assert not list(tmp_path.iterdir())


def test_a_thousand_copies_are_enough(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Path, "exists", lambda _path: True)
    with pytest.raises(FileTrouble, match="clear them away"):
        rescue_path(None, tmp_path)


def test_the_first_failure_is_reported_with_the_rescue_copy(
    qapp: QApplication, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    told: list[tuple[str, str]] = []
    hook = FailureHook(_changed(), tmp_path, lambda message, details: told.append((message, details)))
    failure = ZeroDivisionError("nothing to share")
    hook(ZeroDivisionError, failure, None)
    hook(ZeroDivisionError, failure, None)
    assert len(told) == 1
    assert "rescued-1.baywright" in told[0][0]
    assert "nothing to share" in told[0][1]
    assert hook.has_failed
    assert "nothing to share" in capsys.readouterr().err


@pytest.mark.parametrize("is_changed", [True, False])
def test_an_interrupt_from_the_terminal_keeps_what_is_not_saved(
    qapp: QApplication,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    is_changed: bool,
) -> None:
    opened: list[MainWindow] = []

    def open_window(*arguments: object, **options: object) -> MainWindow:
        window = real_open(None, tmp_path, synchronous=True)
        if is_changed:
            window.session.do(SetField("name", "Changed"))
        opened.append(window)
        QTimer.singleShot(0, lambda: os.kill(os.getpid(), signal.SIGINT))
        return window

    real_open = application.open_window
    monkeypatch.setattr(application, "open_window", open_window)
    assert application.run(None, tmp_path) == 130
    opened[0].hide()
    opened[0].deleteLater()
    assert ("rescued-1.baywright" in capsys.readouterr().err) is is_changed
    assert (tmp_path / "rescued-1.baywright").exists() is is_changed


def test_the_exit_code_is_the_one_that_the_command_line_documents() -> None:
    assert EXIT_CODE == 5
