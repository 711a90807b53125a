"""Fields in which a value is chosen: one of several, or yes or no."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QCheckBox, QComboBox, QSizePolicy, QWidget

from baywright.gui.fields.field import Field
from baywright.gui.fields.kinds import ChoiceKind


class Combo(QComboBox):
    """A combo box that the mouse wheel changes only where it has the focus, so that scrolling a form edits nothing."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(6)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Leave the wheel to the form."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()


class ChoiceField(Field):
    """One of several values, each with plain words."""

    def __init__(self, label: str, kind: ChoiceKind, hint: str = "", parent: QWidget | None = None) -> None:
        super().__init__(label, hint, parent)
        self._value: object = None
        self._values = [value for value, _ in kind.choices]
        self.combo = Combo(self)
        for _, words in kind.choices:
            self.combo.addItem(words)
        self._take_editor(self.combo)
        self.combo.activated.connect(self._on_chosen)

    def show_value(self, value: object) -> None:
        """Show the document's choice."""
        self._value = value
        self.refuse("")
        self._show_choice()

    def _on_chosen(self, index: int) -> None:
        value = self._values[index]
        if value != self._value:
            self.committed.emit(value)
            if self.is_refused:
                self._show_choice()

    def _show_choice(self) -> None:
        """Qt finds no None among its data, so the place is found here."""
        self.combo.setCurrentIndex(self._values.index(self._value) if self._value in self._values else -1)


class FlagField(Field):
    """Yes or no; the words stand beside the box."""

    def __init__(self, label: str, hint: str = "", parent: QWidget | None = None) -> None:
        super().__init__(label, hint, parent)
        self._value: object = None
        self.box = QCheckBox(label, self)
        self.box.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        self._take_editor(self.box)
        self.box.clicked.connect(self._on_clicked)

    def show_value(self, value: object) -> None:
        """Show the document's answer."""
        self._value = value
        self.refuse("")
        self.box.setChecked(bool(value))

    def _on_clicked(self, checked: bool) -> None:
        self.committed.emit(checked)
        if self.is_refused:
            self.box.setChecked(bool(self._value))
