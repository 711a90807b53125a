"""Mixes of widths weighed by every goal: the weakest bound holds, and bays end as narrow as they can be."""

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.goals import Goal
from baywright.model.inventory import Box, BoxSize
from baywright.model.plan import PlanStatus
from baywright.model.project import Project
from baywright.planner import plan, report
from baywright.planner.distribution.problem import Place
from baywright.planner.framing.frame import Framer
from baywright.planner.framing.rivals import combined, narrowed
from tests.oracle.measure import broken_locks, faults

HANDLING, FREE = Goal.HANDLING, Goal.FREE_PIECE


def test_a_rival_that_is_worse_in_an_earlier_goal_bounds_nothing_later() -> None:
    figures = {HANDLING: 10, FREE: 4}
    assert combined(figures, [{HANDLING: 10, FREE: 4}, {HANDLING: 12, FREE: 9}]) == figures


def test_a_rival_that_may_be_as_good_bounds_what_follows() -> None:
    figures = {HANDLING: 10, FREE: 4}
    found = combined(figures, [{HANDLING: 10, FREE: 4}, {HANDLING: 8, FREE: 9}])
    assert found == {HANDLING: 8, FREE: 9}


def shop() -> Project:
    """A narrow box that is lifted daily and two wide ones that are not; two bays."""
    sizes = (
        BoxSize(id="narrow", name="Narrow", width_mm=200, depth_mm=300, height_mm=90),
        BoxSize(id="wide", name="Wide", width_mm=400, depth_mm=300, height_mm=90),
    )
    boxes = (
        Box(id="narrow", label="Narrow", size_id="narrow", loaded_mass_kg=5),
        Box(id="wide-1", label="Wide 1", size_id="wide", loaded_mass_kg=20),
        Box(id="wide-2", label="Wide 2", size_id="wide", loaded_mass_kg=20),
    )
    project = Project(box_sizes=sizes, boxes=boxes)
    return project.replace(
        space=project.space.replace(length_mm=1000),
        limits=project.limits.replace(
            bay_box_width_mm=200, other_box_widths_mm=(400,), bay_count=2, upright_rows=16, drawers_per_bay=2
        ),
    )


def test_two_wide_bays_where_heavy_boxes_are_easier_to_handle_side_by_side() -> None:
    result = plan(shop())
    assert result.status is PlanStatus.PROVED_BEST
    assert result.arrangement is not None
    assert result.arrangement.box_widths_mm == (400, 400)
    rows = {p.box_id: p.row for p in result.arrangement.placements}
    assert rows["wide-1"] == rows["wide-2"]


def test_a_bay_with_narrow_boxes_alone_is_made_narrow_in_the_end() -> None:
    framer = Framer(shop())
    frame = framer.frame_of((400, 400), 16)
    places = [Place(0, 0, 1, 0), Place(1, 0, 0, 0), Place(2, 0, 0, 4)]
    smaller, moved = narrowed(framer, frame, places)
    assert smaller.widths == (400, 200)
    assert [(smaller.indices[p.kind][p.bay], p.row) for p in moved] == [(1, 0), (0, 0), (0, 4)]
    assert narrowed(framer, frame, places, (400, 400))[0].widths == (400, 400)


def test_a_locked_box_keeps_a_bay_that_is_wide_enough() -> None:
    project = shop()
    lock = Placement(box_id="wide-1", bay=1, row=4, lock=Lock.DRAWER)
    project = project.replace(arrangement=Arrangement(bay_count=2, upright_rows=16, placements=(lock,)))
    result = plan(project)
    assert result.arrangement is not None
    done = project.replace(arrangement=result.arrangement)
    assert done.arrangement.box_widths_mm[1] == 400
    assert faults(done) == []
    assert broken_locks(project, done) == []
    assert report(done).conflicts == ()
