"""Every goal written down exactly for the solver, every bay told apart.

Law: a solution of the model can be read as a plan that is at least as good in every goal it speaks of, and every plan
has a solution that is as good; so a bound of the model is a bound for plans. Only counts that matter are told apart,
which keeps the model small and its relaxation close.
"""

from collections.abc import Callable, Mapping, Sequence

from baywright.model.goals import Goal
from baywright.planner.flow import Value
from baywright.planner.goals import measures
from baywright.planner.goals.counts import Counts, Linear
from baywright.planner.goals.reading import Reading
from baywright.planner.goals.task import Held, Spots, Task

MEASURES: Mapping[Goal, Callable[[Counts], Linear]] = {
    Goal.MOVES: measures.moves,
    Goal.RESCREWS: measures.rescrews,
    Goal.HANDLING: measures.cost,
    Goal.GROUPS: measures.split,
    Goal.FREE_PIECE: measures.shortfall,
}


class GoalModel:
    """The model of one task for the goals held and the goal sought."""

    def __init__(self, task: Task, held: Sequence[Held], goal: Goal) -> None:
        self.task = task
        self._counts = Counts(task, {goal, *(h.goal for h in held)})
        self.model = self._counts.model
        for h in held:
            if h.goal is Goal.FREE_PIECE:
                measures.keep_free(self._counts, h.value)
            else:
                self.model.add(MEASURES[h.goal](self._counts) <= h.value)
        self._sought = MEASURES[goal](self._counts)

    def ask_under(self, value: int) -> None:
        """Ask for the least of the goal sought, where it is less than `value`."""
        self.model.add(self._sought <= value - 1)
        self.model.minimize(self._sought)

    def spots(self, value: Value) -> Spots:
        """The plan that a solution stands for; what need not move does not."""
        return Reading(self._counts, value).spots()
