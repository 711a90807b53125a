"""Fields into which a value is typed: lengths, counts, lists of numbers, plain text.

Out of focus the value stands as people read it; in focus in the exact form that reads back to the same value.
"""

from collections.abc import Callable

from PySide6.QtWidgets import QWidget

from baywright.gui.fields.field import Field
from baywright.gui.fields.line import LineEdit

Reader = Callable[[str], object]
"""Reads typed text; raises ValueError with a message for the person who typed it."""


class TypedField(Field):
    """A line edit with a reader and two writers; subclasses give those three."""

    def __init__(self, label: str, hint: str = "", empty_means: str = "", parent: QWidget | None = None) -> None:
        super().__init__(label, hint, parent)
        self._value: object = None
        self._empty_means = empty_means
        self.edit = LineEdit(self)
        self.edit.setPlaceholderText(empty_means)
        self._take_editor(self.edit)
        self.edit.entered.connect(self._on_entered)
        self.edit.left.connect(self._on_left)
        self.edit.confirmed.connect(self._on_confirmed)
        self.edit.given_up.connect(self.restore)
        self.edit.textEdited.connect(lambda: self.refuse(""))

    def read(self, text: str) -> object:
        """The value that `text` means; ValueError with a message where it means none."""
        raise NotImplementedError

    def write(self, value: object) -> str:
        """The value as people read it."""
        raise NotImplementedError

    def write_exact(self, value: object) -> str:
        """The value as text that reads back exactly; by default as people read it."""
        return self.write(value)

    @property
    def value(self) -> object:
        """The document's value, not what is being typed."""
        return self._value

    def show_value(self, value: object) -> None:
        """Show the document's value in place of anything typed."""
        self._value = value
        self.restore()

    def restore(self) -> None:
        """Drop what was typed and any refusal; show the document's value."""
        self.refuse("")
        write = self.write_exact if self.edit.hasFocus() else self.write
        self.edit.setText("" if self._value is None else write(self._value))
        if self.edit.hasFocus():
            self.edit.selectAll()
        else:
            self.edit.setCursorPosition(0)

    def commit(self) -> bool:
        """Take in what was typed; False where it was refused (the text then stays to be mended)."""
        if not self.edit.isModified():
            return True
        text = self.edit.text().strip()
        try:
            value = None if not text and self._empty_means else self.read(text)
        except ValueError as error:
            self.refuse(f"{error} {self._still()}".strip())
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

    def _still(self) -> str:
        if self._value is None:
            return f"Still: {self._empty_means}." if self._empty_means else ""
        return f"Still {self.write(self._value)}."

    def _on_entered(self) -> None:
        if not self.edit.isModified() and self._value is not None:
            self.edit.setText(self.write_exact(self._value))

    def _on_left(self) -> None:
        if self.commit() and not self.is_refused:
            self.restore()

    def _on_confirmed(self) -> None:
        if self.commit() and not self.is_refused:
            self.restore()


class TextField(TypedField):
    """A line of free text; `may_be_empty` False refuses an empty one."""

    def __init__(self, label: str, hint: str = "", *, may_be_empty: bool = True, parent: QWidget | None = None) -> None:
        super().__init__(label, hint, parent=parent)
        self._may_be_empty = may_be_empty

    def read(self, text: str) -> object:
        """The text without blanks at its ends."""
        if not text and not self._may_be_empty:
            raise ValueError(f"{self.label} must not be empty.")
        return text

    def write(self, value: object) -> str:
        """The text itself."""
        return str(value)


class CountField(TypedField):
    """A whole number, or nothing where `empty_means` says what that is."""

    def __init__(
        self,
        label: str,
        hint: str = "",
        *,
        least: int = 0,
        most: int = 1_000_000,
        empty_means: str = "",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(label, hint, empty_means, parent)
        self._least, self._most = least, most

    def read(self, text: str) -> object:
        """The number; refused outside least to most and where it is not whole."""
        digits = text.replace(" ", "")
        if not digits.isascii() or not digits.isdigit() or not self._least <= int(digits[:9]) <= self._most:
            empty = f", or nothing for “{self._empty_means}”" if self._empty_means else ""
            raise ValueError(f"Takes a whole number from {self._least} to {self._most:,}{empty}.")
        return int(digits[:9])

    def write(self, value: object) -> str:
        """The plain number."""
        return str(value)
