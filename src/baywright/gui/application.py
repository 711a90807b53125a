"""Starts the window: application, session, bridge to worker threads, failure hook; and takes them down again.

Laws: nothing heavy is imported before the window shows; a file that cannot be opened is told in the window, which then
begins with an empty project; Ctrl+C in the terminal ends the program (a heartbeat lets Python see it), and what is not
saved is kept in a rescue copy.
"""

import signal
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from types import FrameType

from PySide6.QtCore import QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication

from baywright.app.files import FileTrouble, RecentFiles
from baywright.app.planning import warm_up_beside
from baywright.app.session import Session
from baywright.gui.bridge import Bridge
from baywright.gui.preferences import Preferences
from baywright.gui.rescue import EXIT_CODE, FailureHook, rescue_words
from baywright.gui.theme import apply_theme
from baywright.gui.window import MainWindow

HEARTBEAT_MS = 250
WARM_UP_MS = 400
"""When the solver is imported beside the window: after it is drawn, before anybody has typed a box."""
SWITCH_INTERVAL_S = 0.001
"""How long the window's thread may wait for the planner's to hand over; Python's own 5 ms add up to a stutter."""
ENDED_BY = {signal.SIGINT: 130, signal.SIGTERM: 143} | ({signal.SIGHUP: 129} if hasattr(signal, "SIGHUP") else {})
"""Exit codes where somebody ends the program from outside: 128 and the signal's number, as shells have it."""


def make_application() -> QApplication:
    """The one application object of the process."""
    present = QApplication.instance()
    if isinstance(present, QApplication):
        return present
    application = QApplication(sys.argv[:1])
    sys.setswitchinterval(SWITCH_INTERVAL_S)
    application.setApplicationName("Baywright")
    application.setOrganizationName("Baywright")
    QGuiApplication.setDesktopFileName("baywright")
    return application


def open_window(
    path: Path | None,
    state_folder: Path,
    demo: Path | None = None,
    *,
    begin_with_demo: bool = False,
    synchronous: bool = False,
) -> MainWindow:
    """A shown window on a project file, a copy of the demo, or a new project; troubles are told in it."""
    application = make_application()
    preferences = Preferences(state_folder)
    apply_theme(application, preferences.theme, preferences.points)
    application.styleHints().colorSchemeChanged.connect(
        lambda _scheme: apply_theme(application, preferences.theme, preferences.points)
    )
    bridge = Bridge(application)
    recent = RecentFiles(state_folder)
    session = Session(deliver=None if synchronous else bridge.deliver, synchronous=synchronous, recent=recent)
    window = MainWindow(session, bridge, preferences, demo, synchronous=synchronous)
    window.show()
    if path is not None:
        try:
            session.open(path)
        except FileTrouble as trouble:
            window.dialogs.trouble("The file was not opened", str(trouble))
    elif begin_with_demo and demo is not None:
        window.filing.open_copy(demo)
    return window


def run(path: Path | None, state_folder: Path, demo: Path | None = None, *, begin_with_demo: bool = False) -> int:
    """Open the window and serve it until it is closed; the exit code (`baywright --help` lists them).

    Ended from outside (from the terminal's keyboard, or because the person's session ends), the window asks no
    question; what is not saved goes into a rescue copy.
    """
    application = make_application()
    window = open_window(path, state_folder, demo, begin_with_demo=begin_with_demo)
    hook = FailureHook(window.session, state_folder)
    before = sys.excepthook
    sys.excepthook = hook
    QTimer.singleShot(WARM_UP_MS, warm_up_beside)
    heartbeat = QTimer()
    heartbeat.timeout.connect(lambda: None)
    heartbeat.start(HEARTBEAT_MS)
    try:
        with _ended_by_signals(window):
            code = application.exec()
    finally:
        sys.excepthook = before
        window.session.close()
        window.errands.close()
    if code in ENDED_BY.values() and window.session.is_modified:
        print(rescue_words(window.session, state_folder), file=sys.stderr)
    return EXIT_CODE if hook.has_failed else code


@contextmanager
def _ended_by_signals(window: MainWindow) -> Iterator[None]:
    """While this lasts, signals that end a program let it end in order."""

    def end(number: int, _frame: FrameType | None) -> None:
        window.panels.finish_typing()
        QApplication.exit(ENDED_BY[signal.Signals(number)])

    before = {number: signal.signal(number, end) for number in ENDED_BY}
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)
