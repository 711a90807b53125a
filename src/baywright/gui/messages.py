"""A bar that tells the outcome of what was just tried, where the person looks, until it is read or outdated."""

from enum import Enum

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QSizePolicy, QToolButton, QWidget

from baywright.gui.theme import colours_for


class Tone(Enum):
    """How a message is meant: the sign before it, and which colours of the theme it takes."""

    NOTE = ("ℹ", "text", "note_ground")
    CAUTION = ("⚠", "caution", "caution_ground")
    TROUBLE = ("⚠", "trouble", "trouble_ground")


class MessageBar(QFrame):
    """One message over a coloured ground, with a button that closes it; no room is used while there is none."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._tone = Tone.NOTE
        self._colouring = False
        self._standing = ""
        self._text = QLabel(self)
        self._text.setTextFormat(
            Qt.TextFormat.PlainText
        )  # labels of boxes are shown as typed, whatever signs they hold
        self._text.setWordWrap(True)
        self._text.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self._text.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self._close = QToolButton(self)
        self._close.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self._close.setText("✕")
        self._close.setToolTip("Close this message")
        self._close.setAccessibleName("Close this message")
        self._close.setAutoRaise(True)
        self._close.clicked.connect(self.clear)
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 4, 4, 4)
        row.addWidget(self._text, 1)
        row.addWidget(self._close, 0, Qt.AlignmentFlag.AlignTop)
        self.setAutoFillBackground(True)
        self.hide()

    @property
    def message(self) -> str:
        """The message shown, without its sign; empty where there is none."""
        return self._text.text()[2:]

    def show_message(self, message: str, tone: Tone = Tone.NOTE) -> None:
        """Show a message in place of the one before; an empty one closes the bar."""
        self._tone = tone
        self._text.setText(f"{tone.value[0]} {message}" if message else "")
        self.setAccessibleName(message)
        self._colour()
        self.setVisible(bool(message))

    def show_if_new(self, message: str, tone: Tone = Tone.NOTE) -> None:
        """Show a message that stands as long as it holds, unless it is the one that the person has closed."""
        if message != self._standing:
            self._standing = message
            self.show_message(message, tone)

    def clear(self) -> None:
        """Close the bar."""
        self.show_message("")

    def changeEvent(self, event: QEvent) -> None:
        """Take the colours of a new theme."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and not self._colouring:
            self._colour()

    def _colour(self) -> None:
        self._colouring = True
        try:
            self.setPalette(tone_palette(self, self._tone))
        finally:
            self._colouring = False


def tone_palette(bar: QWidget, tone: Tone) -> QPalette:
    """The palette of a bar that speaks in that tone, in the colours of what it lies on."""
    parent = bar.parentWidget()
    colours = colours_for(parent if parent is not None else bar)
    _, text, ground = tone.value
    palette = parent.palette() if parent is not None else bar.palette()
    palette.setColor(QPalette.ColorRole.Window, QColor(getattr(colours, ground)))
    palette.setColor(QPalette.ColorRole.WindowText, QColor(getattr(colours, text)))
    return palette
