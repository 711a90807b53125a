"""A line edit that behaves well in a form: selects on entry, gives Esc and an idle Ctrl+Z to whoever owns it."""

from PySide6.QtCore import QEvent, Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QLineEdit, QWidget


class LineEdit(QLineEdit):
    """Tells when it is entered, left, confirmed with Enter or given up with Esc."""

    entered = Signal()
    left = Signal()
    confirmed = Signal()
    given_up = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.returnPressed.connect(self.confirmed)

    def event(self, event: QEvent) -> bool:
        """Let the window's undo through while there is no typing of our own to take back."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            undo = event.matches(QKeySequence.StandardKey.Undo) and not self.isUndoAvailable()
            redo = event.matches(QKeySequence.StandardKey.Redo) and not self.isRedoAvailable()
            if undo or redo:
                event.ignore()
                return False
        return super().event(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Announce the entry, then select everything, so that typing replaces the value."""
        super().focusInEvent(event)
        if event.reason() not in (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            self.entered.emit()
            self.selectAll()
            if event.reason() is Qt.FocusReason.MouseFocusReason:
                # The press that follows would put the cursor and end the selection.
                QTimer.singleShot(0, self, self.selectAll)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Announce that the field is left; a menu over it or another window is not leaving."""
        super().focusOutEvent(event)
        if event.reason() not in (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            self.left.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc gives up what was typed; everything else is Qt's."""
        if event.key() == Qt.Key.Key_Escape:
            self.given_up.emit()
            event.accept()
            return
        super().keyPressEvent(event)
