"""Packed starts: far fewer, and nothing that fits is lost by them."""

import random

import pytest

from baywright.planner.distribution.flow import FlowModel, every_start, size
from baywright.planner.distribution.packed import packed_starts
from baywright.planner.distribution.problem import Item, Kind, Problem, Shape, Span
from baywright.planner.distribution.solving import Verdict, fit
from tests.oracle.exhaustive import least_cost


def problem_of(seed: int) -> Problem:
    """A few items in one or two kinds of bays that are nearly full; tops may reach a row beyond the roof."""
    chance = random.Random(seed)
    rows, lowest = chance.randint(5, 12), chance.choice([0, 1])
    shapes = []
    for _ in range(chance.randint(1, 3)):
        tall = chance.randint(1, 5)
        spans = tuple(Span(tall, lowest, min(rows - 1, rows - tall + chance.choice([0, 0, 1]))) for _ in range(2))
        shapes.append(Shape(spans if chance.random() < 0.7 else (spans[0], None)))
    items = tuple(Item(f"item-{n}", chance.randrange(len(shapes))) for n in range(chance.randint(2, 6)))
    limits = [None, None, 2, 3]
    kinds = (Kind(chance.randint(1, 2), rows, chance.choice(limits)), Kind(1, rows, chance.choice(limits)))
    return Problem(kinds, tuple(shapes), items)


@pytest.mark.parametrize("block", range(4))
def test_packed_starts_lose_no_plan_and_make_none_up(block: int) -> None:
    answers = []
    for seed in range(block * 60, block * 60 + 60):
        problem = problem_of(seed)
        outcome = fit(FlowModel(problem, packed_starts(problem)).model, 5.0)
        fits = least_cost(problem) is not None
        assert (outcome.verdict is Verdict.NONE) is not fits, seed
        answers.append(fits)
    assert True in answers
    assert False in answers


def test_packed_starts_are_among_all_starts_and_far_fewer() -> None:
    sizes = [340, 330, 300, 270, 260]
    shapes = tuple(Shape((Span(size, 0, 900 - size),)) for size in sizes)
    problem = Problem((Kind(3, 900),), shapes, tuple(Item(f"item-{n}", n % 5) for n in range(9)))
    packed, every = packed_starts(problem), every_start(problem)
    assert all(set(points) <= set(every[at]) for at, points in packed.items())
    assert sum(map(len, packed.values())) < 50 < sum(map(len, every.values())) // 50
    assert size(problem, packed) < size(problem)


def test_nothing_is_packed_where_drawers_must_stand_where_they_stand() -> None:
    shape = Shape((Span(2, 0, 6),))
    items = (Item("a", 0), Item("b", 0))
    blocked = Problem((Kind(1, 8, blocked=((3, 4),)),), (shape,), items)
    spare = Problem((Kind(1, 8),), (shape,), items, spare_rows=2)
    barred = Problem((Kind(1, 8),), (Shape((Span(2, 0, 6, barred=(2,)),)),), items)
    for problem in (blocked, spare, barred):
        assert packed_starts(problem) == every_start(problem)
