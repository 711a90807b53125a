"""Bays, rows and handling of small plans against trying everything in millimetres."""

import random
from fractions import Fraction

import pytest

from baywright.model.inventory import Box, BoxSize, Use
from baywright.model.plan import Goal, PlanResult, PlanStatus
from baywright.model.project import Project
from baywright.planner import plan
from baywright.workings import derive
from tests.oracle.back import grip_in_box_mm, strain
from tests.oracle.measure import faults, first_row_mm
from tests.oracle.stacking import least_shape

LIFTS = {Use.DAILY: 20, Use.WEEKLY: 4, Use.SELDOM: 1}


def small_project(seed: int) -> Project:
    chance = random.Random(seed)
    plain = Project()
    made = plain.construction
    sizes = tuple(
        BoxSize(id=f"size-{n}", name=f"Size {n}", width_mm=300, depth_mm=200, height_mm=chance.randint(40, 330))
        for n in range(chance.randint(1, 3))
    )
    boxes = tuple(
        Box(
            id=f"box-{n}",
            label=f"Box {n}",
            size_id=chance.choice(sizes).id,
            loaded_mass_kg=chance.randint(1, 25),
            use=chance.choice(list(Use)),
        )
        for n in range(chance.randint(1, 6))
    )
    return plain.replace(
        box_sizes=sizes,
        boxes=boxes,
        construction=made.replace(
            drawers=made.drawers.replace(clearance_mm=chance.randint(0, 40)),
            runners=made.runners.replace(line_offset_mm=chance.randint(0, 40)),
        ),
        space=plain.space.replace(length_mm=chance.randint(500, 1700), height_limit_mm=chance.randint(500, 1300)),
        limits=plain.limits.replace(drawers_per_bay=chance.choice([None, 2, 3])),
    )


def _goal(result: PlanResult, wanted: Goal) -> float:
    return next(goal.value for goal in result.goals if goal.goal is wanted)


@pytest.mark.parametrize("block", range(3))
def test_fewest_bays_then_fewest_rows_are_what_trying_everything_finds(block: int) -> None:
    settled = 0
    for seed in range(block * 25, block * 25 + 25):
        project = small_project(seed)
        workings = derive(project)
        room = int(workings.value("bays_that_fit")), int(workings.value("rows_that_fit"))
        expected = least_shape(project, *room)
        result = plan(project)
        if expected is None:
            assert result.status is PlanStatus.IMPOSSIBLE, seed
            assert result.conflicts, seed
            continue
        assert result.status is PlanStatus.PROVED_BEST, (seed, result)
        assert (_goal(result, Goal.BAYS), _goal(result, Goal.ROWS)) == expected, seed
        assert result.arrangement is not None
        done = project.replace(arrangement=result.arrangement)
        assert faults(done) == [], seed
        assert _goal(result, Goal.HANDLING) == pytest.approx(_strain(done), abs=_rounding(done)), seed
        settled += 1
    assert settled > 5


def _strain(project: Project) -> float:
    """Mass × lifts × what a kilogram at its height strains the back, in index points a month, from the document."""
    made = project.construction
    base = made.standing.height_mm + made.boards.base_mm + first_row_mm(project) - made.runners.line_offset_mm
    total = 0.0
    for place in project.arrangement.placements:
        box = project.box(place.box_id)
        size = project.size_of(box)
        seat = made.drawers.groove_offset_mm + made.boards.drawer_bottom_mm
        grip = Fraction(base + made.hole_rows.pitch_mm * place.row + seat) + grip_in_box_mm(size.height_mm)
        total += (box.loaded_mass_kg or 0.0) * LIFTS[box.use] * strain(size, grip, project.safety) / 2.5
    return total


def _rounding(project: Project) -> float:
    """Heights that are no fractions of two may be rounded the other way by one of 250 parts."""
    return sum((box.loaded_mass_kg or 0.0) * LIFTS[box.use] for box in project.boxes) / 2.5 + 1e-9
