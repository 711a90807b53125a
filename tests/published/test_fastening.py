"""Fasteners and runner classes against numbers from outside the project."""

import pytest

from baywright.making.hardware.fasteners import in_joint, through_screw
from baywright.making.loads import runner_load
from baywright.model.construction import Runners

POUND_KG = 0.45359237
"""Exactly (international pound, 1959)."""


def test_a_450_mm_joint_takes_four() -> None:
    """Trade rule for dowels, read in a secondary place: one about every 6 in (152 mm) and one more; 450 mm takes 4."""
    assert in_joint(450.0) == 4


@pytest.mark.parametrize("thickness_mm", [12.0, 18.0, 25.0])
def test_wood_screws_reach_six_diameters_deep(thickness_mm: float) -> None:
    """NDS 2018 for wood construction, chapter 12, as cited elsewhere: least penetration 6 diameters."""
    diameter, length = through_screw(thickness_mm)
    assert length - thickness_mm >= 6 * diameter


@pytest.mark.parametrize(
    ("carried_lb", "class_lb"), [(49, 50), (50, 50), (51, 75), (74.9, 75), (75.1, 100), (100, 100), (101, None)]
)
def test_runner_classes_of_50_75_and_100_pounds(carried_lb: float, class_lb: float | None) -> None:
    """Architectural Woodwork Standards, 1st edition 2009, appendix B: static classes 50, 75 and 100 lb (secondary)."""
    classes = tuple(pounds * POUND_KG for pounds in (50, 75, 100))
    drawer_kg = 1.5
    runners = Runners(load_classes_kg=classes)
    chosen = runner_load(runners, [carried_lb * POUND_KG - drawer_kg], drawer_kg).class_kg
    assert chosen == (None if class_lb is None else pytest.approx(class_lb * POUND_KG))
    assert [round(rated, 2) for rated in classes] == [22.68, 34.02, 45.36]
