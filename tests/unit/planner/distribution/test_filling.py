"""Filling bay after bay: keeps rows and drawers where taking the large ones first does not."""

from baywright.planner.distribution.filling import fill
from baywright.planner.distribution.greedy import greedy
from baywright.planner.distribution.problem import Item, Kind, Problem, Shape, Span, is_kept


def stacks(kind: Kind, *sizes: int) -> Problem:
    different = sorted(set(sizes))
    shapes = tuple(Shape((Span(s, 0, kind.rows - s),)) for s in different)
    return Problem((kind,), shapes, tuple(Item(f"item-{n}", different.index(s)) for n, s in enumerate(sizes)))


def test_small_items_are_spread_where_drawers_are_few() -> None:
    problem = stacks(Kind(6, 20, drawers=4), *[8] * 6, *[6] * 6, *[3] * 12)
    assert greedy(problem) is None, "the simple way finds it too, so that this shows nothing"
    places = fill(problem)
    assert places is not None
    assert is_kept(problem, places)


def test_what_it_cannot_do_it_leaves() -> None:
    assert fill(stacks(Kind(1, 10), 6, 5)) is None
    assert fill(stacks(Kind(1, 10, blocked=((0, 2),)), 3)) is None
    assert fill(stacks(Kind(0, 10), 3)) is None
    assert fill(stacks(Kind(1, 10))) == ()


def test_a_bay_starts_over_the_rows_that_no_drawer_can_use() -> None:
    problem = Problem((Kind(1, 10),), (Shape((Span(4, 1, 6),)),), (Item("a", 0), Item("b", 0)))
    places = fill(problem)
    assert places is not None
    assert is_kept(problem, places)
    assert sorted(place.row for place in places) == [1, 5]
