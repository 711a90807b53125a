"""Which limits are told to clash: as few as together leave no plan, in the owner's words, with the inequality."""

import pytest

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.limits import BayWish
from baywright.model.plan import Conflict, LimitKind, PlanStatus
from baywright.model.project import Project
from baywright.planner import plan, why_not
from baywright.planner.distribution.budget import Budget
from baywright.planner.reasons.explanation import explain

LOW = BoxSize(id="low", name="Low", width_mm=396, depth_mm=297, height_mm=120)
"""Takes 5 rows."""


def shop(boxes: int, **limits: object) -> Project:
    """So many boxes of 5 rows before a wall that holds 4 bays of up to 33 rows."""
    plain = Project()
    return plain.replace(
        space=plain.space.replace(length_mm=1_950.0),
        limits=plain.limits.replace(**limits),
        box_sizes=(LOW,),
        boxes=tuple(Box(id=f"box-{n}", label=f"Box {n}", size_id="low", loaded_mass_kg=5) for n in range(1, boxes + 1)),
    )


def locked(project: Project, lock: Lock, *places: tuple[int, int]) -> Project:
    """The first boxes locked at those bays and rows."""
    placements = tuple(
        Placement(box_id=f"box-{n}", bay=bay, row=row, lock=lock) for n, (bay, row) in enumerate(places, 1)
    )
    return project.replace(arrangement=Arrangement(bay_count=4, upright_rows=20, placements=placements))


def told(project: Project) -> tuple[Conflict, ...]:
    """The clashes of a project that has no plan."""
    answer = why_not(project)
    assert answer is not None
    assert answer.remarks == ()
    return answer.conflicts


def test_rows_needed_over_rows_there_name_height_and_wall() -> None:
    (clash,) = told(shop(30))
    assert clash.message.startswith("150 rows needed, 4 bays × 33 rows = 132 there.")
    assert (clash.needed, clash.available, clash.unit) == (150, 132, "rows")
    assert clash.fields == ("space.height_limit_mm", "space.length_mm")
    assert (
        "the height limit of 1200 mm, which allows 33 rows; and the wall of 1950 mm, which holds 4 bays"
        in clash.message
    )


def test_of_all_that_is_fixed_only_what_clashes_is_named() -> None:
    project = shop(8, drawers_per_bay=2, bay_count=3, upright_rows=20, spare_rows=2, worktop_most_mm=900)
    (clash,) = told(locked(project, Lock.BAY, (0, 0), (1, 0)))
    assert clash.fields == ("limits.drawers_per_bay", "limits.bay_count")
    assert "8 drawers needed, 3 bays × 2 drawers = 6 allowed." in clash.message


def test_a_bay_with_drawers_of_its_own_is_named_by_its_number() -> None:
    (clash,) = told(shop(12, drawers_per_bay=4, bay_count=3, bays=(BayWish(), BayWish(drawers=3))))
    assert clash.fields == ("limits.bays[1].drawers", "limits.drawers_per_bay", "limits.bay_count")
    assert "at most 3 drawers in bay 2" in clash.message
    assert (clash.needed, clash.available) == (12, 11)


def test_spare_rows_stand_in_the_inequality() -> None:
    (clash,) = told(shop(4, bay_count=1, upright_rows=24, spare_rows=7))
    assert clash.kind is LimitKind.SPARE_ROWS
    assert "20 rows needed and 7 to stay free make 27" in clash.message
    assert clash.fields == ("limits.spare_rows", "limits.upright_rows", "limits.bay_count")


def test_locks_that_only_clash_together_are_named_together_and_no_other_lock() -> None:
    """In 20 rows boxes at rows 3 and 11 leave 2, 3 and 4 rows: no box of 5. Either lock alone leaves room for three."""
    project = shop(3, bay_count=1, upright_rows=20)
    (clash,) = told(locked(project, Lock.DRAWER, (0, 3), (0, 11)))
    assert clash.fields[:2] == ("arrangement.placements[box-1].lock", "arrangement.placements[box-2].lock")
    assert "“Box 1” locked at row 4 of bay 1" in clash.message
    assert "“Box 2” locked at row 12 of bay 1" in clash.message


def test_two_drawers_locked_into_each_other_need_nothing_else_to_clash() -> None:
    (clash,) = told(locked(shop(6), Lock.DRAWER, (0, 0), (0, 3), (1, 0)))
    assert clash.kind is LimitKind.LOCK
    assert clash.fields == ("arrangement.placements[box-1].lock", "arrangement.placements[box-2].lock")
    assert (clash.needed, clash.available) == (5, 3)


def test_a_box_that_no_limit_keeps_out_is_named_itself() -> None:
    project = shop(6)
    heavy = project.boxes[2].replace(loaded_mass_kg=90.0)
    (clash,) = told(project.replace(boxes=(*project.boxes[:2], heavy, *project.boxes[3:])))
    assert clash.kind is LimitKind.LOAD
    assert clash.fields == ("boxes[box-3].status",)
    assert clash.box_ids == ("box-3",)
    assert "rated for 68 kg" in clash.message


def test_two_things_wrong_for_themselves_are_two_clashes() -> None:
    project = shop(8, drawers_per_bay=2, bay_count=3)
    heavy = project.boxes[2].replace(loaded_mass_kg=90.0)
    clashes = told(project.replace(boxes=(*project.boxes[:2], heavy, *project.boxes[3:])))
    assert {clash.fields for clash in clashes} == {
        ("limits.drawers_per_bay", "limits.bay_count"),
        ("boxes[box-3].status",),
    }


def test_what_cannot_be_combined_says_that_the_sums_would_do() -> None:
    """Four boxes of 5 rows and one of 4 are 24 rows; yet 13 rows hold two of 5, or one of 5 and two of 4."""
    project = shop(5, bay_count=2, upright_rows=13)
    small = LOW.replace(id="small", name="Small", height_mm=98)
    boxes = (*project.boxes[:4], project.boxes[4].replace(size_id="small"))
    (clash,) = told(project.replace(box_sizes=(LOW, small), boxes=boxes))
    assert clash.message.startswith(
        "The boxes cannot be combined into 2 bays of 13 rows, though 24 rows would do in sum and 26 are there."
    )
    assert clash.fields == ("limits.upright_rows", "limits.bay_count")


def test_planning_gives_the_same_answer_as_asking_why_not() -> None:
    project = shop(30)
    answer, asked = plan(project), why_not(project)
    assert asked is not None
    assert answer.status is PlanStatus.IMPOSSIBLE
    assert (answer.conflicts, answer.repairs) == (asked.conflicts, asked.repairs)


def test_why_not_has_nothing_to_say_of_what_fits() -> None:
    assert why_not(shop(8)) is None
    assert why_not(Project()) is None


@pytest.mark.parametrize("after", [0, 1, 5, 20, 40])
def test_whoever_stops_it_gets_the_reason_as_far_as_it_is_known(after: int) -> None:
    asked = 0

    def stop() -> bool:
        nonlocal asked
        asked += 1
        return asked > after

    answer = explain(shop(30), Budget(8.0, stop))
    assert answer.conflicts[0].needed == 150
    assert not answer.is_settled
    assert len(answer.remarks) == 1
