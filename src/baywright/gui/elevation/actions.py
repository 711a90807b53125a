"""The elevation's actions: for the main menu, the context menu, the tool bar and the keys.

Law: everything that a drag does can be done by these; an action that cannot be done now is disabled.
"""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QWidget

from baywright.gui.elevation.places import Direction
from baywright.model.arrangement import Lock


@dataclass(frozen=True)
class Doings:
    """What the actions do."""

    move: Callable[[Direction], None]
    choose_place: Callable[[], None]
    show_places: Callable[[], None]
    lock: Callable[[Lock], None]
    toggle_lock: Callable[[], None]
    take_out: Callable[[], None]
    step_board: Callable[[int], None]
    zoom_in: Callable[[], None]
    zoom_out: Callable[[], None]
    zoom_to_fit: Callable[[], None]


class ElevationActions:
    """All actions of one elevation; their keys work while it has the focus."""

    def __init__(self, owner: QWidget, doings: Doings) -> None:
        self._owner = owner
        move = doings.move
        self.move_to = self._action("&Move to…", ("M", "Return", "Enter"), doings.choose_place, "Choose bay and row")
        self.show_places = self._action(
            "&Where could it go?",
            ("W",),
            doings.show_places,
            "Every place for the box, best first",
        )
        self.moves = (
            self._action("Move &up", ("Alt+Up",), lambda: move(Direction.UP), "To the next free place higher"),
            self._action("Move &down", ("Alt+Down",), lambda: move(Direction.DOWN), "To the next free place lower"),
            self._action("Move &left", ("Alt+Left",), lambda: move(Direction.LEFT), "To the next bay on the left"),
            self._action("Move &right", ("Alt+Right",), lambda: move(Direction.RIGHT), "To the next bay on the right"),
        )
        self.lock_drawer = self._action(
            "Lock in &drawer", (), lambda: doings.lock(Lock.DRAWER), "Planning leaves it in its bay and row"
        )
        self.lock_bay = self._action(
            "Lock in &bay", (), lambda: doings.lock(Lock.BAY), "Planning leaves it in its bay, at any row"
        )
        self.unlock = self._action("&Unlock", (), lambda: doings.lock(Lock.NONE), "Planning may move it")
        self.toggle = self._action("Loc&k or unlock", ("L",), doings.toggle_lock, "Lock in its drawer, or unlock")
        self.take_out = self._action(
            "&Take out of its drawer", ("Delete",), doings.take_out, "The box stays in the inventory"
        )
        self.boards = (
            self._action("Ne&xt board", ("B",), lambda: doings.step_board(1), "Choose the next board of the run"),
            self._action(
                "Previou&s board", ("Shift+B",), lambda: doings.step_board(-1), "Choose the board of the run before"
            ),
        )
        self.zoom_in = self._action("Zoom &in", ("+", "=", "Ctrl++", "Ctrl+="), doings.zoom_in, "Larger")
        self.zoom_out = self._action("Zoom &out", ("-", "Ctrl+-"), doings.zoom_out, "Smaller")
        self.fit = self._action("&Fit", ("0", "Ctrl+0"), doings.zoom_to_fit, "Show the whole run")
        self.zoom_in.setIconText("+")
        self.zoom_out.setIconText("−")
        self.take_out.setIconText("Take out")

    def _action(self, text: str, keys: tuple[str, ...], do: Callable[[], None], tip: str) -> QAction:
        action = QAction(text, self._owner)
        action.setIconText(text.replace("&", ""))
        action.setShortcuts([QKeySequence(key) for key in keys])
        action.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        shown = f" ({action.shortcut().toString()})" if keys else ""
        action.setToolTip(f"{tip}{shown}")
        action.setStatusTip(tip)
        action.triggered.connect(lambda _checked=False: do())
        self._owner.addAction(action)
        return action

    @property
    def for_boxes(self) -> list[QAction]:
        """What can be done to the selected boxes, with separators."""
        return [
            self.move_to,
            self.show_places,
            *self.moves,
            self._separator(),
            self.toggle,
            self.lock_drawer,
            self.lock_bay,
            self.unlock,
            self._separator(),
            self.take_out,
        ]

    @property
    def for_menu(self) -> list[QAction]:
        """Everything, with separators, in the order of a menu."""
        zooming = (self.zoom_in, self.zoom_out, self.fit)
        return [*self.for_boxes, self._separator(), *self.boards, self._separator(), *zooming]

    @property
    def for_bar(self) -> list[QAction]:
        """What stands on the bar over the drawing."""
        bar = [self.fit, self.zoom_out, self.zoom_in, self._separator(), self.move_to]
        return [*bar, self.lock_drawer, self.lock_bay, self.unlock, self.take_out]

    def enable_for(self, selected: int, locks: frozenset[Lock], *, has_run: bool) -> None:
        """Enable what can be done with so many selected boxes; `locks` are those of the placed ones among them."""
        for action in (self.move_to, self.show_places, *self.moves):
            action.setEnabled(selected == 1 and has_run)
        self.lock_drawer.setEnabled(bool(locks - {Lock.DRAWER}))
        self.lock_bay.setEnabled(bool(locks - {Lock.BAY}))
        self.unlock.setEnabled(bool(locks - {Lock.NONE}))
        self.toggle.setEnabled(bool(locks))
        self.take_out.setEnabled(bool(locks))
        for action in (*self.boards, self.zoom_in, self.zoom_out, self.fit):
            action.setEnabled(has_run)

    def _separator(self) -> QAction:
        separator = QAction(self._owner)
        separator.setSeparator(True)
        return separator
