"""Where bays stand, how high they are and how deep their drawers: the workings against a tape measure."""

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.model.project import Project
from baywright.workings import derive
from tests.oracle.drawer import runner_mm, zone_mm
from tests.oracle.measure import TINY_MM
from tests.oracle.wall import bays, beyond_mm, run_height_mm, shelf_mm
from tests.properties.invented import projects, thrown


@settings(max_examples=60)
@given(projects(), st.randoms(use_true_random=False))
def test_every_bay_stands_where_the_tape_measure_finds_it(project: Project, chance: random.Random) -> None:
    there = thrown(project, chance, bays=chance.randint(1, 4), rows=chance.randint(3, 30))
    workings = derive(there)
    over, _ = beyond_mm(there)
    measured = bays(there)
    assert len(workings.layout.bays) == len(measured)
    for place, bay in zip(workings.layout.bays, measured, strict=True):
        assert place.left_mm + over == pytest.approx(bay.clear_left_mm, abs=TINY_MM)
        assert place.right_mm + over == pytest.approx(bay.clear_right_mm, abs=TINY_MM)
        assert (place.rows, place.box_width_mm, place.zones) == (bay.rows, bay.box_width_mm, bay.zones)
    assert workings.layout.bays_end_mm + over == pytest.approx(measured[-1].right_mm, abs=TINY_MM)
    assert workings.value("unit_height") == pytest.approx(run_height_mm(there, there.arrangement.upright_rows))


@settings(max_examples=40)
@given(projects(), st.randoms(use_true_random=False))
def test_the_wall_holds_as_many_bays_as_the_tape_measure_says(project: Project, chance: random.Random) -> None:
    """As many bays as are said to fit do, one more does not."""
    there = thrown(project, chance, bays=1)
    fit = round(derive(there.replace(arrangement={})).value("bays_that_fit"))
    end = there.space.length_mm - beyond_mm(there)[1] - shelf_mm(there)
    for count, fits in ((fit, True), (fit + 1, False)):
        if count:
            run = there.replace(arrangement={"bay_count": count, "upright_rows": 5})
            assert (bays(run)[-1].right_mm <= end + TINY_MM) is fits, count


@settings(max_examples=40)
@given(projects(), st.randoms(use_true_random=False))
def test_drawers_in_front_of_a_zone_are_as_deep_as_the_tape_measure_says(
    project: Project, chance: random.Random
) -> None:
    there = thrown(project, chance, bays=chance.randint(1, 4), rows=20)
    workings = derive(there)
    for bay in bays(there):
        for row in range(0, 20, 3):
            depth = zone_mm(there, bay, row, 3)
            kind = workings.drawer_kind(bay.number, row, 3)
            assert workings.at_kind("runner_length", kind) == runner_mm(there, depth)
            assert workings.at_kind("bay_box_width", kind) == bay.box_width_mm
