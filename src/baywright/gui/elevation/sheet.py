"""A graphics view in mm, floor at 0 and y upwards, that zooms about the pointer, fits, and pans.

Laws: margins keep their size in pixels at any zoom (dimensions are written there); while fitting it stays fitted when
its size changes.
"""

from PySide6.QtCore import QPoint, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QResizeEvent, QTransform, QWheelEvent
from PySide6.QtWidgets import QFrame, QGraphicsScene, QGraphicsView, QWidget

from baywright.gui.elevation.area import Area

ZOOM_STEP = 1.25
LEAST_SCALE, MOST_SCALE = 0.001, 12.0
"""Pixels a mm; at the least one the longest wall a project may have, 100 m, takes 100 pixels."""


class Sheet(QGraphicsView):
    """The view, without any meaning of what lies on it."""

    zoomed = Signal(float)
    """Pixels a mm, after every change."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setScene(QGraphicsScene(self))
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setTransformationAnchor(QGraphicsView.ViewportAnchor.NoAnchor)
        self.setResizeAnchor(QGraphicsView.ViewportAnchor.NoAnchor)
        self.setViewportUpdateMode(QGraphicsView.ViewportUpdateMode.FullViewportUpdate)
        self._extent: Area | None = None
        self._scale = 1.0
        self.is_fitting = True
        self._pan_from: QPoint | None = None
        self._space_held = False

    @property
    def pixels_per_mm(self) -> float:
        """The present scale."""
        return self._scale

    def show_extent(self, extent: Area | None) -> None:
        """Make room for `extent` and the margins round it."""
        self._extent = extent
        if self.is_fitting:
            self.zoom_to_fit()
        else:
            self._set_scale(self._scale)

    def margins_px(self, size: QSize) -> tuple[float, float, float, float]:
        """Room left, over, right of and below the extent, in pixels, in a view of that size."""
        return 0.0, 0.0, 0.0, 0.0

    def zoom_to_fit(self) -> None:
        """Show everything, as large as it goes, and keep it so when the size changes."""
        self.is_fitting = True
        self._show_scroll_bars(False)
        if self._extent is None:
            return
        size = self.maximumViewportSize()
        left, top, right, bottom = self.margins_px(size)
        across = (size.width() - left - right - 2) / self._extent.width
        up = (size.height() - top - bottom - 2) / self._extent.height
        self._set_scale(min(across, up))

    def zoom_in(self) -> None:
        """One step larger, about the middle."""
        self.zoom_about(QPointF(self.viewport().rect().center()), ZOOM_STEP)

    def zoom_out(self) -> None:
        """One step smaller, about the middle."""
        self.zoom_about(QPointF(self.viewport().rect().center()), 1 / ZOOM_STEP)

    def zoom_about(self, pixel: QPointF, factor: float) -> None:
        """Zoom so that what lies under that pixel of the view stays under it, as far as the scroll range goes."""
        if self._extent is None:
            return
        held = self.at_pixel(pixel)
        self.is_fitting = False
        self._show_scroll_bars(True)
        self._set_scale(self._scale * factor)
        moved = self.viewportTransform().map(held) - pixel
        self._scroll_by(moved)

    def at_pixel(self, pixel: QPointF) -> QPointF:
        """The place along the wall and over the floor, mm, under a pixel of the view."""
        inverted: QTransform = self.viewportTransform().inverted()[0]
        return inverted.map(pixel)

    def scroll_towards(self, pixel: QPoint, edge_px: int = 24, step_px: int = 18) -> bool:
        """Scroll on where that pixel lies near an edge; tells whether anything moved."""
        inner = self.viewport().rect().adjusted(edge_px, edge_px, -edge_px, -edge_px)
        across = step_px * ((pixel.x() > inner.right()) - (pixel.x() < inner.left()))
        down = step_px * ((pixel.y() > inner.bottom()) - (pixel.y() < inner.top()))
        before = (self.horizontalScrollBar().value(), self.verticalScrollBar().value())
        self._scroll_by(QPointF(across, down))
        return before != (self.horizontalScrollBar().value(), self.verticalScrollBar().value())

    def _scroll_by(self, pixels: QPointF) -> None:
        across, down = self.horizontalScrollBar(), self.verticalScrollBar()
        across.setValue(across.value() + round(pixels.x()))
        down.setValue(down.value() + round(pixels.y()))

    def _set_scale(self, scale: float) -> None:
        self._scale = max(LEAST_SCALE, min(MOST_SCALE, scale))
        extent = self._extent or Area(0.0, 0.0, 1.0, 1.0)
        left, top, right, bottom = (px / self._scale for px in self.margins_px(self.maximumViewportSize()))
        self.setTransform(QTransform.fromScale(self._scale, -self._scale))
        self.setSceneRect(
            QRectF(extent.left - left, -bottom, extent.width + left + right, extent.height + top + bottom)
        )
        self.resetCachedContent()
        self.zoomed.emit(self._scale)
        self.viewport().update()

    def _show_scroll_bars(self, shown: bool) -> None:
        policy = Qt.ScrollBarPolicy.ScrollBarAsNeeded if shown else Qt.ScrollBarPolicy.ScrollBarAlwaysOff
        self.setHorizontalScrollBarPolicy(policy)
        self.setVerticalScrollBarPolicy(policy)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stay fitted."""
        super().resizeEvent(event)
        if self.is_fitting:
            self.zoom_to_fit()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Ctrl and wheel zoom about the pointer; the wheel alone scrolls."""
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom_about(event.position(), ZOOM_STEP ** (event.angleDelta().y() / 120.0))
            event.accept()
        else:
            super().wheelEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The middle button, or the left one with the space bar, takes hold of the sheet."""
        left_with_space = self._space_held and event.button() is Qt.MouseButton.LeftButton
        if event.button() is Qt.MouseButton.MiddleButton or left_with_space:
            self._pan_from = event.position().toPoint()
            self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)
            event.accept()
        else:
            super().mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Pan while the sheet is held."""
        if self._pan_from is None:
            super().mouseMoveEvent(event)
            return
        here = event.position().toPoint()
        self._scroll_by(QPointF(self._pan_from - here))
        self._pan_from = here

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let the sheet go."""
        if self._pan_from is None:
            super().mouseReleaseEvent(event)
            return
        self._pan_from = None
        self._show_hand()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """The space bar gets the hand ready."""
        if event.key() == Qt.Key.Key_Space:
            self._space_held = True
            self._show_hand()
        else:
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """The space bar was let go."""
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._space_held = False
            self._show_hand()
        else:
            super().keyReleaseEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The space bar's release may go elsewhere now."""
        self._space_held, self._pan_from = False, None
        self._show_hand()
        super().focusOutEvent(event)

    def _show_hand(self) -> None:
        if self._space_held:
            self.viewport().setCursor(Qt.CursorShape.OpenHandCursor)
        else:
            self.viewport().unsetCursor()
