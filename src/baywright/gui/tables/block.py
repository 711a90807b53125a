"""A part of a tab of entries: a few words, a row of buttons, a table, and under it why an edit was refused."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from baywright.app.commands import Command, EditRefused
from baywright.app.session import Session
from baywright.gui.messages import MessageBar, Tone
from baywright.gui.tables.editing import EditTableView
from baywright.model.length import LengthUnit


def explanation(words: str, parent: QWidget) -> QLabel:
    """A wrapped sentence or two, as high as they need at any width."""
    label = QLabel(words, parent)
    label.setWordWrap(True)
    policy = QSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
    policy.setHeightForWidth(True)
    label.setSizePolicy(policy)
    return label


class Block(QWidget):
    """One table with what belongs to it."""

    def __init__(self, session: Session, words: str, view: EditTableView, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.session, self.view = session, view
        self._unit = session.project.unit
        self.words = explanation(words, self)
        self.messages = MessageBar(self)
        self.row = QHBoxLayout()
        self.row.addStretch(1)
        self.column = column = QVBoxLayout(self)
        column.setContentsMargins(6, 0, 2, 8)
        column.addWidget(self.words)
        column.addLayout(self.row)
        column.addWidget(view)
        column.addWidget(self.messages)
        column.addStretch(1)
        view.refused.connect(lambda message: self.messages.show_message(message, Tone.TROUBLE))

    @staticmethod
    def unit_of(session: Session) -> Callable[[], LengthUnit]:
        """Tells in what to show lengths."""
        return lambda: session.project.unit

    def add_button(self, text: str, tip: str, deed: Callable[[], None]) -> QPushButton:
        """A button after those that are there."""
        button = QPushButton(text, self)
        button.setToolTip(tip)
        button.clicked.connect(deed)
        self.row.insertWidget(self.row.count() - 1, button)
        return button

    def in_a_row_above(self, *buttons: QPushButton) -> None:
        """Put buttons into a row of their own over the others, so that all have room where the window is narrow."""
        over = QHBoxLayout()
        for button in buttons:
            self.row.removeWidget(button)
            over.addWidget(button)
        over.addStretch(1)
        self.column.insertLayout(1, over)

    def show_records(self, records: list[tuple[str, Any]]) -> None:
        """Show these lines; in another unit all are written anew."""
        was_empty = not self.view.rows.total
        self.view.change_rows(lambda: self.view.rows.show_records(records))
        changed_unit = self._unit is not self.session.project.unit
        if changed_unit:
            self._unit = self.session.project.unit
            self.view.rows.refresh()
        if changed_unit or (was_empty and records):
            self.view.fit_columns(200)

    def attempt(self, command: Command) -> bool:
        """Do a command; a refusal is told under the table."""
        self.messages.clear()
        try:
            self.session.do(command)
        except EditRefused as refusal:
            self.messages.show_message(refusal.message, Tone.TROUBLE)
            return False
        return True

    def begin_editing(self, identifier: str, field: str) -> None:
        """Select a line and open the editor of one of its fields."""
        row = self.view.rows.row_of(identifier)
        if row < 0:
            return
        index = self.view.rows.index(row, self.view.rows.column_of(field))
        self.view.setFocus(Qt.FocusReason.OtherFocusReason)
        self.view.select_ids((identifier,))
        self.view.setCurrentIndex(index)
        self.view.edit(index)
