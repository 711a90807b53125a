"""The status line: boxes placed, rows free, how good the plan is proved to be, planning and its Stop.

Law: nothing is told by colour alone; each part has a sign and words, and a longer explanation on hover.
"""

from dataclasses import dataclass

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QProgressBar, QPushButton, QStatusBar, QWidget

from baywright.app.session import Session
from baywright.gui.actions import Actions
from baywright.gui.wording import GOALS, count_words, words_for
from baywright.model.goals import MORE_IS_BETTER
from baywright.model.plan import PlanResult, PlanStatus


@dataclass(frozen=True)
class PlanWords:
    """Short and long words for how good the plan is."""

    short: str
    long: str


def plan_words(session: Session) -> PlanWords:
    """How good the present arrangement is known to be."""
    plan, project = session.plan, session.project
    if plan is None:
        if not project.boxes:
            return PlanWords("– no boxes yet", "Add boxes, then plan.")
        if not project.arrangement.bay_count:
            return PlanWords("– not planned yet", "“Plan now” (F5) finds the best place for every box.")
        return PlanWords(
            "? not known to be best",
            "The project was changed since it was planned, or was read from a file. Plan again (F5) to know whether "
            "the arrangement is the best one.",
        )
    if plan.status is PlanStatus.PROVED_BEST:
        return PlanWords("✓ proved best", f"Proved: no plan is better. {goal_words(plan)}")
    if plan.status is PlanStatus.FEASIBLE:
        return PlanWords(
            "≈ good, not proved best", f"Keeps every limit; the search ended before the proof. {goal_words(plan)}"
        )
    if plan.status is PlanStatus.IMPOSSIBLE:
        return PlanWords(
            "✗ no plan keeps every limit", "The tab “What's wrong” says which limit binds and by how much."
        )
    if plan.status is PlanStatus.STOPPED:
        told = " ".join(plan.remarks) or "Planning was stopped before a plan was found; nothing was changed."
        return PlanWords("– no plan found" if plan.remarks else "– stopped", told)
    return PlanWords("– no boxes yet", "Add boxes, then plan.")


def goal_words(plan: PlanResult) -> str:
    """The goals of a plan with value and, where it is not proved, the best that could be."""
    parts = []
    for goal in plan.goals:
        value = f"{words_for(goal.goal, GOALS)}: {goal.value:,.6g} {goal.unit}".strip()
        limit = "above" if goal.goal in MORE_IS_BETTER else "below"
        parts.append(value if goal.is_proved else f"{value} (no plan {limit} {goal.bound:,.6g})")
    return ("Goals in their order: " + "; ".join(parts) + ".") if parts else ""


def placed_words(session: Session) -> str:
    """How many boxes have a place."""
    project = session.project
    total = len(project.boxes_to_place)
    if not total:
        return "no boxes"
    placed = sum(box.id in project.arrangement.placements_by_box for box in project.boxes_to_place)
    return f"{placed:,} of {total:,} placed"


class StatusLine(QWidget):
    """The permanent part of the status bar."""

    problems_wanted = Signal()

    def __init__(self, session: Session, actions: Actions, bar: QStatusBar) -> None:
        super().__init__(bar)
        self._session = session
        self.placed, self.rows, self.proof = QLabel(self), QLabel(self), QLabel(self)
        self.problems = QPushButton(self)
        self.problems.setFlat(True)
        self.problems.setToolTip("Show what is wrong and how to mend it")
        self.problems.clicked.connect(self.problems_wanted)
        self.progress = QProgressBar(self)
        self.progress.setRange(0, 0)
        self.progress.setFixedWidth(90)
        self.progress.setTextVisible(False)
        self.progress.setAccessibleName("Planning is running")
        self.planning = QLabel(self)
        self.stop = QPushButton("Stop", self)
        self.stop.setIcon(actions.stop.icon())
        self.stop.setToolTip(actions.stop.toolTip())
        self.stop.clicked.connect(actions.stop.trigger)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 4, 0)
        row.setSpacing(12)
        for widget in (self.planning, self.progress, self.stop, self.placed, self.rows, self.proof, self.problems):
            row.addWidget(widget)
        bar.addPermanentWidget(self)
        self.show_planning(None)
        self.show_document(0)

    def show_document(self, problem_count: int) -> None:
        """Show the present document's figures."""
        report, words = self._session.report, plan_words(self._session)
        self.placed.setText(placed_words(self._session))
        self.placed.setToolTip("Boxes that have a drawer, of all boxes that are not kept elsewhere")
        has_bays = bool(self._session.project.arrangement.bay_count)
        self.rows.setText(count_words(report.rows_free, "row free", "rows free") if has_bays else "")
        self.rows.setToolTip(f"Hole rows not taken by a drawer, of {report.rows_total:,} usable ones in all bays")
        self.rows.setVisible(has_bays)
        self.proof.setText(words.short)
        self.proof.setToolTip(words.long)
        self.proof.setAccessibleDescription(words.long)
        self.problems.setText(f"⚠ {problem_count} to mend" if problem_count else "✓ nothing wrong")
        self.problems.setVisible(bool(problem_count) or has_bays)

    def show_planning(self, words: str | None) -> None:
        """Show that planning runs and what is known so far; None when it ended."""
        self.planning.setText(words or "")
        for widget in (self.planning, self.progress, self.stop):
            widget.setVisible(words is not None)
