"""The best fillings of bars at given prices, for all lengths of bar in one table."""

from itertools import product
from random import Random

import numpy as np
import pytest

from baywright.making.cutting.bars.budget import Budget
from baywright.making.cutting.bars.knapsack import Knapsack, Prices
from baywright.making.cutting.bars.task import Counts

FREE = Budget(None, lambda: False)


def case(seed: int) -> tuple[list[int], list[int], Prices, list[int]]:
    chance = Random(seed)
    lengths = sorted(chance.sample(range(3, 60), chance.randint(1, 4)), reverse=True)
    counts = [chance.randint(1, 5) for _ in lengths]
    prices = np.array([chance.randint(0, 50) for _ in lengths], dtype=np.int64)
    return lengths, counts, prices, [chance.randint(3, 150) for _ in range(3)]


def best(lengths: list[int], counts: list[int], prices: Prices, bar: int) -> int:
    return max(
        sum(int(price) * n for price, n in zip(prices, taken, strict=True))
        for taken in product(*(range(count + 1) for count in counts))
        if sum(length * n for length, n in zip(lengths, taken, strict=True)) <= bar
    )


def worth(prices: Prices, filling: Counts) -> int:
    return sum(int(prices[number]) * n for number, n in filling)


@pytest.mark.parametrize("seed", range(60))
def test_one_table_has_the_best_of_every_bar(seed: int) -> None:
    lengths, counts, prices, bars = case(seed)
    table = Knapsack(lengths, counts, max(bars)).table(prices, FREE)
    for bar in bars:
        assert table.value(bar) == best(lengths, counts, prices, bar)
        filling = table.filling(bar)
        assert worth(prices, filling) == table.value(bar)
        assert sum(lengths[number] * n for number, n in filling) <= bar
        assert all(n <= counts[number] for number, n in filling)


@pytest.mark.parametrize("seed", range(60))
def test_a_coarse_grid_gives_fillings_that_fit_and_a_generous_one_a_value_that_holds(seed: int) -> None:
    lengths, counts, prices, bars = case(seed)
    coarse = Knapsack(lengths, counts, max(bars), grid=4)
    generous = Knapsack(lengths, counts, max(bars), grid=4, generous=True)
    assert generous.is_exact
    assert not coarse.is_exact
    for bar in bars:
        filling = coarse.table(prices, FREE).filling(bar)
        assert sum(lengths[number] * n for number, n in filling) <= bar
        assert generous.table(prices, FREE).value(bar) >= best(lengths, counts, prices, bar)


@pytest.mark.parametrize("seed", range(60))
def test_fillings_with_a_piece_hold_it_and_fit(seed: int) -> None:
    lengths, counts, prices, bars = case(seed)
    table = Knapsack(lengths, counts, max(bars)).table(prices, FREE)
    for bar in bars:
        for number, most in enumerate(table.worths_with(bar)):
            if lengths[number] > bar:
                assert most == 0
                continue
            filling = table.filling_with(number, bar)
            assert number in dict(filling)
            assert sum(lengths[other] * n for other, n in filling) <= bar
            assert all(n <= counts[other] for other, n in filling)
            assert worth(prices, filling) <= most
