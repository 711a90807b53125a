"""Shared drawers, barred rows and rows kept free, against trying everything."""

import random
from itertools import combinations_with_replacement

import pytest

from baywright.planner.distribution.bounds import drawers_needed, rows_needed, shortage
from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.cheapest import improved
from baywright.planner.distribution.problem import Item, Kind, Problem, Shape, Span, Team, drawers_of, is_kept
from baywright.planner.distribution.search import holds
from tests.oracle.sharing import least_cost


def shared_problem(seed: int) -> Problem:
    chance = random.Random(seed)
    rows = chance.randint(6, 10)
    kinds = tuple(
        Kind(chance.randint(1, 2), rows - chance.randint(0, 2), chance.choice([None, 1, 2]), usable=(0, rows - 2))
        for _ in range(chance.randint(1, 2))
    )
    shapes = []
    for _ in range(chance.randint(1, 3)):
        tall = chance.randint(1, 5)
        spans = tuple(span(chance, tall, kind.rows) if chance.random() < 0.85 else None for kind in kinds)
        shapes.append(Shape(spans, tuple(abs(row - rows // 2) * chance.choice([1, 3]) for row in range(rows))))
    teams = [
        Team(members, tuple(together(shapes, members, kind) for kind in range(len(kinds))))
        for size in (2, 3)
        for members in combinations_with_replacement(range(len(shapes)), size)
        if chance.random() < 0.5
    ]
    items = [
        Item(f"item-{n}", chance.randrange(len(shapes)), chance.randint(0, 9)) for n in range(chance.randint(1, 6))
    ]
    return Problem(kinds, tuple(shapes), tuple(items), tuple(teams), chance.choice([0, 0, 1, 3, 6]))


def span(chance: random.Random, tall: int, rows: int) -> Span:
    barred = tuple(row for row in range(rows) if chance.random() < 0.15)
    return Span(tall, chance.choice([0, 0, 1]), min(rows - 1, rows - tall + chance.choice([0, 0, 1])), barred)


def together(shapes: list[Shape], members: tuple[int, ...], kind: int) -> Span | None:
    spans = [found for shape in members if (found := shapes[shape].spans[kind]) is not None]
    if len(spans) < len(members):
        return None
    barred = sorted({row for own in spans for row in own.barred})
    lowest, highest = max(own.lowest for own in spans), min(own.highest for own in spans)
    return Span(max(own.rows for own in spans), lowest, highest, tuple(barred))


@pytest.mark.parametrize("block", range(8))
def test_shared_drawers_reach_the_optimum_that_trying_everything_finds(block: int) -> None:
    settled = refused = shared = 0
    for seed in range(block * 30, block * 30 + 30):
        problem = shared_problem(seed)
        expected = least_cost(problem)
        answer = holds(problem, Budget(20.0))
        assert answer.holds is (expected is not None), seed
        if expected is None:
            refused += 1
            continue
        assert shortage(problem) is None, seed
        assert is_kept(problem, answer.places), seed
        best = improved(problem, answer.places, {}, Budget(20.0))
        assert is_kept(problem, best.places), seed
        assert (problem.cost(best.places), best.bound) == (expected, expected), seed
        drawers = drawers_of(best.places)
        assert len(drawers) >= drawers_needed(problem, tuple(range(len(problem.items)))), seed
        spans = [problem.drawer_span(items, kind) for (kind, _, _), items in drawers.items()]
        taken = sum(own.rows for own in spans if own is not None)
        assert taken >= rows_needed(problem, tuple(range(len(problem.items)))), seed
        shared += any(len(items) > 1 for items in drawers.values())
        settled += 1
    assert settled > 5
    assert refused > 0
    assert shared > 0
