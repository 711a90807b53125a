"""What every form field has: a value from the document, an editor, and room beside it for a refusal.

Laws: a field never changes the document; it emits `committed` and is told the new value by `show_value`. What was typed
stays until it is taken, mended or given up with Esc; a refusal names the value that still holds.
"""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QLabel, QSizePolicy, QVBoxLayout, QWidget

from baywright.gui.theme import colours_for
from baywright.model.length import LengthUnit


class Refusal(QLabel):
    """The sentence under a field that tells why a value was not taken; no room is used while there is none."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setWordWrap(True)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self.hide()

    def show_message(self, message: str) -> None:
        """Show `message` with a sign before it; an empty one hides the line."""
        palette = self.palette()
        palette.setColor(QPalette.ColorRole.WindowText, colours_for(self).trouble)
        self.setPalette(palette)
        self.setText(f"⚠ {message}" if message else "")
        self.setVisible(bool(message))


class Field(QWidget):
    """An editor with its refusal line. Subclasses build the editor and answer `show_value`."""

    committed = Signal(object)
    """The user entered this value; it differs from the one shown."""

    def __init__(self, label: str, hint: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.label, self.hint = label, hint
        self._unit = LengthUnit.MILLIMETRE
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(2)
        self.refusal = Refusal(self)
        self.remark = QLabel(self)
        self.remark.setTextFormat(Qt.TextFormat.PlainText)
        self.remark.setWordWrap(True)
        self.remark.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self.remark.hide()

    def _take_editor(self, editor: QWidget) -> None:
        """Put the editor over the refusal line and give it name, description and hint."""
        editor.setAccessibleName(self.label)
        editor.setAccessibleDescription(self.hint)
        editor.setToolTip(self.hint)
        editor.setWhatsThis(self.hint)
        self._column.addWidget(editor)
        self._column.addWidget(self.refusal)
        self._column.addWidget(self.remark)
        self.setFocusProxy(editor)

    @property
    def unit(self) -> LengthUnit:
        """The unit in which lengths are shown and bare numbers are read."""
        return self._unit

    def set_unit(self, unit: LengthUnit) -> None:
        """Show lengths in `unit` from now on."""
        self._unit = unit

    def show_value(self, value: object) -> None:
        """Show the document's value; what was typed and any refusal of it are dropped."""
        raise NotImplementedError

    def refuse(self, message: str) -> None:
        """Show beside the field why the value was not taken."""
        self.refusal.show_message(message)
        proxy = self.focusProxy()
        if proxy is not None:
            proxy.setAccessibleDescription(f"{message} {self.hint}".strip() if message else self.hint)

    def show_remark(self, words: str) -> None:
        """Show under the editor what else to know of the value, such as what is in force in its place."""
        self.remark.setText(words)
        self.remark.setVisible(bool(words))

    @property
    def still(self) -> str:
        """Which value still holds, as a sentence, to end a refusal with; empty where the editor shows it anyway."""
        return ""

    @property
    def is_refused(self) -> bool:
        """Whether a refusal stands beside the field."""
        return bool(self.refusal.text())
