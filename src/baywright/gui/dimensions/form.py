"""The form in which space, limits and construction are set: grids of fields in sections that fold and are searched."""

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QFrame, QLabel, QLineEdit, QScrollArea, QVBoxLayout, QWidget

from baywright.app.session import Session
from baywright.gui.dimensions.entries import SECTIONS
from baywright.gui.dimensions.entry import FormSection
from baywright.gui.dimensions.force import BOARDS, thickness_in_force
from baywright.gui.dimensions.grid import FieldGrid
from baywright.gui.fields.field import Field
from baywright.gui.sections import FoldingSection


class DimensionForm(QWidget):
    """All values of the project that are set by hand, in folding sections with a search over their names."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._sections: list[tuple[FormSection, FoldingSection, FieldGrid]] = []
        self._grids: dict[str, FieldGrid] = {}
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
            grid = FieldGrid(self._session, section.entries)
            folding = FoldingSection(section.title, grid, is_open=section.is_open, parent=page)
            self._sections.append((section, folding, grid))
            self._grids |= {entry.path: grid for entry in section.entries}
            column.addWidget(folding)
        column.addStretch(1)
        return page

    # ---- to and from the document

    def field(self, path: str) -> Field:
        """The field of a value; KeyError where the form has none."""
        return self._grids[path].field(path)

    def update_from_document(self) -> None:
        """Show the present document; fields whose value is as before keep what is being typed in them."""
        for _, _, grid in self._sections:
            grid.update_from_document()
        for path, grid in self._grids.items():
            if path.startswith(BOARDS):
                grid.field(path).show_remark(thickness_in_force(self._session.project, path))

    # ---- finding one's way

    def show_field(self, path: str) -> None:
        """Open the section of a value, scroll to it and put the cursor in it."""
        self.search.clear()
        for _, folding, grid in self._sections:
            if grid is self._grids[path]:
                folding.set_open(True)
        field = self.field(path)
        field.setFocus(Qt.FocusReason.OtherFocusReason)
        self._area.ensureWidgetVisible(field)
        QTimer.singleShot(0, field, lambda: self._area.ensureWidgetVisible(field))  # once an opened section is laid out

    def _on_search(self, text: str) -> None:
        words = text.casefold().split()
        any_shown = False
        for section, folding, grid in self._sections:
            section_shown = False
            for entry in section.entries:
                haystack = f"{entry.label} {entry.hint} {section.title}".casefold()
                shown = all(word in haystack for word in words)
                section_shown = section_shown or shown
                grid.set_row_visible(entry.path, shown)
            folding.setVisible(section_shown)
            any_shown = any_shown or section_shown
            if words and section.title not in self._folds:
                self._folds[section.title] = folding.is_open
            folding.set_open(section_shown if words else self._folds.pop(section.title, folding.is_open))
        self.nothing.setVisible(not any_shown)
