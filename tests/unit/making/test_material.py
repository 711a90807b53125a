"""Names and masses of boards."""

import pytest

from baywright.making.drawers import empty_drawer_kg, parts_of_kind
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


def test_the_drawer_that_is_reckoned_with_weighs_what_its_parts_weigh() -> None:
    project = Project()
    workings = derive(project)
    parts = parts_of_kind(project, workings, "", 1)
    assert empty_drawer_kg(workings) == pytest.approx(mass_kg(parts))
    assert 1.0 < empty_drawer_kg(workings) < 3.0
