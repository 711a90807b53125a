"""Inequalities in whole numbers that every cutting keeps: what bars can hold at most against what is needed.

With any price for each length, a bar of a kind holds fillings worth at most so much (`Table.value`), so the bars
taken, each at that most, and the pieces left out, each at its price, are worth at least what all pieces are. Prices
come from the linear relaxation, are rounded to whole numbers first, and everything after that is exact.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from baywright.making.cutting.bars.budget import Budget
from baywright.making.cutting.bars.filling import greatest_sum
from baywright.making.cutting.bars.knapsack import Knapsack, Prices
from baywright.making.cutting.bars.task import Task

FINENESS = 1 << 24
"""The highest price of a piece is rounded to so many parts."""
MOST_ON_A_BAR = 4
MOST_BY_NUMBER = 30
"""Pieces of which fewer go on the shortest bar are long; at so many of their lengths they are counted."""


@dataclass(frozen=True)
class Certificate:
    """`worth` of all pieces, at most `most` on a bar of each kind, and the price of each length."""

    worth: int
    most: tuple[int, ...]
    prices: tuple[int, ...]

    def allows(self, bars: Sequence[int], short: Sequence[int]) -> bool:
        """Whether so many bars of each kind may hold all but the pieces left out, as far as this inequality can say."""
        held = sum(most * n for most, n in zip(self.most, bars, strict=True))
        return held + sum(price * n for price, n in zip(self.prices, short, strict=True)) >= self.worth


def whole_prices(prices: Sequence[float]) -> Prices:
    """Prices as whole numbers, in the same proportion."""
    scale = FINENESS / max(max(prices), 1e-12)
    return np.array([int(price * scale + 1e-6) for price in prices], dtype=np.int64)


def certificate(task: Task, knapsack: Knapsack, prices: Prices, budget: Budget) -> Certificate:
    """What these prices prove; `knapsack` is exact."""
    assert knapsack.is_exact
    table = knapsack.table(prices, budget)
    return Certificate(
        sum(int(price) * count for price, count in zip(prices, task.counts, strict=True)),
        tuple(table.value(kind.length) for kind in task.kinds),
        tuple(int(price) for price in prices),
    )


def by_length(task: Task) -> Certificate:
    """What the sum of lengths proves."""
    pieces = [length for length, count in zip(task.lengths, task.counts, strict=True) for _ in range(count)]
    most = tuple(greatest_sum(pieces, kind.length) for kind in task.kinds)
    return Certificate(sum(pieces), most, task.lengths)


def by_number(task: Task) -> list[Certificate]:
    """What the number of long pieces proves: of pieces of a length or longer, only so many go on a bar."""
    shortest = min(kind.length for kind in task.kinds)
    long = [number for number, length in enumerate(task.lengths) if length * MOST_ON_A_BAR > shortest]
    step = max(1, len(long) // MOST_BY_NUMBER)
    found = []
    for last in long[step - 1 :: step]:
        prices = tuple(int(number <= last) for number in range(len(task.lengths)))
        most = tuple(kind.length // task.lengths[last] for kind in task.kinds)
        found.append(Certificate(sum(task.counts[: last + 1]), most, prices))
    return found
