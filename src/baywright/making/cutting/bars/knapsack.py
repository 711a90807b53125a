"""The best filling of a bar at given prices of the pieces, for every length of bar at once.

Law: prices are whole numbers and sums are exact. With a grid of 1 a value is the truth. With a coarser grid pieces are
counted longer and bars shorter than they are, so every filling found fits and better ones may be missed; `generous`
turns that round: fillings may not fit, and no filling that fits is worth more than the value.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from baywright.making.cutting.bars.budget import Budget
from baywright.making.cutting.bars.task import Counts

Prices = NDArray[np.int64]

LOTS_A_LOOK = 50
"""After so many rows of a table the caller is asked whether to stop."""


class Knapsack:
    """The fillings with pieces of some lengths, each up to its count, of bars up to a greatest length."""

    def __init__(
        self, lengths: Sequence[int], counts: Sequence[int], longest: int, *, grid: int = 1, generous: bool = False
    ) -> None:
        self.is_exact = grid == 1 or generous
        self._grid = grid
        self._longest = longest // grid
        self.weights: Prices = np.array([length // grid if generous else -(-length // grid) for length in lengths])
        """The cells of a piece of each length."""
        self._counts = list(counts)
        # Any number of copies up to the count is a sum of some of 1, 2, 4, … and a last lot.
        self._lots: list[tuple[int, int, int]] = []
        for number, weight in enumerate(map(int, self.weights)):
            left, copies = min(self._counts[number], longest // lengths[number]), 1
            while left > 0:
                copies = min(copies, left)
                if weight * copies <= self._longest:
                    self._lots.append((number, copies, weight * copies))
                left, copies = left - copies, copies * 2

    def table(self, prices: Prices, budget: Budget) -> "Table":
        """The best values and fillings at these prices."""
        lots = [lot for lot in self._lots if prices[lot[0]] > 0]
        best = np.zeros(self._longest + 1, dtype=np.int64)
        taken = np.zeros((len(lots), self._longest + 1), dtype=np.bool_)
        for row, (number, copies, weight) in enumerate(lots):
            with_lot = best[: self._longest + 1 - weight] + copies * prices[number]
            np.greater(with_lot, best[weight:], out=taken[row, weight:])
            np.maximum(with_lot, best[weight:], out=best[weight:])
            if row % LOTS_A_LOOK == 0:
                budget.spend(LOTS_A_LOOK * (0.003 + 1e-6 * self._longest))
        return Table(self, prices, lots, best, taken)

    def room(self, length: int) -> int:
        """The cells of a bar's length."""
        return length // self._grid

    def count(self, number: int) -> int:
        """How many pieces there are of a length."""
        return self._counts[number]


class Table:
    """The best fillings at some prices."""

    def __init__(
        self,
        knapsack: Knapsack,
        prices: Prices,
        lots: list[tuple[int, int, int]],
        best: Prices,
        taken: NDArray[np.bool_],
    ) -> None:
        self._knapsack = knapsack
        self._prices = prices
        self._lots = lots
        self._best = best
        self._taken = taken

    def value(self, length: int) -> int:
        """What the best filling of a bar of this length is worth."""
        return int(self._best[self._knapsack.room(length)])

    def filling(self, length: int) -> Counts:
        """A best filling of a bar of this length."""
        return tuple(sorted(self._walk(self._knapsack.room(length)).items()))

    def worths_with(self, length: int) -> Prices:
        """For each length of piece, what a filling of a bar that holds one is worth at most; 0 where there is none."""
        rooms = self._knapsack.room(length) - self._knapsack.weights
        return np.where(rooms >= 0, self._best[np.maximum(rooms, 0)] + self._prices, 0)

    def filling_with(self, number: int, length: int) -> Counts:
        """A good filling that holds a piece of this length."""
        counts = self._walk(self._knapsack.room(length) - int(self._knapsack.weights[number]))
        counts[number] = min(self._knapsack.count(number), counts.get(number, 0) + 1)
        return tuple(sorted(counts.items()))

    def _walk(self, room: int) -> dict[int, int]:
        counts: dict[int, int] = {}
        for row in range(len(self._lots) - 1, -1, -1):
            if self._taken[row, room]:
                number, copies, weight = self._lots[row]
                counts[number] = counts.get(number, 0) + copies
                room -= weight
        return counts
