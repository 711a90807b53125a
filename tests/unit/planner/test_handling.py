"""The handling cost: band, use, mass, and what counts for a box that was not weighed.

The band (500 to 1,400 mm) and the lifts a month are common practice; outside the band the lifting index counts, see
`tests/published/test_handling_curve.py`.
"""

import pytest

from baywright.model.inventory import Box, BoxSize, Use
from baywright.model.project import Project
from baywright.model.safety import Safety
from baywright.planner.handling import (
    DENSITY_KG_PER_LITRE,
    assumption,
    grip_height_in_box,
    habits,
    masses,
    over_comfort,
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


@pytest.mark.parametrize(
    ("height", "counted"), [(0, 9), (250, 3), (249, 6), (500, 0), (900, 0), (1400, 0), (1750, 6), (1751, 33)]
)
def test_only_what_is_harder_than_at_knee_and_shoulder_counts(height: float, counted: int) -> None:
    """By hand for 250 mm: HM 25/35, VM 0.85, DM 0.82 + 4.5/83, AM 0.904, CM 0.95 give 10.48 kg; for 500 mm, easier
    than 1,400, VM 0.925 and DM 0.82 + 4.5/58 give 11.71 kg; 250 × (1/10.48 − 1/11.71) is 2.5.
    """
    assert over_comfort(300.0, 220.0, float(height), habits(Safety())) == counted


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
