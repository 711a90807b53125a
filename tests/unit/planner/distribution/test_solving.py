"""The solver is asked reproducibly, ends when told to, and what is too large for it still gets an honest answer."""

import pytest

from baywright.model.goals import MORE_IS_BETTER
from baywright.model.plan import PlanStatus
from baywright.planner import plan, report
from baywright.planner.distribution.flow import FlowModel
from baywright.planner.distribution.problem import Item, Kind, Problem, Shape, Span
from baywright.planner.distribution.solving import Verdict, fit
from tests.benchmarks.workshops import workshop
from tests.oracle.measure import faults


def odd_rows(bays: int) -> Problem:
    """Rows that need searching: they add up to the last one, or, with a bay fewer than a third, cannot."""
    sizes = [43, 31, 26] * bays
    different = sorted(set(sizes))
    shapes = tuple(Shape((Span(s, 0, 100 - s),)) for s in different)
    return Problem(
        (Kind(bays, 100),), shapes, tuple(Item(f"item-{n}", different.index(s)) for n, s in enumerate(sizes))
    )


def test_the_same_model_takes_the_same_effort_and_gives_the_same_solution() -> None:
    answers = []
    for _ in range(2):
        flow = FlowModel(odd_rows(6))
        outcome = fit(flow.model, 10.0)
        assert outcome.value is not None
        answers.append((outcome.effort, flow.starts(outcome.value)))
    assert answers[0] == answers[1]


def thousand_rows() -> Problem:
    """A thousand rows of many odd sizes: far longer than the first question whether to stop."""
    sizes = range(251, 400, 3)
    shapes = tuple(Shape((Span(s, 0, 1000 - s),)) for s in sizes)
    return Problem((Kind(40, 1000),), shapes, tuple(Item(f"item-{n}", n % len(sizes)) for n in range(120)))


def test_without_effort_a_question_stays_open_rather_than_answered() -> None:
    assert fit(FlowModel(thousand_rows()).model, 0.0).verdict is Verdict.OPEN


def test_stopping_ends_a_search_and_leaves_it_open() -> None:
    asked = 0

    def stop() -> bool:
        nonlocal asked
        asked += 1
        return asked > 2

    assert fit(FlowModel(thousand_rows()).model, 1000.0, stop).verdict is Verdict.OPEN
    assert 2 < asked < 100


@pytest.mark.parametrize("drawers", [None, 13])
def test_two_thousand_boxes_get_a_plan_with_a_bound_in_little_effort(drawers: int | None) -> None:
    project = workshop(2_000)
    project = project.replace(limits=project.limits.replace(drawers_per_bay=drawers))
    result = plan(project, effort=1.0)
    assert result.status in (PlanStatus.FEASIBLE, PlanStatus.PROVED_BEST)
    assert result.effort < 2.0
    assert result.arrangement is not None
    done = project.replace(arrangement=result.arrangement)
    assert faults(done) == []
    assert report(done).conflicts == ()
    assert all(goal.bound <= goal.value for goal in result.goals if goal.goal not in MORE_IS_BETTER)
    assert all(goal.bound >= goal.value for goal in result.goals if goal.goal in MORE_IS_BETTER)
    assert all(goal.is_proved for goal in result.goals[:2])
