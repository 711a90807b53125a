"""What stands in the way of the whole run: wall, shelf bay, wished heights, worktop, boxes that fit nowhere."""

from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.limits import BayWish
from baywright.model.plan import Conflict, LimitKind, PlanStatus
from baywright.model.project import Project
from baywright.model.space import Zone, ZoneEffect
from baywright.planner import plan
from baywright.planner.framing.grid import read_grid
from baywright.planner.legality.obstacle import least_rows, most_bays, most_rows, obstacles
from baywright.workings import derive

SIZE = BoxSize(id="size", name="Size", width_mm=300, depth_mm=300, height_mm=90)
"""A bay for it is 359.4 mm wide, 377.4 with an upright; a row is 32 mm, a run of n rows 125 + 32 n mm high."""


def shop(**limits: object) -> Project:
    project = Project(box_sizes=(SIZE,), boxes=(Box(id="box", label="Box", size_id="size", loaded_mass_kg=5),))
    return project.replace(limits=project.limits.replace(**limits))


def wall(project: Project, length: float, *zones: Zone) -> Project:
    return project.replace(space=project.space.replace(length_mm=length, zones=zones))


def found(project: Project) -> tuple[Conflict, ...]:
    workings = derive(project)
    return obstacles(project, workings, read_grid(project, workings))


def only(project: Project) -> Conflict:
    conflicts = found(project)
    assert len(conflicts) == 1, [c.message for c in conflicts]
    return conflicts[0]


def test_the_shelf_bay_that_is_wished_for_needs_its_wall() -> None:
    project = wall(shop(bay_count=2, shelf_bay_clear_width_mm=400), 1190.8)
    assert found(project) == ()
    conflict = only(wall(project, 1100))
    assert conflict.kind is LimitKind.SHELF_BAY
    assert (conflict.needed, conflict.available) == (2 * 377.4 + 18 + 418, 1100)
    assert plan(wall(project, 1100)).status is PlanStatus.IMPOSSIBLE


def test_a_zone_to_be_kept_clear_pushes_bays_along() -> None:
    door = Zone(id="door", label="Door", effect=ZoneEffect.KEEP_CLEAR, left_mm=0, width_mm=500)
    project = shop(bay_count=2)
    assert found(wall(project, 1272.8, door)) == ()
    conflict = only(wall(project, 1200, door))
    assert conflict.kind is LimitKind.BAY_COUNT
    assert (conflict.needed, conflict.available) == (1272.8, 1200)
    assert "kept clear" in conflict.message


def test_bays_wished_higher_than_the_limit_are_named() -> None:
    conflict = only(shop(bays=(BayWish(), BayWish(rows=40))))
    assert conflict.kind is LimitKind.HEIGHT
    assert conflict.message.startswith("Bay 2 with 40 rows is 1405 mm high")
    assert (conflict.needed, conflict.available) == (1405, 1200)


def test_the_worktop_range_limits_the_rows() -> None:
    project = shop(worktop_least_mm=800, worktop_most_mm=900)
    grid = read_grid(project)
    assert (least_rows(project, grid), most_rows(project, grid)) == (22, 24)
    result = plan(project)
    assert result.arrangement is not None
    assert result.arrangement.upright_rows == 22
    assert found(project) == ()


def test_a_worktop_range_without_a_whole_row_in_it_is_told() -> None:
    conflict = only(shop(worktop_least_mm=800, worktop_most_mm=820))
    assert conflict.kind is LimitKind.WORKTOP
    assert (conflict.needed, conflict.available) == (829, 820)
    assert "one row less" in conflict.message


def test_a_worktop_over_the_height_limit_is_told() -> None:
    conflict = only(shop(worktop_least_mm=1250))
    assert conflict.kind is LimitKind.WORKTOP
    assert (conflict.needed, conflict.available) == (1277, 1200)


def test_fixed_rows_outside_the_worktop_range_are_told() -> None:
    low = only(shop(worktop_least_mm=800, upright_rows=10))
    assert (low.kind, low.needed, low.available) == (LimitKind.WORKTOP, 800, 445)
    high = only(shop(worktop_most_mm=800, upright_rows=30))
    assert (high.kind, high.needed, high.available) == (LimitKind.WORKTOP, 1085, 800)


def test_a_box_too_wide_for_the_widest_bay_names_that_width() -> None:
    conflict = only(shop(bay_box_width_mm=200, other_box_widths_mm=(280, 240)))
    assert (conflict.kind, conflict.needed, conflict.available) == (LimitKind.BOX_WIDTH, 300, 280)
    assert found(shop(bay_box_width_mm=200, other_box_widths_mm=(300,))) == ()


def test_a_box_that_may_be_turned_is_judged_both_ways() -> None:
    project = shop(bay_box_width_mm=200)
    turning = SIZE.replace(depth_mm=200, may_turn=True)
    assert found(project.replace(box_sizes=(turning,))) == ()
    conflict = only(project.replace(box_sizes=(turning.replace(depth_mm=210),)))
    assert conflict.kind is LimitKind.BOX_WIDTH
    assert "turned it does not fit either" in conflict.message


def test_a_box_too_heavy_with_its_drawer_is_told() -> None:
    project = shop()
    heavy = project.replace(boxes=(project.boxes[0].replace(loaded_mass_kg=67),))
    conflict = only(heavy)
    assert (conflict.kind, conflict.available) == (LimitKind.LOAD, 68)
    assert conflict.needed is not None
    assert 68 < conflict.needed < 69


def test_boxes_kept_elsewhere_stand_in_nobodys_way() -> None:
    project = shop(bay_box_width_mm=200)
    gone = project.replace(boxes=(project.boxes[0].replace(status=BoxStatus.ELSEWHERE),))
    assert found(gone) == ()


def test_a_low_bay_alone_makes_a_box_too_high() -> None:
    project = shop(bay_count=1, bays=(BayWish(rows=3),))
    conflict = only(project)
    assert conflict.kind is LimitKind.BOX_HEIGHT
    assert "uprights of 3 rows" in conflict.message
    assert found(shop(bay_count=2, bays=(BayWish(rows=3),))) == ()


def test_the_wall_holds_what_is_left_beside_wishes() -> None:
    project = wall(shop(bays=(BayWish(box_width_mm=600),)), 1500)
    assert most_bays(project, read_grid(project)) == 3
