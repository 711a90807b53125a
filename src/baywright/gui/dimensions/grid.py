"""A few values of the project with their labels in a grid: each committed field becomes one command.

Laws: only fields whose value changed are redrawn, so that nothing being typed elsewhere is lost; a refusal stands
beside its field and the document is as before.
"""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QLabel, QSizePolicy, QWidget

from baywright.app.commands import EditRefused, SetField
from baywright.app.session import Session
from baywright.gui.dimensions.entries import value_at
from baywright.gui.dimensions.entry import FormEntry
from baywright.gui.fields.field import Field
from baywright.gui.fields.kinds import FlagKind
from baywright.gui.fields.making import make_field

_MISSING = object()


class FieldGrid(QWidget):
    """Fields one under another, their labels at the left."""

    def __init__(self, session: Session, entries: Sequence[FormEntry], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._fields: dict[str, Field] = {}
        self._labels: dict[str, QLabel] = {}
        self._shown: dict[str, object] = {}
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(22, 0, 2, 8)
        self._grid.setColumnStretch(0, 2)
        self._grid.setColumnStretch(1, 3)
        for row, entry in enumerate(entries):
            self._add_row(row, entry)
        self.update_from_document()

    def _add_row(self, row: int, entry: FormEntry) -> None:
        field = make_field(entry.label, entry.kind, entry.hint)
        field.committed.connect(lambda value, path=entry.path: self._on_committed(path, value))
        self._fields[entry.path] = field
        if isinstance(entry.kind, FlagKind):
            self._grid.addWidget(field, row, 0, 1, 2)
            return
        label = QLabel(entry.label)
        label.setBuddy(field)
        label.setToolTip(entry.hint)
        label.setWhatsThis(entry.hint)
        label.setWordWrap(True)
        label.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        label.setContentsMargins(0, 5, 0, 0)
        self._grid.addWidget(label, row, 0, Qt.AlignmentFlag.AlignTop)
        self._grid.addWidget(field, row, 1)
        self._labels[entry.path] = label

    def field(self, path: str) -> Field:
        """The field of a value; KeyError where there is none."""
        return self._fields[path]

    def set_row_visible(self, path: str, is_visible: bool) -> None:
        """Show or hide the field of a value with its label."""
        self._fields[path].setVisible(is_visible)
        if path in self._labels:
            self._labels[path].setVisible(is_visible)

    def update_from_document(self) -> None:
        """Show the present document; fields whose value is as before keep what is being typed in them."""
        project = self._session.project
        for path, field in self._fields.items():
            field.set_unit(project.unit)
            value = value_at(project, path)
            if self._shown.get(path, _MISSING) != value:
                self._shown[path] = value
                field.show_value(value)

    def _on_committed(self, path: str, value: object) -> None:
        try:
            self._session.do(SetField(path, value))
        except EditRefused as refusal:
            field = self._fields[path]
            field.refuse(f"{refusal.message} {field.still}".strip())
