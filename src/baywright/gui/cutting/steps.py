"""The line under the drawing by which a person steps from cut to cut, and which tells the present one in words."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QToolButton, QWidget

NO_STEP = "Step through the cuts to see which panel each one goes through."


class StepBar(QWidget):
    """Two buttons and a sentence."""

    stepped = Signal(int)
    """The person steps to the next cut (1) or the one before (-1)."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        self.back = self._button("◀", "Cut before", -1)
        self.forth = self._button("▶", "Next cut", 1)
        self.words = QLabel(NO_STEP, self)
        self.words.setWordWrap(True)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        for widget in (self.back, self.forth):
            row.addWidget(widget)
        row.addWidget(self.words, 1)

    def _button(self, text: str, name: str, by: int) -> QToolButton:
        made = QToolButton(self)
        made.setText(text)
        made.setAccessibleName(name)
        made.setToolTip(f"{name}: see which panel it goes through")
        made.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        made.clicked.connect(lambda _checked=False: self.stepped.emit(by))
        return made

    def show_step(self, words: str, row: int, count: int) -> None:
        """Tell the present cut, the one in that row of so many; no words say that there is none yet."""
        self.words.setText(words or NO_STEP)
        self.back.setEnabled(row > 0)
        self.forth.setEnabled(row < count - 1)
