"""Starting: the window shows without anything heavy, opens what it is given, and remembers how it was left."""

import signal
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from baywright.app.files import open_project, save_project
from baywright.gui.application import open_window
from baywright.gui.preferences import FILE_NAME, Preferences
from baywright.gui.theme import DARK, NORMAL_POINTS, Theme, colours_of
from tests.gui.desk import OpenDesk, workshop

START = """
import sys
from pathlib import Path
from baywright.gui.application import make_application, open_window
window = open_window(None, Path(sys.argv[1]))
make_application().processEvents()
heavy = [name for name in ("matplotlib", "openpyxl") if name in sys.modules]
assert not heavy, heavy
print("shown" if window.isVisible() else "hidden")
window.close()
"""


def test_a_start_imports_nothing_that_only_documents_need(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-c", START, str(tmp_path)], capture_output=True, text=True, timeout=60, check=False
    )
    assert done.stdout.strip() == "shown", done.stderr


def test_it_opens_a_project_file(qtbot: QtBot, tmp_path: Path) -> None:
    path = tmp_path / "shed.baywright"
    save_project(path, workshop())
    window = open_window(path, tmp_path / "state", synchronous=True)
    qtbot.addWidget(window)
    assert window.session.project == workshop()
    assert window.windowTitle() == "shed[*] – Baywright"
    window.close()


def test_colours_text_size_and_place_are_remembered(open_desk: OpenDesk, qapp: QApplication, tmp_path: Path) -> None:
    desk = open_desk()
    desk.window.choose_theme(Theme.DARK)
    desk.actions.larger.trigger()
    assert colours_of(qapp.palette()) is DARK
    assert qapp.font().pointSizeF() == NORMAL_POINTS + 1
    desk.window.resize(1111, 777)
    desk.panels.whole.setSizes([500, 600])
    sizes = desk.panels.whole.sizes()
    desk.window.close()
    again = open_desk()
    assert again.window.preferences.theme is Theme.DARK
    assert again.window.menus.themes[Theme.DARK].isChecked()
    assert again.window.preferences.layout("window") is not None
    assert sizes[0] == pytest.approx(500, abs=60)
    again.actions.normal.trigger()
    again.window.choose_theme(Theme.LIGHT)


def test_nothing_heavy_is_imported_before_the_window_shows() -> None:
    code = (
        "import sys, baywright.gui.application; "
        "print([name for name in ('ortools', 'pandas', 'openpyxl', 'matplotlib') if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=60, check=True)
    assert done.stdout.strip() == "[]"


ENDED = """
import os, signal, sys
from pathlib import Path
from PySide6.QtCore import QTimer
from PySide6.QtTest import QTest
from baywright.gui.application import make_application, run

def end():
    window = next(w for w in make_application().topLevelWidgets() if hasattr(w, "session"))
    if not window.isActiveWindow():  # on a busy machine the window is not up yet
        window.activateWindow()
        QTimer.singleShot(20, end)
        return
    window.panels.show_field("space.length_mm")
    QTest.keyClicks(window.panels.form.field("space.length_mm").focusProxy(), "2345")
    os.kill(os.getpid(), int(sys.argv[2]))

make_application()
QTimer.singleShot(200, end)
sys.exit(run(None, Path(sys.argv[1])))
"""


@pytest.mark.parametrize("ending", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_ended_from_outside_it_keeps_what_is_not_saved(tmp_path: Path, ending: signal.Signals) -> None:
    done = subprocess.run(
        [sys.executable, "-c", ENDED, str(tmp_path), str(ending.value)],
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.returncode == 128 + ending.value, done.stderr
    copy = tmp_path / "rescued-1.baywright"
    assert str(copy) in done.stderr
    assert open_project(copy).space.length_mm == 2345


@pytest.mark.parametrize("content", ["", "rubbish\x00", "theme=purple\npoints=huge\n[layout]\nwindow=1\n"])
def test_a_broken_settings_file_costs_only_the_memory(tmp_path: Path, content: str) -> None:
    (tmp_path / FILE_NAME).write_text(content)
    preferences = Preferences(tmp_path)
    assert preferences.theme is Theme.SYSTEM
    assert preferences.points == NORMAL_POINTS
    assert preferences.layout("window") is None


def test_a_text_size_without_reason_is_kept_within_bounds(tmp_path: Path) -> None:
    preferences = Preferences(tmp_path)
    preferences.points = 500
    assert preferences.points == 20
