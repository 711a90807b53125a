"""Numbers of bays and rows that are fixed after an arrangement was made: the report says that it does not keep them."""

from baywright.model.arrangement import Arrangement
from baywright.model.inventory import Box, BoxSize
from baywright.model.limits import Limits
from baywright.model.plan import LimitKind
from baywright.model.project import Project
from baywright.planner import plan, report

SIZE = BoxSize(id="low", name="Low", width_mm=300, depth_mm=200, height_mm=120)


def _planned(**limits: int) -> Project:
    boxes = tuple(Box(id=f"box-{n}", label=f"Box {n}", size_id="low", loaded_mass_kg=3) for n in range(1, 9))
    project = Project(box_sizes=(SIZE,), boxes=boxes, limits=Limits.model_validate(limits))
    arrangement = plan(project).arrangement
    assert arrangement is not None
    return project.replace(arrangement=arrangement)


def test_a_plan_keeps_what_is_fixed() -> None:
    assert report(_planned(bay_count=3, upright_rows=20)).conflicts == ()
    assert report(_planned()).conflicts == ()


def test_what_is_fixed_afterwards_is_told_with_what_to_do() -> None:
    project = _planned(bay_count=3)
    conflicts = report(project.replace(limits=Limits(bay_count=2, upright_rows=30))).conflicts
    assert [conflict.kind for conflict in conflicts] == [LimitKind.BAY_COUNT, LimitKind.HEIGHT]
    assert conflicts[0].message == "The arrangement has 3 bays, but the limits fix 2."
    assert all(conflict.mend.startswith("Plan again") for conflict in conflicts)


def test_before_there_is_an_arrangement_nothing_is_told() -> None:
    project = _planned().replace(arrangement=Arrangement(), limits=Limits(bay_count=2))
    assert report(project).conflicts == ()
