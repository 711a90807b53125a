"""New fillings where they pay: each is found by the knapsack at the prices of the linear relaxation.

A coarse grid finds most of them quickly; an exact one has the last word. Several are taken at a time: the best of each
kind of bar, and the best with one more length in it, as long as the lengths do not come too often.
"""

from collections.abc import Callable, Sequence

import numpy as np

from baywright.making.cutting.bars.budget import Budget
from baywright.making.cutting.bars.certificate import whole_prices
from baywright.making.cutting.bars.knapsack import Knapsack, Table
from baywright.making.cutting.bars.relaxation import TINY, Answer, Relaxation
from baywright.making.cutting.bars.task import Counts, Cut, Task

COARSE_CELLS = 3_000
"""Cells of the coarse grid."""
MOST_CELLS = 200_000
"""Cells of the finest grid; bars longer than that in whole units are not looked at to the last unit."""
MOST_NEW = 40
"""New fillings at a time."""
MOST_WITH_A_LENGTH = 2
"""So often a length may come in new fillings before it is no longer asked for by itself."""


def exact_knapsack(task: Task, counts: Sequence[int]) -> Knapsack:
    """A knapsack for proofs."""
    grid = -(-task.longest_bar // MOST_CELLS)
    return Knapsack(task.lengths, counts, task.longest_bar, grid=grid, generous=grid > 1)


def knapsacks(task: Task, counts: Sequence[int]) -> list[Knapsack]:
    """Knapsacks whose fillings fit, the quickest first."""
    grids = [-(-task.longest_bar // COARSE_CELLS), -(-task.longest_bar // MOST_CELLS)]
    return [Knapsack(task.lengths, counts, task.longest_bar, grid=grid) for grid in dict.fromkeys(grids)]


class Columns:
    """A relaxation that is given new fillings until none pays."""

    def __init__(self, task: Task, relaxation: Relaxation, kind_costs: Sequence[float]) -> None:
        self._task = task
        self._relaxation = relaxation
        self._kind_costs = kind_costs

    def settle(
        self,
        counts: Sequence[int],
        limits: Sequence[int],
        budget: Budget,
        enough: Callable[[Answer], bool],
    ) -> Answer:
        """Add fillings of at most `counts` pieces until none pays, or the answer is good enough."""
        sacks = knapsacks(self._task, counts)
        while True:
            answer = self._relaxation.solve(budget)
            if enough(answer):
                return answer
            while not self._add_new(answer, sacks[0], limits, budget):
                sacks.pop(0)
                if not sacks:
                    return answer

    def _add_new(self, answer: Answer, sack: Knapsack, limits: Sequence[int], budget: Budget) -> int:
        table = sack.table(whole_prices(answer.prices), budget)
        open_kinds = [kind for kind, limit in enumerate(limits) if limit > 0]
        most = max(4, MOST_NEW // max(1, len(open_kinds)))
        new = 0
        for kind in open_kinds:
            hurdle = self._kind_costs[kind] + answer.rents[kind]
            for counts in self._candidates(table, self._task.kinds[kind].length, most, budget):
                worth = sum(answer.prices[number] * count for number, count in counts)
                if worth > hurdle * (1 + TINY) + TINY:
                    new += self._relaxation.add((kind, counts))
        return new

    def _candidates(self, table: Table, length: int, most: int, budget: Budget) -> list[Counts]:
        found = [table.filling(length)]
        seen = dict.fromkeys(range(len(self._task.lengths)), 0)
        for number, count in found[0]:
            seen[number] += count
        worths = table.worths_with(length)
        for number in map(int, np.argsort(-worths, kind="stable")):
            if len(found) == most or not worths[number]:
                break
            if seen[number] < MOST_WITH_A_LENGTH:
                found.append(table.filling_with(number, length))
                for other, count in found[-1]:
                    seen[other] += count
        budget.spend(0.035 * len(found))
        return [counts for counts in found if counts]


def cut_of(task: Task, kind: int, pieces: Sequence[int]) -> Cut:
    """A bar's pieces, given by their lengths, as a cut."""
    return kind, tuple((number, pieces.count(length)) for number, length in enumerate(task.lengths) if length in pieces)
