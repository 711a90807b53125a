"""Plans of small workshops: goals in their order, locks, refusals in words and numbers, the same answer every time."""

import os
import subprocess
import sys

import pytest

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.construction import Uprights
from baywright.model.inventory import Box, BoxSize, Use
from baywright.model.plan import Goal, LimitKind, PlanResult, PlanStatus
from baywright.model.project import Project
from baywright.planner import place_conflicts, plan, report
from tests.oracle.measure import faults

HEIGHTS = (75.0, 120.0, 170.0, 220.0, 320.0)
SIZES = tuple(
    BoxSize(id=f"euro-{height:g}", name=f"Euro {height:g}", width_mm=396, depth_mm=297, height_mm=height)
    for height in HEIGHTS
)


def shop(*heights: float, length_mm: float = 2400, **limits: int) -> Project:
    empty = Project(box_sizes=SIZES)
    boxes = tuple(
        Box(id=f"box-{n}", label=f"Box {n}", size_id=f"euro-{height:g}", loaded_mass_kg=2 + n % 7, use=list(Use)[n % 3])
        for n, height in enumerate(heights, 1)
    )
    return empty.replace(
        boxes=boxes,
        space=empty.space.replace(length_mm=length_mm),
        limits=empty.limits.replace(**limits),
    )


def planned(project: Project) -> Project:
    result = plan(project)
    assert result.status is PlanStatus.PROVED_BEST, result
    assert result.arrangement is not None
    done = project.replace(arrangement=result.arrangement)
    assert faults(done) == []
    assert report(done).conflicts == ()
    return done


def goal(result: PlanResult, wanted: Goal) -> float:
    return next(g.value for g in result.goals if g.goal is wanted)


def test_the_fewest_bays_then_the_lowest_uprights() -> None:
    done = planned(shop(*[120.0] * 8))
    # Each takes 5 rows, so four of them 20; 33 rows fit under the height limit, too few for all eight in one bay.
    assert done.arrangement.bay_count == 2
    assert done.arrangement.upright_rows == 20
    for rows in (19, 20):
        fixed = plan(shop(*[120.0] * 8, bay_count=2, upright_rows=rows))
        assert (fixed.status is PlanStatus.PROVED_BEST) is (rows == 20)


def test_an_empty_inventory_is_no_plan_and_no_trouble() -> None:
    assert plan(Project()).status is PlanStatus.EMPTY
    assert report(Project()).conflicts == ()


def test_heavy_and_daily_boxes_get_the_better_rows() -> None:
    project = shop(*[170.0] * 4, bay_count=1)
    heavy = project.boxes[0].replace(loaded_mass_kg=25, use=Use.DAILY)
    light = tuple(box.replace(loaded_mass_kg=1, use=Use.SELDOM) for box in project.boxes[1:])
    done = planned(project.replace(boxes=(heavy, *light)))
    base = done.construction.standing.height_mm + done.construction.boards.base_mm
    place = done.arrangement.placement_of(heavy.id)
    assert place is not None
    assert 500 <= base + 16 + 32 * place.row + 170 <= 1400


def test_locked_boxes_stay() -> None:
    done = planned(shop(120, 120, 170, 220, 75, 320, bay_count=2))
    first, second = done.boxes[0].id, done.boxes[3].id
    placements = tuple(
        p.replace(lock=Lock.DRAWER) if p.box_id == first else p.replace(bay=1 - p.bay, lock=Lock.BAY)
        if p.box_id == second else p
        for p in done.arrangement.placements
    )  # fmt: skip
    again = planned(done.replace(arrangement=done.arrangement.replace(placements=placements)))
    before = {p.box_id: p for p in placements}
    after = {p.box_id: p for p in again.arrangement.placements}
    assert after[first] == before[first]
    assert after[second].bay == before[second].bay
    assert after[second].lock is Lock.BAY


def test_no_change_in_gives_no_move_out() -> None:
    done = planned(shop(*HEIGHTS, *HEIGHTS, *HEIGHTS))
    assert plan(done).arrangement == done.arrangement


def test_the_same_document_gives_the_same_plan_under_any_hash_seed() -> None:
    script = (
        "from tests.unit.planner.test_planning import shop, HEIGHTS; from baywright.planner import plan;"
        "print(plan(shop(*HEIGHTS, *HEIGHTS, 120, 75)).model_dump_json())"
    )
    answers = {
        subprocess.run(
            [sys.executable, "-c", script],
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": os.pathsep.join(sys.path)},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("0", "1", "4711")
    }
    assert len(answers) == 1
    assert '"proved_best"' in answers.pop()


def test_a_search_that_is_stopped_answers_and_takes_nothing_back() -> None:
    result = plan(shop(*HEIGHTS), stop=lambda: True)
    assert result.status in (PlanStatus.STOPPED, PlanStatus.FEASIBLE)


def test_better_plans_are_told_as_they_are_found() -> None:
    told: list[PlanResult] = []
    result = plan(shop(*HEIGHTS, *HEIGHTS), progress=told.append)
    assert told[-1].arrangement == result.arrangement
    handling = [goal(r, Goal.HANDLING) for r in told if goal(r, Goal.ROWS) == goal(result, Goal.ROWS)]
    assert handling == sorted(handling, reverse=True)


def test_a_box_that_was_not_weighed_counts_with_an_assumption_that_is_said() -> None:
    project = shop(120, 120)
    result = plan(project.replace(boxes=(project.boxes[0].replace(loaded_mass_kg=None), project.boxes[1])))
    assert "“Box 1”" in " ".join(result.remarks)


# What stands in the way


@pytest.mark.parametrize(
    ("project", "kind", "words"),
    [
        (shop(120, 120, 120, bay_count=1, drawers_per_bay=2), LimitKind.DRAWERS_PER_BAY, ("3", "2")),
        (shop(*[320.0] * 30), LimitKind.HEIGHT, ("330 rows needed",)),
        (shop(120, length_mm=300), LimitKind.WALL_LENGTH, ("300 mm",)),
        (shop(120, bay_count=9), LimitKind.BAY_COUNT, ("9",)),
    ],
)
def test_every_no_names_the_limit_its_numbers_and_a_mend(
    project: Project, kind: LimitKind, words: tuple[str, ...]
) -> None:
    result = plan(project)
    assert result.status is PlanStatus.IMPOSSIBLE
    named = {conflict.kind for conflict in result.conflicts}
    text = " ".join(conflict.message for conflict in result.conflicts)
    assert kind in named, result.conflicts
    assert all(word in text for word in words), text
    assert all(conflict.mend for conflict in result.conflicts)


@pytest.mark.parametrize(
    ("change", "kind"),
    [
        ({"width_mm": 3000.0}, LimitKind.WALL_LENGTH),
        ({"depth_mm": 900.0}, LimitKind.DEPTH),
        ({"height_mm": 2900.0}, LimitKind.BOX_HEIGHT),
    ],
)
def test_a_box_that_fits_nowhere_is_named(change: dict[str, float], kind: LimitKind) -> None:
    project = shop(120, 220)
    giant = SIZES[1].replace(**change)
    sizes = tuple(giant if size.id == giant.id else size for size in SIZES)
    result = plan(project.replace(box_sizes=sizes))
    assert result.status is PlanStatus.IMPOSSIBLE
    assert kind in {conflict.kind for conflict in result.conflicts}, result.conflicts


def test_a_box_wider_than_the_bays_that_were_set() -> None:
    project = shop(120)
    result = plan(project.replace(limits=project.limits.replace(bay_box_width_mm=300)))
    assert [conflict.kind for conflict in result.conflicts] == [LimitKind.BOX_WIDTH]
    assert "396" in result.conflicts[0].message


def test_two_boxes_locked_on_one_row_are_both_named() -> None:
    project = shop(120, 120)
    placements = tuple(Placement(box_id=box.id, bay=0, row=4, lock=Lock.DRAWER) for box in project.boxes)
    locked = project.replace(arrangement=Arrangement(bay_count=1, upright_rows=20, placements=placements))
    result = plan(locked)
    assert result.status is PlanStatus.IMPOSSIBLE
    assert [set(c.box_ids) for c in result.conflicts if c.kind is LimitKind.LOCK] == [{"box-1", "box-2"}]
    assert report(locked).conflicts


@pytest.mark.parametrize(("bay", "row"), [(0, 200), (40, 3)])
def test_a_box_locked_where_it_cannot_be(bay: int, row: int) -> None:
    project = shop(120)
    placement = Placement(box_id="box-1", bay=bay, row=row, lock=Lock.DRAWER)
    locked = project.replace(arrangement=Arrangement(bay_count=1, upright_rows=20, placements=(placement,)))
    result = plan(locked)
    assert result.status is PlanStatus.IMPOSSIBLE
    assert "box-1" in result.conflicts[0].box_ids


def test_own_uprights_leave_room_for_fewer_bays() -> None:
    project = shop(*[320.0] * 15)
    assert planned(project).arrangement.bay_count == 5
    own = project.replace(construction=project.construction.replace(uprights=Uprights.OWN))
    result = plan(own)
    assert result.status is PlanStatus.IMPOSSIBLE
    assert any(conflict.needed == 165 for conflict in result.conflicts)


# Single places


def test_a_place_is_free_or_says_why_not() -> None:
    done = planned(shop(120, 120, 170, bay_count=1))
    lowest, middle, highest = done.arrangement.in_bay(0)
    assert place_conflicts(done, lowest.box_id, 0, lowest.row) == ()
    (taken,) = place_conflicts(done, lowest.box_id, 0, middle.row)
    assert middle.box_id in taken.box_ids
    assert place_conflicts(done, highest.box_id, 0, done.arrangement.upright_rows - 1)
    assert place_conflicts(done, lowest.box_id, 1, 0)


def test_the_report_counts_rows_and_boxes() -> None:
    done = planned(shop(120, 120, 170, bay_count=1))
    told = report(done)
    assert (told.drawers, told.unplaced) == (3, ())
    assert told.rows_used + told.rows_free == told.rows_total
    homeless = done.replace(arrangement=done.arrangement.replace(placements=done.arrangement.placements[1:]))
    assert report(homeless).unplaced == (done.arrangement.placements[0].box_id,)
