"""Edits of zones, ceiling, wishes for bays and the order of the goals."""

import pytest

from baywright.app.commands import Command, EditRefused
from baywright.app.edits.wall import (
    AddCeilingPoint,
    AddZone,
    DuplicateZones,
    EditCeilingPoint,
    EditZone,
    RemoveCeilingPoints,
    RemoveZones,
)
from baywright.app.edits.wishes import ClearBayWishes, MoveGoal, SetBayWish, WishForBay
from baywright.model.goals import Goal
from baywright.model.limits import BayWish, Limits
from baywright.model.project import Project
from baywright.model.space import MOST_ZONES, CeilingPoint, Space, Zone, ZoneEffect

PIPE = Zone(id="pipe", label="Pipe", effect=ZoneEffect.STAY_IN_FRONT, left_mm=400, width_mm=60, depth_mm=30)
DOOR = Zone(id="door", label="Door", effect=ZoneEffect.KEEP_CLEAR, left_mm=900, width_mm=800)


def project(*zones: Zone) -> Project:
    return Project(space=Space(length_mm=2000, height_limit_mm=1200, zones=zones))


def test_zones_are_added_changed_copied_and_removed() -> None:
    changed = AddZone(DOOR).apply(project(PIPE))
    changed = EditZone("door", "width_mm", 700.0).apply(changed)
    assert changed.space.zones == (PIPE, DOOR.replace(width_mm=700.0))
    changed = DuplicateZones(("pipe",)).apply(changed)
    assert [zone.id for zone in changed.space.zones] == ["pipe", "zone-1", "door"]
    assert changed.space.zones[1].left_mm == 400
    assert RemoveZones(("pipe", "zone-1")).apply(changed).space.zones == (changed.space.zones[2],)


@pytest.mark.parametrize(
    ("command", "words"),
    [
        (EditZone("pipe", "width_mm", 0.0), "Width must be over 0 mm"),
        (EditZone("pipe", "left_mm", 1e9), "Place from the left must be at most 100,000 mm"),
        (EditZone("pipe", "bottom_mm", 1e9), "Height over the floor must be at most 100,000 mm"),
        (EditZone("pipe", "label", " "), "must not be empty"),
        (EditZone("gone", "left_mm", 5.0), "no longer there"),
        (AddZone(PIPE), "same id"),
        (EditCeilingPoint(0, "height_mm", 900.0), "no longer there"),
        (SetBayWish(2, "rows", 0), "at least 1"),
        (SetBayWish(500, "rows", 9), "There can be no bay 501"),
        (MoveGoal(Goal.BAYS, 1), "always come first"),
    ],
)
def test_what_cannot_be_is_refused_in_words(command: Command, words: str) -> None:
    with pytest.raises(EditRefused, match=words):
        command.apply(project(PIPE))


def test_a_wall_has_no_endless_zones() -> None:
    zones = tuple(PIPE.replace(id=f"p{number}") for number in range(MOST_ZONES))
    with pytest.raises(EditRefused, match="at most 50 zones"):
        AddZone(DOOR).apply(project(*zones))


def test_a_new_point_of_the_ceiling_changes_no_limit() -> None:
    changed = project()
    for _ in range(4):
        before = changed
        changed = AddCeilingPoint().apply(changed)
        for left in range(0, 2000, 100):
            limits = [p.space.height_limit_between(left, left + 100.0) for p in (before, changed)]
            assert limits[0] == pytest.approx(limits[1])
        if len(changed.space.ceiling) == 2:
            changed = EditCeilingPoint(1, "height_mm", 700.0).apply(changed)
    assert [point.along_mm for point in changed.space.ceiling] == [0, 500, 1000, 1500, 2000]
    assert changed.space.ceiling[1].height_mm == pytest.approx(1075)


def test_points_of_the_ceiling_keep_their_order_and_their_own_places() -> None:
    start = AddCeilingPoint().apply(AddCeilingPoint().apply(project()))
    moved = EditCeilingPoint(0, "along_mm", 1500.0).apply(start)
    assert [point.along_mm for point in moved.space.ceiling] == [1000, 1500, 2000]
    with pytest.raises(EditRefused, match="a place of its own"):
        EditCeilingPoint(0, "along_mm", 1000.0).apply(start)
    one = RemoveCeilingPoints((0, 2)).apply(start)
    assert one.space.ceiling == (CeilingPoint(along_mm=1000, height_mm=1200),)
    assert [point.along_mm for point in AddCeilingPoint().apply(one).space.ceiling] == [1000, 2000]


def test_a_wish_for_a_bay_fills_up_those_before_it_and_goes_with_them() -> None:
    wished = SetBayWish(2, "rows", 20).apply(project())
    assert wished.limits.bays == (BayWish(), BayWish(), BayWish(rows=20))
    assert SetBayWish(2, "rows", None).apply(wished).limits.bays == ()
    both = SetBayWish(0, "box_width_mm", 400.0).apply(wished)
    assert ClearBayWishes((2,)).apply(both).limits.bays == (BayWish(box_width_mm=400),)
    assert ClearBayWishes((0,)).apply(both).limits.bays == (BayWish(), BayWish(), BayWish(rows=20))


def test_a_bay_can_be_asked_for_unless_their_number_is_fixed() -> None:
    assert len(WishForBay(3).apply(project()).limits.bays) == 4
    fixed = project().replace(limits=Limits(bay_count=3))
    with pytest.raises(EditRefused, match="fixed at 3"):
        WishForBay(3).apply(fixed)


def test_goals_change_places_and_stay_within_the_order() -> None:
    usual = project()
    first = MoveGoal(Goal.HANDLING, -1).apply(MoveGoal(Goal.HANDLING, -1).apply(usual))
    assert first.goals == (Goal.HANDLING, Goal.MOVES, Goal.RESCREWS, Goal.GROUPS, Goal.FREE_PIECE)
    assert MoveGoal(Goal.HANDLING, -1).apply(first) == first
    assert MoveGoal(Goal.HANDLING, 2).apply(first) == usual


def test_titles_say_what_is_done() -> None:
    commands = (
        AddZone(DOOR), EditZone("a", "left_mm", 1.0), RemoveZones(("a", "b")), AddCeilingPoint(),
        EditCeilingPoint(0, "height_mm", 1.0), SetBayWish(1, "box_width_mm", 1.0), MoveGoal(Goal.FREE_PIECE, -1),
    )  # fmt: skip
    assert [command.title for command in commands] == [
        "Add zone “Door”", "Change place of zone", "Remove 2 zones", "Add point of the ceiling",
        "Change height of the ceiling", "Change box width of bay 2", "Let “free piece” count more",
    ]  # fmt: skip
