"""What a result says of its goals is what its arrangement has; without a change, planning again moves nothing."""

from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.model.goals import Goal
from baywright.model.plan import PlanStatus
from baywright.planner import figures, plan
from baywright.planner.replanning.standing import standing_of
from tests.properties.small import small_workshop

SEEDS = st.integers(min_value=0, max_value=10**6)
FEATURES = frozenset({"status", "share", "turn", "wishes"})


@settings(max_examples=40, deadline=None)
@given(seed=SEEDS, keep=st.booleans())
def test_every_figure_told_is_that_of_the_arrangement(seed: int, keep: bool) -> None:
    project = small_workshop(seed, FEATURES)
    result = plan(project, keep=keep, effort=2.0)
    if result.arrangement is None:
        return
    standing = standing_of(project) if keep else None
    told = [(goal.goal, goal.value) for goal in result.goals]
    assert told == [(goal.goal, goal.value) for goal in figures(project, result.arrangement, standing)]
    assert all(goal.gap >= 0 for goal in result.goals)
    assert (result.status is PlanStatus.PROVED_BEST) is all(goal.is_proved for goal in result.goals)


@settings(max_examples=25, deadline=None)
@given(seed=SEEDS)
def test_without_a_change_nothing_moves(seed: int) -> None:
    project = small_workshop(seed, FEATURES)
    first = plan(project, effort=2.0)
    if first.arrangement is None:
        return
    again = plan(project.replace(arrangement=first.arrangement), keep=True, effort=2.0)
    assert again.arrangement == first.arrangement
    changes = {goal.goal: goal.value for goal in again.goals if goal.goal in (Goal.MOVES, Goal.RESCREWS)}
    assert changes == {Goal.MOVES: 0, Goal.RESCREWS: 0}
