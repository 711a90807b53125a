"""The dialog that asks for a new box size. Nothing leaves it that is not valid."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QGridLayout, QLabel, QVBoxLayout, QWidget

from baywright.app.commands import EditRefused, checked
from baywright.gui.fields.kinds import LengthKind, TextKind
from baywright.gui.fields.typed import TypedField
from baywright.model.identity import id_from_name
from baywright.model.inventory import BoxSize
from baywright.model.length import LengthUnit, format_length
from baywright.model.project import Project

_FIELDS = (
    ("width_mm", "&Width", "Outside, across the front of the drawer"),
    ("depth_mm", "&Depth", "Outside, front to back"),
    ("height_mm", "&Height", "Outside, with its lid on"),
)


class SizeDialog(QDialog):
    """Asks for name, width, depth and height; `size` holds the answer once it was accepted."""

    def __init__(self, project: Project, reason: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("New box size")
        self._project = project
        self._values: dict[str, object] = {}
        self.size_made: BoxSize | None = None
        self.fields: dict[str, TypedField] = {}
        words = QLabel(reason or "Measure the box outside, with its lid on, at its widest places.")
        words.setWordWrap(True)
        grid = QGridLayout()
        grid.setColumnStretch(1, 1)
        for row, (field, label, hint) in enumerate(_FIELDS):
            self._add(grid, row, field, label, TypedField(label.replace("&", ""), LengthKind(), hint))
        name = TypedField("Name", TextKind(), "What the size is called; empty: its measures are the name")
        name.edit.setPlaceholderText("empty: its measures")
        self._add(grid, len(_FIELDS), "name", "&Name", name)
        self.buttons = QDialogButtonBox(
            QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel, self
        )
        self.buttons.button(QDialogButtonBox.StandardButton.Ok).setText("&Add size")
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.addWidget(words)
        column.addLayout(grid)
        column.addStretch(1)
        column.addWidget(self.buttons)
        self.setMinimumWidth(420)

    def _add(self, grid: QGridLayout, row: int, name: str, label: str, field: TypedField) -> None:
        field.set_unit(self._project.unit)
        field.committed.connect(lambda value: self._on_committed(name, value))
        # Esc closes the dialog here; there is no older value to go back to.
        field.edit.given_up.connect(self.reject)
        words = QLabel(label)
        words.setBuddy(field.edit)
        grid.addWidget(words, row, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(field, row, 1)
        self.fields[name] = field

    def _on_committed(self, name: str, value: object) -> None:
        self._values[name] = value
        self.fields[name].show_value(value)

    def accept(self) -> None:
        """Close with the size, or show beside the fields what is wrong."""
        wrong = [field for field in self.fields.values() if not field.commit()]
        for name, label, _ in _FIELDS:
            field = self.fields[name]
            if field.value is None and not field.is_refused:
                field.refuse(f"{label.replace('&', '')} is missing. Write for example 400 or 40 cm.")
                wrong.append(field)
        if not wrong:
            try:
                self.size_made = self._make()
            except EditRefused as refusal:
                field = self.fields.get(refusal.field, self.fields["name"])
                field.refuse(refusal.message)
                wrong.append(field)
        if wrong:
            wrong[0].edit.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        super().accept()

    def _make(self) -> BoxSize:
        lengths = {name: self._values[name] for name, _, _ in _FIELDS}
        name = str(self._values.get("name") or "") or self._measures(lengths)
        taken = {size.id for size in self._project.box_sizes}
        if name.casefold() in {size.name.casefold() for size in self._project.box_sizes}:
            raise EditRefused(f"There is a size called “{name}” already; give this one another name.", "name")
        values = {"id": id_from_name(name, "size", taken), "name": name, **lengths}
        return checked(lambda: BoxSize.model_validate(values))

    def _measures(self, lengths: dict[str, object]) -> str:
        unit = self._project.unit
        words = [format_length(float(str(value)), unit) for value in lengths.values()]
        if unit is LengthUnit.MILLIMETRE:
            words = [word.removesuffix(" mm") for word in words]
        return " × ".join(words)
