"""A field for free text of several lines, taken in when it is left."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QPlainTextEdit, QWidget

from baywright.gui.fields.field import Field

LINES = 3


class _Lines(QPlainTextEdit):
    left = Signal()
    given_up = Signal()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if event.reason() not in (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            self.left.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.given_up.emit()
            event.accept()
        else:
            super().keyPressEvent(event)


class NoteField(Field):
    """A few lines of text; Tab goes on to the next field."""

    def __init__(self, label: str, hint: str = "", parent: QWidget | None = None) -> None:
        super().__init__(label, hint, parent)
        self._value = ""
        self.edit = _Lines(self)
        self.edit.setTabChangesFocus(True)
        self.edit.setFixedHeight(self.edit.fontMetrics().lineSpacing() * LINES + 12)
        self._take_editor(self.edit)
        self.edit.left.connect(self._on_left)
        self.edit.given_up.connect(lambda: self.show_value(self._value))

    def show_value(self, value: object) -> None:
        """Show the document's text in place of anything typed."""
        self._value = str(value)
        self.refuse("")
        self.edit.setPlainText(self._value)

    def _on_left(self) -> None:
        text = self.edit.toPlainText().rstrip()
        if text != self._value:
            self.committed.emit(text)
