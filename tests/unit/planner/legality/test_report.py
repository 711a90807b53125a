"""What is wrong with an arrangement of the full model, in the owner's words and numbers, and where a box may go."""

import pytest

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.limits import BayWish
from baywright.model.plan import Conflict, LimitKind, PlanStatus
from baywright.model.project import Project
from baywright.model.space import Zone, ZoneEffect
from baywright.planner import place_conflicts, plan, report
from tests.oracle.measure import faults

SMALL = BoxSize(id="small", name="Small", width_mm=190, depth_mm=150, height_mm=90, most_abreast=2, may_turn=True)
LARGE = BoxSize(id="large", name="Large", width_mm=390, depth_mm=300, height_mm=90)
"""Both take four rows."""


def run(*placements: tuple[str, int, int], rows: int = 20, bays: int = 2) -> Project:
    """Boxes at bay and row; those named s… are small, the others large."""
    boxes = tuple(
        Box(id=name, label=name, size_id="small" if name[0] == "s" else "large", loaded_mass_kg=10)
        for name, _, _ in placements
    )
    project = Project(box_sizes=(SMALL, LARGE), boxes=boxes)
    there = tuple(Placement(box_id=name, bay=bay, row=row) for name, bay, row in placements)
    return project.replace(
        limits=project.limits.replace(bay_box_width_mm=390),
        arrangement=Arrangement(bay_count=bays, upright_rows=rows, placements=there),
    )


def limited(project: Project, **limits: object) -> Project:
    return project.replace(limits=project.limits.replace(**limits))


def only(conflicts: tuple[Conflict, ...]) -> Conflict:
    assert len(conflicts) == 1, [c.message for c in conflicts]
    return conflicts[0]


def test_a_small_box_may_join_another_and_a_large_one_may_not() -> None:
    project = run(("s1", 0, 0), ("s2", 0, 4), ("large", 1, 0))
    assert place_conflicts(project, "s2", 0, 0) == ()
    found = only(place_conflicts(project, "large", 0, 0))
    assert (found.kind, found.needed, found.available) == (LimitKind.PLACE, 2, 1)
    assert "“Large” must have a drawer of its own" in found.message


def test_a_third_box_is_one_too_many() -> None:
    found = only(place_conflicts(run(("s1", 0, 0), ("s2", 0, 0), ("s3", 1, 0)), "s3", 0, 0))
    assert (found.needed, found.available) == (3, 2)
    assert "may share a drawer with 1 other" in found.message


def test_two_that_are_too_wide_side_by_side_are_measured() -> None:
    project = run(("s1", 0, 0), ("s2", 0, 4))
    wider = project.replace(box_sizes=(SMALL.replace(width_mm=200, may_turn=False), LARGE))
    found = only(place_conflicts(wider, "s2", 0, 0))
    assert (found.kind, found.needed, found.available) == (LimitKind.BOX_WIDTH, 402, 390)


def test_boxes_at_one_row_that_are_not_told_how_to_stand_are_named_together() -> None:
    project = run(("s1", 0, 0), ("s2", 0, 0))
    assert {c.kind for c in report(project).conflicts} == {LimitKind.PLACE}
    assert only(report(project).conflicts).box_ids == ("s1", "s2")
    first, second = project.arrangement.placements
    seated = project.arrangement.replace(placements=(first, second.replace(abreast=1)))
    done = project.replace(arrangement=seated)
    assert report(done).conflicts == ()
    assert faults(done) == []
    assert (report(done).drawers, report(done).rows_used) == (1, 4)


def test_a_heavy_box_in_a_shared_drawer_is_over_its_share() -> None:
    project = run(("s1", 0, 0), ("s2", 0, 4))
    heavy = project.replace(boxes=(project.boxes[0].replace(loaded_mass_kg=40), project.boxes[1]))
    assert report(heavy).conflicts == ()
    found = only(place_conflicts(heavy, "s2", 0, 0))
    assert (found.kind, found.needed) == (LimitKind.LOAD, 40)
    assert found.available == pytest.approx((68 - 1.7) / 2, abs=0.1)


def test_the_drawer_itself_counts_with_the_load() -> None:
    project = run(("large", 0, 0))
    assert report(project.replace(boxes=(project.boxes[0].replace(loaded_mass_kg=66),))).conflicts == ()
    found = only(report(project.replace(boxes=(project.boxes[0].replace(loaded_mass_kg=67),))).conflicts)
    assert (found.kind, found.available) == (LimitKind.LOAD, 68)
    assert found.needed == pytest.approx(68.7, abs=0.1)


def test_a_box_too_wide_for_one_bay_is_told_there_only() -> None:
    project = run(("large", 1, 0))
    project = limited(project, bays=(BayWish(box_width_mm=190),))
    assert report(project).conflicts == ()
    found = only(place_conflicts(project, "large", 0, 0))
    assert (found.kind, found.needed, found.available) == (LimitKind.BOX_WIDTH, 390, 190)


def test_a_box_too_deep_before_a_zone_is_told_with_the_depth_that_is_left() -> None:
    project = run(("large", 0, 0))
    socket = Zone(
        id="socket", label="Socket", effect=ZoneEffect.STAY_IN_FRONT, left_mm=0, width_mm=200, bottom_mm=300,
        height_mm=80, depth_mm=60,
    )  # fmt: skip
    project = project.replace(space=project.space.replace(zones=(socket,)))
    assert report(project).conflicts == ()
    assert place_conflicts(project, "large", 1, 6) == ()
    found = only(place_conflicts(project, "large", 0, 6))
    assert (found.kind, found.needed, found.available) == (LimitKind.ZONE, 305, 270)


def test_a_shared_drawer_counts_once_for_the_limit_of_its_bay() -> None:
    project = limited(run(("s1", 0, 0), ("s2", 0, 8), ("large", 0, 4)), bays=(BayWish(drawers=2),))
    found = only(report(project).conflicts)
    assert (found.kind, found.needed, found.available) == (LimitKind.DRAWERS_PER_BAY, 3, 2)
    assert place_conflicts(project, "s2", 0, 0) == ()
    assert place_conflicts(project, "s2", 1, 0) == ()


def test_a_lower_bay_ends_lower() -> None:
    project = limited(run(("large", 1, 10)), bays=(BayWish(rows=8),))
    found = only(place_conflicts(project, "large", 0, 10))
    assert (found.kind, found.needed, found.available) == (LimitKind.HEIGHT, 11, 5)
    assert "5 of 8" in found.message


def test_too_few_spare_rows() -> None:
    project = run(("large", 0, 0), rows=9, bays=1)
    assert report(project).rows_free == 4
    assert report(limited(project, spare_rows=4)).conflicts == ()
    found = only(report(limited(project, spare_rows=5)).conflicts)
    assert (found.kind, found.needed, found.available) == (LimitKind.SPARE_ROWS, 5, 4)


def test_a_box_that_is_kept_elsewhere_has_no_drawer_here() -> None:
    project = run(("large", 0, 0), ("s1", 0, 4))
    gone = project.replace(boxes=(project.boxes[0].replace(status=BoxStatus.ELSEWHERE), project.boxes[1]))
    found = only(report(gone).conflicts)
    assert (found.kind, found.box_ids) == (LimitKind.PLACE, ("large",))
    assert report(gone).unplaced == ()


def test_locked_boxes_that_may_not_share_are_named() -> None:
    project = run(("large", 0, 3), ("other", 0, 3))
    locked = tuple(p.replace(lock=Lock.DRAWER) for p in project.arrangement.placements)
    project = project.replace(arrangement=project.arrangement.replace(placements=locked))
    result = plan(project)
    assert result.status is PlanStatus.IMPOSSIBLE
    assert result.conflicts[0].box_ids == ("large", "other")
