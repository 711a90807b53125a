"""Where a box could go: a place, what it would change, or why not."""

from baywright.model.base import Frozen
from baywright.model.difference import Place
from baywright.model.goals import Goal
from baywright.model.plan import Conflict


class GoalChange(Frozen):
    """A goal's figure before and after; less is better, but of the largest free piece."""

    goal: Goal
    before: float
    after: float
    unit: str


class Destination(Frozen):
    """A place for a box, with the other boxes as they stand. It can go there where there are no conflicts."""

    place: Place
    changes: tuple[GoalChange, ...] = ()
    """The exact change of every goal, in the order of the goals; empty where it cannot go there."""
    conflicts: tuple[Conflict, ...] = ()
    abreast: int = 0
    behind: int = 0
    turned: bool = False
