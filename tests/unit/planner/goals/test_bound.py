"""Bounds that need no search, by hand."""

import pytest

from baywright.model.goals import Goal
from baywright.model.inventory import Box
from baywright.planner.goals.bound import bays_of_groups, easy_bound
from tests.unit.planner.goals.given import box, locked, run, task


def test_a_box_whose_place_is_none_must_move() -> None:
    given = task(run(box("a"), box("b", "high"), a=(0, 0), b=(0, 5)), keep=True)  # 8 rows from row 5 meet the top
    assert easy_bound(given, Goal.MOVES) == 1


def test_a_group_needs_bays_for_its_rows() -> None:
    boxes = [box(f"b{n}", "middle", group="g") for n in range(3)]  # 15 rows, 11 in a bay
    assert bays_of_groups(task(run(*boxes, bays=3))) == {"g": 2}


def test_a_group_needs_bays_for_its_drawers() -> None:
    boxes = [box(f"b{n}", group="g") for n in range(3)]
    assert bays_of_groups(task(run(*boxes, bays=3, drawers=1))) == {"g": 3}
    assert easy_bound(task(run(*boxes, bays=3, drawers=1)), Goal.GROUPS) == 2


def test_a_group_that_is_locked_in_two_bays_stays_in_two() -> None:
    project = run(box("a", group="g"), box("b", group="g"), a=(0, 0), b=(1, 0))
    assert bays_of_groups(task(locked(locked(project, "a"), "b"))) == {"g": 2}


@pytest.mark.parametrize(("boxes", "rows"), [((box("a"),), 11), ((box("a", "high"), box("b", "high")), 8)])
def test_a_free_piece_is_no_longer_than_what_is_left(boxes: tuple[Box, ...], rows: int) -> None:
    # One low box leaves 22 − 3 rows, and no bay has more than 11; two high ones leave 22 − 16 and one row over
    # each top.
    assert easy_bound(task(run(*boxes)), Goal.FREE_PIECE) == rows
