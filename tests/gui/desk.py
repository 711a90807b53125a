"""A small workshop, and a window on it with somebody who answers its questions."""

from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QDialog, QWidget

from baywright.gui.dialogs import Dialogs, Unsaved
from baywright.gui.window import MainWindow
from baywright.model.inventory import Box, BoxSize, Use
from baywright.model.project import Project
from baywright.model.space import Space

LOW = BoxSize(id="low", name="Low", width_mm=300, depth_mm=300, height_mm=120)
HIGH = BoxSize(id="high", name="High", width_mm=300, depth_mm=300, height_mm=220)


def workshop() -> Project:
    """Six boxes of two sizes that fit three bays; nothing is planned yet."""
    return Project(
        name="Shed",
        space=Space(length_mm=1500, depth_mm=400, height_limit_mm=900),
        box_sizes=(LOW, HIGH),
        boxes=(
            Box(
                id="box-1", label="Brake blocks", size_id="low", loaded_mass_kg=3.5, contents="40 pairs", group="Brakes"
            ),
            Box(id="box-2", label="Cables", size_id="low", loaded_mass_kg=12, use=Use.DAILY),
            Box(id="box-3", label="Chains", size_id="high", loaded_mass_kg=9),
            Box(id="box-4", label="Pedals", size_id="low"),
            Box(id="box-5", label="saddles", size_id="low", loaded_mass_kg=4.8, use=Use.SELDOM),
            Box(id="box-6", label="Tubes", size_id="high", loaded_mass_kg=7),
        ),
    )


class Answers(Dialogs):
    """Answers the window's questions in the order given; a question that nobody expected fails the test."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.files_to_open: list[Path | None] = []
        self.files_to_write: list[Path | None] = []
        self.unsaved: list[Unsaved] = []
        self.numbers: list[int | None] = []
        self.troubles: list[str] = []
        self.suggestions: list[Path] = []

    def file_to_open(self, title: str, folder: Path, name_filter: str) -> Path | None:
        return self.files_to_open.pop(0)

    def file_to_write(self, title: str, suggestion: Path, name_filter: str, suffix: str) -> Path | None:
        self.suggestions.append(suggestion)
        return self.files_to_write.pop(0)

    def unsaved_changes(self, title: str) -> Unsaved:
        return self.unsaved.pop(0)

    def copies(self, what: str, most: int) -> int | None:
        return self.numbers.pop(0)

    def trouble(self, title: str, message: str) -> None:
        self.troubles.append(message)


class Desk:
    """A shown window with the one who answers its questions."""

    def __init__(self, window: MainWindow, answers: Answers, folder: Path) -> None:
        self.window, self.answers, self.folder = window, answers, folder
        self.session, self.panels, self.actions = window.session, window.panels, window.actions_

    @property
    def message(self) -> str:
        """What the window tells over its panels."""
        return self.panels.messages.message


Shown = TypeVar("Shown", bound=QDialog)


def answer_dialog(kind: type[Shown], deed: Callable[[Shown], None]) -> None:
    """Do `deed` in the dialog of that kind that opens next; one still open after the deed is given up.

    So a deed that fails ends the test instead of leaving a dialog that waits for ever.
    """
    timer = QTimer(QApplication.instance())
    timer.setInterval(5)
    tries = 0

    def look() -> None:
        nonlocal tries
        tries += 1
        opened = QApplication.activeModalWidget()
        if opened is None and tries < 2_000:
            return
        timer.stop()
        timer.deleteLater()
        try:
            assert isinstance(opened, kind), f"{opened} opened instead of a {kind.__name__}"
            deed(opened)
        finally:
            if isinstance(opened, QDialog) and opened.isVisible():
                opened.reject()

    timer.timeout.connect(look)
    timer.start()


OpenDesk = Callable[..., Desk]
"""Opens a window: on the workshop or another project; `synchronous=False` plans beside the window."""
