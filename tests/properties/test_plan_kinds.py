"""Bays of several kinds, with rows blocked and items held to one kind, against trying everything."""

import random

import pytest

from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.cheapest import improved
from baywright.planner.distribution.problem import Item, Kind, Problem, Shape, Span, is_kept
from baywright.planner.distribution.search import holds
from tests.oracle.exhaustive import least_cost


def mixed_problem(seed: int) -> Problem:
    chance = random.Random(seed)
    rows = chance.randint(7, 13)
    kinds = []
    for _ in range(chance.randint(2, 3)):
        first = chance.randint(0, rows - 2)
        stretch = ((first, min(rows, first + chance.randint(1, 3))),)
        kinds.append(Kind(chance.randint(1, 2), rows, chance.choice([None, 1, 2, 3]), chance.choice([(), stretch])))
    shapes = []
    for _ in range(chance.randint(1, 3)):
        tall, lowest = chance.randint(1, 4), chance.choice([0, 0, 1])
        span = Span(tall, lowest, min(rows - 1, rows - tall + chance.choice([0, 0, 1])))
        home = chance.choice([None, None, 0])
        spans = tuple(span if home in (None, number) else None for number in range(len(kinds)))
        shapes.append(Shape(spans, tuple(abs(row - rows // 2) * chance.choice([1, 3]) for row in range(rows))))
    items = [
        Item(f"item-{n}", chance.randrange(len(shapes)), chance.randint(0, 9)) for n in range(chance.randint(1, 6))
    ]
    return Problem(tuple(kinds), tuple(shapes), tuple(items))


@pytest.mark.parametrize("block", range(10))
def test_several_kinds_of_bays_reach_the_optimum_that_trying_everything_finds(block: int) -> None:
    settled = refused = 0
    for seed in range(block * 30, block * 30 + 30):
        problem = mixed_problem(seed)
        expected = least_cost(problem)
        answer = holds(problem, Budget(20.0))
        assert answer.holds is (expected is not None), seed
        if expected is None:
            refused += 1
            continue
        assert is_kept(problem, answer.places), seed
        best = improved(problem, answer.places, {}, Budget(20.0))
        assert is_kept(problem, best.places), seed
        assert (problem.cost(best.places), best.bound) == (expected, expected), seed
        settled += 1
    assert settled > 5
    assert refused > 0
