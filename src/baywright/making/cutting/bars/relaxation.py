"""The linear relaxation over fillings: how often each filling is cut, fractions allowed.

Rows: of every length as many pieces as are needed, less what is left out; of every kind of bar no more than there are.
What is minimised can be changed (`aim`), and the needs and limits too (`ask`), without starting over. Numbers here are
the solver's, with rounding; nothing is called proved from them (see `certificate`).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from baywright.making.cutting.bars.budget import Budget
from baywright.making.cutting.bars.task import Cut, Task

TINY = 1e-7


class NoAnswerError(Exception):
    """The solver lost its way in rounding; a new relaxation has to be begun."""


@dataclass(frozen=True)
class Answer:
    """A solution: what was minimised, the price of a piece of every length and of the room on every kind of bar."""

    value: float
    prices: list[float]
    rents: list[float]
    """What one bar more of a kind would save."""


class Relaxation:
    """The fillings known so far, and a solver that goes on where it was."""

    def __init__(self, task: Task) -> None:
        from ortools.linear_solver import pywraplp  # late: it takes longer to import than most questions to answer

        self.cuts: list[Cut] = []
        self._task = task
        self._known: set[Cut] = set()
        self._solver: Any = pywraplp.Solver.CreateSolver("GLOP")
        infinity = self._solver.infinity()
        self._needs = [self._solver.Constraint(count, infinity) for count in task.counts]
        self._limits = [self._solver.Constraint(-infinity, kind.available) for kind in task.kinds]
        self._often: list[Any] = []
        self._short = [self._solver.NumVar(0, infinity, "") for _ in task.lengths]
        for row, short in zip(self._needs, self._short, strict=True):
            row.SetCoefficient(short, 1)
        self._objective = self._solver.Objective()
        self._objective.SetMinimization()
        self._kind_costs = [0.0] * len(task.kinds)
        self._iterations = 0

    def add(self, cut: Cut) -> bool:
        """Make a filling known; False where it was."""
        if cut in self._known:
            return False
        self._known.add(cut)
        kind, counts = cut
        often = self._solver.NumVar(0, self._solver.infinity(), "")
        self._objective.SetCoefficient(often, self._kind_costs[kind])
        self._limits[kind].SetCoefficient(often, 1)
        for number, count in counts:
            self._needs[number].SetCoefficient(often, count)
        self.cuts.append(cut)
        self._often.append(often)
        return True

    def aim(self, kind_costs: Sequence[float], short_costs: Sequence[float]) -> None:
        """Minimise from now on what so much for a bar of each kind, and for a piece left out, makes together.

        The greatest number should be about 1, as the solver rounds.
        """
        self._kind_costs = list(kind_costs)
        for (kind, _), often in zip(self.cuts, self._often, strict=True):
            self._objective.SetCoefficient(often, self._kind_costs[kind])
        for short, cost in zip(self._short, short_costs, strict=True):
            self._objective.SetCoefficient(short, cost)

    def ask(self, needs: Sequence[int], limits: Sequence[int]) -> None:
        """Ask for so many pieces and at most so many bars from now on; no filling is used that holds more pieces."""
        infinity = self._solver.infinity()
        for row, need in zip(self._needs, needs, strict=True):
            row.SetBounds(need, infinity)
        for row, limit in zip(self._limits, limits, strict=True):
            row.SetBounds(-infinity, limit)
        for (_, counts), often in zip(self.cuts, self._often, strict=True):
            often.SetUb(0.0 if any(count > needs[number] for number, count in counts) else infinity)

    def solve(self, budget: Budget) -> Answer:
        """The least with the fillings known so far; raises `NoAnswerError` where the solver finds none."""
        before = self._iterations
        if self._solver.Solve() != self._solver.OPTIMAL:
            raise NoAnswerError
        self._iterations = self._solver.iterations()
        done = self._iterations if self._iterations < before else self._iterations - before
        budget.spend(0.6 + 1.6e-3 * len(self.cuts) + 1.3e-4 * max(0, done) * len(self._needs))
        return Answer(
            self._objective.Value(),
            [max(0.0, row.dual_value()) for row in self._needs],
            [max(0.0, -row.dual_value()) for row in self._limits],
        )

    def amounts(self) -> list[tuple[float, Cut]]:
        """How often each filling is cut in the last solution, where it is cut at all."""
        amounts = ((often.solution_value(), cut) for often, cut in zip(self._often, self.cuts, strict=True))
        return [(amount, cut) for amount, cut in amounts if amount > TINY]

    def short(self) -> float:
        """How many pieces are left out in the last solution."""
        return float(sum(short.solution_value() for short in self._short))
