"""The tab “Box sizes”: the sizes in use, edited in place, with the opening that each one takes."""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QStyledItemDelegate, QVBoxLayout, QWidget

from baywright.app.commands import EditRefused
from baywright.app.edits.inventory import AddBoxSize, RemoveBoxSize
from baywright.app.session import Session
from baywright.gui.messages import MessageBar, Tone
from baywright.gui.sizes.dialog import SizeDialog
from baywright.gui.sizes.model import SizeTable, length_reader
from baywright.gui.tables.delegates import ChoiceDelegate, TypedDelegate, as_text
from baywright.gui.tables.view import TableView

EMPTY = "No box sizes yet.\n\nA size is what several boxes share: width, depth and height outside. Add the first one."

_COUNTS: tuple[tuple[object, str], ...] = ((1, "alone"), (2, "up to 2"), (3, "up to 3"))
CHOICES: dict[str, tuple[tuple[object, str], ...]] = {
    "may_turn": ((False, "no"), (True, "yes")),
    "most_abreast": _COUNTS,
    "most_behind": _COUNTS,
}
"""What can be chosen in the columns of these fields."""


class SizeView(TableView):
    """The table of sizes with its editors."""

    refused = Signal(str)

    def __init__(self, model: SizeTable, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(model, "Box sizes", EMPTY, parent)
        self._delegates: list[QStyledItemDelegate] = []
        for number, column in enumerate(model.columns):
            if column.field in CHOICES:
                choice = ChoiceDelegate(lambda choices=CHOICES[column.field]: choices, self)  # type: ignore[misc]
                self._delegates.append(choice)
                self.setItemDelegateForColumn(number, choice)
            elif column.field:
                read: Callable[[str], object] = length_reader(session) if column.is_number else as_text
                delegate = TypedDelegate(read, self)
                delegate.refused.connect(self.refused)
                self._delegates.append(delegate)
                self.setItemDelegateForColumn(number, delegate)
        model.refused.connect(lambda _size, _field, message: self._on_model_refused(message))
        self.setEditTriggers(
            self.EditTrigger.DoubleClicked | self.EditTrigger.EditKeyPressed | self.EditTrigger.AnyKeyPressed
        )
        self.fit_columns()

    def _on_model_refused(self, message: str) -> None:
        delegate = self.itemDelegateForIndex(self.currentIndex())
        if isinstance(delegate, TypedDelegate):
            delegate.show_refusal(message, self.indexWidget(self.currentIndex()))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Del is the panel's."""
        if event.matches(QKeySequence.StandardKey.Delete):
            event.ignore()
        else:
            super().keyPressEvent(event)


class SizePanel(QWidget):
    """Shows, adds, edits and deletes box sizes."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.table = SizeTable(session, self)
        self.view = SizeView(self.table, session, self)
        self.messages = MessageBar(self)
        self.add = QPushButton("&New size…", self)
        self.add.setToolTip("Add a box size by its outside measures")
        self.delete = QPushButton("Delete si&ze", self)
        self.delete.setToolTip("Delete the selected size; only one that no box has can go")
        buttons = QHBoxLayout()
        buttons.addWidget(self.add)
        buttons.addWidget(self.delete)
        buttons.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(6, 6, 6, 6)
        column.addLayout(buttons)
        column.addWidget(self.view, 1)
        column.addWidget(self.messages)
        self.add.clicked.connect(self.add_size)
        self.delete.clicked.connect(self.delete_selected)
        self.view.refused.connect(lambda message: self.messages.show_message(message, Tone.TROUBLE))
        self.view.ids_selected.connect(self._on_selected)
        self._on_selected(())

    def update_from_document(self, *, replaced: bool = False) -> None:
        """Show the session's present document."""
        if replaced:
            self.messages.clear()
        was_empty = not self.table.total
        self.table.update_from_document(replaced=replaced)
        if was_empty and self.table.total:
            self.view.fit_columns()
        self._on_selected(self.view.selected_ids())

    def add_size(self) -> None:
        """Ask for a new size and add it."""
        dialog = SizeDialog(self._session.project, parent=self)
        if dialog.exec() and dialog.size_made is not None:
            self._session.do(AddBoxSize(dialog.size_made))
            self.view.select_ids((dialog.size_made.id,))
        dialog.deleteLater()

    def delete_selected(self) -> None:
        """Delete the selected sizes; one that boxes have stays, and the reason is told."""
        self.messages.clear()
        for size_id in self.view.selected_ids():
            try:
                self._session.do(RemoveBoxSize(size_id))
            except EditRefused as refusal:
                self.messages.show_message(refusal.message, Tone.TROUBLE)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Del deletes the selected sizes."""
        if event.key() == Qt.Key.Key_Delete:
            self.delete_selected()
            event.accept()
        else:
            super().keyPressEvent(event)

    def _on_selected(self, ids: tuple[str, ...]) -> None:
        self.delete.setEnabled(bool(ids))
