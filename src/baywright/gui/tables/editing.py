"""A table whose lines are edited in place by kind of value: lengths in the project's unit, prices, texts, choices.

Law: an edit becomes one command; a refused one keeps its editor open with the reason and changes nothing.
"""

from collections.abc import Callable, Mapping, Sequence
from typing import Any, cast

from PySide6.QtCore import QObject, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QSizePolicy, QStyledItemDelegate, QWidget

from baywright.app.commands import Command, EditRefused
from baywright.app.session import Session
from baywright.gui.fields.kinds import (
    ChoiceKind,
    CountKind,
    FlagKind,
    LengthKind,
    LiveChoiceKind,
    NumberKind,
    PriceKind,
    TypedKind,
    read_typed,
    write_typed,
)
from baywright.gui.tables.column import Column, Record
from baywright.gui.tables.delegates import ChoiceDelegate, TypedDelegate
from baywright.gui.tables.model import Index, RowTable
from baywright.gui.tables.view import TableView
from baywright.gui.wording import words_for
from baywright.model.length import LengthUnit

CellKind = TypedKind | ChoiceKind | LiveChoiceKind | FlagKind
YES_OR_NO: tuple[tuple[object, str], ...] = ((True, "yes"), (False, "no"))
MOST_LINES_SHOWN = 7
"""A longer table scrolls."""
LINES_OF_WORDS = 5


def choices_of(kind: CellKind) -> tuple[tuple[object, str], ...] | None:
    """What can be chosen in a cell of that kind now; None where its value is typed."""
    match kind:
        case ChoiceKind():
            return kind.choices
        case LiveChoiceKind():
            return kind.choices()
        case FlagKind():
            return YES_OR_NO
        case _:
            return None


def value_column(
    title: str,
    field: str,
    kind: CellKind,
    hint: str,
    unit: Callable[[], LengthUnit],
    *,
    sample: str = "",
    of: Callable[[Any], object] = lambda record: record,
) -> Column[Any]:
    """A column that shows and edits one field of its records, or of what `of` finds in them."""

    def text(record: object) -> str:
        value = getattr(of(record), field)
        choices = choices_of(kind)
        if choices is not None:
            return words_for(value, choices)
        typed = cast(TypedKind, kind)
        return typed.empty_means if value is None else write_typed(typed, value, unit())

    def write(record: object) -> object:
        value = getattr(of(record), field)
        return value if choices_of(kind) is not None else write_typed(cast(TypedKind, kind), value, unit(), exact=True)

    is_number = isinstance(kind, LengthKind | CountKind | NumberKind | PriceKind)
    return Column(
        title,
        text,
        lambda record: getattr(of(record), field),
        hint,
        field,
        is_number=is_number,
        write=write,
        sample=sample,
    )


class EditTable(RowTable[Record]):
    """Records of the session's document; `command` makes the edit of a field of a record."""

    refused = Signal(str)
    """Why an edit was refused."""

    def __init__(
        self,
        session: Session,
        columns: Sequence[Column[Record]],
        command: Callable[[str, str, object], Command],
        parent: QObject | None = None,
        *,
        of: Callable[[Record], object] = lambda record: record,
    ) -> None:
        super().__init__(columns, parent)
        self._session, self._command, self._of = session, command, of

    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Send the edit to the session; False where it is refused (`refused` then tells why)."""
        if role != Qt.ItemDataRole.EditRole or not index.isValid():
            return False
        field, identifier = self.columns[index.column()].field, self.id_at(index.row())
        if not field:
            return False
        if getattr(self._of(self.record(identifier)), field) == value:
            return True
        try:
            self._session.do(self._command(identifier, field, value))
        except EditRefused as refusal:
            self.refused.emit(refusal.message)
            return False
        return True


class EditTableView(TableView):
    """Shows an `EditTable` as high as its lines need; `kinds` says by field how cells are edited."""

    refused = Signal(str)
    """Why what was typed is not taken; empty when that is over."""
    delete_wanted = Signal()

    def __init__(
        self,
        model: EditTable[Any],
        session: Session,
        kinds: Mapping[str, CellKind],
        name: str,
        empty: str,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(model, name, empty, parent)
        self._delegates: list[QStyledItemDelegate] = []
        for number, column in enumerate(model.columns):
            if column.field:
                self._give(number, kinds[column.field], session)
        model.refused.connect(self._on_model_refused)
        for changed in (model.rowsInserted, model.rowsRemoved, model.modelReset):
            changed.connect(self.updateGeometry)
        self.setEditTriggers(
            self.EditTrigger.DoubleClicked | self.EditTrigger.EditKeyPressed | self.EditTrigger.AnyKeyPressed
        )
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.fit_columns()

    def _give(self, number: int, kind: CellKind, session: Session) -> None:
        delegate: QStyledItemDelegate
        if isinstance(kind, ChoiceKind | LiveChoiceKind | FlagKind):
            delegate = ChoiceDelegate(lambda: choices_of(kind) or (), self)
        else:
            typed = TypedDelegate(lambda text: read_typed(kind, text, session.project.unit), self)
            typed.refused.connect(self.refused)
            delegate = typed
        self._delegates.append(delegate)
        self.setItemDelegateForColumn(number, delegate)

    def _on_model_refused(self, message: str) -> None:
        delegate = self.itemDelegateForIndex(self.currentIndex())
        if isinstance(delegate, TypedDelegate):
            delegate.show_refusal(message, self.indexWidget(self.currentIndex()))
        else:
            self.refused.emit(message)

    def sizeHint(self) -> QSize:
        """As high as the lines need, from three to seven; the header and a scroll bar come on top. An empty table has
        room for the words that tell why it is.
        """
        count = len(self.rows.ids)
        lines = max(3, min(MOST_LINES_SHOWN, count)) if count else LINES_OF_WORDS
        bar = self.horizontalScrollBar().sizeHint().height()
        height = self.horizontalHeader().sizeHint().height() + lines * self.verticalHeader().defaultSectionSize()
        return QSize(300, height + bar + 2 * self.frameWidth())

    def minimumSizeHint(self) -> QSize:
        """The same height; as narrow as need be."""
        return QSize(160, self.sizeHint().height())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Del removes the selected lines."""
        if event.matches(QKeySequence.StandardKey.Delete):
            self.delete_wanted.emit()
            event.accept()
        else:
            super().keyPressEvent(event)
