"""The form in which space, limits and construction are set. Each committed field becomes one command.

Laws: only fields whose value changed are redrawn, so that nothing being typed elsewhere is lost; a refusal stands
beside its field and the document is as before.
"""

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QLabel,
    QLineEdit,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from baywright.app.commands import EditRefused, SetField
from baywright.app.session import Session
from baywright.gui.dimensions.entries import SECTIONS, value_at
from baywright.gui.dimensions.entry import FormEntry, FormSection
from baywright.gui.dimensions.force import BOARDS, thickness_in_force
from baywright.gui.fields.field import Field
from baywright.gui.fields.kinds import FlagKind
from baywright.gui.fields.making import make_field
from baywright.gui.sections import FoldingSection

_MISSING = object()


class DimensionForm(QWidget):
    """All values of the project that are set by hand, in folding sections with a search over their names."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._fields: dict[str, Field] = {}
        self._rows: dict[str, tuple[QWidget, ...]] = {}
        self._sections: list[tuple[FormSection, FoldingSection]] = []
        self._shown: dict[str, object] = {}
        self._folds: dict[str, bool] = {}
        self.search = QLineEdit(self)
        self.search.setPlaceholderText("Find a measure, such as “play” or “pitch”")
        self.search.setClearButtonEnabled(True)
        self.search.setAccessibleName("Find a measure")
        self.search.textChanged.connect(self._on_search)
        self.nothing = QLabel("No measure has that in its name or explanation.", self)
        self.nothing.setWordWrap(True)
        self.nothing.hide()
        self._area = QScrollArea(self)
        self._area.setWidgetResizable(True)
        self._area.setFrameShape(QFrame.Shape.NoFrame)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._area.setWidget(self._make_page())
        column = QVBoxLayout(self)
        column.setContentsMargins(6, 6, 6, 6)
        column.addWidget(self.search)
        column.addWidget(self.nothing)
        column.addWidget(self._area, 1)
        self.update_from_document()

    def _make_page(self) -> QWidget:
        page = QWidget()
        column = QVBoxLayout(page)
        column.setContentsMargins(0, 0, 8, 0)
        for section in SECTIONS:
            folding = FoldingSection(section.title, self._make_body(section), is_open=section.is_open, parent=page)
            self._sections.append((section, folding))
            column.addWidget(folding)
        column.addStretch(1)
        return page

    def _make_body(self, section: FormSection) -> QWidget:
        body = QWidget()
        grid = QGridLayout(body)
        grid.setContentsMargins(22, 0, 0, 8)
        grid.setColumnStretch(0, 2)
        grid.setColumnStretch(1, 3)
        for row, entry in enumerate(section.entries):
            self._add_row(grid, row, entry)
        return body

    def _add_row(self, grid: QGridLayout, row: int, entry: FormEntry) -> None:
        field = make_field(entry.label, entry.kind, entry.hint)
        field.committed.connect(lambda value, path=entry.path: self._on_committed(path, value))
        self._fields[entry.path] = field
        if isinstance(entry.kind, FlagKind):
            grid.addWidget(field, row, 0, 1, 2)
            self._rows[entry.path] = (field,)
            return
        label = QLabel(entry.label)
        label.setBuddy(field)
        label.setToolTip(entry.hint)
        label.setWhatsThis(entry.hint)
        label.setWordWrap(True)
        label.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        grid.addWidget(label, row, 0, Qt.AlignmentFlag.AlignTop)
        label.setContentsMargins(0, 5, 0, 0)
        grid.addWidget(field, row, 1)
        self._rows[entry.path] = (label, field)

    # ---- to and from the document

    def field(self, path: str) -> Field:
        """The field of a value; KeyError where the form has none."""
        return self._fields[path]

    def update_from_document(self) -> None:
        """Show the present document; fields whose value is as before keep what is being typed in them."""
        project = self._session.project
        for path, field in self._fields.items():
            field.set_unit(project.unit)
            value = value_at(project, path)
            if self._shown.get(path, _MISSING) != value:
                self._shown[path] = value
                field.show_value(value)
        for path, field in self._fields.items():
            if path.startswith(BOARDS):
                field.show_remark(thickness_in_force(project, path))

    def _on_committed(self, path: str, value: object) -> None:
        try:
            self._session.do(SetField(path, value))
        except EditRefused as refusal:
            field = self._fields[path]
            field.refuse(f"{refusal.message} {field.still}".strip())

    # ---- finding one's way

    def show_field(self, path: str) -> None:
        """Open the section of a value, scroll to it and put the cursor in it."""
        self.search.clear()
        for section, folding in self._sections:
            if any(entry.path == path for entry in section.entries):
                folding.set_open(True)
        field = self._fields[path]
        field.setFocus(Qt.FocusReason.OtherFocusReason)
        self._area.ensureWidgetVisible(field)
        QTimer.singleShot(0, field, lambda: self._area.ensureWidgetVisible(field))  # once an opened section is laid out

    def _on_search(self, text: str) -> None:
        words = text.casefold().split()
        any_shown = False
        for section, folding in self._sections:
            section_shown = False
            for entry in section.entries:
                haystack = f"{entry.label} {entry.hint} {section.title}".casefold()
                shown = all(word in haystack for word in words)
                section_shown = section_shown or shown
                for widget in self._rows[entry.path]:
                    widget.setVisible(shown)
            folding.setVisible(section_shown)
            any_shown = any_shown or section_shown
            if words and section.title not in self._folds:
                self._folds[section.title] = folding.is_open
            folding.set_open(section_shown if words else self._folds.pop(section.title, folding.is_open))
        self.nothing.setVisible(not any_shown)
