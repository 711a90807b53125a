"""The exact model of goals, every bay told apart: figures by hand, and plans that are what the model says."""

import pytest

from baywright.model.goals import Goal
from baywright.model.project import Project
from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.solving import Verdict
from baywright.planner.goals.model import GoalModel
from baywright.planner.goals.task import Figures, Held, Task
from tests.unit.planner.goals.given import box, locked, run, task


def least(given: Task, goal: Goal, *held: Held) -> Figures | None:
    """The figures of the plan that is best in a goal; None where the goals held leave no plan."""
    model = GoalModel(given, held, goal)
    model.ask_under(1_000_000_000)
    outcome = Budget(4.0).minimise(model.model, 1.0)
    if outcome.value is None:
        assert outcome.verdict is Verdict.NONE
        return None
    assert outcome.verdict is Verdict.BEST
    spots = model.spots(outcome.value)
    assert given.is_legal(spots)
    figures = given.figures(spots)
    assert figures[goal] == model.bound(outcome.bound)
    assert all(figures[h.goal] <= h.value for h in held)
    return figures


def crowded() -> Project:
    """Two bays of twelve rows, nine and six of them taken; a high box wants eight in one piece."""
    old = (box("a"), box("b"), box("c"), box("d"), box("e"))
    return run(*old, box("new", "high"), a=(0, 0), b=(0, 3), c=(0, 6), d=(1, 0), e=(1, 5))


def test_the_fewest_moves_make_room_for_a_new_box() -> None:
    figures = least(task(crowded(), keep=True), Goal.MOVES)
    assert figures is not None
    assert figures[Goal.MOVES] == 1  # the fourth low box goes on top of three, the new one where it stood


def test_runners_serve_again_where_moves_are_held() -> None:
    given = task(crowded(), keep=True)
    assert least(given, Goal.RESCREWS, Held(Goal.MOVES, 0)) is None
    figures = least(given, Goal.RESCREWS, Held(Goal.MOVES, 1))
    assert figures is not None
    assert (figures[Goal.MOVES], figures[Goal.RESCREWS]) == (1, 1)


def test_boxes_of_one_size_that_change_places_need_no_screwdriver() -> None:
    project = run(box("light", mass=1), box("heavy", mass=30), bays=1, light=(0, 8), heavy=(0, 0))
    given = task(project, keep=True)
    easier = least(given, Goal.HANDLING, Held(Goal.RESCREWS, 0))
    assert easier is not None
    assert (easier[Goal.MOVES], easier[Goal.RESCREWS]) == (2, 0)
    kept = least(given, Goal.HANDLING, Held(Goal.MOVES, 0))
    assert kept is not None
    assert kept[Goal.HANDLING] == given.figures(((0, 8), (0, 0)))[Goal.HANDLING]


def test_a_box_only_wished_for_needs_no_runners() -> None:
    project = run(box("a"), box("b", wished=True), bays=1, a=(0, 0), b=(0, 3))
    given = task(project, keep=True)
    figures = given.figures(((0, 0), (0, 6)))
    assert (figures[Goal.MOVES], figures[Goal.RESCREWS]) == (0, 0)
    best = least(given, Goal.RESCREWS)
    assert best is not None
    assert best[Goal.RESCREWS] == 0


def test_groups_come_together_as_far_as_rows_allow() -> None:
    boxes = [box(f"a{n}", "middle", "a") for n in range(2)] + [box(f"b{n}", "middle", "b") for n in range(2)]
    figures = least(task(run(*boxes)), Goal.GROUPS)
    assert figures is not None
    assert figures[Goal.GROUPS] == 0
    three = [box(f"c{n}", "middle", "c") for n in range(3)]
    figures = least(task(run(*three)), Goal.GROUPS)
    assert figures is not None
    assert figures[Goal.GROUPS] == 1


def test_groups_hold_together_with_what_is_locked() -> None:
    project = run(box("a", group="g"), box("b", group="g"), box("c", "high"), a=(0, 0), b=(1, 0), c=(1, 3))
    figures = least(task(locked(locked(project, "a"), "c")), Goal.GROUPS)
    assert figures is not None
    assert figures[Goal.GROUPS] == 0


@pytest.mark.parametrize(("length", "holds"), [(9, True), (10, False)])
def test_a_free_piece_is_there_or_is_not(length: int, holds: bool) -> None:
    boxes = (box("a"), box("b", "middle"), box("c"), box("d"))  # 5 + 3 + 3 in one bay, 3 at the top of the other
    given = task(run(*boxes))
    model = GoalModel(given, [], Goal.FREE_PIECE)
    model.ask_free(length)
    outcome = Budget(4.0).minimise(model.model, 1.0)
    assert (outcome.value is not None) is holds
    if outcome.value is not None:
        assert given.figures(model.spots(outcome.value))[Goal.FREE_PIECE] >= length
