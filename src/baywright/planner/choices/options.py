"""The choice that a builder faces: every shape of the run that holds all boxes and that no other shape beats.

What is fixed for planning, the number of bays and of rows, is set free here: a fixed shape is only one of the choices.
All other limits and locks are kept. For each way to build the run (`choices.variant`) every number of bays
that lets it be lower is settled with the lowest run that holds everything (`choices.frontier`); what another
option beats is dropped (`choices.dominance`); the others get a plan each, so that their handling can be
compared.

Laws: the same document gives the same options on every machine; every option's plan was measured by
`legality.report`; planning again with its `changes` made keeps its shape.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from baywright.model.arrangement import Arrangement
from baywright.model.change import changed
from baywright.model.goals import Goal
from baywright.model.option import Option
from baywright.model.project import Project
from baywright.model.repair import FieldChange
from baywright.planner.choices.dominance import undominated
from baywright.planner.choices.frontier import Corner, corners
from baywright.planner.choices.variant import Candidate, Variant, candidates, present_variant
from baywright.planner.distribution.budget import Budget, StoppedError
from baywright.planner.distribution.problem import Problem
from baywright.planner.distribution.solving import Stop
from baywright.planner.figures import figures
from baywright.planner.framing.frame import Frame, Framer
from baywright.planner.framing.grid import read_grid
from baywright.planner.legality.locks import lock_conflicts
from baywright.planner.legality.obstacle import most_bays, most_rows, obstacles
from baywright.planner.legality.report import report
from baywright.planner.planning import plan
from baywright.workings import derive

EFFORT_A_SHAPE = 2.0
"""Effort, in the solver's deterministic units, for finding one shape."""
EFFORT_A_PLAN = 0.3
"""Effort for the plan of one option."""
MOST_PLANNED_BOXES = 300
"""With more boxes than this the options keep the first plan found: planning each would take too long."""

Progress = Callable[[tuple[Option, ...]], None]


@dataclass(frozen=True)
class Purchase:
    """What has to be bought for one shape; None where it is not known."""

    sheets: int | None = None
    cost: float | None = None


Purchases = Callable[[Project], Purchase]
"""Works out what has to be bought for a document that stands in the shape of an option."""


def options(
    project: Project,
    *,
    stop: Stop | None = None,
    progress: Progress | None = None,
    purchases: Purchases | None = None,
) -> tuple[Option, ...]:
    """The options of a project, the present shape first, then fewest bays; empty where no shape holds everything.

    `stop` is asked every few hundredths of a second and ends the search with what was found; `progress` is called with
    the options so far whenever there is another one. Sheets and cost come from `purchases`, once all shapes are known;
    without it they are not known and not weighed.
    """
    search = _Search(project, stop, progress, purchases)
    try:
        search.look()
        search.weigh()
        search.settle()
    except StoppedError:
        pass
    return search.told()


class _Search:
    """One run: the document and the options so far, the present shape first."""

    def __init__(
        self, project: Project, stop: Stop | None, progress: Progress | None, purchases: Purchases | None
    ) -> None:
        self._project = project
        self._stop = stop
        self._progress = progress
        self._purchases = purchases
        self._found: list[Option] = []
        self._bought: dict[str, tuple[int, Purchase]] = {}
        """What a shape needs, by its id, with the drawers that this was reckoned for."""
        self._frames: dict[RunShape, Frame] = {}
        self._plans: dict[tuple[Problem, tuple[tuple[int, ...], ...]], Arrangement] = {}

    def look(self) -> None:
        """Every shape, way by way."""
        if not self._project.boxes_to_place:
            return
        if (present := self._present()) is not None:
            self._add(present)
        for candidate in candidates(self._project):
            for corner, framer in self._corners(candidate):
                self._add(self._made(candidate.variant, corner, framer))

    def weigh(self) -> None:
        """What has to be bought for each shape, so that this is weighed too."""
        for number, option in enumerate(self._found if self._purchases is not None else ()):
            if self._stop is not None and self._stop():
                raise StoppedError
            self._found[number] = self._priced(option)
            self._tell()

    def _priced(self, option: Option) -> Option:
        """The option with what it needs, which is reckoned anew only where it has other drawers than before."""
        if self._purchases is None:
            return option
        drawers = len(option.arrangement.drawers)
        if self._bought.get(option.id, (-1, None))[0] != drawers:
            standing = changed(self._project, option.changes).replace(arrangement=option.arrangement)
            self._bought[option.id] = drawers, self._purchases(standing)
        bought = self._bought[option.id][1]
        return option.replace(sheets=bought.sheets, cost=bought.cost)

    def settle(self) -> None:
        """Drop what is beaten and plan what is left, so that handling is compared plan by plan."""
        self._found = list(undominated(self._project, self._found))
        if len(self._project.boxes_to_place) > MOST_PLANNED_BOXES:
            return
        for number, option in enumerate(self._found):
            if not option.is_present:
                self._found[number] = self._priced(self._planned(option))
                self._tell()

    def told(self) -> tuple[Option, ...]:
        """The options so far: the present one, then fewest bays first, and as built now before otherwise."""
        now = present_variant(self._project)

        def place(option: Option) -> tuple[float, ...]:
            front, side = option.overhang_front_mm, option.overhang_side_mm
            other = abs(front - now.overhang_front_mm), abs(side - now.overhang_side_mm)
            return not option.is_present, option.bays, option.rows, option.uprights is not now.uprights, *other

        return tuple(sorted(undominated(self._project, self._found), key=place))

    def _add(self, option: Option) -> None:
        for number, known in enumerate(self._found):
            if known.id == option.id:  # the present shape, found once more
                self._found[number] = known.replace(is_lowest=option.is_lowest)
                return
        self._found.append(option)
        self._tell()

    def _tell(self) -> None:
        if self._progress is not None:
            self._progress(self.told())

    def _corners(self, candidate: Candidate) -> Iterator[tuple[Corner, Framer]]:
        """The shapes of the run built that way; none where something stands in the way."""
        free = freed(candidate.variant.of(self._project))
        workings = derive(free)
        grid = read_grid(free, workings)
        bays, rows = most_bays(free, grid), most_rows(free, grid)
        if obstacles(free, workings, grid) or lock_conflicts(free, grid, bays, rows):
            return
        framer = Framer(free, grid)
        fewest = max(framer.fewest_bays, len(free.limits.bays), candidate.fewest_bays)
        lowest = range(framer.least_rows, rows + 1)
        for corner in corners(framer, range(fewest, bays + 1), lowest, lambda: Budget(EFFORT_A_SHAPE, self._stop)):
            yield corner, framer

    def _made(self, variant: Variant, corner: Corner, framer: Framer) -> Option:
        """The option of a shape that was found."""
        frame = corner.frame
        shape = RunShape(variant, frame.bays, frame.rows)
        self._frames[shape] = frame
        return self._measured(shape, framer.arrangement(frame, corner.places), is_lowest=corner.is_lowest)

    def _present(self) -> Option | None:
        """The shape as it stands; None where it is not a legal run with every box in it."""
        now = self._project.arrangement
        found = report(freed(self._project))
        if not now.bay_count or found.conflicts or found.unplaced:
            return None
        return self._measured(present_shape(self._project), now, is_lowest=False)

    def _planned(self, option: Option) -> Option:
        """The option with the plan that its shape would get; as it is where no plan is found in time.

        Shapes that differ in overhang or uprights alone mostly pose the very same problem, which is planned once.
        """
        variant = Variant(option.uprights, option.overhang_front_mm, option.overhang_side_mm)
        shape = RunShape(variant, option.bays, option.rows)
        frame = self._frames[shape]
        task = frame.problem, frame.indices
        if task not in self._plans:
            planned = plan(changed(self._project, shape.changes()), effort=EFFORT_A_PLAN, stop=self._stop)
            self._plans[task] = planned.arrangement or option.arrangement
        return self._measured(shape, self._plans[task], is_lowest=option.is_lowest)

    def _measured(self, shape: "RunShape", arrangement: Arrangement, *, is_lowest: bool) -> Option:
        """The option of a shape with an arrangement, which is measured before it is told."""
        changes = shape.changes()
        standing = changed(self._project, changes).replace(arrangement=arrangement)
        found, workings = report(standing), derive(standing)
        if found.conflicts or found.unplaced:
            raise RuntimeError("The search made an option that breaks a limit.")  # a defect must never pass for a plan
        return Option(
            id=shape.id,
            bays=shape.bays,
            rows=shape.rows,
            uprights=shape.variant.uprights,
            overhang_front_mm=shape.variant.overhang_front_mm,
            overhang_side_mm=shape.variant.overhang_side_mm,
            unit_height_mm=workings.value("unit_height"),
            run_length_mm=workings.value("run_length"),
            left_over_mm=workings.value("left_over_clear_width"),
            runner_length_mm=workings.value("runner_length"),
            free_rows=found.rows_free,
            arrangement=arrangement,
            handling=handling_of(standing),
            is_lowest=is_lowest,
            changes=changes,
            is_present=shape == present_shape(self._project),
        )


@dataclass(frozen=True)
class RunShape:
    """One shape of the run: a way to build it, so many bays, so many rows."""

    variant: Variant
    bays: int
    rows: int

    @property
    def id(self) -> str:
        """A name that no other shape of the same project has."""
        v = self.variant
        return f"{self.bays}-{self.rows}-{v.uprights}-{v.overhang_front_mm:g}-{v.overhang_side_mm:g}"

    def changes(self) -> tuple[FieldChange, ...]:
        """What to set in the project so that planning keeps this shape, however it was shaped before."""
        return (
            FieldChange(path="limits.bay_count", value=self.bays),
            FieldChange(path="limits.upright_rows", value=self.rows),
            *self.variant.changes(),
        )


def present_shape(project: Project) -> RunShape:
    """The shape that the run stands in."""
    now = project.arrangement
    return RunShape(present_variant(project), now.bay_count, now.upright_rows)


def freed(project: Project) -> Project:
    """The project with the numbers of bays and rows left to the planner."""
    return project.replace(limits=project.limits.replace(bay_count=None, upright_rows=None))


def handling_of(project: Project) -> float:
    """The handling cost of a document as it stands."""
    values = figures(project, project.arrangement)
    return next(goal.value for goal in values if goal.goal is Goal.HANDLING)
