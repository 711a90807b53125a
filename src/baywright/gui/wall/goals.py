"""The order of the goals: what counts most when several plans keep every limit."""

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from baywright.app.edits.wishes import MoveGoal
from baywright.app.session import Session
from baywright.gui.tables.block import explanation
from baywright.gui.wording import GOAL_SENTENCES, GOALS, words_for
from baywright.model.goals import FIRST_GOALS, Goal

WORDS = "Of all plans that keep every limit, the best by the first goal is taken; among equals the next one decides."


class GoalList(QListWidget):
    """The goals with a sentence each, as high as they need; Alt and the arrow keys move the current one."""

    def __init__(self, block: "GoalBlock") -> None:
        super().__init__(block)
        self._block = block
        self.setAccessibleName("Order of the goals")
        self.setWordWrap(True)
        self.setAlternatingRowColors(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move the current goal with Alt and an arrow key."""
        step = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}.get(Qt.Key(event.key()))
        if step is not None and event.modifiers() & Qt.KeyboardModifier.AltModifier:
            self._block.move_goal(step)
            event.accept()
        else:
            super().keyPressEvent(event)

    def sizeHint(self) -> QSize:
        """Room for every goal with two or three lines of words."""
        return QSize(280, self.fontMetrics().lineSpacing() * 20)

    def minimumSizeHint(self) -> QSize:
        """The same height; as narrow as need be."""
        return QSize(160, self.sizeHint().height())

    def changeEvent(self, event: QEvent) -> None:
        """Keep fitting the text size."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self.updateGeometry()


class GoalBlock(QWidget):
    """The list with its buttons."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._shown: tuple[Goal, ...] = ()
        words = explanation(WORDS, self)
        self.list = GoalList(self)
        self.up = QPushButton("Counts mor&e", self)
        self.up.setToolTip("Let the goal decide earlier (Alt+Up)")
        self.down = QPushButton("Counts &less", self)
        self.down.setToolTip("Let the goal decide later (Alt+Down)")
        buttons = QHBoxLayout()
        buttons.addWidget(self.up)
        buttons.addWidget(self.down)
        buttons.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(6, 0, 2, 8)
        column.addWidget(words)
        column.addLayout(buttons)
        column.addWidget(self.list)
        column.addStretch(1)
        self.up.clicked.connect(lambda: self.move_goal(-1))
        self.down.clicked.connect(lambda: self.move_goal(1))
        self.list.currentRowChanged.connect(lambda _row: self._enable())
        self.update_from_document()

    def update_from_document(self) -> None:
        """Show the order of the present document; the current goal stays current."""
        order = (*FIRST_GOALS, *self._session.project.goals)
        if order == self._shown:
            return
        current = self.current
        self.list.clear()
        self._shown = order
        for number, goal in enumerate(order, 1):
            fixed = "  (always first)" if goal in FIRST_GOALS else ""
            item = QListWidgetItem(f"{number}. {words_for(goal, GOALS)}{fixed}\n{GOAL_SENTENCES[goal]}", self.list)
            item.setToolTip(GOAL_SENTENCES[goal])
            if goal in FIRST_GOALS:
                item.setFlags(Qt.ItemFlag.ItemIsEnabled)
        if current is not None:
            self.list.setCurrentRow(order.index(current))
        self._enable()

    @property
    def current(self) -> Goal | None:
        """The goal that would be moved; None where none is chosen, or one whose place is fixed."""
        row = self.list.currentRow()
        goal = self._shown[row] if 0 <= row < len(self._shown) else None
        return None if goal in FIRST_GOALS else goal

    def move_goal(self, by: int) -> None:
        """Move the current goal."""
        goal = self.current
        if goal is not None:
            self._session.do(MoveGoal(goal, by))

    def _enable(self) -> None:
        goal = self.current
        self.up.setEnabled(goal is not None and goal is not self._shown[len(FIRST_GOALS)])
        self.down.setEnabled(goal is not None and goal is not self._shown[-1])
