"""The import dialog: shows what a table would bring, boxes or catalogue items; `preview` holds it once accepted.

Laws: nothing is taken over by the dialog itself; what is shown always belongs to the matching shown; a table that
cannot be read leaves the dialog as it was and says why.
"""

from pathlib import Path
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QGroupBox,
    QLabel,
    QSizePolicy,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from baywright.app.files import FileTrouble
from baywright.app.importing import Table
from baywright.gui.bridge import Errands
from baywright.gui.fields.choice import Combo
from baywright.gui.importing.matching import MatchingForm
from baywright.gui.importing.preview import RefusedCell, refused_cells, refused_columns
from baywright.gui.importing.subject import INVENTORY, Subject
from baywright.gui.messages import MessageBar, Tone
from baywright.gui.tables.model import RowTable
from baywright.gui.tables.view import TableView
from baywright.gui.wording import count_words
from baywright.model.project import Project


class ImportDialog(QDialog):
    """Matches the columns of `table` and shows what would be taken over into `project`."""

    def __init__(
        self,
        project: Project,
        table: Table,
        errands: Errands,
        path: Path | None = None,
        parent: QWidget | None = None,
        *,
        subject: Subject = INVENTORY,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(subject.title)
        self.preview: Any = None
        """What the table would bring; None while nothing can be taken over."""
        self._subject = subject
        self._project, self._table, self._path, self._errands = project, table, path, errands
        self._matching: Any = None
        self.matching = MatchingForm(subject.meanings, parent=self)
        self.messages = MessageBar(self)
        self.remarks = QLabel(self)
        self.remarks.setTextFormat(Qt.TextFormat.PlainText)
        self.remarks.setWordWrap(True)
        self.remarks.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self.coming: RowTable[Any] = RowTable(subject.columns(project), self)
        self.refused: RowTable[RefusedCell] = RowTable(refused_columns(), self)
        self._make_source()
        self._make_tabs()
        self._make_buttons()
        self._lay_out()
        self.matching.changed.connect(self._on_matched)
        self._show_table(table)
        self.resize(960, 620)

    def _make_source(self) -> None:
        self.source = QLabel(self)
        self.source.setTextFormat(Qt.TextFormat.PlainText)
        self.source.setWordWrap(True)
        self.has_headings = QCheckBox("The first row holds &headings", self)
        self.has_headings.clicked.connect(lambda checked: self._show_table(self._table.with_headings(checked)))
        self.sheet_label = QLabel("&Sheet", self)
        self.sheet = Combo(self)
        self.sheet.setAccessibleName("Sheet of the workbook")
        self.sheet_label.setBuddy(self.sheet)
        self.sheet.activated.connect(self._on_sheet_chosen)

    def _make_tabs(self) -> None:
        self.coming_view = TableView(
            self.coming, f"{self._subject.many.capitalize()} to take over", "No row can be taken over yet.", self
        )
        self.refused_view = TableView(self.refused, "Refused rows", "No row is refused.", self)
        self.tabs = QTabWidget(self)
        self.tabs.setDocumentMode(True)
        self.tabs.addTab(self.coming_view, "")
        self.tabs.addTab(self.refused_view, "")

    def _make_buttons(self) -> None:
        self.buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel, self)
        self.take = self.buttons.addButton("&Take over", QDialogButtonBox.ButtonRole.AcceptRole)
        self.take.setDefault(True)
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)

    def _lay_out(self) -> None:
        top = QGridLayout()
        top.addWidget(self.source, 0, 0)
        top.addWidget(self.has_headings, 0, 1)
        top.addWidget(self.sheet_label, 0, 2)
        top.addWidget(self.sheet, 0, 3)
        top.setColumnStretch(0, 1)
        group = QGroupBox("Which column says what", self)
        QVBoxLayout(group).addWidget(self.matching)
        column = QVBoxLayout(self)
        column.addLayout(top)
        column.addWidget(group)
        column.addWidget(self.messages)
        column.addWidget(self.tabs, 1)
        column.addWidget(self.remarks)
        column.addWidget(self.buttons)

    # ---- table, matching, preview

    def _show_table(self, table: Table) -> None:
        self._table = table
        rows = count_words(len(table.rows), "row")
        self.source.setText(
            f"From {table.source}, sheet “{table.sheet}”: {rows}" if table.sheet else f"From {table.source}: {rows}"
        )
        self.has_headings.setChecked(table.heading_index is not None)
        for widget in (self.sheet, self.sheet_label):
            widget.setVisible(len(table.sheets) > 1 and self._path is not None)
        self.sheet.clear()
        self.sheet.addItems(table.sheets)
        self.sheet.setCurrentText(table.sheet)
        matching = self._subject.propose(table, self._project)
        self.matching.show_table(table, matching)
        self._on_matched(matching)

    def _on_sheet_chosen(self) -> None:
        path, sheet = self._path, self.sheet.currentText()
        if path is not None and sheet != self._table.sheet:
            self._wait("Reading the sheet …")
            self._errands.run(lambda: self._subject.read_table(path, sheet), self._show_table, self._on_trouble)

    def _on_matched(self, matching: Any) -> None:
        self._matching = matching
        table, project = self._table, self._project
        self._wait("Reading the rows …")
        self._errands.run(
            lambda: self._subject.read(table, matching, project),
            self._show_preview,
            lambda error: self._on_trouble(error),
        )

    def _wait(self, words: str) -> None:
        self.preview = None
        self.take.setEnabled(False)
        self.take.setText(words)

    def _show_preview(self, preview: Any) -> None:
        self.preview = preview
        self.messages.clear()
        self._fill(preview)
        self.remarks.setText(" ".join([*self._subject.news(preview), *preview.remarks]))

    def _on_trouble(self, error: Exception) -> None:
        if not isinstance(error, FileTrouble):
            self._fill(None)
            raise error  # a defect of the program is no fault of the file: the failure hook tells of it
        self.preview = None
        self.messages.show_message(str(error), Tone.TROUBLE)
        self._fill(None)
        self.remarks.setText("")

    def _fill(self, preview: Any) -> None:
        subject = self._subject
        self.coming.show_records(subject.coming(preview) if preview else [], sort_anew=True)
        self.refused.show_records(refused_cells(preview.refused) if preview else [], sort_anew=True)
        count, rows = subject.count(preview) if preview else 0, len(preview.refused) if preview else 0
        words = count_words(count, subject.one, subject.many)
        self.tabs.setTabText(0, f"{words} to take over")
        self.tabs.setTabText(1, f"⚠ {count_words(rows, 'row')} refused" if rows else "No rows refused")
        self.take.setText(f"&Take over {words}" if count else "Nothing to take over")
        self.take.setEnabled(count > 0)
        self.coming_view.fit_columns(200)
        self.refused_view.fit_columns(340)
        if rows and not count:
            self.tabs.setCurrentIndex(1)

    def done(self, result: int) -> None:
        """Close; whatever is still being read is for nobody."""
        self._errands.forget()
        super().done(result)

    def keyPressEvent(self, event: object) -> None:
        """Enter in a list must not take anything over; Esc cancels."""
        key = getattr(event, "key", lambda: None)()
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not self.take.hasFocus():
            return
        super().keyPressEvent(event)  # type: ignore[arg-type]
