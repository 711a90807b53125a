"""Changes given as paths: list members by id or number, checked as if typed, and nothing set that is not there."""

import pytest
from pydantic import ValidationError

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.change import NoSuchFieldError, changed
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.limits import BayWish
from baywright.model.project import Project
from baywright.model.repair import FieldChange, FieldValue
from baywright.model.space import Zone, ZoneEffect


def _project() -> Project:
    plain = Project()
    zone = Zone(id="pipe", label="Pipe", effect=ZoneEffect.STAY_IN_FRONT, left_mm=0, width_mm=50, depth_mm=60)
    return plain.replace(
        space=plain.space.replace(zones=(zone,)),
        box_sizes=(BoxSize(id="low", name="Low", width_mm=300, depth_mm=200, height_mm=120),),
        boxes=(Box(id="pumps", label="Pumps", size_id="low"), Box(id="tubes", label="Tubes", size_id="low")),
        arrangement=Arrangement(
            bay_count=1,
            upright_rows=9,
            placements=(
                Placement(box_id="tubes", bay=0, row=4),
                Placement(box_id="pumps", bay=0, row=0, lock=Lock.DRAWER),
            ),
        ),
    )


def _with(path: str, value: FieldValue) -> Project:
    return changed(_project(), [FieldChange(path=path, value=value)])


def test_a_plain_field_is_set() -> None:
    assert _with("construction.drawers.clearance_mm", 8.0).construction.drawers.clearance_mm == 8.0
    assert _with("limits.drawers_per_bay", 4).limits.drawers_per_bay == 4
    assert _with("limits.upright_rows", None).limits.upright_rows is None


def test_a_member_of_a_list_is_found_by_its_id() -> None:
    assert _with("boxes[tubes].status", "elsewhere").box("tubes").status is BoxStatus.ELSEWHERE
    assert _with("box_sizes[low].may_turn", True).size("low").may_turn
    assert _with("space.zones[pipe].depth_mm", 30.0).space.zones[0].depth_mm == 30.0
    unlocked = _with("arrangement.placements[pumps].lock", "none").arrangement
    assert [p.lock for p in unlocked.placements] == [Lock.NONE, Lock.NONE]
    assert [p.box_id for p in unlocked.placements] == ["tubes", "pumps"]


def test_a_wish_for_a_bay_that_has_none_is_added() -> None:
    assert _with("limits.bays[1].drawers", 3).limits.bays == (BayWish(), BayWish(drawers=3))


def test_one_more_width_of_bay_is_added_at_the_end() -> None:
    assert _with("limits.other_box_widths_mm[0]", 600.0).limits.other_box_widths_mm == (600.0,)
    with pytest.raises(NoSuchFieldError):
        _with("limits.other_box_widths_mm[1]", 600.0)


def test_several_changes_are_made_one_after_the_other() -> None:
    both = [FieldChange(path="limits.bay_count", value=2), FieldChange(path="limits.bays[1].rows", value=5)]
    assert changed(_project(), both).limits.bays[1].rows == 5


@pytest.mark.parametrize(
    "path",
    [
        "",
        "limits",
        "limits.no",
        "nothing.at.all",
        "boxes[ghost].status",
        "boxes.status",
        "name.first",
        "limits.bays[x]",
    ],
)
def test_a_path_that_leads_nowhere_is_refused(path: str) -> None:
    with pytest.raises((NoSuchFieldError, ValidationError)):
        _with(path, 1)


def test_a_value_that_nobody_could_enter_is_refused() -> None:
    with pytest.raises(ValidationError):
        _with("limits.drawers_per_bay", 0)
