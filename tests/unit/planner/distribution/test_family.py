"""Families: alike in spans and in the company they may keep."""

from baywright.planner.distribution.family import families
from baywright.planner.distribution.problem import Item, Kind, Problem, Shape, Span, Team

SPAN = Span(2, 0, 8)


def problem(shapes: int, *teams: tuple[int, ...], each: int = 3) -> Problem:
    items = tuple(Item(f"item-{n}", n % shapes) for n in range(shapes * each))
    return Problem((Kind(1, 10),), (Shape((SPAN,)),) * shapes, items, tuple(Team(t, (SPAN,)) for t in teams))


def test_shapes_with_the_same_spans_are_one_family() -> None:
    found = families(problem(3))
    assert found.of_shape == (0, 0, 0)
    assert [filling.families for filling in found.fillings] == [(0,)]


def test_those_that_may_share_with_others_are_told_apart() -> None:
    found = families(problem(3, (0, 0)))
    assert found.of_shape == (0, 1, 1)
    assert [filling.families for filling in found.fillings] == [(0,), (1,), (0, 0)]


def test_those_that_can_take_each_others_place_in_every_team_are_not() -> None:
    found = families(problem(3, (0, 0), (0, 1), (1, 1)))
    assert found.of_shape == (0, 0, 1)
    assert [filling.families for filling in found.fillings] == [(0,), (1,), (0, 0)]


def test_a_team_without_enough_items_is_no_filling() -> None:
    assert len(families(problem(1, (0, 0), each=1)).fillings) == 1
