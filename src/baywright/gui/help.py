"""The help that is always at hand: all keys, and what the program does not take off anybody's hands."""

from collections.abc import Iterable

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QHeaderView,
    QLabel,
    QScrollArea,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from baywright import __version__
from baywright.gui.sections import scrolling
from baywright.model.caution import CAUTIONS, WHO_DECIDES

IN_TABLES = (
    ("Enter or F2", "Edit the cell; typing replaces it"),
    ("Tab", "Take the cell in and go on to the next one"),
    ("Esc", "Give the old value back"),
    ("Ctrl+C", "Copy the selected rows, for a spreadsheet"),
    ("Ctrl+V", "Paste: rows of a spreadsheet go to the preview, one text into the cell"),
    ("Del", "Delete the selected rows"),
    ("Click on a heading", "Sort; a third click goes back to the first order"),
)


def key_rows(actions: Iterable[QAction]) -> list[tuple[str, str]]:
    """Keys and deeds of the actions that have keys."""
    rows = []
    for action in actions:
        keys = " or ".join(
            key.toString(QKeySequence.SequenceFormat.NativeText) for key in action.shortcuts() if not key.isEmpty()
        )
        if keys:
            rows.append((keys, action.statusTip() or action.iconText()))
    return rows


class KeysDialog(QDialog):
    """All keys in a table."""

    def __init__(
        self, window_actions: Iterable[QAction], picture_actions: Iterable[QAction], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Keys")
        sections = (
            ("Everywhere", key_rows(window_actions)),
            ("In the picture of the run", key_rows(picture_actions)),
            ("In tables", list(IN_TABLES)),
        )
        self.table = QTableWidget(sum(len(rows) + 1 for _, rows in sections), 2, self)
        self.table.setHorizontalHeaderLabels(["Keys", "What they do"])
        self.table.verticalHeader().hide()
        self.table.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
        self.table.setShowGrid(False)
        self.table.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.table.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.table.setWordWrap(True)
        self.table.setAccessibleName("Keys")
        line = 0
        for title, rows in sections:
            heading = QTableWidgetItem(title)
            font = heading.font()
            font.setBold(True)
            heading.setFont(font)
            self.table.setItem(line, 0, heading)
            self.table.setSpan(line, 0, 1, 2)
            line += 1
            for keys, deed in rows:
                self.table.setItem(line, 0, QTableWidgetItem(keys))
                self.table.setItem(line, 1, QTableWidgetItem(deed))
                line += 1
        header = self.table.horizontalHeader()
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.ResizeToContents)
        header.setSectionResizeMode(1, QHeaderView.ResizeMode.Stretch)
        column = QVBoxLayout(self)
        column.addWidget(self.table)
        column.addWidget(_close_buttons(self))
        self.resize(620, 520)


class AboutDialog(QDialog):
    """What the program is, and the cautions that go with it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("About Baywright")
        column = QVBoxLayout(self)
        heading = QLabel(f"Baywright {__version__}", self)
        font = heading.font()
        font.setBold(True)
        font.setPointSizeF(font.pointSizeF() * 1.3)
        heading.setFont(font)
        words = QLabel(
            "Plans a wall of drawer bays for stackable boxes on the real grid of hole rows, shows the working of every "
            "dimension, and writes a workbook to order from.",
            self,
        )
        column.addWidget(heading)
        column.addWidget(words)
        take_care = QLabel("Take care", self)
        bold = take_care.font()
        bold.setBold(True)
        take_care.setFont(bold)
        column.addSpacing(8)
        column.addWidget(take_care)
        column.addWidget(_cautions(self), 1)
        words.setWordWrap(True)
        column.addWidget(_close_buttons(self))
        self.resize(620, 560)


def _cautions(dialog: QDialog) -> QScrollArea:
    """All cautions, each a paragraph; they scroll where the dialog is too small for them."""
    inner = QWidget(dialog)
    column = QVBoxLayout(inner)
    column.setContentsMargins(0, 0, 8, 0)
    for told in (*(f"{caution.title}. {caution.text}" for caution in CAUTIONS), WHO_DECIDES):
        label = QLabel(f"⚠ {told}", inner)
        label.setWordWrap(True)
        label.setTextFormat(Qt.TextFormat.PlainText)
        column.addWidget(label)
    column.addStretch(1)
    area = scrolling(inner, dialog)
    area.setFocusPolicy(Qt.FocusPolicy.StrongFocus)  # so that it scrolls from the keyboard
    area.setAccessibleName("Cautions")
    return area


def _close_buttons(dialog: QDialog) -> QDialogButtonBox:
    buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close, dialog)
    buttons.rejected.connect(dialog.reject)
    return buttons
