"""Whether a document agrees with the bays that stand as built."""

import pytest

from baywright.model.arrangement import Arrangement, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Built, Project
from baywright.planner import disagreements

SIZE = BoxSize(id="euro-120", name="Euro 120", width_mm=396, depth_mm=297, height_mm=120)


def standing(*bays: int) -> Project:
    """A run of three bays, some of which stand."""
    project = Project(
        box_sizes=(SIZE,),
        boxes=(Box(id="pumps", label="Pumps", size_id=SIZE.id),),
        arrangement=Arrangement(
            bay_count=3, upright_rows=24, placements=(Placement(box_id="pumps", bay=0, row=3),)
        ),
    )  # fmt: skip
    return project.replace(built=Built(bays=bays, project=project)) if bays else project


def test_where_nothing_is_built_or_nothing_has_changed_there_is_nothing_to_tell() -> None:
    assert disagreements(standing()) == ()
    assert disagreements(standing(0, 1)) == ()


def test_drawers_that_would_be_made_otherwise_leave_the_holes_certain() -> None:
    project = standing(0)
    runners = project.construction.runners.replace(length_mm=300, line_offset_mm=16)
    found = disagreements(project.replace(construction=project.construction.replace(runners=runners)))
    assert {each.about_panels for each in found} == {False}
    assert [each.text.split(":")[0] for each in found] == ["Runner line offset", "Drawer outside depth of bay 1"]


@pytest.mark.parametrize("row", [24, 30])
def test_a_row_that_a_standing_bay_does_not_have_is_told_with_the_highest_it_has(row: int) -> None:
    project = standing(0)
    high = project.arrangement.replace(placements=(Placement(box_id="pumps", bay=0, row=row),))
    found = disagreements(project.replace(arrangement=high))
    assert [each.about_panels for each in found] == [True]
    assert "at row 24 or lower" in found[0].text


def test_a_run_that_is_not_arranged_any_more_is_no_ground_for_work() -> None:
    found = disagreements(standing(0).replace(arrangement=Arrangement()))
    assert [each.about_panels for each in found] == [True]
    assert "Plan the run again" in found[0].text
