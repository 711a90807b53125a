"""A drawing to scale that can be zoomed and panned, painted in pixels, with words where there is nothing to draw.

Laws: it takes colours and letters from the window and follows them; what it shows is told in words as well
(`setAccessibleDescription`), for whoever does not see it.
"""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter
from PySide6.QtWidgets import QWidget

from baywright.gui.elevation.colours import elevation_colours
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.pixels import Pixels, in_pixels
from baywright.gui.elevation.sheet import Sheet
from baywright.model.length import LengthUnit

ZOOM_HINT = "Ctrl and the wheel, + and − zoom, 0 fits"


class Plate(Sheet):
    """One drawing. Subclasses paint it (`paint`) and say how much room its margins need."""

    def __init__(self, name: str, empty: str, unit: Callable[[], LengthUnit], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._empty, self._unit = empty, unit
        self.setAccessibleName(name)
        self.setToolTip(ZOOM_HINT)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(160, 110)
        self._show_scroll_bars(False)

    @property
    def style_now(self) -> FaceStyle:
        """Colours, letters and unit to paint with."""
        return FaceStyle(elevation_colours(self.palette()), self.font(), self._unit())

    def has_something(self) -> bool:
        """Whether there is anything to draw."""
        raise NotImplementedError

    def paint(self, painter: QPainter, pixels: Pixels, style: FaceStyle) -> None:
        """Paint the drawing."""
        raise NotImplementedError

    def repaint_all(self) -> None:
        """Paint everything anew, soon."""
        self.resetCachedContent()
        self.viewport().update()

    def drawBackground(self, painter: QPainter, rect: QRectF | QRect) -> None:
        """The ground."""
        painter.fillRect(rect, QColor(self.style_now.colours.ground))

    def drawForeground(self, painter: QPainter, rect: QRectF | QRect) -> None:
        """The drawing, or the words that tell why there is none."""
        style = self.style_now
        with in_pixels(painter) as pixels:
            if self.has_something():
                self.paint(painter, pixels, style)
                return
            painter.setFont(style.font)
            painter.setPen(QColor(style.colours.window.muted))
            area = self.viewport().rect().adjusted(12, 12, -12, -12)
            painter.drawText(area, int(Qt.AlignmentFlag.AlignCenter) | int(Qt.TextFlag.TextWordWrap), self._empty)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Zoom by keys."""
        match event.text():
            case "+" | "=":
                self.zoom_in()
            case "-" | "−":
                self.zoom_out()
            case "0":
                self.zoom_to_fit()
            case _:
                super().keyPressEvent(event)
                return
        event.accept()

    def changeEvent(self, event: QEvent) -> None:
        """Other colours or letters."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.PaletteChange, QEvent.Type.FontChange):
            self.repaint_all()
