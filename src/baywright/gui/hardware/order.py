"""The order as a table that is edited in place: each line says which of its cells can be changed."""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from baywright.app.commands import Command, EditRefused
from baywright.app.edits.hardware import AddExtra, ClearAdjustments, RemoveExtras
from baywright.app.session import Session
from baywright.gui.hardware.line import (
    NO_ARTICLE,
    NOT_OF_EXTRAS,
    OF_EXTRAS,
    OrderLine,
    change_of,
    order_columns,
    order_kinds,
    order_lines,
    order_remarks,
    total_words,
)
from baywright.gui.messages import MessageBar, Tone
from baywright.gui.tables.editing import EditTable, EditTableView
from baywright.gui.tables.model import Index
from baywright.model.catalogue import ExtraItem
from baywright.model.identity import next_id

NOTHING_MADE = "Nothing to list yet: plan the bays first (F5)."
THE_BEST = "the one that serves best"


class OrderTable(EditTable[OrderLine]):
    """The lines of the order."""

    def flags(self, index: Index) -> Qt.ItemFlag:
        """What can be edited in that line."""
        found = super().flags(index)
        if not index.isValid() or not self.columns[index.column()].field:
            return found
        is_extra = self.record(self.id_at(index.row())).item.is_extra
        field = self.columns[index.column()].field
        fixed = field in (NOT_OF_EXTRAS if is_extra else OF_EXTRAS)
        return found & ~Qt.ItemFlag.ItemIsEditable if fixed else found


class OrderView(QWidget):
    """The order with its buttons, remarks and the sum."""

    import_wanted = Signal()
    """The person wants to import a catalogue."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._unit_shown = session.project.unit

        def command(identifier: str, field: str, value: object) -> Command:
            return change_of(self.table.record(identifier), field, value)

        kinds = order_kinds(lambda: session.project, self._articles)
        columns = order_columns(lambda: session.project.unit, lambda: session.project, kinds)
        self.table = OrderTable(session, columns, command, self)
        self.view = EditTableView(self.table, session, kinds, "Hardware to buy", NOTHING_MADE, self)
        self.view.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.messages = MessageBar(self)
        self.remarks = MessageBar(self)
        self.total = QLabel(self)
        self.total.setWordWrap(True)
        self.total.setTextFormat(Qt.TextFormat.PlainText)
        self.total.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self._lay_out()
        self.view.refused.connect(lambda message: self.messages.show_message(message, Tone.TROUBLE))
        self.view.ids_selected.connect(lambda _ids: self._enable())
        self.view.delete_wanted.connect(self.remove_selected)
        self._enable()

    def _lay_out(self) -> None:
        def button(text: str, tip: str, deed: Callable[[], None]) -> QPushButton:
            made = QPushButton(text, self)
            made.setToolTip(tip)
            made.clicked.connect(lambda _checked=False: deed())
            buttons.addWidget(made)
            return made

        buttons = QHBoxLayout()
        self.add = button("&Add line", "Add something else to the order", self.add_line)
        self.remove = button("&Remove", "Remove the selected lines that you added (Del)", self.remove_selected)
        self.again = button("R&eset", "Work out again: forget what you set for the selected lines", self.work_out_again)
        self.bring = button("I&mport…", "Read articles and prices from a table", self.import_wanted.emit)
        buttons.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 4, 0, 0)
        column.setSpacing(4)
        column.addLayout(buttons)
        column.addWidget(self.view, 1)
        column.addWidget(self.total)
        column.addWidget(self.messages)
        column.addWidget(self.remarks)

    # ---- keeping up

    def update_from_document(self) -> None:
        """Show the order of the present document."""
        project, made = self._session.project, self._session.manufacture
        were = self.table.total
        lines = order_lines(made, project)
        self.view.change_rows(lambda: self.table.show_records(lines))
        if self._unit_shown != project.unit:
            self._unit_shown = project.unit
            self.table.refresh()
        if lines and not were:
            self.view.fit_columns(200)
        self.total.setText(total_words(made, project))
        self.total.setVisible(bool(lines))
        self.remarks.show_if_new("\n".join(order_remarks(made)), Tone.CAUTION)
        self._enable()

    def _articles(self) -> tuple[tuple[object, str], ...]:
        """What can be chosen for the line under the cursor: articles of its kind, and leaving it to the program."""
        index = self.view.currentIndex()
        if not index.isValid():
            return ()
        line = self.table.record(self.table.id_at(index.row()))
        of_kind = [item for item in self._session.project.hardware.catalogue if item.kind is line.item.kind]
        chosen: list[tuple[object, str]] = [("", THE_BEST if of_kind else NO_ARTICLE)]
        return (*chosen, *((item.id, item.name) for item in of_kind))

    # ---- what the person does

    def add_line(self) -> None:
        """Add a line of the person's own and open the editor of its name."""
        extra_id = next_id("extra", [extra.id for extra in self._session.project.hardware.extras])
        if not self._attempt(AddExtra(ExtraItem(id=extra_id, name="Something else"))):
            return
        found = (key for key in self.table.ids if self.table.record(key).item.item_id == extra_id)
        key = next(found, "")
        if key:
            index = self.table.index(self.table.row_of(key), self.table.column_of("name"))
            self.view.setFocus(Qt.FocusReason.OtherFocusReason)
            self.view.setCurrentIndex(index)
            self.view.scrollTo(index)
            self.view.edit(index)

    def remove_selected(self) -> None:
        """Remove the selected lines that the person added; others cannot be removed, but left out."""
        lines = [self.table.record(key) for key in self.view.selected_ids()]
        extras = tuple(line.item.item_id for line in lines if line.item.is_extra)
        if extras:
            self._attempt(RemoveExtras(extras))
        elif lines:
            self.messages.show_message(
                "That line follows from the run. Where you have it already, choose “at hand” under “Buy”.", Tone.NOTE
            )

    def work_out_again(self) -> None:
        """Forget what was set by hand for the selected lines."""
        numbers = tuple(self.table.record(key).item.number for key in self.view.selected_ids())
        if numbers:
            self._attempt(ClearAdjustments(numbers))

    def _attempt(self, command: Command) -> bool:
        self.messages.clear()
        try:
            self._session.do(command)
        except EditRefused as refusal:
            self.messages.show_message(refusal.message, Tone.TROUBLE)
            return False
        self.update_from_document()
        return True

    def _enable(self) -> None:
        lines = [self.table.record(key) for key in self.view.selected_ids()]
        self.remove.setEnabled(any(line.item.is_extra for line in lines))
        self.again.setEnabled(any(line.by_hand for line in lines))
        self.add.setEnabled(bool(self._session.project.arrangement.bay_count))
