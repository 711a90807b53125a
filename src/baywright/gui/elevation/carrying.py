"""From the mouse to a drag and from the drag to one edit: taking hold, carrying, dropping, putting back.

Laws: nothing happens before the pointer has moved a little way; Esc, an edit from elsewhere and an illegal place put
everything back; dropping makes at most one command.
"""

from typing import Protocol

from PySide6.QtCore import QEvent, QObject, QPoint, QPointF, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication

from baywright.app.commands import Command
from baywright.app.session import Session
from baywright.gui.elevation.canvas import Canvas
from baywright.gui.elevation.drag import BoxDrag
from baywright.gui.elevation.layout import Layout
from baywright.gui.elevation.tray import Tray

_SCROLL_INTERVAL_MS = 40


class _Run(Protocol):
    def __call__(self, command: Command) -> bool: ...


class Carrier(QObject):
    """Carries one box at a time between the canvas and the tray. Positions are global pixels."""

    told = Signal(str, bool)
    """What to tell the person, and whether it is a refusal."""
    dropped = Signal(str)
    """A box was put into a drawer or onto the tray."""

    def __init__(self, session: Session, canvas: Canvas, tray: Tray, run: _Run, parent: QObject) -> None:
        super().__init__(parent)
        self._session, self._canvas, self._tray, self._run = session, canvas, tray, run
        self._layout: Layout | None = None
        self._held: tuple[str, tuple[str, ...], QPointF | None] | None = None
        self._pressed_at = QPoint()
        self._position = QPoint()
        self.drag: BoxDrag | None = None
        self._scrolling = QTimer(self)
        self._scrolling.setInterval(_SCROLL_INTERVAL_MS)
        self._scrolling.timeout.connect(self._on_scrolling_timed_out)
        for widget in (canvas, tray.list):
            widget.installEventFilter(self)

    @property
    def is_holding(self) -> bool:
        """Whether a box is held, carried already or not."""
        return self._held is not None

    def show_layout(self, layout: Layout) -> None:
        """The document is another one now; whatever was carried goes back."""
        if self.drag is not None:
            self.cancel("The plan changed meanwhile; the box went back. Drag it again.")
        self._layout = layout

    def press(self, box_id: str, carried: tuple[str, ...], position: QPoint, grip: QPointF | None) -> None:
        """Take hold of a box."""
        self._held = (box_id, carried, grip)
        self._pressed_at = position

    def move(self, position: QPoint) -> None:
        """Carry on; the drag begins once the pointer is far enough from where it was pressed."""
        self._position = position
        if self._held is None or self._layout is None:
            return
        if self.drag is None:
            if (position - self._pressed_at).manhattanLength() < QApplication.startDragDistance():
                return
            box_id, carried, grip = self._held
            self.drag = BoxDrag(self._session, self._layout, box_id, carried, grip)
            self._canvas.show_moving(self.drag.carried)
            self._scrolling.start()
        self._follow(self.drag)

    def release(self, position: QPoint) -> None:
        """Drop: one edit, or everything as it was."""
        if self.drag is None:
            self._let_go()
            return
        self.move(position)
        drag, command = self.drag, self.drag.command()
        message, is_refusal = drag.message, command is None and not drag.is_legal
        self._let_go()
        if command is None:
            self.told.emit(f"{message} The box went back." if is_refusal else "", is_refusal)
        elif self._run(command):
            self.told.emit("", False)
            self.dropped.emit(drag.box_id)

    def cancel(self, message: str = "Put back.") -> None:
        """Everything as it was before the press."""
        was_carrying = self.drag is not None
        self._let_go()
        if was_carrying:
            self.told.emit(message, False)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Esc puts back, before anything else may understand it."""
        if self._held is not None and isinstance(event, QKeyEvent) and event.key() == Qt.Key.Key_Escape:
            if event.type() is QEvent.Type.ShortcutOverride:
                event.accept()
                return True
            if event.type() is QEvent.Type.KeyPress:
                self.cancel()
                return True
        return super().eventFilter(watched, event)

    def _follow(self, drag: BoxDrag) -> None:
        tray, viewport = self._tray, self._canvas.viewport()
        pixel = viewport.mapFromGlobal(self._position)
        is_over_tray = tray.rect().contains(tray.mapFromGlobal(self._position))
        if is_over_tray:
            drag.move_over_tray()
        elif viewport.rect().contains(pixel):
            drag.move_over_bays(self._canvas.at_pixel(QPointF(pixel)))
        else:
            drag.move_over_nothing()
        self._canvas.show_ghost(drag.ghost)
        tray.show_target(is_over_tray)
        self.told.emit(drag.message, not drag.is_legal)

    def _on_scrolling_timed_out(self) -> None:
        viewport = self._canvas.viewport()
        pixel = viewport.mapFromGlobal(self._position)
        if self.drag and viewport.rect().contains(pixel) and self._canvas.scroll_towards(pixel):
            self._follow(self.drag)

    def _let_go(self) -> None:
        self._scrolling.stop()
        self._held, self.drag = None, None
        self._canvas.show_ghost(None)
        self._canvas.show_moving(())
        self._tray.show_target(False)
