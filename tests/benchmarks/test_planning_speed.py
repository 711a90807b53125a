"""Planner and reference on one problem in one run: the same optimum; the times are printed, not asserted."""

import time

import pytest

from baywright.model.plan import Goal, PlanStatus
from baywright.planner import plan
from baywright.planner.framing.frame import Framer
from tests.benchmarks.reference import solve_plainly
from tests.benchmarks.workshops import workshop


@pytest.mark.benchmark
def test_the_flow_and_the_plain_model_agree_and_their_times_are_told() -> None:
    project = workshop(8)
    began = time.perf_counter()
    result = plan(project)
    mine = time.perf_counter() - began
    assert result.status is PlanStatus.PROVED_BEST
    assert result.arrangement is not None
    problem = Framer(project).frame(result.arrangement.bay_count, result.arrangement.upright_rows).problem
    began = time.perf_counter()
    status, cost = solve_plainly(problem, 30.0)
    reference = time.perf_counter() - began
    print(f"planner {mine:.2f} s for all goals; plain model {reference:.2f} s for the last goal alone ({status})")
    if status == "OPTIMAL":
        handling = next(goal for goal in result.goals if goal.goal is Goal.HANDLING)
        assert handling.value * 25 == pytest.approx(cost)
