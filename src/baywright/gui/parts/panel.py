"""The tab “Parts”: the list of parts at the left, the drawing of the selected one and its table of work at the right.

Laws: it edits nothing; what is selected here is selected everywhere, and the other way round.
"""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QCheckBox, QSplitter, QVBoxLayout, QWidget

from baywright.app.session import Session
from baywright.gui.hardware.line import other_remarks
from baywright.gui.parts.drawing import PartDrawing
from baywright.gui.parts.line import part_columns, part_records
from baywright.gui.parts.work import NOT_DRAWN, WorkLine, work_columns, work_lines
from baywright.gui.remarks import RemarkList
from baywright.gui.tables.model import RowTable
from baywright.gui.tables.view import TableView
from baywright.gui.tabs import SlimTabs
from baywright.model.length import LengthUnit
from baywright.model.making import Part

NOTHING_MADE = "Nothing to list yet: plan the bays first (F5)."
REMARKS = "R&emarks"
NOTHING_TO_REMARK = "Nothing to remark: every part can be made."
LINES_WANTED = 11


class PartPanel(QWidget):
    """Shows the parts of the present arrangement."""

    parts_selected = Signal(object)
    """The person selected the parts with these numbers (a tuple)."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._unit_shown = session.project.unit

        def unit() -> LengthUnit:
            return session.project.unit

        self.table: RowTable[Part] = RowTable(part_columns(unit), self)
        self.view = TableView(self.table, "Parts to cut", NOTHING_MADE, self)
        self.drawing = PartDrawing(unit, self)
        self.work: RowTable[WorkLine] = RowTable(work_columns(unit), self)
        self.work_view = TableView(self.work, "Work on the part", NOT_DRAWN, self)
        self.work_view.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.mirrored = QCheckBox("Show the &mirrored piece", self)
        self.mirrored.setToolTip("Some pieces of this part are mirror images of the others")
        self.mirrored.toggled.connect(lambda _on: self._show_drawing())
        self.remarks = RemarkList("Remarks on the parts", NOTHING_TO_REMARK, self)
        self._shown: Part | None = None
        self._lay_out()
        self.view.ids_selected.connect(self._on_selected)
        self.work_view.ids_selected.connect(self._on_work_selected)
        self._show_part(None)

    def _lay_out(self) -> None:
        picture = QWidget(self)
        column = QVBoxLayout(picture)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addWidget(self.drawing, 1)
        column.addWidget(self.mirrored)
        self.tabs = SlimTabs({"&Holes and work": "&Work"}, self)
        self.tabs.setAccessibleName("The selected part")
        self.tabs.setDocumentMode(True)
        self.tabs.addTab(picture, "D&rawing")
        self.tabs.addTab(self.work_view, "&Holes and work")
        self.tabs.addTab(self.remarks, REMARKS)
        self.both = QSplitter(Qt.Orientation.Horizontal, self)
        self.both.setChildrenCollapsible(False)
        self.both.addWidget(self.view)
        self.both.addWidget(self.tabs)
        self.both.setStretchFactor(0, 3)
        self.both.setStretchFactor(1, 3)
        self.both.setSizes([300, 300])
        whole = QVBoxLayout(self)
        whole.setContentsMargins(6, 6, 6, 6)
        whole.addWidget(self.both)

    def wanted_height(self) -> int:
        """The height at which several parts and the drawing of one can be read."""
        return self.fontMetrics().lineSpacing() * LINES_WANTED + 90

    # ---- keeping up

    def update_from_document(self) -> None:
        """Show the parts of the present document."""
        were, made = self.table.total, self._session.manufacture
        self.view.change_rows(lambda: self.table.show_records(part_records(made)))
        remarks = other_remarks(made)
        self.remarks.show_remarks(remarks)
        self.tabs.setTabText(2, f"⚠ {REMARKS} ({len(remarks)})" if remarks else REMARKS)
        if self._unit_shown != self._session.project.unit:
            self._unit_shown = self._session.project.unit
            self.table.refresh()
            self.work.refresh()
            self.view.fit_columns(170)
            self.work_view.fit_columns(160)
        elif self.table.total and not were:
            self.view.fit_columns(170)
        self._show_part(self._part_of(self.view.selected_ids()))

    def select_parts(self, numbers: Sequence[str]) -> None:
        """Select exactly these parts, without telling that the person did so."""
        wanted = set(numbers)
        if {self.table.record(key).number for key in self.view.selected_ids()} == wanted:
            return
        self.view.select_ids([key for key in self.table.ids if self.table.record(key).number in wanted])
        self._show_part(self._part_of(self.view.selected_ids()))

    def _part_of(self, ids: Sequence[str]) -> Part | None:
        return self.table.record(ids[0]) if ids else None

    def _on_selected(self, ids: tuple[str, ...]) -> None:
        self._show_part(self._part_of(ids))
        self.parts_selected.emit(tuple(dict.fromkeys(self.table.record(key).number for key in ids)))

    def _on_work_selected(self, ids: tuple[str, ...]) -> None:
        self.drawing.show_work(self.work.record(ids[0]) if ids else None)

    def _show_part(self, part: Part | None) -> None:
        if part is self._shown and part is not None:
            return
        self._shown = part
        has_mirrored = part is not None and 0 < part.mirrored < part.quantity
        self.mirrored.setVisible(has_mirrored)
        lines = work_lines(part.machining) if part is not None else []
        were = self.work.total
        self.work.show_records(lines)
        if lines and not were:
            self.work_view.fit_columns(160)
        self.tabs.setTabText(1, f"&Holes and work ({len(lines)})" if lines else "&Holes and work")
        self._show_drawing()

    def _show_drawing(self) -> None:
        part = self._shown
        has_mirrored = part is not None and 0 < part.mirrored < part.quantity
        self.drawing.show_part(part, is_mirrored=has_mirrored and self.mirrored.isChecked())
