"""What is wrong and how to mend it: a strip over the picture with the first trouble, and a tab with all of them.

Selecting a trouble selects the boxes that it concerns.
"""

from dataclasses import dataclass

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from baywright.app.session import Session
from baywright.gui.messages import Tone, tone_palette
from baywright.gui.wording import count_words
from baywright.model.plan import Conflict, PlanResult, PlanStatus

MOST_LISTED = 200
"""More troubles than this are counted, not listed: nobody reads on."""


@dataclass(frozen=True)
class Problem:
    """One trouble: what is wrong, what to do, which boxes it concerns."""

    message: str
    mend: str
    box_ids: tuple[str, ...]

    @property
    def text(self) -> str:
        """Trouble and mend, as they are listed."""
        return f"⚠ {self.message}" + (f"\n     → {self.mend}" if self.mend else "")


def problems_of(session: Session, impossible: PlanResult | None) -> list[Problem]:
    """What is wrong with the present document: why no plan was possible first, then the arrangement as it stands."""
    conflicts: list[Conflict] = []
    if impossible is not None:
        conflicts += impossible.conflicts
    conflicts += session.report.conflicts
    seen: dict[tuple[str, str], Problem] = {}
    for conflict in conflicts:
        problem = Problem(conflict.message, conflict.mend, conflict.box_ids)
        seen.setdefault((conflict.message, conflict.mend), problem)
    return list(seen.values())


def refusal_of(session: Session) -> PlanResult | None:
    """The planner's answer to the present document where it says that no plan is possible."""
    plan = session.plan
    return plan if plan is not None and plan.status is PlanStatus.IMPOSSIBLE else None


class ProblemList(QListWidget):
    """All troubles, wrapped, each with what to do."""

    problem_chosen = Signal(object)
    """The person chose a trouble: the ids of its boxes (a tuple)."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._problems: list[Problem] = []
        self.setAccessibleName("What is wrong")
        self.setWordWrap(True)
        self.setAlternatingRowColors(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.currentRowChanged.connect(self._on_row)
        self.itemClicked.connect(lambda item: self._on_row(self.row(item)))

    @property
    def has_problems(self) -> bool:
        """Whether anything is wrong."""
        return bool(self._problems)

    def show_problems(self, problems: list[Problem], nothing: str) -> None:
        """List these troubles, or say that there is nothing."""
        if problems == self._problems and self.count():
            if not problems:
                self.item(0).setText(nothing)
            return
        self.blockSignals(True)
        self.clear()
        self._problems = problems
        for problem in problems[:MOST_LISTED]:
            item = QListWidgetItem(problem.text)
            item.setToolTip(problem.text)
            self.addItem(item)
        if len(problems) > MOST_LISTED:
            self._add_plain(f"… and {len(problems) - MOST_LISTED:,} more of the kind.")
        if not problems:
            self._add_plain(nothing)
        self.blockSignals(False)

    def _add_plain(self, text: str) -> None:
        item = QListWidgetItem(text)
        item.setFlags(Qt.ItemFlag.ItemIsEnabled)
        self.addItem(item)

    def _on_row(self, row: int) -> None:
        if 0 <= row < min(len(self._problems), MOST_LISTED):
            self.problem_chosen.emit(self._problems[row].box_ids)

    def sizeHint(self) -> QSize:
        """A few lines."""
        return QSize(300, self.fontMetrics().lineSpacing() * 6)


class ProblemStrip(QFrame):
    """One line over the picture: how many things are wrong and the first of them; hidden while there is nothing."""

    all_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._words = QLabel(self)
        self._words.setTextFormat(Qt.TextFormat.PlainText)
        self._words.setWordWrap(True)
        self._words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self._all = QPushButton("&What's wrong", self)
        self._all.clicked.connect(self.all_wanted)
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 4, 8, 4)
        row.addWidget(self._words, 1)
        row.addWidget(self._all, 0, Qt.AlignmentFlag.AlignTop)
        self.setAutoFillBackground(True)
        self._colouring = False
        self.hide()

    def changeEvent(self, event: QEvent) -> None:
        """Take the colours of a new theme."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and not self._colouring:
            self._colour()

    def _colour(self) -> None:
        self._colouring = True
        try:
            self.setPalette(tone_palette(self, Tone.CAUTION))
        finally:
            self._colouring = False

    def show_problems(self, problems: list[Problem]) -> None:
        """Show the first trouble and how many there are; nothing where there is none, or the list itself is seen."""
        self._colour()
        if problems:
            more = len(problems) - 1
            first = problems[0].message
            self._words.setText(f"⚠ {first}" + (f"  ({count_words(more, 'more', 'more')})" if more else ""))
            self._words.setToolTip("\n".join(problem.text for problem in problems[:8]))
        self.setVisible(bool(problems))


class ProblemPanel(QWidget):
    """The tab “What's wrong”."""

    problem_chosen = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.list = ProblemList(self)
        self.list.problem_chosen.connect(self.problem_chosen)
        column = QVBoxLayout(self)
        column.setContentsMargins(6, 6, 6, 6)
        column.addWidget(self.list)
