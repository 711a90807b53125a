"""Bars are cut at the least cost there is, and the bound is never above it: held against trying everything."""

import random
from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from baywright.making.cutting.bars import Bar, BarPacking, Length, cut_bars
from tests.oracle.sticks import Sawn, Stick, check_sticks, least_cost

EFFORT = 400.0


def answered(
    pieces: list[int], sticks: list[Stick], kerf: int, effort: float = EFFORT
) -> tuple[BarPacking, Counter[int]]:
    """The engine's answer, and what is missing of the pieces, both checked in true measures."""
    wanted = Counter(pieces)
    packing = cut_bars(
        [Length(length, length + kerf, count) for length, count in wanted.items()],
        [Bar(n, stick.length + kerf, stick.cost, stick.available) for n, stick in enumerate(sticks)],
        effort=effort,
    )
    sawn: list[Sawn] = [
        (pattern.bar, [length for length, count in pattern.counts for _ in range(count)])
        for pattern in packing.patterns
        for _ in range(pattern.times)
    ]
    missing = check_sticks(wanted, sticks, sawn, kerf)
    assert missing == Counter(dict(packing.unplaced))
    assert packing.cost == sum(sticks[kind].cost for kind, _ in sawn)
    assert packing.bound <= packing.cost or missing
    return packing, missing


def tiny(seed: int) -> tuple[list[int], list[Stick], int]:
    """A case small enough to try everything, of all sorts: dear and free bars, offcuts, few of a kind."""
    chance = random.Random(seed)
    kerf = chance.choice((0, 0, 1, 3))
    most = chance.choice((10, 30, 100))
    sticks = [
        Stick(
            chance.randint(most // 2, 2 * most),
            chance.choice((0, 1, chance.randint(0, 9), chance.randint(50, 99))),
            chance.choice((None, None, 1, 1, 2, 3)),
        )
        for _ in range(chance.randint(1, 4))
    ]
    longest = max(stick.length for stick in sticks)
    pieces = [chance.randint(1, min(most, longest)) for _ in range(chance.randint(1, 7))]
    if chance.random() < 0.5:
        pieces += [pieces[0]] * chance.randint(1, 2)
    return pieces, sticks, kerf


@pytest.mark.parametrize("hundred", range(4))
def test_tiny_cases_cost_what_trying_everything_finds(hundred: int) -> None:
    for seed in range(100 * hundred, 100 * hundred + 100):
        pieces, sticks, kerf = tiny(seed)
        truth = least_cost(pieces, sticks, kerf)
        packing, missing = answered(pieces, sticks, kerf)
        if truth is None:
            assert missing, seed
            assert not packing.proved, seed
        else:
            assert not missing, seed
            assert packing.bound <= truth, seed
            assert (packing.cost, packing.bound) == (truth, truth), seed


@given(
    pieces=st.lists(st.integers(1, 90), min_size=1, max_size=40),
    sticks=st.lists(
        st.builds(
            Stick,
            st.integers(40, 300),
            st.integers(0, 20),
            st.one_of(st.none(), st.integers(0, 4)),
        ),
        min_size=1,
        max_size=5,
    ),
    kerf=st.integers(0, 4),
)
def test_whatever_is_asked_the_cuts_can_be_made(pieces: list[int], sticks: list[Stick], kerf: int) -> None:
    packing, missing = answered(pieces, sticks, kerf, effort=60.0)
    longest_endless = max((stick.length for stick in sticks if stick.available is None), default=0)
    assert all(length > longest_endless for length in missing)
    longest = max((stick.length for stick in sticks if stick.available != 0), default=0)
    assert dict(packing.unplaceable) == {length: n for length, n in Counter(pieces).items() if length > longest}
