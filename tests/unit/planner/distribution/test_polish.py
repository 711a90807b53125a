"""Easier handling without a solver: rules kept, never dearer, and the obvious exchanges made."""

import random

import pytest

from baywright.planner.distribution.greedy import greedy
from baywright.planner.distribution.polish import exchanged, polished
from baywright.planner.distribution.problem import Item, Kind, Place, Problem, Shape, Span, is_kept


def rack(seed: int) -> Problem:
    chance = random.Random(seed)
    penalties = (50, 40, 30, 20, 10) + (0,) * 15
    shapes = tuple(Shape((Span(rows, 0, 20 - rows + rows % 2),), penalties) for rows in (2, 3, 5))
    items = tuple(Item(f"item-{n}", chance.randrange(3), chance.randint(1, 90)) for n in range(24))
    return Problem((Kind(6, 20, 5),), shapes, items)


@pytest.mark.parametrize("seed", range(20))
def test_it_keeps_every_rule_and_never_costs_more(seed: int) -> None:
    problem = rack(seed)
    places = greedy(problem)
    assert places is not None
    better = polished(problem, places, lambda: None)
    assert is_kept(problem, better)
    assert problem.cost(better) < problem.cost(places)


def test_the_heaviest_of_a_size_gets_the_best_row() -> None:
    shape = Shape((Span(2, 0, 4),), (9, 0, 5, 0, 1, 0))
    problem = Problem((Kind(1, 6),), (shape,), (Item("light", 0, 1), Item("heavy", 0, 8), Item("mean", 0, 4)))
    places = exchanged(problem, (Place(0, 0, 0, 4), Place(1, 0, 0, 0), Place(2, 0, 0, 2)))
    assert [place.row for place in places] == [0, 4, 2]


def test_a_stack_is_turned_and_lifted_where_that_helps() -> None:
    shapes = (Shape((Span(4, 0, 6),), (9, 0, 0, 0, 0, 0, 0)), Shape((Span(2, 0, 8),), (9,) + (0,) * 8))
    problem = Problem((Kind(1, 10),), shapes, (Item("heavy", 0, 8), Item("light", 1, 1)))
    better = polished(problem, (Place(0, 0, 0, 0), Place(1, 0, 0, 4)), lambda: None)
    assert problem.cost(better) == 0


def test_bays_with_locked_drawers_are_left_as_they_are() -> None:
    problem = Problem((Kind(1, 10, None, ((4, 6),)),), (Shape((Span(4, 0, 6),), (9,) + (0,) * 6),), (Item("a", 0, 8),))
    assert polished(problem, (Place(0, 0, 0, 0),), lambda: None) == (Place(0, 0, 0, 0),)
