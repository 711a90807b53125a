"""The drawer schedule against heights worked out by hand."""

import pytest

from baywright.making import manufacture
from baywright.model.arrangement import Lock
from baywright.model.project import Project


def test_heights_of_the_first_bay(two_bays: Project) -> None:
    """The base's upper side is 98 over the floor, the first row 16 over that, the drawer's edge 14 under its row.

    So the edges are 100 + 256·k; the lowest box (120 high, seat 17) ends at 237; the top opening ends at 98 + 1,056.
    """
    first = [line for line in manufacture(two_bays).schedule if line.bay == 1]
    assert [line.drawer for line in first] == [1, 2, 3, 4]
    assert [line.runner_row for line in first] == [1, 9, 17, 25]
    assert [line.runner_line_mm for line in first] == pytest.approx([16, 272, 528, 784])
    assert [line.lower_edge_mm for line in first] == pytest.approx([100, 356, 612, 868])
    assert [line.box_top_mm for line in first] == pytest.approx([237, 593, 749, 1105])
    assert [line.opening_mm for line in first] == pytest.approx([256, 256, 256, 286])


def test_rows_taken_are_those_of_the_size(two_bays: Project) -> None:
    """120 + 17 + 12 = 149 are 5 rows of 32; 220 + 29 = 249 are 8."""
    assert [line.rows_taken for line in manufacture(two_bays).schedule] == [5, 8] * 4


def test_the_top_drawer_takes_no_more_rows_than_there_are(two_bays: Project) -> None:
    """With 32 rows the upright is 1,024 high; the top box of bay 2 begins at row index 25, so 7 of its 8 are left."""
    project = two_bays.replace(arrangement=two_bays.arrangement.replace(upright_rows=32))
    assert manufacture(project).schedule[-1].rows_taken == 7


def test_lines_go_bay_by_bay_from_the_bottom_whatever_the_order_of_the_document(two_bays: Project) -> None:
    shuffled = two_bays.arrangement.replace(placements=two_bays.arrangement.placements[::-1])
    project = two_bays.replace(arrangement=shuffled)
    assert manufacture(project).schedule == manufacture(two_bays).schedule


def test_locks_and_contents_arrive(two_bays: Project) -> None:
    placements = (two_bays.arrangement.placements[0].replace(lock=Lock.BAY), *two_bays.arrangement.placements[1:])
    boxes = (two_bays.boxes[0].replace(contents="chains"), *two_bays.boxes[1:])
    project = two_bays.replace(boxes=boxes, arrangement=two_bays.arrangement.replace(placements=placements))
    line = manufacture(project).schedule[0]
    assert (line.locked, line.contents) == (True, "chains")
    assert not manufacture(project).schedule[1].locked


def test_boxes_without_a_drawer_are_not_in_the_schedule(two_bays: Project) -> None:
    fewer = two_bays.arrangement.replace(placements=two_bays.arrangement.placements[:-2])
    made = manufacture(two_bays.replace(arrangement=fewer))
    assert len(made.schedule) == 6
    assert next(part.quantity for part in made.parts if part.number == "D3") == 6
