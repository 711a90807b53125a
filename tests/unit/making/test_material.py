"""Names and masses of boards."""

import pytest

from baywright.making.drawers import empty_drawer_kg
from baywright.making.material import PLYWOOD_DENSITY_KG_PER_M3, mass_kg, plywood
from baywright.model.making import Grain, Part
from baywright.model.project import Project
from baywright.workings import derive


def test_measured_thicknesses_are_in_the_name() -> None:
    assert plywood(18.0) == "birch plywood 18 mm"
    assert plywood(17.6) == "birch plywood 17.6 mm"


def test_mass_is_volume_times_density() -> None:
    """A square metre of 18 mm is 0.018 m³; two of them 0.036 m³."""
    board = Part(
        number="X", name="board", quantity=2, length_mm=1000, width_mm=1000, thickness_mm=18, material="",
        grain=Grain.ANY,
    )  # fmt: skip
    assert mass_kg([board]) == pytest.approx(0.036 * PLYWOOD_DENSITY_KG_PER_M3)


def test_the_drawer_that_the_planner_reckons_with_weighs_what_its_parts_weigh() -> None:
    project = Project()
    workings = derive(project)
    assert workings.value("drawer_mass") == pytest.approx(empty_drawer_kg(project, workings))
    assert 1.0 < workings.value("drawer_mass") < 3.0
