"""The questions that the window asks: file names, what to do with unsaved changes, how many copies.

They stand together behind one object, so that a test can answer in a person's place.
"""

from enum import Enum
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QInputDialog, QMessageBox, QWidget

PROJECT_FILTER = "Baywright projects (*.baywright);;All files (*)"
WORKBOOK_FILTER = "Workbooks (*.xlsx)"
PAPER_FILTER = "PDF files (*.pdf)"
TABLE_FILTER = "Tables (*.csv *.tsv *.txt *.xlsx);;All files (*)"


class Unsaved(Enum):
    """What to do with changes that are not saved."""

    SAVE = "save"
    DISCARD = "discard"
    STAY = "stay"


class Dialogs:
    """Asks in dialogs over `parent`; None always means that the person gave up."""

    def __init__(self, parent: QWidget) -> None:
        self._parent = parent

    def file_to_open(self, title: str, folder: Path, name_filter: str) -> Path | None:
        """An existing file."""
        name, _ = QFileDialog.getOpenFileName(self._parent, title, str(folder), name_filter)
        return Path(name) if name else None

    def file_to_write(self, title: str, suggestion: Path, name_filter: str, suffix: str) -> Path | None:
        """A file name, with `suffix` added where the person gave none; an existing file is asked about by Qt."""
        dialog = QFileDialog(self._parent, title, str(suggestion.parent), name_filter)
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setFileMode(QFileDialog.FileMode.AnyFile)
        dialog.setDefaultSuffix(suffix.removeprefix("."))
        dialog.selectFile(suggestion.name)
        try:
            if not dialog.exec():
                return None
            names = dialog.selectedFiles()
            return Path(names[0]) if names else None
        finally:
            dialog.deleteLater()

    def unsaved_changes(self, title: str) -> Unsaved:
        """Whether to save the changes of the project called `title`."""
        box = QMessageBox(self._parent)
        box.setIcon(QMessageBox.Icon.Warning)
        box.setTextFormat(Qt.TextFormat.PlainText)
        box.setWindowTitle("Unsaved changes")
        box.setText(f"“{title}” has changes that are not saved.")
        box.setInformativeText("Save them first? Without saving they are gone.")
        save = box.addButton("&Save", QMessageBox.ButtonRole.AcceptRole)
        discard = box.addButton("&Don't save", QMessageBox.ButtonRole.DestructiveRole)
        stay = box.addButton("&Cancel", QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(save)
        box.setEscapeButton(stay)
        box.exec()
        clicked = box.clickedButton()
        box.deleteLater()
        if clicked is save:
            return Unsaved.SAVE
        return Unsaved.DISCARD if clicked is discard else Unsaved.STAY

    def copies(self, what: str, most: int) -> int | None:
        """How many copies to make of `what`."""
        number, given = QInputDialog.getInt(self._parent, "Duplicate", f"Copies of {what}:", 1, 1, most)
        return number if given else None

    def trouble(self, title: str, message: str) -> None:
        """Tell what went wrong; the person has to close it."""
        box = QMessageBox(QMessageBox.Icon.Warning, title, message, QMessageBox.StandardButton.Ok, self._parent)
        box.setTextFormat(Qt.TextFormat.PlainText)
        box.exec()
        box.deleteLater()
