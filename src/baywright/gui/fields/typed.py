"""A field into which a value is typed.

Out of focus the value stands as people read it; in focus in the exact form that reads back to the same value.
"""

from PySide6.QtWidgets import QWidget

from baywright.gui.fields.field import Field
from baywright.gui.fields.kinds import TextKind, TypedKind, read_typed, write_typed
from baywright.gui.fields.line import LineEdit
from baywright.model.length import LengthUnit


class TypedField(Field):
    """A line edit for one kind of value."""

    def __init__(self, label: str, kind: TypedKind, hint: str = "", parent: QWidget | None = None) -> None:
        super().__init__(label, hint, parent)
        self._kind = kind
        self._value: object = None
        self.edit = LineEdit(self)
        self.edit.setPlaceholderText(kind.empty_means)
        self._take_editor(self.edit)
        self.edit.entered.connect(self._on_entered)
        self.edit.left.connect(self._on_finished)
        self.edit.confirmed.connect(self._on_finished)
        self.edit.given_up.connect(self.restore)
        self.edit.textEdited.connect(lambda: self.refuse(""))

    @property
    def value(self) -> object:
        """The document's value, not what is being typed."""
        return self._value

    def show_value(self, value: object) -> None:
        """Show the document's value in place of anything typed."""
        self._value = value
        self.restore()

    def set_unit(self, unit: LengthUnit) -> None:
        """Show lengths in another unit; what was typed in the old one is dropped."""
        if unit != self.unit:
            super().set_unit(unit)
            self.restore()

    def restore(self) -> None:
        """Drop what was typed and any refusal; show the document's value."""
        self.refuse("")
        has_focus = self.edit.hasFocus()
        self.edit.setText(write_typed(self._kind, self._value, self.unit, exact=has_focus))
        if has_focus:
            self.edit.selectAll()
        else:
            self.edit.setCursorPosition(0)

    def commit(self) -> bool:
        """Take in what was typed; False where it was refused (the text then stays to be mended)."""
        if not self.edit.isModified():
            return not self.is_refused
        try:
            value = read_typed(self._kind, self.edit.text(), self.unit)
        except ValueError as error:
            self.refuse(f"{error} {self.still}".strip())
            return False
        if value == self._value:
            self.restore()
            return True
        self.edit.setModified(False)
        self.committed.emit(value)
        return not self.is_refused

    def refuse(self, message: str) -> None:
        """Show why; the typed text stays and counts as typed, so that it can be mended."""
        super().refuse(message)
        if message:
            self.edit.setModified(True)

    @property
    def still(self) -> str:
        """The value of the document, which still holds."""
        if self._value is None or self._value == ():
            return f"Still: {self._kind.empty_means}." if self._kind.empty_means else ""
        value = write_typed(self._kind, self._value, self.unit)
        return f"Still “{value}”." if isinstance(self._kind, TextKind) else f"Still {value}."

    def _on_entered(self) -> None:
        if not self.edit.isModified():
            self.edit.setText(write_typed(self._kind, self._value, self.unit, exact=True))

    def _on_finished(self) -> None:
        if self.commit():
            self.restore()
