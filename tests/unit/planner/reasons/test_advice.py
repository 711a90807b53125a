"""Advice is enough: a length that a conflict tells to allow can be typed as it is shown, and then everything fits."""

import re

import pytest

from baywright.model.inventory import Box, BoxSize
from baywright.model.length import LengthUnit, parse_length
from baywright.model.plan import LimitKind, PlanStatus
from baywright.model.project import Project
from baywright.planner import plan
from baywright.planner.reasons.explanation import NOTHING_SINGLE

LOW = BoxSize(id="low", name="Low", width_mm=300, depth_mm=200, height_mm=120)
HIGH = BoxSize(id="high", name="High", width_mm=300, depth_mm=200, height_mm=2000)


def _shop(unit: LengthUnit, count: int, size: BoxSize) -> Project:
    boxes = tuple(Box(id=f"box-{n}", label=f"Box {n}", size_id=size.id, loaded_mass_kg=3) for n in range(1, count + 1))
    return Project(unit=unit, box_sizes=(LOW, HIGH), boxes=boxes)


def _advised(mend: str, before: str, after: str, unit: LengthUnit) -> float:
    found = re.search(f"{before} (.+?){after}", mend)
    assert found, mend
    return parse_length(found[1], unit)


@pytest.mark.parametrize("unit", LengthUnit)
def test_height_and_wall_that_are_offered_are_enough_as_shown(unit: LengthUnit) -> None:
    project = _shop(unit, 44, LOW)
    mend = plan(project).conflicts[0].mend
    higher = _advised(mend, "Allow", " of height", unit)
    assert plan(project.replace(space=project.space.replace(height_limit_mm=higher))).arrangement is not None
    longer = _advised(mend, "or allow", " of wall", unit)
    assert plan(project.replace(space=project.space.replace(length_mm=longer))).arrangement is not None


@pytest.mark.parametrize("unit", LengthUnit)
def test_a_box_too_high_for_the_uprights_names_the_height_limit_that_is_enough(unit: LengthUnit) -> None:
    project = _shop(unit, 1, HIGH)
    conflict = plan(project).conflicts[0]
    assert conflict.kind is LimitKind.BOX_HEIGHT
    higher = _advised(conflict.mend, "Raise the height limit to", ", for", unit)
    assert plan(project.replace(space=project.space.replace(height_limit_mm=higher))).status is PlanStatus.PROVED_BEST


def test_a_box_higher_than_any_run_is_not_told_to_be_given_rows() -> None:
    project = _shop(LengthUnit.MILLIMETRE, 1, HIGH)
    drawers = project.construction.drawers.replace(clearance_mm=20_000)
    project = project.replace(construction=project.construction.replace(drawers=drawers))
    conflict = plan(project).conflicts[0]
    assert conflict.kind is LimitKind.BOX_HEIGHT
    assert "lower" in conflict.mend
    assert "rows" not in conflict.mend


def test_where_no_single_change_helps_that_is_said_with_what_to_do() -> None:
    conflict = plan(_shop(LengthUnit.MILLIMETRE, 2_000, LOW)).conflicts[0]
    assert conflict.needed is not None
    assert conflict.available is not None
    assert conflict.needed > conflict.available
    assert conflict.mend == NOTHING_SINGLE
