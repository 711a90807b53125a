"""Bars are cut at least cost, with the longest rest in one piece, the same on every run, and whenever it is stopped."""

from collections import Counter
from random import Random

import pytest

from baywright.making.cutting.bars import Bar, BarPacking, Length, Pattern, cut_bars

EFFORT = 500.0


def lengths(*given: int) -> list[Length]:
    return [Length(length, length, count) for length, count in Counter(given).items()]


def rests(packing: BarPacking, bars: list[Bar]) -> list[int]:
    size = {bar.id: bar.length for bar in bars}
    return sorted(
        size[pattern.bar] - sum(length * n for length, n in pattern.counts)
        for pattern in packing.patterns
        for _ in range(pattern.times)
    )


def workshop(seed: int, pieces: int = 90) -> tuple[list[Length], list[Bar]]:
    """Strips of a workshop with a kerf of 3: three lengths sold, and some offcuts owned."""
    chance = Random(seed)
    bars = [Bar(0, 6003, 2400), Bar(1, 4003, 1700), Bar(2, 3003, 1350)]
    bars += [Bar(10 + n, chance.randint(503, 2803), chance.randint(0, 100), 1) for n in range(6)]
    return [Length(n, chance.randint(203, 2503)) for n in range(pieces)], bars


def test_equal_bars_are_told_once_with_their_number() -> None:
    packing = cut_bars(lengths(*[30] * 9), [Bar(7, 100)], effort=EFFORT)
    assert packing == BarPacking((Pattern(7, ((30, 3),), 3),), (), 3, 3)
    assert packing.proved


def test_what_is_left_stays_in_one_piece() -> None:
    bars = [Bar(0, 100)]
    assert rests(cut_bars(lengths(40, 40, 30, 30), bars, effort=EFFORT), bars) == [0, 60]
    assert rests(cut_bars(lengths(50, 45, 40, 25, 20), bars, effort=EFFORT), bars) == [5, 15]


def test_an_offcut_owned_is_used_where_that_saves_a_bar() -> None:
    bars = [Bar(0, 100, 10), Bar(1, 45, 0, 1)]
    assert cut_bars(lengths(60, 40, 40), bars, effort=EFFORT).cost == 10
    assert [p.bar for p in cut_bars(lengths(60, 40), bars, effort=EFFORT).patterns] == [0]


def test_at_equal_cost_the_bars_are_as_short_as_can_be() -> None:
    bars = [Bar(0, 60, 60), Bar(1, 35, 30)]
    packing = cut_bars(lengths(30, 30, 30), bars, effort=EFFORT)
    assert (packing.cost, packing.bound) == (90, 90)
    assert {p.bar: p.times for p in packing.patterns} == {0: 1, 1: 1}


def test_bars_that_cost_nothing_are_not_wasted() -> None:
    assert sum(p.times for p in cut_bars(lengths(*[30] * 7), [Bar(0, 100, 0)], effort=EFFORT).patterns) == 3
    bars = [Bar(0, 100, 0, 5), Bar(1, 65, 0, 5)]
    packing = cut_bars(lengths(61, 59, 31, 29), bars, effort=EFFORT)
    assert [p.bar for p in packing.patterns for _ in range(p.times)] == [1, 1, 1]


def test_pieces_of_one_length_keep_their_ids() -> None:
    packing = cut_bars([Length(1, 40, 2), Length(2, 40, 1), Length(3, 20)], [Bar(0, 100)], effort=EFFORT)
    cut = Counter[int]()
    for pattern in packing.patterns:
        for id_, count in pattern.counts:
            cut[id_] += count * pattern.times
    assert cut == {1: 2, 2: 1, 3: 1}


def test_a_piece_longer_than_every_bar_is_told_and_the_rest_is_cut() -> None:
    packing = cut_bars(lengths(120, 50, 50), [Bar(0, 100)], effort=EFFORT)
    assert packing.unplaced == packing.unplaceable == ((120, 1),)
    assert (packing.cost, packing.proved) == (1, True)


def test_where_the_stock_is_not_enough_as_much_as_can_be_is_cut() -> None:
    packing = cut_bars(lengths(70, 60, 35), [Bar(0, 100, 5, 1), Bar(1, 40, 5, 1)], effort=EFFORT)
    assert packing.unplaced == ((60, 1),)
    assert packing.unplaceable == ()
    assert not packing.proved
    assert packing.bound <= packing.cost == 10


@pytest.mark.parametrize("bars", [[], [Bar(0, 100, 1, 0)], [Bar(0, 10)]])
def test_without_a_bar_nothing_is_cut(bars: list[Bar]) -> None:
    packing = cut_bars(lengths(30, 20), bars, effort=EFFORT)
    assert packing.unplaceable == packing.unplaced == ((30, 1), (20, 1))
    assert packing.patterns == ()


def test_nothing_to_cut_costs_nothing_and_is_proved() -> None:
    assert cut_bars([], [Bar(0, 100)], effort=EFFORT) == BarPacking((), (), 0, 0)
    assert cut_bars([Length(0, 30, 0)], [Bar(0, 100)], effort=EFFORT).proved


@pytest.mark.parametrize(
    ("pieces", "bars"),
    [
        ([Length(0, 0)], [Bar(0, 10)]),
        ([Length(0, 5, -1)], [Bar(0, 10)]),
        ([Length(0, 5), Length(0, 6)], [Bar(0, 10)]),
        ([Length(0, 5)], [Bar(0, 10), Bar(0, 20)]),
        ([Length(0, 5)], [Bar(0, 0)]),
        ([Length(0, 5)], [Bar(0, 10, -1)]),
        ([Length(0, 5)], [Bar(0, 10, 1, -1)]),
    ],
)
def test_a_question_without_sense_is_refused(pieces: list[Length], bars: list[Bar]) -> None:
    with pytest.raises(ValueError, match=r"needs|one id"):
        cut_bars(pieces, bars, effort=EFFORT)


@pytest.mark.parametrize("effort", [1.0, 100.0])
def test_the_same_effort_gives_the_same_answer(effort: float) -> None:
    pieces, bars = workshop(3)
    assert cut_bars(pieces, bars, effort=effort) == cut_bars(pieces, bars, effort=effort)


def test_better_answers_are_told_the_first_at_once() -> None:
    pieces, bars = workshop(4)
    told: list[tuple[int, BarPacking]] = []
    asked = 0

    def stop() -> bool:
        nonlocal asked
        asked += 1
        return False

    last = cut_bars(pieces, bars, effort=EFFORT, stop=stop, found=lambda packing: told.append((asked, packing)))
    costs = [packing.cost for _, packing in told]
    assert told[0][0] == 0, "the first is told before anybody could have stopped"
    assert costs == sorted(costs, reverse=True)
    assert len(set(costs)) > 1
    assert told[-1][1].patterns == last.patterns
    assert all(packing.bound <= last.cost for _, packing in told)


@pytest.mark.parametrize("after", [0, 1, 10, 100, 300])
def test_stopped_at_any_time_there_is_a_whole_answer(after: int) -> None:
    pieces, bars = workshop(5)
    asked = 0

    def stop() -> bool:
        nonlocal asked
        asked += 1
        return asked > after

    packing = cut_bars(pieces, bars, effort=None, stop=stop)
    assert not packing.unplaced
    assert packing.bound <= packing.cost
    assert asked <= after + 3, "asked again and again after the answer was yes"


def test_a_workshop_with_offcuts_is_proved() -> None:
    packing = cut_bars(*workshop(6), effort=4_000)
    assert packing.proved


def test_many_pieces_of_two_hundred_lengths_are_proved() -> None:
    chance = Random(1)
    pieces = [Length(n, length, chance.randint(1, 30)) for n, length in enumerate(chance.sample(range(600, 3500), 200))]
    packing = cut_bars(pieces, [Bar(0, 10_000)], effort=4_000)
    assert packing.proved
