"""What would help: single changes that the planner has tried, smallest first, each with a button that makes it.

Law: it makes no change itself; it tells which one is wanted.
"""

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from baywright.gui.whynot.problem import WhyNot
from baywright.model.repair import Repair

HEADING = "What would help, smallest change first:"
NONE_FOUND = (
    "No single change was found that leaves a plan. Change one of the limits named at the left, or take boxes out of "
    "the inventory, and plan again (F5)."
)
AS_IT_STANDS = (
    "“Plan now” (F5) looks for places that keep every limit; if there are none, it says here which single changes "
    "would help."
)


class RepairRow(QWidget):
    """One change in words, and its button."""

    wanted = Signal()

    def __init__(self, number: int, repair: Repair, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        text = repair.text.rstrip(".")
        self.words = QLabel(f"{number}. {text}", self)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self.words.setWordWrap(True)  # after the policy, which else forgets that height goes with width
        self.button = QPushButton("Apply", self)
        self.button.setAccessibleName(f"Apply: {text}")
        self.button.setToolTip(f"{text}, and plan anew. One undo takes back both.")
        self.button.setAutoDefault(True)
        self.button.clicked.connect(self.wanted)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.words, 1)
        row.addWidget(self.button, 0, Qt.AlignmentFlag.AlignTop)


class RepairList(QScrollArea):
    """All changes offered, or words why there are none."""

    repair_wanted = Signal(object)
    """The person wants this `Repair` made."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shown: WhyNot | None = None
        self.rows: list[RepairRow] = []
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName("What would help")
        self._words = QLabel(self)
        self._words.setWordWrap(True)
        self._words.setTextFormat(Qt.TextFormat.PlainText)
        self._remarks = QLabel(self)
        self._remarks.setWordWrap(True)
        self._remarks.setTextFormat(Qt.TextFormat.PlainText)
        inner = QWidget(self)
        self._column = QVBoxLayout(inner)
        self._column.setContentsMargins(8, 6, 8, 6)
        self._column.setSpacing(4)
        self._column.addWidget(self._words)
        self._column.addWidget(self._remarks)
        self._column.addStretch(1)
        self.setWidget(inner)

    @property
    def words(self) -> str:
        """The heading, or why there is nothing to offer."""
        return self._words.text()

    def show_repairs(self, shown: WhyNot) -> None:
        """Offer the repairs of an answer, or explain that there are none."""
        if shown == self._shown:
            return
        self._shown = shown
        for row in self.rows:
            row.button.removeEventFilter(self)
            self._column.removeWidget(row)
            row.hide()
            row.deleteLater()
        self.rows = []
        for number, repair in enumerate(shown.repairs, 1):
            row = RepairRow(number, repair, self.widget())
            row.wanted.connect(lambda repair=repair: self.repair_wanted.emit(repair))
            row.button.installEventFilter(self)
            self._column.insertWidget(number, row)
            self.rows.append(row)
        self._words.setText(HEADING if shown.repairs else NONE_FOUND if shown.is_impossible else AS_IT_STANDS)
        font = self.font()
        font.setBold(bool(shown.repairs))
        self._words.setFont(font)
        self._remarks.setText(" ".join(shown.remarks))
        self._remarks.setVisible(bool(shown.remarks))

    def eventFilter(self, watched: object, event: QEvent) -> bool:
        """Up and down go from button to button."""
        if event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            step = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}.get(Qt.Key(event.key()))
            buttons = [row.button for row in self.rows]
            if step is not None and watched in buttons:
                number = buttons.index(watched) + step
                if 0 <= number < len(buttons):
                    buttons[number].setFocus(Qt.FocusReason.TabFocusReason)
                    self.ensureWidgetVisible(self.rows[number])
                return True
        return False

    def sizeHint(self) -> QSize:
        """A few lines."""
        return QSize(260, self.fontMetrics().lineSpacing() * 6)
