"""Tangents hold the cost from below, meet it after refining, and deal rows out as cheaply as can be."""

import random

from ortools.sat.python import cp_model

from baywright.planner.distribution.flow import FlowModel
from baywright.planner.distribution.pricing import FIRST_TANGENTS, Level, Pricing
from baywright.planner.distribution.problem import Item, Kind, Place, Problem, Shape, Span
from baywright.planner.distribution.solving import Verdict, minimise


def crowd(number: int, seed: int) -> Problem:
    """Many boxes of two sizes with the same rows and differing weights, the lower rows dear."""
    chance = random.Random(seed)
    span = Span(2, 0, 10)
    shapes = (Shape((span,), (40, 30, 20, 10) + (0,) * 8), Shape((span,), (55, 45, 20, 9) + (0,) * 8))
    items = tuple(Item(f"item-{n}", n % 2, chance.randint(1, 500)) for n in range(number))
    return Problem((Kind(-(-number // 6), 12),), shapes, items)


def test_a_level_is_held_exactly_where_it_has_a_tangent() -> None:
    model = cp_model.CpModel()
    level = Level((1, 1, 2, 5), (0, 1, 2, 4, 9), model.new_int_var(0, 4, ""), model.new_int_var(0, 9, ""))
    assert level.hold_at(model, 2)
    assert not level.hold_at(model, 2), "the tangent is there already"
    assert not level.hold_at(model, 1), "a tangent of the same slope touches here too"
    assert level.hold_at(model, 4)
    for count, cost in enumerate(level.sums):
        fixed = model.clone()
        fixed.add(level.count == count)
        fixed.minimize(level.cost)
        solver = cp_model.CpSolver()
        assert solver.solve(fixed) == cp_model.OPTIMAL
        assert solver.objective_value <= cost
        if count in (1, 2, 3, 4):
            assert solver.objective_value == cost


def test_more_weights_than_tangents_still_end_at_the_true_cost() -> None:
    problem = crowd(120, seed=3)
    assert len({item.weight for item in problem.items}) > 2 * FIRST_TANGENTS
    flow = FlowModel(problem)
    pricing = Pricing(flow)
    costs = []
    for _ in range(20):
        outcome = minimise(flow.model, 10.0)
        assert outcome.verdict is Verdict.BEST
        assert outcome.value is not None
        rows = pricing.rows(outcome.value, {})
        costs.append((outcome.bound, problem.cost(Place(i, 0, 0, row) for i, row in enumerate(rows))))
        if not pricing.refine(outcome.value):
            break
    bounds = [bound for bound, _ in costs]
    assert bounds == sorted(bounds)
    assert all(bound <= cost for bound, cost in costs)
    assert costs[-1][0] == costs[-1][1]
    assert costs[0][0] < costs[-1][0], "the first tangents were too few, or this test shows nothing"


def test_an_item_keeps_its_row_where_that_costs_nothing() -> None:
    span = Span(2, 0, 4)
    problem = Problem((Kind(1, 6),), (Shape((span,), (0,) * 6),), tuple(Item(f"item-{n}", 0, 5) for n in range(3)))
    flow = FlowModel(problem)
    pricing = Pricing(flow)
    outcome = minimise(flow.model, 1.0)
    assert outcome.value is not None
    assert pricing.rows(outcome.value, {0: 4, 1: 0, 2: 2}) == (4, 0, 2)
