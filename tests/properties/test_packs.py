"""The cheapest packs against trying every combination."""

from decimal import Decimal
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from baywright.making.hardware.packs import Pack, cheapest_packs

sizes = st.sampled_from([0.25, 0.75, 1.0, 2.5, 5.0, 8.0, 10.0, 12.0, 25.0])
prices = st.one_of(st.none(), st.integers(0, 400).map(lambda cents: Decimal(cents) / 100))
packs = st.lists(st.builds(Pack, sizes, prices), min_size=1, max_size=4)


def _every_way(amount: float, offered: list[Pack]) -> list[tuple[tuple[object, ...], tuple[int, ...]]]:
    """Every combination that holds the amount, with what counts, best first."""
    known = any(pack.price is not None for pack in offered)
    usable = [pack.price is not None or not known for pack in offered]
    ways = []
    for counts in product(
        *(range(int(amount / p.size) + 2 if ok else 1) for p, ok in zip(offered, usable, strict=True))
    ):
        held = sum(Decimal(str(p.size)) * n for p, n in zip(offered, counts, strict=True))
        if held >= Decimal(str(amount)):
            cost = sum(((p.price or Decimal(0)) * n for p, n in zip(offered, counts, strict=True)), Decimal(0))
            key: tuple[object, ...] = (cost, held, sum(counts)) if known else (sum(counts), held)
            ways.append((key, counts))
    return sorted(ways, key=lambda way: way[0])


@given(st.sampled_from([0.0, 0.1, 1.0, 3.3, 7.0, 11.0, 19.5, 26.0, 30.0]), packs)
def test_no_combination_is_better(amount: float, offered: list[Pack]) -> None:
    found = cheapest_packs(amount, offered)
    ways = _every_way(amount, offered) if max(amount, 1) / min(p.size for p in offered) < 60 else []
    if ways:
        best = ways[0][0]
        assert found in [counts for key, counts in ways if key == best]


@given(st.integers(1, 100_000), st.integers(1, 40), st.integers(1, 40))
def test_many_packs_are_as_good_as_the_best_of_two_sizes(amount: int, first: int, second: int) -> None:
    """Two sizes of which every count of the second is tried: prices 7 and 5."""
    offered = [Pack(float(first), Decimal(7)), Pack(float(second), Decimal(5))]
    counts = cheapest_packs(float(amount), offered)
    least = min(
        7 * max(0, -(-(amount - second * n) // first)) + 5 * n for n in range(min(amount // second, first * 40) + 2)
    )
    least = min(least, 5 * -(-amount // second))
    assert first * counts[0] + second * counts[1] >= amount
    assert 7 * counts[0] + 5 * counts[1] == least


def test_equal_costs_go_to_the_smaller_waste_then_to_fewer_packs() -> None:
    offered = [Pack(100, Decimal(4)), Pack(50, Decimal(4)), Pack(25, Decimal(2)), Pack(50, Decimal(4))]
    assert cheapest_packs(50, offered) == (0, 1, 0, 0)
    assert cheapest_packs(60, offered) == (1, 0, 0, 0)


def test_without_any_price_few_packs_are_bought() -> None:
    assert cheapest_packs(230, [Pack(10), Pack(250), Pack(100)]) == (0, 1, 0)


def test_a_pack_without_a_price_is_not_taken_for_a_free_one() -> None:
    assert cheapest_packs(10, [Pack(10), Pack(4, Decimal(9))]) == (0, 3)


def test_sizes_without_a_common_measure_come_to_an_end() -> None:
    counts = cheapest_packs(25_000.0, [Pack(0.9973, Decimal("1.01")), Pack(1.0011, Decimal("1.02")), Pack(7.77)])
    assert 0.9973 * counts[0] + 1.0011 * counts[1] >= 25_000


@pytest.mark.parametrize("offered", [[], [Pack(0.0)]])
def test_packs_must_hold_something(offered: list[Pack]) -> None:
    with pytest.raises(ValueError, match="hold something"):
        cheapest_packs(1.0, offered)
