"""When the program itself fails: the document is written to a rescue copy, the failure reported, and the program ends.

Laws: the rescue copy is a new file and never replaces one; the project's own file is not touched; a failure while
rescuing is told too; the program ends rather than going on in an unknown state.
"""

import contextlib
import sys
import traceback
from collections.abc import Callable
from pathlib import Path
from types import TracebackType

from PySide6.QtWidgets import QApplication, QMessageBox

from baywright.app.files import PROJECT_SUFFIX, FileTrouble, save_project
from baywright.app.session import Session

EXIT_CODE = 5
"""What the program returns after a failure of its own: the same with a window as without one."""
_MOST_COPIES = 1_000


def rescue_path(own: Path | None, folder: Path) -> Path:
    """A name that is free: beside the project's own file, else in `folder`."""
    base = own.parent / f"{own.stem}-rescued" if own is not None else folder / "rescued"
    for number in range(1, _MOST_COPIES):
        candidate = base.with_name(f"{base.name}-{number}{PROJECT_SUFFIX}")
        if not candidate.exists():
            return candidate
    raise FileTrouble(f"There are {_MOST_COPIES - 1} rescue copies already beside {base}; clear them away.")


def rescue(session: Session, folder: Path) -> Path:
    """Write the session's document to a rescue copy; its path. FileTrouble where it can be written nowhere."""
    first: FileTrouble | None = None
    for own in (session.path, None) if session.path is not None else (None,):
        try:
            if own is None:
                folder.mkdir(parents=True, exist_ok=True)
            path = rescue_path(own, folder)
            save_project(path, session.project)
        except (FileTrouble, OSError) as trouble:
            first = first or FileTrouble(str(trouble))
        else:
            return path
    assert first is not None
    raise first


def rescue_words(session: Session, folder: Path) -> str:
    """Rescue what is not saved, because the window ends without a question, and say what came of it."""
    if not session.is_modified:
        return "Your project is saved; nothing of it is lost."
    try:
        path = rescue(session, folder)
    except FileTrouble as trouble:
        return f"Your last changes could not be written to a rescue copy: {trouble}"
    return f"Your project with the last changes was written to\n{path}\nOpen that file to go on."


class FailureHook:
    """Takes the place of `sys.excepthook` while the window runs; the first failure rescues, reports and ends."""

    def __init__(self, session: Session, folder: Path, report: Callable[[str, str], None] | None = None) -> None:
        self._session, self._folder = session, folder
        self._report = report if report is not None else _show_failure
        self.has_failed = False

    def __call__(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        """Rescue and report a failure; Ctrl+C just ends the program."""
        if issubclass(kind, KeyboardInterrupt):
            QApplication.exit(130)
            return
        details = "".join(traceback.format_exception(kind, error, trace))
        with contextlib.suppress(OSError, ValueError):
            sys.stderr.write(details)
        if self.has_failed:
            return
        self.has_failed = True
        words = rescue_words(self._session, self._folder)
        try:
            self._report(f"Baywright has met an error of its own and must end.\n\n{words}", details)
        finally:
            QApplication.exit(EXIT_CODE)


def _show_failure(message: str, details: str) -> None:
    box = QMessageBox(QMessageBox.Icon.Critical, "Baywright must end", message)
    box.setDetailedText(details)
    box.exec()
