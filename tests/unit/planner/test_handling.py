"""The handling cost: band, use, mass, and what counts for a box that was not weighed.

The band (500 to 1,400 mm) and the lifts a month are common practice; that strain grows evenly with the distance
follows the vertical multiplier of the revised lifting equation, DHHS (NIOSH) 94-110, read second-hand.
"""

import pytest

from baywright.model.inventory import Box, BoxSize, Use
from baywright.model.project import Project
from baywright.planner.handling import (
    DENSITY_KG_PER_LITRE,
    assumption,
    grip_height_in_box,
    masses,
    outside_band,
    weight,
)

SIZES = (
    BoxSize(id="low", name="Low", width_mm=400, depth_mm=250, height_mm=100),
    BoxSize(id="high", name="High", width_mm=400, depth_mm=250, height_mm=200),
)


def shelf(**kilograms: float | None) -> Project:
    boxes = tuple(
        Box(id=name, label=name, size_id=name.split("_")[0], loaded_mass_kg=mass) for name, mass in kilograms.items()
    )
    return Project(box_sizes=SIZES, boxes=boxes)


@pytest.mark.parametrize(("height", "outside"), [(0, 500), (499, 1), (500, 0), (900, 0), (1400, 0), (1650.4, 250)])
def test_only_what_lies_outside_knee_and_shoulder_counts(height: float, outside: int) -> None:
    assert outside_band(height) == outside


def test_grips_lie_under_the_rim_but_never_under_half_the_height() -> None:
    assert grip_height_in_box(220) == 180
    assert grip_height_in_box(60) == 30


def test_heavier_and_more_often_weigh_more() -> None:
    assert weight(12.5, Use.SELDOM) == 125
    assert weight(12.5, Use.DAILY) == 20 * 125
    assert weight(0.0, Use.SELDOM) == 1, "nothing counts as nothing"


def test_a_box_not_weighed_counts_as_the_mean_of_its_size() -> None:
    assert masses(shelf(low_1=4, low_2=8, low_3=None, high_1=1))["low_3"] == 6


def test_without_a_weighed_box_of_its_size_it_counts_by_volume() -> None:
    assert masses(shelf(low_1=4, high_1=None))["high_1"] == pytest.approx(8)
    assert masses(shelf(low_1=None))["low_1"] == pytest.approx(10 * DENSITY_KG_PER_LITRE)


def test_the_assumption_is_said_and_names_boxes() -> None:
    assert assumption(shelf(low_1=4)) == ""
    said = assumption(shelf(low_1=4, low_2=None, low_3=None, low_4=None, low_5=None))
    assert said.startswith("4 boxes have no mass entered")
    assert "“low_2” 4.0 kg" in said
    assert "1 more" in said
