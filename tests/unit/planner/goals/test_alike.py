"""Handling and the free piece by the flow of alike bays: the same as with every bay told apart."""

from baywright.model.goals import Goal
from baywright.model.safety import Safety
from baywright.planner.distribution.budget import Budget
from baywright.planner.goals.alike import AlikeBays
from baywright.planner.goals.spread import SpreadBound
from baywright.planner.goals.task import Held, Spots, Task
from tests.unit.planner.goals.given import box, climbed, ordered, run, task


def _standing(given: Task) -> Spots:
    return tuple(spot for spot in given.present if spot is not None)


def test_the_longest_free_piece_is_found_and_bounded() -> None:
    given = task(run(box("a"), box("b"), box("c"), bays=2, a=(0, 4), b=(1, 0), c=(1, 6)))
    answer = AlikeBays(given, []).longest_piece(given.figures(_standing(given))[Goal.FREE_PIECE], Budget(2.0))
    assert answer.bound == 11  # three low boxes go into one bay, the other is free
    assert answer.spots is not None
    assert given.is_legal(answer.spots)
    assert given.figures(answer.spots)[Goal.FREE_PIECE] == 11


def test_a_piece_that_is_longest_is_proved() -> None:
    given = task(run(box("a"), box("b"), box("c"), bays=2, a=(0, 0), b=(0, 3), c=(0, 6)))
    answer = AlikeBays(given, []).longest_piece(11, Budget(2.0))
    assert (answer.bound, answer.spots) == (11, None)


def test_the_free_piece_keeps_easy_handling() -> None:
    project = run(box("a", mass=9), box("b", mass=7), box("c", mass=5), bays=2, a=(0, 4), b=(1, 0), c=(1, 6))
    given, best = climbed(project)
    assert list(given.goals) == [Goal.HANDLING, Goal.GROUPS, Goal.FREE_PIECE]
    assert best.figures[Goal.HANDLING] == best.bounds[Goal.HANDLING]
    assert best.figures[Goal.FREE_PIECE] == best.bounds[Goal.FREE_PIECE]


def test_easy_handling_keeps_the_free_piece() -> None:
    project = ordered(run(box("a"), box("b"), box("c"), bays=2, a=(0, 4), b=(1, 0), c=(1, 6)), Goal.FREE_PIECE)
    _, best = climbed(project)
    assert best.figures[Goal.FREE_PIECE] == 11
    assert best.figures[Goal.HANDLING] == best.bounds[Goal.HANDLING]


def test_boxes_that_must_all_stand_at_one_row_need_as_many_bays() -> None:
    # One heavy box stands on each light one in the best plan, so that the light ones, a group, are at the bottom.
    heavy = [box(f"h{n}", "high", mass=20) for n in range(3)]
    light = [box(f"l{n}", group="g", mass=1) for n in range(3)]
    project = run(
        *heavy, *light, bays=3, h0=(0, 4), h1=(1, 4), h2=(2, 4), l0=(0, 1), l1=(1, 1), l2=(2, 1)
    )  # fmt: skip
    given = task(project.replace(safety=Safety(twist_degrees=180.0)))  # so hard that every row counts
    held = [Held(Goal.HANDLING, given.figures(_standing(given))[Goal.HANDLING])]
    outcome = Budget(2.0).minimise(SpreadBound(given, held).model, 1.0)
    assert outcome.bound == 2
