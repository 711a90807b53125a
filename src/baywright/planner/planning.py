"""The planner's front door: a project document in, a plan with its proof out, or what stands in the way."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import cached_property

from baywright.model.goals import FIRST_GOALS, Goal
from baywright.model.plan import GoalValue, PlanResult, PlanStatus
from baywright.model.project import Project
from baywright.planner import handling
from baywright.planner.distribution.budget import Budget, StoppedError
from baywright.planner.distribution.problem import Place, is_kept
from baywright.planner.distribution.search import settle
from baywright.planner.distribution.solving import Stop
from baywright.planner.figures import Scale, goal_value
from baywright.planner.framing.frame import Frame, Framer
from baywright.planner.framing.grid import Grid, read_grid
from baywright.planner.framing.rivals import Outcome, Rivals, narrowed
from baywright.planner.framing.shape import Shape, ShapeSearch
from baywright.planner.goals.bound import easy_bounds
from baywright.planner.goals.task import Figures, Task
from baywright.planner.legality.locks import lock_conflicts
from baywright.planner.legality.obstacle import most_bays, most_rows, obstacles
from baywright.planner.reasons.explanation import explain
from baywright.planner.replanning.standing import standing_of
from baywright.workings import derive

DEFAULT_EFFORT = 16.0
"""Effort of an ordinary run in the solver's deterministic units; one takes half a second to one on small machines."""

Progress = Callable[[PlanResult], None]


def plan(
    project: Project,
    *,
    keep: bool = False,
    effort: float = DEFAULT_EFFORT,
    stop: Stop | None = None,
    progress: Progress | None = None,
) -> PlanResult:
    """The best arrangement of a project's boxes, or why there is none.

    With `keep` it is planned again: moved boxes and runners screwed anew count as goals, against what is built, else
    against the present arrangement; where bays are built they always count. The same document gives the same answer
    on every machine. `stop` is asked every few hundredths of a second and ends the search with the best plan so far;
    `progress` is called with better plans as they are found.
    """
    if not project.boxes_to_place:
        return PlanResult(status=PlanStatus.EMPTY)
    workings = derive(project)
    grid = read_grid(project, workings)
    bays, rows = most_bays(project, grid), most_rows(project, grid)
    budget = Budget(effort, stop)
    if obstacles(project, workings, grid) or lock_conflicts(project, grid, bays, rows):
        return _impossible(project, budget)
    standing = standing_of(project) if keep or project.built is not None else None
    return _Run(project, Scale(project, standing, grid), budget, progress).result(bays, rows)


def _impossible(project: Project, budget: Budget) -> PlanResult:
    """The answer where there is no plan: why, and what would help."""
    why = explain(project, budget)
    return PlanResult(
        status=PlanStatus.IMPOSSIBLE, conflicts=why.conflicts, repairs=why.repairs, effort=budget.spent,
        remarks=why.remarks,
    )  # fmt: skip


class _Run:
    """One run of the planner: the document, the effort, and the best plan so far."""

    def __init__(self, project: Project, scale: Scale, budget: Budget, progress: Progress | None) -> None:
        self._project = project
        self._scale = scale
        self._grid: Grid = scale.grid
        self._framer = Framer(project, self._grid)
        self._budget = budget
        self._progress = progress
        self._remark = handling.assumption(project)
        self._shape: Shape | None = None
        self._answer: PlanResult | None = None

    def result(self, bays: int, rows: int) -> PlanResult:
        """The answer for a run of at most that many bays and rows."""
        try:
            frame, answer = settle(self._framer.frame(bays, rows), self._budget)
            if answer.holds is False:
                return _impossible(self._project, self._budget)
            if answer.holds is None and self._present is None:
                return self._open()
            found = Shape(frame, answer.places, self._framer.fewest_bays) if answer.holds else self._present
            assert found is not None
            shape = ShapeSearch(self._framer, self._budget, self._keep_shape).best(found, self._present)
            self._climb(shape)
        except StoppedError:
            if self._answer is None:
                return PlanResult(status=PlanStatus.STOPPED, effort=self._budget.spent)
        assert self._answer is not None
        return self._answer.replace(effort=self._budget.spent)

    @cached_property
    def _present(self) -> Shape | None:
        """The shape that stands now with its places, where it is legal and holds everything."""
        frame = self._framer.present_frame()
        if frame is None or lock_conflicts(self._project, self._grid, frame.bays, frame.rows):
            return None
        places = self._present_places(frame)
        return None if places is None else Shape(frame, places, self._framer.fewest_bays)

    def _present_places(self, frame: Frame) -> tuple[Place, ...] | None:
        """Every item where it stands now, where that is legal in a frame."""
        places = tuple(Place(item, *where) for item, where in sorted(self._framer.present(frame).items()))
        return places if is_kept(frame.problem, places) else None

    def _climb(self, shape: Shape) -> None:
        """The goals after the first two, in every mix of widths that may be best by them."""
        task = self._task(shape.frame)
        present = self._present_places(shape.frame)
        known = [task.spots(places) for places in (present, shape.places) if places is not None]

        def report(best: Outcome) -> None:
            own = replace(shape, frame=best.task.frame)
            self._keep(own, best.task.places(best.spots), best.figures, best.bounds)

        best = Rivals(self._framer, self._budget, self._task, report).climb(shape.frame, known)
        stood = self._present.frame.widths if self._present is not None else ()
        is_kept_up = best.spots == known[0] if present is not None else False
        widths = stood if is_kept_up or self._scale.standing.places else ()
        frame, places = narrowed(self._framer, best.task.frame, best.task.places(best.spots), widths)
        self._keep(replace(shape, frame=frame), places, best.figures, best.bounds)

    def _task(self, frame: Frame) -> Task:
        return Task(frame, self._scale, self._project.arrangement)

    def _keep_shape(self, shape: Shape) -> None:
        task = self._task(shape.frame)
        figures = task.figures(task.spots(shape.places))
        self._keep(shape, shape.places, figures, easy_bounds(task))

    def _keep(self, shape: Shape, places: tuple[Place, ...], figures: Figures, bounds: Mapping[Goal, int]) -> None:
        if not is_kept(shape.frame.problem, places):
            raise RuntimeError("The search made a plan that breaks a limit.")  # a defect must never pass for a plan
        goals = _goals(shape, figures, bounds)
        status = PlanStatus.PROVED_BEST if all(goal.is_proved for goal in goals) else PlanStatus.FEASIBLE
        answer = PlanResult(
            status=status,
            arrangement=self._framer.arrangement(shape.frame, places),
            goals=goals,
            effort=self._budget.spent,
            remarks=(self._remark,) if self._remark else (),
        )
        is_new = self._answer is None or (answer.arrangement, goals) != (self._answer.arrangement, self._answer.goals)
        self._answer = answer
        if is_new and self._progress is not None:
            self._progress(answer)

    def _open(self) -> PlanResult:
        text = (
            "Neither a plan nor a proof that there is none was found within the effort allowed. "
            "Allow one more bay or one more row, or lock some boxes where they stand well."
        )
        return PlanResult(status=PlanStatus.STOPPED, effort=self._budget.spent, remarks=(text,))


def _goals(shape: Shape, figures: Figures, bounds: Mapping[Goal, int]) -> tuple[GoalValue, ...]:
    first = {Goal.BAYS: shape.bays_bound, Goal.ROWS: shape.rows_bound}
    return tuple(
        goal_value(goal, value, first[goal] if goal in FIRST_GOALS else bounds[goal]) for goal, value in figures.items()
    )
