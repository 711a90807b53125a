"""The panel of checks: findings by severity at the left, one in full at the right.

Laws: it computes nothing, it shows what the session found: at once while it is seen, else a moment after the last
change, so that typing never waits for it; a mend is one edit. Choosing a finding selects its boxes everywhere.
"""

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QHideEvent, QShowEvent
from PySide6.QtWidgets import QAbstractItemView, QHBoxLayout, QSplitter, QVBoxLayout, QWidget

from baywright.app.commands import EditRefused
from baywright.app.edits.repair import ApplyRepair
from baywright.app.session import Session
from baywright.gui.bridge import Errands
from baywright.gui.checks.detail import FindingDetail
from baywright.gui.checks.line import finding_columns
from baywright.gui.messages import Tone
from baywright.gui.selection import is_of
from baywright.gui.tables.model import RowTable
from baywright.gui.tables.view import TableView
from baywright.model.finding import Finding, Mend, Severity
from baywright.model.project import Project
from baywright.model.repair import Repair

NOTHING_YET = "Nothing to check yet: plan the bays first (F5)."


PAUSE_MS = 400
"""How long nothing may change before the checks of a panel that nobody sees are made."""


MOST_AT_ONCE = 40
"""The checks of more boxes than this are made beside the window, which goes on meanwhile."""


class CheckPanel(QWidget):
    """The tab “Checks”."""

    boxes_selected = Signal(object)
    """The person chose a finding about the boxes with these ids (a tuple)."""
    part_chosen = Signal(str)
    """The person chose a finding about the part with this number; empty where it is about none."""
    told = Signal(str, object)
    """A message for the person, and its `Tone`."""
    counted = Signal(int, int)
    """How many findings are over their limit, and how many are not checked."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._shown: Project | None = None
        self._numbers: tuple[str, ...] = ()
        self.errands: Errands | None = None
        """Runs the checks of many boxes beside the window; None makes all at once."""
        self.table: RowTable[Finding] = RowTable(finding_columns(), self)
        self.view = TableView(self.table, "Checks", NOTHING_YET, self)
        self.view.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.detail = FindingDetail(self)
        both = QSplitter(Qt.Orientation.Horizontal, self)
        both.setChildrenCollapsible(False)
        both.addWidget(self.view)
        both.addWidget(self.detail)
        both.setStretchFactor(0, 3)
        both.setStretchFactor(1, 2)
        both.setSizes([420, 320])
        self.detail.setMinimumWidth(180)
        row = QHBoxLayout()
        row.addWidget(both)
        column = QVBoxLayout(self)
        column.setContentsMargins(6, 6, 6, 6)
        column.setSpacing(4)
        column.addLayout(row, 1)
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(PAUSE_MS)
        self._pause.timeout.connect(self.show_findings)
        self.view.ids_selected.connect(self._on_chosen)
        self.detail.mend_wanted.connect(self._mend)

    def hideEvent(self, event: QHideEvent) -> None:
        """No part stands out for a finding that nobody sees any more."""
        super().hideEvent(event)
        self.part_chosen.emit("")

    def wanted_height(self) -> int:
        """The height at which several findings, and one in full, can be read."""
        return self.fontMetrics().lineSpacing() * 14

    def showEvent(self, event: QShowEvent) -> None:
        """Who opens the panel wants to see how things stand now."""
        super().showEvent(event)
        self.show_findings()
        self._on_chosen(self.view.selected_ids(), tell=False)

    def update_from_document(self) -> None:
        """Show the findings of the present document, at once or in a moment."""
        if self.isVisible():
            self.show_findings()
        else:
            self._pause.start()

    def show_findings(self) -> None:
        """Show the findings of the present document now."""
        self._pause.stop()
        project = self._session.project
        if project is self._shown:
            return
        self._shown = project
        derived = self._session.derived
        if self.errands is None or len(project.boxes) <= MOST_AT_ONCE:
            self._show(project, derived.findings)
        else:
            self.errands.run(lambda: derived.findings, lambda found: self._show(project, found), self._on_failed)

    def _on_failed(self, error: Exception) -> None:
        raise error

    def _show(self, project: Project, findings: tuple[Finding, ...]) -> None:
        """Show what was found for a document, if it is still the present one."""
        if project is not self._session.project:
            return
        was_empty = not self.table.total
        self.table.show_records(_identified(findings))
        if was_empty and findings:
            self.view.fit_columns(240)
        self.show_parts(self._numbers)
        self._on_chosen(self.view.selected_ids(), tell=False)
        broken, unchecked = (
            sum(finding.severity is severity for finding in findings)
            for severity in (Severity.BROKEN, Severity.UNCHECKED)
        )
        self.counted.emit(broken, unchecked)

    def _on_chosen(self, ids: tuple[str, ...], *, tell: bool = True) -> None:
        finding = self.table.record(ids[0]) if ids else None
        self.detail.show_finding(finding)
        self.part_chosen.emit(finding.part_number if finding is not None and self.isVisible() else "")
        if finding is not None and finding.box_ids and tell:
            self.boxes_selected.emit(finding.box_ids)

    def show_parts(self, numbers: tuple[str, ...]) -> None:
        """Mark the findings about any of these parts."""
        self._numbers = numbers
        records = ((key, self.table.record(key)) for key in self.table.ids)
        self.table.mark(
            key for key, finding in records if any(is_of(number, finding.part_number) for number in numbers)
        )

    def _mend(self, mend: Mend) -> None:
        try:
            self._session.do(ApplyRepair(Repair(text=mend.text, changes=mend.changes)))
        except EditRefused as refusal:
            self.told.emit(refusal.message, Tone.CAUTION)


def _identified(findings: tuple[Finding, ...]) -> list[tuple[str, Finding]]:
    """Findings with ids that stay the same while what they are about does."""
    seen: dict[str, int] = {}
    found = []
    for finding in findings:
        key = f"{finding.kind.value}:{finding.subject}"
        seen[key] = seen.get(key, 0) + 1
        found.append((f"{key}:{seen[key]}", finding))
    return found
