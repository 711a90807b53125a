"""The view for every table: whole rows, sorting by header, copying out, and words where there is nothing to show."""

from collections.abc import Callable, Iterable
from typing import Any

from PySide6.QtCore import QEvent, QItemSelection, QItemSelectionModel, QModelIndex, Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from baywright.gui.tables.model import RowTable, runs
from baywright.gui.theme import colours_for

_SELECT_ROWS = QItemSelectionModel.SelectionFlag.ClearAndSelect | QItemSelectionModel.SelectionFlag.Rows


class TableView(QTableView):
    """Shows a `RowTable`; speaks of records by their ids."""

    ids_selected = Signal(object)
    """The user selected these ids (a tuple); not sent for a selection made by `select_ids`."""

    def __init__(self, model: RowTable[Any], name: str, empty: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._empty = empty
        self._selecting = False
        self.rows = model
        self.setModel(model)
        self.setAccessibleName(name)
        self.setAlternatingRowColors(True)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setTextElideMode(Qt.TextElideMode.ElideRight)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.verticalHeader().hide()
        self._set_up_header()
        self._fit_row_height()
        self.selectionModel().selectionChanged.connect(self._on_selection_changed)
        model.modelReset.connect(self._on_reset)

    def _set_up_header(self) -> None:
        header = self.horizontalHeader()
        header.setSortIndicatorClearable(True)
        header.setSortIndicator(-1, Qt.SortOrder.AscendingOrder)
        header.setResizeContentsPrecision(50)
        header.setHighlightSections(False)
        header.setSectionsMovable(False)
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.setSortingEnabled(True)

    def fit_columns(self, widest: int = 260) -> None:
        """Make columns as wide as their contents, within reason; the last one takes the rest."""
        self.resizeColumnsToContents()
        header = self.horizontalHeader()
        for column in range(header.count()):
            sample = self.fontMetrics().horizontalAdvance(self.rows.columns[column].sample) + 12
            header.resizeSection(column, min(widest, max(header.sectionSize(column) + 8, sample)))
        header.setStretchLastSection(True)

    def changeEvent(self, event: QEvent) -> None:
        """Keep the row height fitting the text size."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self._fit_row_height()

    def _fit_row_height(self) -> None:
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.verticalHeader().setDefaultSectionSize(self.fontMetrics().height() + 7)

    # ---- selection by id

    def selected_rows(self) -> list[int]:
        """The selected rows from the top (Qt's own list asks every single cell whether it can be selected)."""
        selection = self.selectionModel().selection()
        parts = [selection.at(number) for number in range(selection.count())]
        return sorted({row for part in parts for row in range(part.top(), part.bottom() + 1)})

    def selected_ids(self) -> tuple[str, ...]:
        """The ids of the selected rows, in the order shown."""
        return tuple(self.rows.id_at(row) for row in self.selected_rows())

    def select_ids(self, ids: Iterable[str], *, scroll: bool = True) -> None:
        """Select the rows of these ids, without telling that the user did so."""
        rows = self.rows.rows_of(ids)
        selection = QItemSelection()
        last = self.rows.columnCount() - 1
        for first_row, last_row in runs(rows):
            selection.select(self.rows.index(first_row, 0), self.rows.index(last_row, last))
        self._selecting = True
        try:
            self.selectionModel().select(selection, _SELECT_ROWS)
            if rows and self.currentIndex().row() not in set(rows):
                column = max(self.currentIndex().column(), 0)
                no_update = QItemSelectionModel.SelectionFlag.NoUpdate
                self.selectionModel().setCurrentIndex(self.rows.index(rows[0], column), no_update)
        finally:
            self._selecting = False
        if rows and scroll:
            self.scrollTo(self.rows.index(rows[0], max(self.currentIndex().column(), 0)))

    def change_rows(self, change: Callable[[], None]) -> None:
        """Let `change` alter the rows; what that does to the selection is told once, at its end."""
        before = self.selected_ids()
        self._selecting = True
        try:
            change()
        finally:
            self._selecting = False
        if self.selected_ids() != before:
            self.ids_selected.emit(self.selected_ids())

    def _on_selection_changed(self) -> None:
        if not self._selecting:
            self.ids_selected.emit(self.selected_ids())

    def _on_reset(self) -> None:
        self.viewport().update()

    # ---- copying out

    def copy(self) -> None:
        """Put the selected rows, with the titles, on the clipboard in the way spreadsheets exchange cells."""
        rows = self.selected_rows()
        if not rows:
            return
        lines = ["\t".join(_cell(column.title) for column in self.rows.columns)]
        for row in rows:
            record = self.rows.record(self.rows.id_at(row))
            lines.append("\t".join(_cell(column.text(record)) for column in self.rows.columns))
        QGuiApplication.clipboard().setText("\n".join(lines) + "\n")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Ctrl+C copies rows; Enter opens the editor of a cell that has one."""
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copy()
            event.accept()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self._is_idle_on_editable():
            self.edit(self.currentIndex())
            event.accept()
        else:
            super().keyPressEvent(event)

    def _is_idle_on_editable(self) -> bool:
        index = self.currentIndex()
        editing = self.state() == QAbstractItemView.State.EditingState
        return index.isValid() and not editing and bool(self.rows.flags(index) & Qt.ItemFlag.ItemIsEditable)

    # ---- nothing to show

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the rows, or the words that tell why there are none."""
        super().paintEvent(event)
        if self.rows.rowCount(QModelIndex()):
            return
        words = "No line matches the filter. Clear it to see all." if self.rows.total else self._empty
        painter = QPainter(self.viewport())
        painter.setPen(colours_for(self).muted)
        area = self.viewport().rect().adjusted(16, 16, -16, -16)
        painter.drawText(area, int(Qt.AlignmentFlag.AlignCenter) | int(Qt.TextFlag.TextWordWrap), words)
        painter.end()


def _cell(text: str) -> str:
    """Text that stays in one cell."""
    return text.replace("\t", " ").replace("\r", " ").replace("\n", " ")
