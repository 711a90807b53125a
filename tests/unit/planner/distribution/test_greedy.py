"""The first try: what it finds keeps every rule, and it says so where it finds nothing."""

import pytest

from baywright.planner.distribution.budget import StoppedError
from baywright.planner.distribution.greedy import greedy
from baywright.planner.distribution.problem import Item, Kind, Problem, Shape, Span, is_kept


def stacks(kind: Kind, *sizes: int, extra: int = 0) -> Problem:
    different = sorted(set(sizes))
    shapes = tuple(Shape((Span(s, 0, min(kind.rows - 1, kind.rows - s + extra)),)) for s in different)
    return Problem((kind,), shapes, tuple(Item(f"item-{n}", different.index(s)) for n, s in enumerate(sizes)))


@pytest.mark.parametrize(
    "problem",
    [
        stacks(Kind(3, 10), 5, 5, 6, 4, 3, 7),
        stacks(Kind(2, 10), 5, 6, 5, 6, extra=1),
        stacks(Kind(1, 10, blocked=((3, 5),)), 3, 5),
        stacks(Kind(2, 10, drawers=2), 2, 2, 8, 8),
        stacks(Kind(2, 10, drawers=0), *()),
    ],
)
def test_what_it_finds_keeps_every_rule(problem: Problem) -> None:
    places = greedy(problem)
    assert places is not None
    assert is_kept(problem, places)


def test_it_opens_no_more_bays_than_it_fills() -> None:
    places = greedy(stacks(Kind(50, 10), *[5] * 12))
    assert places is not None
    assert len({place.bay for place in places}) == 6


def test_where_it_finds_nothing_it_says_so() -> None:
    assert greedy(stacks(Kind(1, 10), 6, 5)) is None


def test_it_can_be_stopped() -> None:
    def stop() -> None:
        raise StoppedError

    with pytest.raises(StoppedError):
        greedy(stacks(Kind(1, 10), 6), stop)
