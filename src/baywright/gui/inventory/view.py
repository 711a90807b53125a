"""The view on the box table: which editor a column has, and what typed text means there."""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QComboBox, QStyledItemDelegate, QWidget

from baywright.app.session import Session
from baywright.gui.inventory.model import BoxTable
from baywright.gui.tables.delegates import ChoiceDelegate, Index, TypedDelegate, as_text
from baywright.gui.tables.view import TableView
from baywright.gui.wording import STATUSES, USES, size_words
from baywright.model.mass import parse_mass

NEW_SIZE = "another size"
"""Stands in the list of sizes for one that is not there yet; an id cannot have a blank."""

EMPTY = (
    "No boxes yet.\n\nAdd the first one with “Add box”, import a list (Ctrl+I), "
    "or copy cells in a spreadsheet and paste them here (Ctrl+V)."
)


def read_optional_mass(text: str) -> object:
    """A mass in kg, or None for nothing: not weighed."""
    if not text.strip():
        return None
    try:
        return parse_mass(text)
    except ValueError as error:
        raise ValueError(f"{error} Leave it empty where the box has not been weighed.") from None


class SizeDelegate(ChoiceDelegate):
    """The list of box sizes, and at its end “new size…”."""

    new_size_wanted = Signal(str)
    """A new size is wanted for the box with this id."""

    def setModelData(self, editor: QWidget, model: object, index: Index) -> None:
        """Take the size in, or ask for a new one."""
        if isinstance(editor, QComboBox) and editor.currentData() == NEW_SIZE:
            table = index.model()
            if isinstance(table, BoxTable):
                self.new_size_wanted.emit(table.id_at(index.row()))
            return
        super().setModelData(editor, model, index)  # type: ignore[arg-type]


class BoxView(TableView):
    """The box table with its editors. Pasting is left to `pasted`, deleting to the window's action."""

    refused = Signal(str)
    """Why what was typed into a cell is not taken; empty when that is over."""
    new_size_wanted = Signal(str)
    pasted = Signal()
    """The person wants to paste cells."""

    def __init__(self, model: BoxTable, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(model, "Boxes", EMPTY, parent)
        self.boxes = model
        self._session = session
        self._delegates: list[QStyledItemDelegate] = []
        self._give_editors()
        model.refused.connect(lambda _box, _field, message: self._on_model_refused(message))
        self.setEditTriggers(
            self.EditTrigger.DoubleClicked | self.EditTrigger.EditKeyPressed | self.EditTrigger.AnyKeyPressed
        )
        self.fit_columns()

    def _give_editors(self) -> None:
        readers: dict[str, Callable[[str], object]] = {"loaded_mass_kg": read_optional_mass}
        for number, column in enumerate(self.boxes.columns):
            if column.field == "use":
                self._give(number, ChoiceDelegate(lambda: USES, self))
            elif column.field == "status":
                self._give(number, ChoiceDelegate(lambda: STATUSES, self))
            elif column.field == "size_id":
                sizes = SizeDelegate(self._size_choices, self)
                sizes.new_size_wanted.connect(self.new_size_wanted)
                self._give(number, sizes)
            elif column.field:
                typed = TypedDelegate(readers.get(column.field, as_text), self)
                typed.refused.connect(self.refused)
                self._give(number, typed)

    def _give(self, column: int, delegate: QStyledItemDelegate) -> None:
        self._delegates.append(delegate)
        self.setItemDelegateForColumn(column, delegate)

    def _size_choices(self) -> list[tuple[object, str]]:
        project = self._session.project
        sizes = sorted(project.box_sizes, key=lambda size: (size.height_mm, size.name))
        listed: list[tuple[object, str]] = [
            (size.id, f"{size.name}  ({size_words(size, project.unit)})") for size in sizes
        ]
        return [*listed, (NEW_SIZE, "New size…")]

    def _on_model_refused(self, message: str) -> None:
        delegate = self.itemDelegateForIndex(self.currentIndex())
        editor = self.indexWidget(self.currentIndex())
        if isinstance(delegate, TypedDelegate):
            delegate.show_refusal(message, editor)
        else:
            self.refused.emit(message)

    def edit_field(self, box_id: str, field: str) -> None:
        """Put the cursor into a field of a box and open its editor."""
        row = self.boxes.row_of(box_id)
        if row >= 0:
            index = self.boxes.index(row, self.boxes.column_of(field))
            self.setFocus(Qt.FocusReason.OtherFocusReason)
            self.setCurrentIndex(index)
            self.scrollTo(index)
            self.edit(index)

    def _paste_into_cell(self, text: str) -> bool:
        """Put a text into the current cell; False where there is no cell for it."""
        index = self.currentIndex()
        delegate = self.itemDelegateForIndex(index)
        if not text.strip() or not index.isValid() or not isinstance(delegate, TypedDelegate):
            return False
        try:
            value = delegate.read(text)
        except ValueError as error:
            self.refused.emit(str(error))
            return True
        if self.boxes.setData(index, value):
            self.refused.emit("")
        return True

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Ctrl+V puts a single text into the cell and offers several cells for taking over."""
        if event.matches(QKeySequence.StandardKey.Paste):
            text = QGuiApplication.clipboard().text().strip("\r\n")
            if "\t" in text or "\n" in text or not self._paste_into_cell(text):
                self.pasted.emit()
            event.accept()
        else:
            super().keyPressEvent(event)
