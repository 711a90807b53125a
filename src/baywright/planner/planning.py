"""The planner's front door: a project document in, a plan with its proof out, or what stands in the way."""

from collections.abc import Callable
from dataclasses import dataclass, field

from baywright.model.plan import Goal, GoalValue, PlanResult, PlanStatus
from baywright.model.project import Project
from baywright.planner import handling
from baywright.planner.budget import Budget, StoppedError
from baywright.planner.cheapest import cheapest
from baywright.planner.explanation import explain
from baywright.planner.frame import Frame, Framer
from baywright.planner.grid import Grid, read_grid
from baywright.planner.locks import lock_conflicts
from baywright.planner.obstacle import most_bays, most_rows, obstacles
from baywright.planner.problem import Place, is_kept
from baywright.planner.search import fewest, holds
from baywright.planner.solving import Stop
from baywright.workings import derive

DEFAULT_EFFORT = 8.0
"""Effort of an ordinary run in the solver's deterministic units; one takes one to two seconds on a small machine."""

Progress = Callable[[PlanResult], None]


def plan(
    project: Project, *, effort: float = DEFAULT_EFFORT, stop: Stop | None = None, progress: Progress | None = None
) -> PlanResult:
    """The best arrangement of a project's boxes, or why there is none.

    The same document gives the same answer on every machine. `stop` is asked every few hundredths of a second and
    ends the search with the best plan so far; `progress` is called with better plans as they are found.
    """
    if not project.boxes:
        return PlanResult(status=PlanStatus.EMPTY)
    workings = derive(project)
    grid = read_grid(project, workings)
    bays, rows = most_bays(project, grid), most_rows(project, grid)
    budget = Budget(effort, stop)
    if obstacles(project, workings, grid) or lock_conflicts(project, grid, bays, rows):
        return _impossible(project, budget)
    return _Run(project, grid, budget, progress).result(bays, rows)


def _impossible(project: Project, budget: Budget) -> PlanResult:
    """The answer where there is no plan: why, and what would help."""
    why = explain(project, budget)
    return PlanResult(
        status=PlanStatus.IMPOSSIBLE, conflicts=why.conflicts, repairs=why.repairs, effort=budget.spent,
        remarks=why.remarks,
    )  # fmt: skip


@dataclass
class Found:
    """The best plan so far and what is proved of it."""

    frame: Frame
    places: tuple[Place, ...]
    bays_bound: int
    rows_bound: int = 1
    cost_bound: int = 0
    cost: int = field(init=False)

    def __post_init__(self) -> None:
        self.cost = self.frame.problem.cost(self.places) + self.frame.pinned_cost


class _Run:
    """One run of the planner: the document, the effort, and the best plan so far."""

    def __init__(self, project: Project, grid: Grid, budget: Budget, progress: Progress | None) -> None:
        self._project = project
        self._framer = Framer(project, grid)
        self._grid = grid
        self._budget = budget
        self._progress = progress
        self._remark = handling.assumption(project)
        self._found: Found | None = None

    def result(self, bays: int, rows: int) -> PlanResult:
        """The answer for a run of at most that many bays and rows."""
        try:
            frame = self._framer.frame(bays, rows)
            answer = holds(frame.problem, self._budget)
            if answer.holds is False:
                return _impossible(self._project, self._budget)
            if answer.holds is None:
                return self._open()
            self._improve(Found(frame, answer.places, self._framer.fewest_bays))
        except StoppedError:
            if self._found is None:
                return PlanResult(status=PlanStatus.STOPPED, effort=self._budget.spent)
        return self._answer()

    def _improve(self, found: Found) -> None:
        self._keep(found)
        limits, rows = self._project.limits, found.frame.rows
        if limits.bay_count is None:
            found = self._fewest_bays(found)
        else:
            found.bays_bound = found.frame.bays
        self._keep(found)
        if limits.upright_rows is None:
            frame_of = self._framer
            bays = found.frame.bays
            numbers = range(self._fewest_rows(), rows)
            best = fewest(numbers, lambda n: frame_of.frame(bays, n), (found.frame, found.places), self._budget)
            found = Found(best[0], best[1], found.bays_bound, best[2])
        else:
            found.rows_bound = rows
        self._keep(found)
        easiest = cheapest(self._framer, found.frame, found.places, self._budget)
        bound = easiest.bound + found.frame.pinned_cost
        self._keep(Found(found.frame, easiest.places, found.bays_bound, found.rows_bound, bound))

    def _fewest_bays(self, found: Found) -> Found:
        rows = found.frame.rows
        used = {found.frame.indices[place.kind][place.bay] for place in found.places}
        enough = max(len(used), self._framer.fewest_bays)
        known = (found.frame, found.places)
        if enough < found.frame.bays:
            smaller = self._framer.frame(enough, rows)
            answer = holds(smaller.problem, self._budget)
            if answer.holds:
                known = (smaller, answer.places)
        numbers = range(self._framer.fewest_bays, known[0].bays)
        best = fewest(numbers, lambda n: self._framer.frame(n, rows), known, self._budget)
        return Found(best[0], best[1], best[2])

    def _fewest_rows(self) -> int:
        """The rows that pinned boxes need at least."""
        rows = 1
        sizes = {box.id: box.size_id for box in self._project.boxes}
        for pinned in self._framer.pinned:
            while self._grid.highest(sizes[pinned.box_id], rows) < pinned.row:
                rows += 1
        return rows

    def _keep(self, found: Found) -> None:
        if not is_kept(found.frame.problem, found.places):
            raise RuntimeError("The search made a plan that breaks a limit.")  # a defect must never pass for a plan
        self._found = found
        if self._progress is not None:
            self._progress(self._answer())

    def _answer(self) -> PlanResult:
        found = self._found
        assert found is not None
        goals = _goals(found)
        status = PlanStatus.PROVED_BEST if all(goal.is_proved for goal in goals) else PlanStatus.FEASIBLE
        return PlanResult(
            status=status,
            arrangement=self._framer.arrangement(found.frame, found.places),
            goals=goals,
            effort=self._budget.spent,
            remarks=(self._remark,) if self._remark else (),
        )

    def _open(self) -> PlanResult:
        text = (
            "Neither a plan nor a proof that there is none was found within the effort allowed. "
            "Allow one more bay or one more row, or lock some boxes where they stand well."
        )
        return PlanResult(status=PlanStatus.STOPPED, effort=self._budget.spent, remarks=(text,))


def _goals(found: Found) -> tuple[GoalValue, ...]:
    unit = handling.PER_UNIT
    bound = min(found.cost_bound, found.cost)
    return (
        GoalValue(goal=Goal.BAYS, value=found.frame.bays, bound=found.bays_bound, unit="bays"),
        GoalValue(goal=Goal.ROWS, value=found.frame.rows, bound=min(found.rows_bound, found.frame.rows), unit="rows"),
        GoalValue(goal=Goal.HANDLING, value=found.cost / unit, bound=bound / unit, unit=handling.UNIT),
    )
