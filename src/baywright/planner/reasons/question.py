"""Whether a document has a plan at all: the one question behind every explanation and every repair.

Laws: a *no* is proved, by a finding about the document, by arithmetic or by the solver; a *yes* comes with places;
what the effort allowed for one question does not settle stays open and counts as neither. The effort is the same for
every question, whatever was spent before, so that the same document gives the same answers everywhere.
"""

from dataclasses import dataclass, field
from functools import cached_property

from baywright.model.plan import Conflict
from baywright.model.project import Project
from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.problem import Problem
from baywright.planner.distribution.search import settle
from baywright.planner.framing.frame import Frame, Framer
from baywright.planner.framing.grid import Grid, read_grid
from baywright.planner.legality.locks import lock_conflicts
from baywright.planner.legality.obstacle import most_bays, most_rows, obstacles
from baywright.workings import Workings, derive

QUESTION_EFFORT = 1.0
"""Effort that one question may take, in deterministic units of the solver."""


class Reading:
    """One document as the planner sees it: measures, findings, and the largest run that its limits allow."""

    def __init__(self, project: Project) -> None:
        self.project = project
        self.workings: Workings = derive(project)
        self.grid: Grid = read_grid(project, self.workings)
        self.bays = most_bays(project, self.grid)
        self.rows = most_rows(project, self.grid)

    @cached_property
    def findings(self) -> tuple[Conflict, ...]:
        """What makes it impossible before anything is distributed."""
        found = obstacles(self.project, self.workings, self.grid)
        return found or lock_conflicts(self.project, self.grid, self.bays, self.rows)

    @cached_property
    def frame(self) -> Frame:
        """The largest run; to be asked for only where there are no findings."""
        return Framer(self.project, self.grid, self.workings).frame(self.bays, self.rows)


@dataclass
class Questions:
    """Asks whether documents have a plan; the same distribution is put to the solver only once."""

    budget: Budget
    asked: int = 0
    open: int = 0
    """How many questions the effort did not settle."""
    _known: dict[tuple[tuple[Problem, ...], bool], bool | None] = field(default_factory=dict)

    def has_plan(self, project: Project) -> bool | None:
        """True or False as proved, None where it stays open. Raises `StoppedError` where the caller wants to stop."""
        self.budget.check()
        self.asked += 1
        if not project.boxes_to_place:
            return True
        reading = Reading(project)
        if reading.findings:
            return False
        frame = reading.frame
        key = (frame.problem, *(other.problem for other in frame.others)), frame.is_complete
        if key not in self._known:
            own = Budget(QUESTION_EFFORT, self.budget.stop)
            self._known[key] = settle(frame, own, share=1.0)[1].holds
            self.budget.spent += own.spent
        answer = self._known[key]
        self.open += answer is None
        return answer
