"""The window's part in planning along with the edits: when a search begins, when it shows, how the mode is chosen.

Laws: the search begins a moment after the last edit, so that a burst of edits is one search; what is over before a
person could wait shows no progress; the choice is remembered for the next start.
"""

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QAction, QActionGroup
from PySide6.QtWidgets import QToolButton, QWidget

from baywright.app.live import LiveMode
from baywright.app.notices import Notice, PlanningStarted, ReplanEnded, ReplanStarted, ReplanWanted
from baywright.app.session import Session
from baywright.gui.preferences import Preferences

PAUSE_MS = 15
"""From the last edit to the search: longer than the steps of one edit take, shorter than anybody sees."""
PATIENCE_MS = 100
"""A search that takes longer shows that it runs."""

CHOICES: tuple[tuple[LiveMode, str, str, str], ...] = (
    (
        LiveMode.MEND,
        "&Make room",
        "Live: make room",
        "An edit that leaves a box without a drawer, or something in conflict, is planned at once; the rest stays",
    ),
    (
        LiveMode.BEST,
        "Always the &best plan",
        "Live: best plan",
        "After every edit that matters the best plan with the fewest moves is looked for",
    ),
    (LiveMode.CHECK, "Only &check", "Live: only check", "Edits move nothing; what is wrong is told"),
)


class LivePlanner(QObject):
    """Begins the searches that a session's edits ask for."""

    slow_changed = Signal(bool)
    """A search takes long enough to be shown (True); it ended (False)."""
    ended = Signal(object)
    """A search ended: the `ReplanEnded`."""
    mode_changed = Signal()

    def __init__(self, session: Session, preferences: Preferences, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session, self._preferences = session, preferences
        session.live.mode = preferences.live_mode
        self.pause = self._timer(PAUSE_MS, session.live.act)
        self._patience = self._timer(PATIENCE_MS, lambda: self._show_slow(True))
        self.is_slow = False
        unsubscribe = session.subscribe(self._on_noticed)
        self.destroyed.connect(lambda _gone=None: unsubscribe())

    def _timer(self, milliseconds: int, deed: object) -> QTimer:
        timer = QTimer(self)
        timer.setSingleShot(True)
        timer.setInterval(milliseconds)
        timer.timeout.connect(deed)
        return timer

    @property
    def mode(self) -> LiveMode:
        """Which edits make the planner act."""
        return self._session.live.mode

    def choose(self, mode: LiveMode) -> None:
        """Take another mode and remember it."""
        self._session.live.mode = self._preferences.live_mode = mode
        self.mode_changed.emit()

    def _show_slow(self, is_slow: bool) -> None:
        if is_slow != self.is_slow:
            self.is_slow = is_slow
            self.slow_changed.emit(is_slow)

    def _on_noticed(self, notice: Notice) -> None:
        match notice:
            case ReplanWanted():
                self.pause.start()
                if not self._patience.isActive() and not self.is_slow:
                    self._patience.start()
            case ReplanStarted():
                if not self._patience.isActive() and not self.is_slow:
                    self._patience.start()
            case ReplanEnded():
                self.pause.stop()
                self._patience.stop()
                self._show_slow(False)
                self.ended.emit(notice)
            case PlanningStarted():
                self._patience.stop()
                self.is_slow = False
            case _:
                pass


class LiveSwitch:
    """The choice as actions of the menu, and as a button of the toolbar that says which one holds."""

    def __init__(self, planner: LivePlanner, window: QWidget) -> None:
        self._planner = planner
        self._group = QActionGroup(window)
        self.actions: dict[LiveMode, QAction] = {}
        for mode, words, _, tip in CHOICES:
            action = QAction(words, window)
            action.setCheckable(True)
            action.setToolTip(tip)
            action.setStatusTip(tip)
            action.triggered.connect(lambda _checked=False, mode=mode: planner.choose(mode))
            self._group.addAction(action)
            self.actions[mode] = action
        self.button = QToolButton(window)
        self.button.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.button.addActions(list(self.actions.values()))
        planner.mode_changed.connect(self._show)
        self._show()

    def _show(self) -> None:
        self.actions[self._planner.mode].setChecked(True)
        short, tip = next((short, tip) for mode, _, short, tip in CHOICES if mode is self._planner.mode)
        self.button.setText(short)
        self.button.setToolTip(f"What planning does when you change something. Now: {tip[0].lower()}{tip[1:]}.")
        self.button.setAccessibleName(short)
