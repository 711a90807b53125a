"""What the planner answers: a plan, how good it is proved to be, or which limits stand against it."""

from enum import StrEnum

from baywright.model.arrangement import Arrangement
from baywright.model.base import Frozen
from baywright.model.goals import MORE_IS_BETTER, Goal
from baywright.model.repair import Repair

__all__ = ["ArrangementReport", "Conflict", "Goal", "GoalValue", "LimitKind", "PlanResult", "PlanStatus"]


class PlanStatus(StrEnum):
    """How an answer of the planner is meant."""

    PROVED_BEST = "proved_best"
    """A plan, and a proof that no plan is better by the goals in their order."""
    FEASIBLE = "feasible"
    """A plan that keeps every limit; how much it could be beaten by at most stands at the goals."""
    IMPOSSIBLE = "impossible"
    """No plan keeps every limit; the conflicts say why."""
    STOPPED = "stopped"
    """Stopped before a plan was found."""
    EMPTY = "empty"
    """There is nothing to plan: no boxes."""


class GoalValue(Frozen):
    """How well a plan meets one goal. Less is better, but of the largest free piece; `bound` is a proved bound for any
    plan that is no worse in the goals before it. The goal is proved when value and bound are equal.
    """

    goal: Goal
    value: float
    bound: float
    unit: str

    @property
    def is_proved(self) -> bool:
        """Whether no plan can be better in this goal."""
        return self.gap <= 1e-6

    @property
    def gap(self) -> float:
        """By how much, in the goal's unit, it could be beaten at most; never under 0."""
        could_be = self.bound - self.value if self.goal in MORE_IS_BETTER else self.value - self.bound
        return max(0.0, could_be)


class LimitKind(StrEnum):
    """Which kind of limit stands in the way."""

    HEIGHT = "height"
    DRAWERS_PER_BAY = "drawers_per_bay"
    WALL_LENGTH = "wall_length"
    DEPTH = "depth"
    BOX_WIDTH = "box_width"
    BOX_HEIGHT = "box_height"
    LOCK = "lock"
    LOAD = "load"
    BAY_COUNT = "bay_count"
    WORKTOP = "worktop"
    SPARE_ROWS = "spare_rows"
    ZONE = "zone"
    BUILT = "built"
    SHELF_BAY = "shelf_bay"
    CONSTRUCTION = "construction"
    PLACE = "place"


class Conflict(Frozen):
    """Why something cannot be: which limit binds, in the owner's words and numbers, and by how much.

    `needed` and `available` are in `unit` (rows, drawers, mm, kg) and make the inequality needed > available;
    both None where the clash is not one of amounts. `mend` says what to do about it.
    """

    kind: LimitKind
    message: str
    mend: str = ""
    box_ids: tuple[str, ...] = ()
    needed: float | None = None
    available: float | None = None
    unit: str = ""
    fields: tuple[str, ...] = ()
    """Where a request is impossible: paths of the fields (as in `FieldChange`) whose limits clash. Without any one of
    them there would be no clash.
    """


class PlanResult(Frozen):
    """The planner's answer to one project document."""

    status: PlanStatus
    arrangement: Arrangement | None = None
    goals: tuple[GoalValue, ...] = ()
    conflicts: tuple[Conflict, ...] = ()
    """Where it is impossible: each is one clash of as few limits as make it impossible; several where each makes it
    impossible for itself.
    """
    repairs: tuple[Repair, ...] = ()
    """Single changes that make it possible, smallest first; each was solved before it is offered."""
    effort: float = 0.0
    """Deterministic effort spent by the solver (not seconds: the same on every machine)."""
    remarks: tuple[str, ...] = ()
    """What the answer rests on, in sentences for people: assumed masses, questions left open."""


class ArrangementReport(Frozen):
    """What can be said of an arrangement as it stands, planned or dragged."""

    conflicts: tuple[Conflict, ...] = ()
    unplaced: tuple[str, ...] = ()
    """Ids of boxes without a drawer."""
    rows_total: int = 0
    """Usable rows of all bays together."""
    rows_used: int = 0
    rows_free: int = 0
    drawers: int = 0
