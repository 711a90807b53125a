"""Bays that stand keep their place, width, rows and hole grid; what no longer matches is named."""

from collections.abc import Callable

import pytest

from baywright.model.inventory import Box, BoxSize
from baywright.model.limits import BayWish
from baywright.model.plan import LimitKind, PlanStatus
from baywright.model.project import Built, Project
from baywright.model.space import Zone, ZoneEffect
from baywright.planner import plan, report
from tests.oracle.measure import faults

LOW = BoxSize(id="low", name="Low", width_mm=300, depth_mm=300, height_mm=90)
HIGH = BoxSize(id="high", name="High", width_mm=300, depth_mm=300, height_mm=290)


def shop(low: int) -> Project:
    boxes = tuple(Box(id=f"low-{n}", label=f"Low {n}", size_id="low", loaded_mass_kg=5) for n in range(low))
    project = Project(box_sizes=(LOW, HIGH), boxes=boxes)
    return project.replace(space=project.space.replace(height_limit_mm=900))


def as_built(project: Project, *bays: int) -> Project:
    """The project planned, with these bays built."""
    arrangement = plan(project).arrangement
    assert arrangement is not None
    done = project.replace(arrangement=arrangement)
    return done.replace(built=Built(bays=bays, project=done))


def with_boxes(project: Project, *size_ids: str) -> Project:
    new = tuple(
        Box(id=f"new-{n}", label=f"New {n}", size_id=size_id, loaded_mass_kg=5) for n, size_id in enumerate(size_ids)
    )
    return project.replace(boxes=(*project.boxes, *new))


def test_planning_again_keeps_the_rows_and_bays_that_stand() -> None:
    standing = as_built(shop(8), 0, 1)
    rows = standing.arrangement.upright_rows
    fewer = standing.replace(
        boxes=standing.boxes[:3],
        arrangement=standing.arrangement.replace(
            placements=tuple(p for p in standing.arrangement.placements if p.box_id in {"low-0", "low-1", "low-2"})
        ),
    )
    result = plan(fewer)
    assert result.arrangement is not None
    assert (result.arrangement.bay_count, result.arrangement.upright_rows) == (2, rows)
    more = with_boxes(standing, "high", "low")
    result = plan(more)
    assert result.status is PlanStatus.PROVED_BEST
    assert result.arrangement is not None
    done = more.replace(arrangement=result.arrangement)
    assert done.arrangement.upright_rows == rows
    assert done.arrangement.bay_count > 2
    assert faults(done) == []
    assert report(done).conflicts == ()


def test_a_wider_box_later_leaves_the_bays_that_stand_as_wide_as_they_are() -> None:
    standing = as_built(shop(8), 0, 1)
    wide = BoxSize(id="wide", name="Wide", width_mm=450, depth_mm=300, height_mm=90)
    later = with_boxes(standing.replace(box_sizes=(LOW, HIGH, wide)), "wide")
    result = plan(later)
    assert result.arrangement is not None
    assert result.arrangement.box_widths_mm == (300, 300, 450)
    done = later.replace(arrangement=result.arrangement)
    assert faults(done) == []
    assert report(done).conflicts == ()


Change = Callable[[Project], Project]


def construction(**parts: dict[str, float]) -> Change:
    def change(project: Project) -> Project:
        made = project.construction
        return project.replace(
            construction=made.replace(**{name: getattr(made, name).replace(**new) for name, new in parts.items()})
        )

    return change


def limits(**new: object) -> Change:
    return lambda project: project.replace(limits=project.limits.replace(**new))


def door(project: Project) -> Project:
    zone = Zone(id="door", label="Door", effect=ZoneEffect.KEEP_CLEAR, left_mm=100, width_mm=50)
    return project.replace(space=project.space.replace(zones=(zone,)))


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (construction(hole_rows={"pitch_mm": 25}), "pitch of the hole rows of 32 mm; the document says 25 mm"),
        (construction(boards={"upright_mm": 21}), "thickness of the uprights of 18 mm"),
        (construction(top={"overhang_front_mm": 30}), "depth of the uprights of 380 mm"),
        (construction(runners={"thickness_mm": 13}), "clear width of 359.4 mm; it would be 360 mm wide"),
        (construction(standing={"height_mm": 90}), "height of the base"),
        (limits(upright_rows=20), "it would have 20 now"),
        (limits(bays=(BayWish(rows=9),)), "it would have 9 now"),
        (door, "from the left end of the space"),
    ],
)
def test_what_no_longer_matches_the_panels_is_named(change: Change, words: str) -> None:
    standing = as_built(shop(8), 0, 1)
    assert report(standing).conflicts == ()
    changed = change(standing)
    found = [c.message for c in report(changed).conflicts if c.kind is LimitKind.BUILT]
    assert any(words in message for message in found), found
    assert plan(changed).status is PlanStatus.IMPOSSIBLE


def test_fewer_bays_than_stand_are_no_choice() -> None:
    standing = as_built(shop(8), 0, 1)
    one = {standing.boxes[0].id}
    placements = tuple(p for p in standing.arrangement.placements if p.box_id in one)
    emptied = standing.replace(
        boxes=standing.boxes[:1], arrangement=standing.arrangement.replace(placements=placements)
    )
    assert plan(emptied).arrangement is not None
    result = plan(limits(bay_count=1)(emptied))
    assert result.status is PlanStatus.IMPOSSIBLE
    assert any(conflict.kind is LimitKind.BUILT for conflict in result.conflicts)


def test_built_bays_with_rows_of_their_own_leave_the_run_its_rows() -> None:
    """Where every bay that stands has rows of its own by a wish, nothing fixes the rows of the others."""
    size = BoxSize(id="cube", name="Cube", width_mm=200, depth_mm=200, height_mm=143)
    box = Box(id="first", label="First", size_id="cube", loaded_mass_kg=5)
    project = Project(box_sizes=(size,), boxes=(box,))
    project = project.replace(limits=project.limits.replace(bays=(BayWish(rows=12, drawers=1),)))
    stands = as_built(project, 0)
    more = stands.replace(boxes=(*stands.boxes, box.replace(id="second", label="Second")))
    result = plan(more, keep=True)
    assert result.status is PlanStatus.PROVED_BEST
    assert result.arrangement is not None
    assert result.arrangement.bay_count == 2
    assert faults(more.replace(arrangement=result.arrangement)) == []
