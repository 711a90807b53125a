"""Boards longer than any to be had are divided over uprights."""

import pytest

from baywright.making.sections import divide


def test_a_board_that_is_to_be_had_stays_whole() -> None:
    assert divide(0, 2400, [480, 960, 1440, 1920], 2500) == (0, 2400)


def test_of_the_divisions_with_fewest_sections_the_evenest_is_taken() -> None:
    """2,940 mm in two: joined at 1,440 the longer section is 1,500; at 1,920 it would be 1,920."""
    assert divide(0, 2940, [480, 960, 1440, 1920, 2400], 2500) == (0, 1440, 2940)


def test_an_overhang_belongs_to_the_outer_sections() -> None:
    assert divide(-30, 2030, [1000], 1500) == (-30, 1000, 2030)


def test_joints_outside_the_board_are_not_used() -> None:
    assert divide(0, 1000, [-10, 0, 1000, 1200], 600) == (0, 1000)


@pytest.mark.parametrize("longest", [500, 2900])
def test_where_no_upright_is_near_enough_the_section_stays_too_long(longest: float) -> None:
    assert divide(0, 9000, [3000, 6000], longest) == (0, 3000, 6000, 9000)
