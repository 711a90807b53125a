"""What is proved about bars is true of every cutting: the cheapest one, found by trying everything, keeps it."""

from collections import Counter
from random import Random

import numpy as np
import pytest

from baywright.making.cutting.bars import Bar, Length
from baywright.making.cutting.bars.budget import Budget
from baywright.making.cutting.bars.certificate import by_length, by_number, certificate, whole_prices
from baywright.making.cutting.bars.columns import exact_knapsack
from baywright.making.cutting.bars.fitting import Fitting, UndecidedError
from baywright.making.cutting.bars.task import Reading
from tests.oracle.sticks import Stick, least_cost

FREE = Budget(None, lambda: False)


def invented(seed: int) -> tuple[list[int], list[Stick]]:
    chance = Random(seed)
    sticks = [Stick(chance.randint(20, 60), 1) for _ in range(chance.randint(1, 3))]
    pieces = [chance.randint(4, max(stick.length for stick in sticks)) for _ in range(chance.randint(2, 7))]
    return pieces, sticks


def reading(pieces: list[int], sticks: list[Stick]) -> Reading:
    return Reading(
        [Length(length, length, count) for length, count in Counter(pieces).items()],
        [Bar(n, stick.length, stick.cost, stick.available) for n, stick in enumerate(sticks)],
    )


@pytest.mark.parametrize("seed", range(60))
def test_no_certificate_forbids_bars_that_do(seed: int) -> None:
    pieces, sticks = invented(seed)
    task = reading(pieces, sticks).task
    chance = Random(seed)
    prices = whole_prices([chance.random() for _ in task.lengths])
    found = [by_length(task), *by_number(task), certificate(task, exact_knapsack(task, task.counts), prices, FREE)]
    nothing_short = (0,) * len(task.lengths)
    for kind in range(len(task.kinds)):
        only = Stick(task.kinds[kind].length, 1)
        scaled = [length for length, n in zip(task.lengths, task.counts, strict=True) for _ in range(n)]
        needed = least_cost(scaled, [only])
        if needed is None:
            continue
        bars = tuple(needed if each == kind else 0 for each in range(len(task.kinds)))
        assert all(each.allows(bars, nothing_short) for each in found)


def test_prices_keep_their_proportion_in_whole_numbers() -> None:
    prices = whole_prices([0.5, 0.25, 0.0])
    assert prices.dtype == np.int64
    assert prices[0] == 2 * prices[1]
    assert prices[2] == 0


@pytest.mark.parametrize("seed", range(60))
def test_trying_everything_says_what_is_true(seed: int) -> None:
    pieces, sticks = invented(seed)
    task = reading(pieces, sticks).task
    scaled = [length for length, n in zip(task.lengths, task.counts, strict=True) for _ in range(n)]
    chance = Random(seed)
    bars = [chance.randint(0, 3) for _ in task.kinds]
    some = [Stick(kind.length, 0, n) for kind, n in zip(task.kinds, bars, strict=True)]
    cuts = Fitting(task, 1e6, FREE).cuts(task.counts, bars)
    assert (cuts is not None) == (least_cost(scaled, some) is not None)
    if cuts is not None:
        assert not any(task.left_over(cuts))
        assert all(task.filled(counts) <= task.kinds[kind].length for kind, counts in cuts)
        assert all(sum(kind == each for each, _ in cuts) <= n for kind, n in enumerate(bars))


def test_trying_everything_gives_up_in_time() -> None:
    pieces, sticks = [*range(31, 61)], [Stick(100, 1)]
    task = reading(pieces, sticks).task
    with pytest.raises(UndecidedError):
        Fitting(task, 0.05, FREE).cuts(task.counts, (14,))
