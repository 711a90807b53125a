"""Takes the pictures of the window that the README shows: the real program on the demo, drawn without a screen.

Laws: the window is opened as the program opens it, and its planner plans the demo; nothing of the user's settings is
read or written; the same program gives the same pictures (one font, no clock, no cursor).
"""

import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QSize
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QApplication, QWidget

from baywright.bootstrap import demo_file, resources_folder
from baywright.gui.application import make_application, open_window
from baywright.gui.theme import Theme
from baywright.gui.window import MainWindow

WIDE = QSize(1440, 900)
SMALL = QSize(1000, 640)
MOST_SECONDS = 20.0
"""How long planning the demo may take before the pictures are given up."""


def main(arguments: list[str]) -> int:
    """Take all pictures into the folder named, or into that of the README; print their paths."""
    folder = Path(arguments[0]) if arguments else resources_folder() / "pictures"
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as settings:
        application = make_application()
        window = open_window(None, Path(settings), demo_file(), begin_with_demo=True)
        plan(application, window)
        for name, take in PICTURES.items():
            picture = take(application, window)
            path = folder / f"{name}.png"
            if not picture.save(str(path), "PNG"):
                print(f"{path} could not be written; is there such a folder, and may it be written?", file=sys.stderr)
                return 1
            print(f"{path}  {picture.width()} × {picture.height()}, {path.stat().st_size / 1000:.0f} kB")
        window.close()
    return 0


def plan(application: QApplication, window: MainWindow) -> None:
    """Plan the document as the button does, wait for the answer, and close the message about it."""
    window.actions_.plan.trigger()
    wait(application, lambda: window.session.is_planning, "The demo was not planned in time.")
    window.tell("")


def wait(application: QApplication, is_busy: Callable[[], bool], too_late: str) -> None:
    """Let the window work until something ends; raises TimeoutError where it takes too long."""
    give_up = time.monotonic() + MOST_SECONDS
    while is_busy():
        if time.monotonic() > give_up:
            raise TimeoutError(too_late)
        application.processEvents()
        time.sleep(0.005)


def settle(application: QApplication) -> None:
    """Let everything that was asked to be laid out and drawn be so."""
    for _ in range(3):
        application.sendPostedEvents()
        application.processEvents()


def whole(theme: Theme, size: QSize, entries: int = 0, lists: int = 1) -> Callable[[QApplication, MainWindow], QPixmap]:
    """How to take the whole window, with these tabs in front."""

    def take(application: QApplication, window: MainWindow) -> QPixmap:
        show(application, window, theme, size)
        window.panels.entries.setCurrentIndex(entries)
        window.panels.lists.setCurrentIndex(lists)
        return grab(application, window)

    return take


def inventory(application: QApplication, window: MainWindow) -> QPixmap:
    """The inventory, pulled wide enough for all its columns."""
    return panel(application, window, window.panels.boxes)


def dimensions(application: QApplication, window: MainWindow) -> QPixmap:
    """The dimensions, one of them opened down to what it comes from."""
    window.panels.workings.show_entry("bay_clear_width")
    return panel(application, window, window.panels.workings)


def options(application: QApplication, window: MainWindow) -> QPixmap:
    """The shapes that the run could have, under its picture."""
    show(application, window, Theme.LIGHT, WIDE)
    before = window.panels.lists.currentWidget()
    window.panels.entries.setCurrentIndex(0)
    window.actions_.options.trigger()
    wait(application, lambda: window.session.options.is_looking, "The options were not found in time.")
    picture = grab(application, window)
    window.panels.lists.setCurrentWidget(before)
    return picture


def panel(application: QApplication, window: MainWindow, widget: QWidget) -> QPixmap:
    """One tab of the left side, pulled wide."""
    show(application, window, Theme.LIGHT, WIDE)
    before = window.panels.whole.saveState()
    window.panels.entries.setCurrentWidget(widget)
    window.panels.whole.setSizes([1000, 440])
    picture = grab(application, widget)
    window.panels.whole.restoreState(before)
    return picture


def show(application: QApplication, window: MainWindow, theme: Theme, size: QSize) -> None:
    """Give the window its colours and size."""
    window.choose_theme(theme)
    window.resize(size)
    settle(application)
    window.panels.elevation.zoom_to_fit()


def grab(application: QApplication, widget: QWidget) -> QPixmap:
    """What a widget looks like with nothing focused, so that no cursor blinks in it."""
    focused = application.focusWidget()
    if focused is not None:
        focused.clearFocus()
    settle(application)
    return widget.grab()


PICTURES = {
    "window-light": whole(Theme.LIGHT, WIDE),
    "window-dark": whole(Theme.DARK, WIDE),
    "window-small": whole(Theme.LIGHT, SMALL),
    "inventory": inventory,
    "dimensions": dimensions,
    "options": options,
}


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
