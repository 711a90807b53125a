"""Widths of bays: wishes first, then as many of each as the wall holds, each bay in the end as narrow as it can be."""

from baywright.model.inventory import Box, BoxSize
from baywright.model.limits import BayWish
from baywright.model.plan import PlanStatus
from baywright.model.project import Project
from baywright.model.space import CeilingPoint
from baywright.planner import plan, report
from baywright.planner.framing.widths import WidthChoice
from baywright.workings import derive
from tests.oracle.measure import faults


def shop(length: float, *, wide: int = 0, narrow: int = 0, high: float = 100) -> Project:
    """Narrow boxes 200 mm wide and wide ones of 400 mm; a bay for them is 280.8 or 480.8 mm with an upright."""
    sizes = (
        BoxSize(id="narrow", name="Narrow", width_mm=200, depth_mm=300, height_mm=60),
        BoxSize(id="wide", name="Wide", width_mm=400, depth_mm=300, height_mm=high),
    )
    boxes = [Box(id=f"narrow-{n}", label=f"Narrow {n}", size_id="narrow") for n in range(narrow)]
    boxes += [Box(id=f"wide-{n}", label=f"Wide {n}", size_id="wide") for n in range(wide)]
    plain = Project(box_sizes=sizes, boxes=tuple(boxes))
    return plain.replace(
        space=plain.space.replace(length_mm=length, height_limit_mm=500),
        limits=plain.limits.replace(bay_box_width_mm=200, other_box_widths_mm=(400,)),
    )


def choice(project: Project) -> WidthChoice:
    return WidthChoice(project, derive(project))


def test_the_wall_holds_as_many_bays_as_of_the_narrowest() -> None:
    assert choice(shop(1000, narrow=1)).bays_that_fit == 3


def test_choices_are_as_wide_as_the_wall_holds_shortest_first() -> None:
    found = choice(shop(1000, narrow=1)).choices(3, 12)
    assert found.is_complete
    assert found.widths == ((200, 200, 200), (400, 200), (400, 400))


def test_wished_widths_come_first() -> None:
    project = shop(1200, narrow=1)
    project = project.replace(limits=project.limits.replace(bays=(BayWish(box_width_mm=200),)))
    found = choice(project).choices(3, 12).widths
    assert (200, 200, 200) in found
    assert all(widths[0] == 200 for widths in found)
    assert (200, 400, 200) in found


def test_boxes_get_bays_wide_enough_and_no_wider_than_they_need() -> None:
    project = shop(1100, wide=2, narrow=5)
    result = plan(project)
    assert result.status is PlanStatus.PROVED_BEST
    assert result.arrangement is not None
    assert sorted(result.arrangement.box_widths_mm) == [200, 200, 400]
    done = project.replace(arrangement=result.arrangement)
    assert faults(done) == []
    assert report(done).conflicts == ()
    assert plan(done).arrangement == result.arrangement


def test_fewer_wide_bays_where_wide_boxes_need_them_all() -> None:
    result = plan(shop(1000, wide=4))
    assert result.arrangement is not None
    assert result.arrangement.box_widths_mm == (400, 400)


def test_what_no_mix_holds_is_impossible() -> None:
    assert plan(shop(600, wide=4, narrow=4)).status is PlanStatus.IMPOSSIBLE


def test_widths_that_are_as_the_limits_say_are_not_written() -> None:
    result = plan(shop(1000, narrow=4))
    assert result.arrangement is not None
    assert result.arrangement.box_widths_mm == ()


def test_under_a_sloping_ceiling_it_matters_which_bay_stands_where() -> None:
    project = shop(800, wide=1, narrow=1, high=200)
    slope = (CeilingPoint(along_mm=0, height_mm=250), CeilingPoint(along_mm=300, height_mm=600))
    project = project.replace(space=project.space.replace(ceiling=slope))
    result = plan(project)
    assert result.arrangement is not None
    assert result.arrangement.box_widths_mm == (200, 400)
    done = project.replace(arrangement=result.arrangement)
    assert faults(done) == []
    assert plan(project.replace(boxes=project.boxes[1:])).arrangement is not None


def test_more_ways_to_mix_widths_than_can_be_looked_at_leave_the_widest_among_them() -> None:
    project = shop(20_000, narrow=2, wide=2)
    project = project.replace(limits=project.limits.replace(other_box_widths_mm=(400, 350, 300, 250)))
    result = plan(project)
    assert result.arrangement is not None
    assert faults(project.replace(arrangement=result.arrangement)) == []
