"""Commands: what they change, and what they refuse in words."""

import pytest

from baywright.app.commands import Command, EditRefused, SetField
from baywright.app.edits.arrangement import ApplyPlan, ClearArrangement, PlaceBox, SetLock, UnplaceBoxes
from baywright.app.edits.inventory import (
    AddBoxes,
    AddBoxSize,
    DuplicateBoxes,
    EditBox,
    EditBoxSize,
    RemoveBoxes,
    RemoveBoxSize,
)
from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project

LOW = BoxSize(id="low", name="Low", width_mm=396, depth_mm=297, height_mm=120)
HIGH = BoxSize(id="high", name="High", width_mm=396, depth_mm=297, height_mm=220)
SHOP = Project(
    box_sizes=(LOW, HIGH),
    boxes=(Box(id="box-1", label="Chains", size_id="low"), Box(id="box-2", label="Pumps", size_id="low")),
    arrangement=Arrangement(
        bay_count=1,
        upright_rows=20,
        placements=(Placement(box_id="box-1", bay=0, row=0), Placement(box_id="box-2", bay=0, row=6, lock=Lock.BAY)),
    ),
)


def test_set_field_reaches_any_depth() -> None:
    changed = SetField("construction.boards.upright_mm", 17.6).apply(SHOP)
    assert changed.construction.boards.upright_mm == 17.6
    assert changed.replace(construction=SHOP.construction) == SHOP


@pytest.mark.parametrize(
    ("path", "value", "words"),
    [
        ("space.length_mm", 0, "Length must be over 0"),
        ("space.length_mm", -5, "Length must be over 0"),
        ("space.length_mm", 1e9, "Length must be at most 100,000"),
        ("space.length_mm", float("nan"), "Length must be a finite number"),
        ("construction.boards.upright_mm", "thick", "Upright must be a number"),
        ("construction.drawers.groove_depth_mm", 15, "would cut through the drawer side"),
        ("limits.bay_count", 0, "Bay count must be at least 1"),
        ("limits.bay_count", 2.5, "Bay count must be a whole number"),
        ("limits.other_box_widths_mm", (300.0, 0.0), "Each of the other box widths must be over 0 mm"),
        ("construction.hole_rows.rear_setback_mm", 0, "Rear row set-back must be over 0 mm"),
        ("construction.uprights", "both", "must be one of"),
        ("name", "  ", "Name must not be empty"),
        ("space.nothing", 1, "no field “nothing”"),
        ("name.length", 1, "no fields of its own"),
    ],
)
def test_what_cannot_be_is_refused_in_words(path: str, value: object, words: str) -> None:
    with pytest.raises(EditRefused, match=words):
        SetField(path, value).apply(SHOP)


def test_boxes_come_with_their_sizes_and_go_with_their_places() -> None:
    new = BoxSize(id="flat", name="Flat", width_mm=396, depth_mm=297, height_mm=75)
    grown = AddBoxes((Box(id="box-3", label="Pads", size_id="flat"),), (new,)).apply(SHOP)
    assert [box.label for box in grown.boxes] == ["Chains", "Pumps", "Pads"]
    shrunk = RemoveBoxes(("box-1",)).apply(grown)
    assert [p.box_id for p in shrunk.arrangement.placements] == ["box-2"]


def test_a_box_of_an_unknown_size_is_refused() -> None:
    with pytest.raises(EditRefused, match="not in the list of box sizes"):
        AddBoxes((Box(id="box-3", label="Pads", size_id="flat"),)).apply(SHOP)


def test_duplicates_stand_behind_their_original_and_have_no_place() -> None:
    copied = DuplicateBoxes(("box-1",), 2).apply(SHOP)
    assert [box.id for box in copied.boxes] == ["box-1", "box-3", "box-4", "box-2"]
    assert [box.label for box in copied.boxes] == ["Chains", "Chains", "Chains", "Pumps"]
    assert copied.arrangement == SHOP.arrangement


@pytest.mark.parametrize("times", [0, -1, 501])
def test_an_absurd_number_of_copies_is_refused(times: int) -> None:
    with pytest.raises(EditRefused, match="1 to 500"):
        DuplicateBoxes(("box-1",), times).apply(SHOP)


def test_a_size_in_use_cannot_be_deleted_and_a_free_one_can() -> None:
    with pytest.raises(EditRefused, match="2 boxes have the size “Low”"):
        RemoveBoxSize("low").apply(SHOP)
    assert RemoveBoxSize("high").apply(SHOP).box_sizes == (LOW,)


def test_edits_of_a_box_and_of_a_size() -> None:
    assert EditBox("box-1", "loaded_mass_kg", 4.5).apply(SHOP).box("box-1").loaded_mass_kg == 4.5
    assert EditBoxSize("low", "height_mm", 130).apply(SHOP).size("low").height_mm == 130
    assert AddBoxSize(LOW.replace(id="other")).apply(SHOP).box_sizes[-1].id == "other"
    with pytest.raises(EditRefused, match="must be at least 0"):
        EditBox("box-1", "loaded_mass_kg", -1).apply(SHOP)
    with pytest.raises(EditRefused, match="no box “box-9”"):
        EditBox("box-9", "label", "Gone").apply(SHOP)
    with pytest.raises(EditRefused, match="used twice"):
        AddBoxSize(LOW).apply(SHOP)


def test_a_moved_box_keeps_its_lock() -> None:
    moved = PlaceBox("box-2", 0, 12).apply(SHOP).arrangement.placement_of("box-2")
    assert moved == Placement(box_id="box-2", bay=0, row=12, lock=Lock.BAY)


def test_a_place_that_does_not_exist_at_all_is_refused() -> None:
    with pytest.raises(EditRefused):
        PlaceBox("box-2", -1, 0).apply(SHOP)
    with pytest.raises(EditRefused, match="not in the inventory"):
        PlaceBox("box-9", 0, 0).apply(SHOP)


def test_only_a_box_with_a_place_can_be_locked() -> None:
    homeless = UnplaceBoxes(("box-1",)).apply(SHOP)
    with pytest.raises(EditRefused, match="“Chains” has no drawer yet"):
        SetLock(("box-1",), Lock.DRAWER).apply(homeless)
    assert SetLock(("box-1", "box-2"), Lock.DRAWER).apply(SHOP).arrangement.placements[0].lock is Lock.DRAWER


def test_clearing_leaves_what_is_locked() -> None:
    cleared = ClearArrangement().apply(SHOP)
    assert [p.box_id for p in cleared.arrangement.placements] == ["box-2"]
    assert cleared.arrangement.bay_count == 1
    unlocked = SetLock(("box-2",), Lock.NONE).apply(SHOP)
    assert ClearArrangement().apply(unlocked).arrangement == Arrangement()


def test_a_plan_with_boxes_that_are_gone_is_refused() -> None:
    stale = Arrangement(bay_count=1, upright_rows=20, placements=(Placement(box_id="box-9", bay=0, row=0),))
    with pytest.raises(EditRefused, match="not in the inventory"):
        ApplyPlan(stale).apply(SHOP)


def test_every_command_has_a_title_for_the_undo_menu() -> None:
    commands: list[Command] = [
        SetField("space.length_mm", 1),
        AddBoxes(()),
        EditBox("box-1", "loaded_mass_kg", 1),
        RemoveBoxes(("box-1",)),
        DuplicateBoxes(("box-1", "box-2"), 1),
        AddBoxSize(LOW),
        EditBoxSize("low", "height_mm", 1),
        RemoveBoxSize("low"),
        PlaceBox("box-1", 0, 0),
        UnplaceBoxes(("box-1",)),
        SetLock(("box-1",), Lock.BAY),
        ApplyPlan(Arrangement()),
        ClearArrangement(),
    ]
    titles = [command.title for command in commands]
    assert all(titles)
    assert "mm" not in " ".join(titles)
    assert "_" not in " ".join(titles)


def test_copies_get_ids_after_the_highest_and_stand_behind_their_box() -> None:
    copied = DuplicateBoxes(("box-2", "box-1"), 2).apply(SHOP)
    assert [box.id for box in copied.boxes] == ["box-1", "box-3", "box-4", "box-2", "box-5", "box-6"]
    assert copied.arrangement == SHOP.arrangement


def test_more_copies_than_a_project_holds_are_refused_before_they_are_made() -> None:
    boxes = tuple(Box(id=f"box-{n}", label="Box", size_id="low") for n in range(1, 101))
    project = SHOP.replace(boxes=boxes)
    with pytest.raises(EditRefused, match="50,000 more boxes; a project holds at most 10,000"):
        DuplicateBoxes(tuple(box.id for box in boxes), 500).apply(project)
