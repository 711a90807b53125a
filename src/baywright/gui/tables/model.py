"""A Qt table model over records that have ids.

Laws: records are found by id, never by row number; sorting and filtering happen here, on raw values (a proxy over a
Python model is hundreds of times slower); new records change only the rows that differ, so that selection, scroll and
an open editor survive; editing a value never moves its row: rows are ordered anew only when a header is clicked.
"""

from collections.abc import Iterable, Sequence
from typing import Any, Generic

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QFont

from baywright.gui.tables.column import Column, Record, sortable

Index = QModelIndex | QPersistentModelIndex
MOST_STEPS = 64
"""More separate insertions and removals than this are shown as one reset, which is quicker."""

MARK = "▸ "
"""Stands before a line that is marked."""
MARKED_WORDS = ", has the selected part"
_BOLD = QFont()
_BOLD.setBold(True)
_Role = Qt.ItemDataRole
_FIXED = Qt.ItemFlag.ItemIsSelectable | Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemNeverHasChildren
_EDITABLE = _FIXED | Qt.ItemFlag.ItemIsEditable


class RowTable(QAbstractTableModel, Generic[Record]):
    """Shows records in columns; `show_records` brings it up to date."""

    def __init__(self, columns: Sequence[Column[Record]], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.columns: Sequence[Column[Record]] = columns
        self._records: dict[str, Record] = {}
        self._order: list[str] = []
        self._words: list[str] = []
        self._haystacks: dict[str, str] = {}
        self._sorted_by: tuple[int, Qt.SortOrder] | None = None
        self._marked: frozenset[str] = frozenset()

    # ---- what is shown

    @property
    def ids(self) -> tuple[str, ...]:
        """The ids in the order shown, those left out by the filter missing."""
        return tuple(self._order)

    @property
    def total(self) -> int:
        """How many records there are, those left out by the filter included."""
        return len(self._records)

    def record(self, identifier: str) -> Record:
        """The record with that id; KeyError where there is none."""
        return self._records[identifier]

    def id_at(self, row: int) -> str:
        """The id of the record in a row."""
        return self._order[row]

    def row_of(self, identifier: str) -> int:
        """The row of a record, -1 where it is not shown."""
        try:
            return self._order.index(identifier)
        except ValueError:
            return -1

    def rows_of(self, identifiers: Iterable[str]) -> list[int]:
        """The rows of several records, ascending; those that are not shown are left out."""
        wanted = set(identifiers)
        return [row for row, key in enumerate(self._order) if key in wanted]

    def column_of(self, field: str) -> int:
        """The number of the column that edits `field`; ValueError where none does."""
        return next(number for number, column in enumerate(self.columns) if column.field == field)

    def show_records(self, records: Iterable[tuple[str, Record]], *, sort_anew: bool = False) -> None:
        """Show these records; their order is the one of the document and counts while no column sorts.

        `sort_anew` orders all rows again, for instance after another document was opened.
        """
        fresh = dict(records)
        changed = {key for key, record in fresh.items() if key in self._records and self._records[key] != record}
        for key in changed | (self._records.keys() - fresh.keys()):
            self._haystacks.pop(key, None)
        before = set(self._records)
        self._records = {**self._records, **fresh}
        self._arrange(self._target(fresh, before))
        self._records = fresh
        self._announce(changed)
        if sort_anew:
            self._arrange(self._sorted([key for key in fresh if self._passes(key)]))

    def refresh(self) -> None:
        """Draw every value anew, for instance after the unit changed."""
        self._haystacks.clear()
        if self._order:
            self.dataChanged.emit(self.index(0, 0), self.index(len(self._order) - 1, len(self.columns) - 1))

    def mark(self, identifiers: Iterable[str]) -> None:
        """Let these lines stand out, by a sign before them and in bold, and no others."""
        marked = frozenset(identifiers)
        changed = marked ^ self._marked
        self._marked = marked
        self._announce(set(changed))

    @property
    def marked(self) -> frozenset[str]:
        """The ids of the lines that stand out."""
        return self._marked

    # ---- filter and sort

    def set_filter(self, text: str) -> None:
        """Show only the records in which every word of `text` occurs in some column."""
        self._words = text.casefold().split()
        self._arrange(self._sorted([key for key in self._records if self._passes(key)]))

    def sort(self, column: int, order: Qt.SortOrder = Qt.SortOrder.AscendingOrder) -> None:
        """Order the rows by a column's raw values; column -1 goes back to the document's order."""
        self._sorted_by = (column, order) if 0 <= column < len(self.columns) else None
        shown = set(self._order)
        self._arrange(self._sorted([key for key in self._records if key in shown]))

    def _sorted(self, keys: list[str]) -> list[str]:
        if self._sorted_by is None:
            return keys
        column, order = self._sorted_by
        raw = self.columns[column].raw
        values = {key: sortable(raw(self._records[key])) for key in keys}
        present = [key for key in keys if values[key] is not None]
        present.sort(key=values.__getitem__, reverse=order is Qt.SortOrder.DescendingOrder)
        return present + [key for key in keys if values[key] is None]

    def _passes(self, key: str) -> bool:
        if not self._words:
            return True
        haystack = self._haystacks.get(key)
        if haystack is None:
            record = self._records[key]
            haystack = "\n".join(column.text(record) for column in self.columns).casefold()
            self._haystacks[key] = haystack
        return all(word in haystack for word in self._words)

    def _target(self, fresh: dict[str, Record], before: set[str]) -> list[str]:
        """The order to show next. New records are shown whatever the filter, so that none is added unseen; while a
        column sorts, rows stay where they are and new ones go to the end.
        """
        shown = set(self._order)
        wanted = [key for key in fresh if key in shown or key not in before or self._passes(key)]
        if self._sorted_by is None:
            return wanted
        return [key for key in self._order if key in fresh] + [key for key in wanted if key not in shown]

    # ---- from the order shown to another one, step by step

    def _arrange(self, target: list[str]) -> None:
        if target == self._order:
            return
        wanted, shown = set(target), set(self._order)
        removals = runs([row for row, key in enumerate(self._order) if key not in wanted])
        insertions = runs([row for row, key in enumerate(target) if key not in shown])
        if len(removals) + len(insertions) > MOST_STEPS:
            self.beginResetModel()
            self._order = target
            self.endResetModel()
            return
        nowhere = QModelIndex()
        for first, last in reversed(removals):
            self.beginRemoveRows(nowhere, first, last)
            del self._order[first : last + 1]
            self.endRemoveRows()
        self._permute([key for key in target if key in shown])
        for first, last in insertions:
            self.beginInsertRows(nowhere, first, last)
            self._order[first:first] = target[first : last + 1]
            self.endInsertRows()

    def _permute(self, target: list[str]) -> None:
        if target == self._order:
            return
        self.layoutAboutToBeChanged.emit()
        old = self.persistentIndexList()
        keys = [self._order[index.row()] for index in old]
        rows = {key: row for row, key in enumerate(target)}
        self._order = target
        new = [self.index(rows[key], index.column()) for key, index in zip(keys, old, strict=True)]
        self.changePersistentIndexList(old, new)
        self.layoutChanged.emit()

    def _announce(self, changed: set[str]) -> None:
        last = len(self.columns) - 1
        for first_row, last_row in runs([row for row, key in enumerate(self._order) if key in changed]):
            self.dataChanged.emit(self.index(first_row, 0), self.index(last_row, last))

    # ---- Qt's questions

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        """The records shown."""
        return 0 if parent.isValid() else len(self._order)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        """The columns."""
        return 0 if parent.isValid() else len(self.columns)

    def data(self, index: Index, role: int = _Role.DisplayRole) -> Any:
        """Text, text in the editor, alignment and hint of a cell."""
        if not index.isValid() or not index.row() < len(self._order):
            return None
        identifier, column = self._order[index.row()], self.columns[index.column()]
        record = self._records[identifier]
        if role == _Role.DisplayRole:
            return (
                MARK + column.text(record) if identifier in self._marked and not index.column() else column.text(record)
            )
        if role == _Role.FontRole:
            return _BOLD if identifier in self._marked else None
        if role == _Role.EditRole:
            return column.write(record) if column.write is not None else column.text(record)
        if role == _Role.TextAlignmentRole:
            side = Qt.AlignmentFlag.AlignRight if column.is_number else Qt.AlignmentFlag.AlignLeft
            return (side | Qt.AlignmentFlag.AlignVCenter).value
        if role == _Role.ToolTipRole:
            return column.tip(record) if column.tip is not None else column.text(record)
        if role == _Role.AccessibleTextRole:
            marked = MARKED_WORDS if identifier in self._marked and not index.column() else ""
            return f"{column.title}: {column.text(record) or 'empty'}{marked}"
        return None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = _Role.DisplayRole) -> Any:
        """Titles and hints of the columns; rows are not numbered."""
        if orientation is not Qt.Orientation.Horizontal or not 0 <= section < len(self.columns):
            return None
        column = self.columns[section]
        if role == _Role.DisplayRole:
            return column.title
        if role == _Role.ToolTipRole:
            return column.hint or column.title
        if role == _Role.TextAlignmentRole:
            side = Qt.AlignmentFlag.AlignRight if column.is_number else Qt.AlignmentFlag.AlignLeft
            return (side | Qt.AlignmentFlag.AlignVCenter).value
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Which cells can be edited."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        return _EDITABLE if self.columns[index.column()].field else _FIXED


def runs(rows: list[int]) -> list[tuple[int, int]]:
    """Ascending numbers as runs of neighbours, first and last of each."""
    runs: list[tuple[int, int]] = []
    for row in rows:
        if runs and row == runs[-1][1] + 1:
            runs[-1] = (runs[-1][0], row)
        else:
            runs.append((row, row))
    return runs
