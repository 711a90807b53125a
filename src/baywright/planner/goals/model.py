"""Every goal written down exactly for the solver, every bay told apart.

Law: a solution of the model can be read as a plan that is at least as good in every goal it speaks of, and every plan
has a solution that is as good; so a bound of the model is a bound for plans. Only counts that matter are told apart,
which keeps the model small and its relaxation close.
"""

from collections.abc import Callable, Mapping, Sequence

from baywright.model.goals import Goal
from baywright.planner.distribution.flow import Value
from baywright.planner.figures import AGAINST_STANDING
from baywright.planner.goals import measures
from baywright.planner.goals.counts import Counts, Linear
from baywright.planner.goals.reading import Reading
from baywright.planner.goals.task import Held, Spots, Task

MEASURES: Mapping[Goal, Callable[[Counts], Linear]] = {
    Goal.MOVES: measures.moves,
    Goal.RESCREWS: measures.rescrews,
    Goal.HANDLING: measures.cost,
    Goal.GROUPS: measures.split,
}


class GoalModel:
    """The model of one task for the goals held and the goal sought."""

    def __init__(self, task: Task, held: Sequence[Held], goal: Goal) -> None:
        self.task = task
        self._counts = Counts(task, {goal, *(h.goal for h in held)})
        self.model = self._counts.model
        self._held: list[tuple[Linear, int]] = []
        for h in held:
            if h.goal is Goal.FREE_PIECE:
                measures.keep_free(self._counts, h.value)
                continue
            measure = MEASURES[h.goal](self._counts)
            self.model.add(measure <= h.value)
            if h.goal in AGAINST_STANDING:
                self._held.append((measure, h.value))
        self._sought = 0 if goal is Goal.FREE_PIECE else MEASURES[goal](self._counts)
        self._offset = 0

    def ask_under(self, value: int, bound: int = 0) -> None:
        """Ask for the least of the goal sought, where it is less than `value`; less than `bound` it is never.

        Changes that are held weigh in what is minimised, too, each more than all that comes after it. They cannot
        become fewer; but so the solver sees at once which boxes it is no use to move (measured: proofs in a third of
        the effort).
        """
        self.model.add(self._sought <= value - 1)
        self.model.add(self._sought >= bound)
        self._minimise(value + 1)

    def ask_free(self, rows: int) -> None:
        """Ask for a free piece of so many rows, and nothing else."""
        measures.keep_free(self._counts, rows)
        self._minimise(1)

    def _minimise(self, weight: int) -> None:
        objective = self._sought
        for measure, least in reversed(self._held):
            objective = objective + weight * measure
            self._offset += weight * least
            weight *= least + 1
        self.model.minimize(objective)

    def bound(self, bound: int) -> int:
        """A bound of the goal sought from the solver's bound of what it minimised."""
        return max(0, bound - self._offset)

    def spots(self, value: Value) -> Spots:
        """The plan that a solution stands for; what need not move does not."""
        return Reading(self._counts, value).spots()
