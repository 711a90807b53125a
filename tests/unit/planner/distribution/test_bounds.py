"""Counting arguments: each finds its shortage with the right numbers, and none where there is a plan."""

from baywright.planner.distribution.bounds import Lack, Shortage, rows_available, rows_needed, shortage
from baywright.planner.distribution.problem import Item, Kind, Problem, Shape, Span, Team


def bays(kind: Kind, *sizes: int, extra: int = 0, lowest: int = 0) -> Problem:
    """Items of so many rows each; with `extra` every one could reach so far beyond the last row at the top."""
    different = sorted(set(sizes))
    shapes = tuple(Shape((Span(size, lowest, min(kind.rows - 1, kind.rows - size + extra)),)) for size in different)
    return Problem((kind,), shapes, tuple(Item(f"item-{n}", different.index(s)) for n, s in enumerate(sizes)))


def test_rows_over_rows() -> None:
    found = shortage(bays(Kind(2, 10), 4, 4, 4, 4, 3, 3))
    assert found == Shortage(Lack.ROWS, 22, 20, (0, 1, 2, 3, 4, 5))


def test_rows_under_the_lowest_drawer_are_not_there() -> None:
    found = shortage(bays(Kind(2, 10), 5, 5, 5, 5, lowest=1))
    assert found is not None
    assert (found.lack, found.needed, found.available) == (Lack.ROWS, 20, 18)


def test_blocked_rows_are_not_there() -> None:
    found = shortage(bays(Kind(1, 10, blocked=((4, 7),)), 4, 4))
    assert found is not None
    assert (found.needed, found.available) == (8, 7)


def test_top_drawers_that_reach_further_gain_a_row_a_bay_and_no_more() -> None:
    problem = bays(Kind(2, 10), 5, 5, 5, 6, extra=1)
    assert rows_available(problem, 0, (0, 1, 2, 3)) == (22, 0)
    mixed = Problem((Kind(2, 10),), (Shape((Span(5, 0, 5),)), Shape((Span(5, 0, 6),))), (Item("a", 0), Item("b", 1)))
    assert rows_available(mixed, 0, (0, 1)) == (20, 1)


def test_drawers_over_drawers() -> None:
    found = shortage(bays(Kind(2, 20, drawers=2), 1, 1, 1, 1, 1))
    assert found is not None
    assert (found.lack, found.needed, found.available) == (Lack.DRAWERS, 5, 4)


def test_boxes_of_which_no_two_share_a_bay() -> None:
    found = shortage(bays(Kind(4, 10), 6, 6, 6, 7, 7, 1))
    assert found is not None
    assert (found.lack, found.needed, found.available) == (Lack.BAYS, 5, 4)
    assert found.items == (0, 1, 2, 3, 4)


def test_an_item_without_a_place_comes_first() -> None:
    found = shortage(bays(Kind(3, 10, blocked=((2, 10),)), 3, 1))
    assert found is not None
    assert (found.lack, found.items) == (Lack.PLACE, (0,))


def test_items_held_to_one_kind_are_counted_against_that_kind() -> None:
    span = Span(4, 0, 6)
    shapes = (Shape((span, None)), Shape((span, span)))
    problem = Problem((Kind(1, 10), Kind(5, 10)), shapes, tuple(Item(f"item-{n}", int(n > 2)) for n in range(5)))
    found = shortage(problem)
    assert found is not None
    assert (found.kind, found.needed, found.available, found.items) == (0, 12, 10, (0, 1, 2))


def test_what_fits_exactly_is_short_of_nothing() -> None:
    assert shortage(bays(Kind(2, 10, drawers=2), 5, 5, 5, 5)) is None
    assert shortage(bays(Kind(1, 10))) is None


def test_boxes_that_may_share_a_drawer_count_with_their_share() -> None:
    span = Span(4, 0, 6)
    items = tuple(Item(f"item-{n}", 0) for n in range(5))
    problem = Problem((Kind(1, 10, drawers=2),), (Shape((span,)),), items, (Team((0, 0), (span,)),))
    found = shortage(problem)
    assert found == Shortage(Lack.DRAWERS, 3, 2, (0, 1, 2, 3, 4))
    assert rows_needed(problem, (0, 1, 2, 3, 4)) == 10


def test_two_that_may_share_a_drawer_need_no_bay_each() -> None:
    span = Span(8, 0, 2)
    items = (Item("a", 0), Item("b", 0))
    assert shortage(Problem((Kind(1, 10),), (Shape((span,)),), items, (Team((0, 0), (span,)),))) is None


def test_spare_rows_over_what_is_left() -> None:
    def with_spare(spare: int) -> Problem:
        items = tuple(Item(f"item-{n}", 0) for n in range(3))
        return Problem((Kind(2, 10, usable=(0, 9)),), (Shape((Span(5, 0, 5),)),), items, (), spare)

    assert shortage(with_spare(5)) is None
    assert shortage(with_spare(6)) == Shortage(Lack.SPARE, 21, 20, (0, 1, 2), None, 2)
