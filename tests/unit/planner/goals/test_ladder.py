"""The goals one after the other: none worsens one before it, and the order is the owner's."""

import pytest

from baywright.model.goals import USUAL_ORDER, Goal
from baywright.planner.distribution.budget import Budget, StoppedError
from baywright.planner.framing.frame import Framer
from baywright.planner.goals.kept import kept
from baywright.planner.goals.ladder import Ladder, Reached
from tests.unit.planner.goals.given import box, climbed, ordered, run, spots_of, task


def test_a_plan_that_is_as_good_as_any_is_left_alone() -> None:
    project = run(box("a", group="g"), box("b", group="g"), bays=2, a=(0, 8), b=(0, 5))
    given, best = climbed(project, keep=True)
    assert best.spots == given.present
    assert best.figures[Goal.MOVES] == 0


@pytest.mark.parametrize("first", USUAL_ORDER)
def test_the_goal_that_comes_first_is_at_its_best(first: Goal) -> None:
    boxes = (box("a", group="g", mass=20), box("b", "middle", mass=9), box("c", group="g"), box("d", "high"))
    project = ordered(run(*boxes, a=(0, 0), b=(0, 4), c=(1, 0)), first)
    given = task(project, keep=True)
    start = spots_of(given, a=(0, 0), b=(0, 4), c=(1, 0), d=(1, 3))
    _, best = climbed(project, start, keep=True)
    for goal in USUAL_ORDER:
        assert Ladder.is_settled(best, goal), goal
    alone = {Goal.MOVES: 0, Goal.RESCREWS: 0, Goal.GROUPS: 0}
    assert best.figures[first] == alone.get(first, best.figures[first])


def test_what_can_stay_stays_and_the_rest_goes_where_there_is_room() -> None:
    given = task(run(box("a"), box("b"), box("new", "middle"), a=(0, 0), b=(1, 8)), keep=True)
    plan = kept(given, lambda: None)
    assert plan is not None
    assert given.figures(plan)[Goal.MOVES] == 0
    clash = task(run(box("a"), box("b"), a=(0, 0), b=(0, 1)), keep=True)
    plan = kept(clash, lambda: None)
    assert plan is not None
    assert clash.figures(plan)[Goal.MOVES] == 1


def test_where_the_caller_stops_the_best_so_far_was_told() -> None:
    project = run(box("a", mass=20), box("b", "middle"), a=(0, 0), b=(1, 0))
    given = task(project)
    told: list[Reached] = []
    ladder = Ladder(given, Framer(project), Budget(4.0, lambda: True), told.append)
    with pytest.raises(StoppedError):
        ladder.climb([spots_of(given, a=(0, 0), b=(1, 0))])
    assert told[-1].figures[Goal.HANDLING] > 0
