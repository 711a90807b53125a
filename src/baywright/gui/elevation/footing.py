"""The line of words under the drawing: what is selected, where a carried box would land, why something cannot be."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from baywright.gui.elevation.captions import LOCKED, mass_caption, opening_caption, place_caption, standing_words
from baywright.gui.elevation.ghost import REFUSED_SIGN
from baywright.gui.elevation.layout import Layout
from baywright.gui.theme import Colours
from baywright.gui.wording import count_words
from baywright.model.arrangement import Lock

_LINES = 2


class FootLine(QLabel):
    """Two lines high, so that nothing jumps; a message stays until the next one, over the words of the selection."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setWordWrap(True)
        self.setContentsMargins(8, 2, 8, 2)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("About the elevation")
        self._message, self._is_refusal, self._words = "", False, ""
        self._colours: Colours | None = None
        self._fit_height()

    @property
    def message(self) -> str:
        """The message that stands there; empty while the words of the selection do."""
        return self._message

    @property
    def is_refusal(self) -> bool:
        """Whether the message says that something cannot be."""
        return self._is_refusal

    def tell(self, message: str, is_refusal: bool) -> None:
        """Show a message; an empty one brings back the words of the selection."""
        self._message, self._is_refusal = message, bool(message) and is_refusal
        self._show()

    def rest(self, words: str) -> None:
        """The words to show while there is no message."""
        self._words = words
        self._show()

    def show_colours(self, colours: Colours) -> None:
        """Use other colours, and the height that the letters need."""
        self._colours = colours
        self._show()
        self._fit_height()

    def _show(self) -> None:
        text = f"{REFUSED_SIGN} {self._message}" if self._is_refusal else self._message or self._words
        self.setText(text)
        self.setToolTip(text)
        if self._colours is not None:
            palette = QPalette(self.palette())
            colour = self._colours.trouble if self._is_refusal else self._colours.text
            palette.setColor(QPalette.ColorRole.WindowText, QColor(colour))
            self.setPalette(palette)

    def _fit_height(self) -> None:
        self.setFixedHeight(self.fontMetrics().lineSpacing() * _LINES + 6)


def selection_words(layout: Layout, selected: tuple[str, ...]) -> str:
    """The selection in words."""
    if not selected:
        return "Click a box to select it; drag it, or use Alt and the arrow keys, to move it." if layout.drawers else ""
    if len(selected) > 1:
        return f"{count_words(len(selected), 'box', 'boxes')} selected."
    drawer = layout.drawer(selected[0])
    if drawer is None:
        box = layout.project.box(selected[0])
        return f"{box.label}, {mass_caption(box)}: has no drawer yet."
    opening = opening_caption(drawer, layout.project.unit)
    lock = f" {LOCKED[drawer.lock].capitalize()}." if drawer.lock is not Lock.NONE else ""
    troubles = " ".join([*(f"{words}." for words in standing_words(drawer)), *drawer.troubles])
    words = f"{drawer.box.label}, {mass_caption(drawer.box)}: {place_caption(drawer.bay, drawer.row)}, {opening}.{lock}"
    return f"{words} {troubles}".strip()


def hint_for(layout: Layout) -> tuple[str, ...]:
    """What to do while there is little to see: a heading and a line; nothing once boxes stand in drawers."""
    if not layout.project.boxes:
        return (
            "No boxes yet",
            "Type, paste or import your boxes in the inventory;",
            "then let the program plan where each one goes.",
        )
    if layout.frame is None:
        return (
            "Not one bay fits this space",
            "Make the space longer or higher, or the boards thinner; the dimensions say why.",
        )
    if not layout.drawers:
        return ("No box has a drawer yet", "Choose “Plan now” (F5), or drag boxes from below into the bays.")
    return ()
