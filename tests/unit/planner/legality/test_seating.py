"""How boxes stand in a drawer that one of them comes to or leaves."""

import pytest

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.limits import Limits
from baywright.model.project import Project
from baywright.model.space import Space
from baywright.planner import closed_up, place_conflicts, report, seated

SMALL = BoxSize(id="small", name="Small", width_mm=190, depth_mm=290, height_mm=110, most_abreast=3, most_behind=2)
LONG = BoxSize(id="long", name="Long", width_mm=600, depth_mm=150, height_mm=110, most_behind=2)
FLAT = BoxSize(id="flat", name="Flat", width_mm=290, depth_mm=380, height_mm=110, may_turn=True)


def project(*placements: Placement, bay_width: float = 600.0) -> Project:
    boxes = (
        *(Box(id=box_id, label=box_id.upper(), size_id="small", loaded_mass_kg=2) for box_id in "abcd"),
        Box(id="x", label="X", size_id="long", loaded_mass_kg=2),
        Box(id="y", label="Y", size_id="long", loaded_mass_kg=2),
        Box(id="f", label="F", size_id="flat", loaded_mass_kg=2),
    )
    return Project(
        space=Space(length_mm=3000, depth_mm=420, height_limit_mm=900),
        limits=Limits(bay_box_width_mm=bay_width),
        box_sizes=(SMALL, LONG, FLAT),
        boxes=boxes,
        arrangement=Arrangement(bay_count=3, upright_rows=18, placements=placements),
    )


def put(before: Project, box_id: str, bay: int, row: int, lock: Lock = Lock.NONE) -> Project:
    placements = seated(before, Placement(box_id=box_id, bay=bay, row=row, lock=lock))
    return before.replace(arrangement=before.arrangement.replace(placements=placements))


def stances(made: Project) -> dict[str, tuple[int, int, bool]]:
    return {p.box_id: (p.abreast, p.behind, p.turned) for p in made.arrangement.placements}


def test_boxes_come_side_by_side_in_the_order_in_which_they_come() -> None:
    made = project()
    for box_id in "abc":
        assert place_conflicts(made, box_id, 0, 2) == ()
        made = put(made, box_id, 0, 2)
        assert report(made).conflicts == ()
    assert stances(made) == {"a": (0, 0, False), "b": (1, 0, False), "c": (2, 0, False)}


def test_who_stays_behind_closes_up() -> None:
    made = project()
    for box_id in "abc":
        made = put(made, box_id, 0, 2)
    made = put(made, "a", 1, 2)
    assert stances(made) == {"a": (0, 0, False), "b": (0, 0, False), "c": (1, 0, False)}
    assert report(made).conflicts == ()


def test_boxes_too_wide_for_a_row_stand_one_behind_another() -> None:
    made = put(put(project(), "x", 0, 2), "y", 0, 2)
    assert stances(made) == {"x": (0, 0, False), "y": (0, 1, False)}
    assert report(made).conflicts == ()


def test_a_box_that_fits_only_turned_comes_turned_and_goes_back() -> None:
    deep = FLAT.replace(width_mm=380, depth_mm=290)
    narrow = project(bay_width=300).replace(box_sizes=(SMALL, LONG, deep), space=Space(length_mm=3000, depth_mm=520))
    made = put(narrow, "f", 0, 2)
    assert stances(made)["f"] == (0, 0, True)
    wide = made.replace(limits=Limits(bay_box_width_mm=600))
    assert stances(put(wide, "f", 1, 2))["f"] == (0, 0, False)


def test_what_does_not_fit_is_put_there_all_the_same_and_told() -> None:
    made = put(put(project(), "a", 0, 2), "x", 0, 2)
    assert stances(made) == {"a": (0, 0, False), "x": (1, 0, False)}
    assert report(made).conflicts != ()


def test_a_box_put_where_it_is_keeps_its_place_and_takes_the_lock() -> None:
    made = put(put(project(), "a", 0, 2), "a", 0, 2, Lock.BAY)
    placement = made.arrangement.placement_of("a")
    assert placement == Placement(box_id="a", bay=0, row=2, lock=Lock.BAY)


def test_others_are_left_alone() -> None:
    there = tuple(Placement(box_id=box_id, bay=0, row=2, abreast=n) for n, box_id in enumerate("ab"))
    elsewhere = Placement(box_id="x", bay=2, row=9, lock=Lock.DRAWER)
    made = put(project(*there, elsewhere), "c", 1, 4)
    assert made.arrangement.placements[:3] == (*there, elsewhere)


@pytest.mark.parametrize("gone", ["a", "b", "c"])
def test_gaps_are_closed_in_rows_and_in_files(gone: str) -> None:
    row = [Placement(box_id=box_id, bay=0, row=2, abreast=n) for n, box_id in enumerate("abc")]
    file = [Placement(box_id=box_id, bay=1, row=2, behind=n) for n, box_id in enumerate("xyz")]
    lost = {"a": "x", "b": "y", "c": "z"}[gone]
    kept = closed_up(p for p in (*row, *file) if p.box_id not in (gone, lost))
    assert [p.abreast for p in kept[:2]] == [0, 1]
    assert [p.behind for p in kept[2:]] == [0, 1]
    assert [p.box_id for p in kept[:2]] == [box_id for box_id in "abc" if box_id != gone]
