"""The planner against a worked wall: 20 boxes, common practice, a worked example without a published source."""

import pytest

from baywright.model.construction import Construction, Uprights
from baywright.model.inventory import Box, BoxSize
from baywright.model.limits import Limits
from baywright.model.plan import Goal, PlanStatus
from baywright.model.project import Project
from baywright.model.space import Space
from baywright.planner import plan
from tests.oracle.measure import faults

UNIT_MM = 105.0
HEIGHTS = [UNIT_MM] * 4 + [1.5 * UNIT_MM] * 12 + [2 * UNIT_MM] * 2 + [3 * UNIT_MM] * 2


def wall(*, over_the_box_mm: float, line_offset_mm: float = 16) -> Project:
    """20 boxes of 32 nominal units in four bays of 32 rows and five drawers; `over_the_box_mm` is seat + clearance."""
    plain = Construction()
    bottom = 12.0
    construction = plain.replace(
        uprights=Uprights.OWN,
        boards=plain.boards.replace(drawer_side_mm=18, drawer_bottom_mm=bottom),
        drawers=plain.drawers.replace(
            lateral_play_mm=0, groove_offset_mm=0, clearance_mm=over_the_box_mm - bottom, side_height_mm=60
        ),
        runners=plain.runners.replace(thickness_mm=14, line_offset_mm=line_offset_mm, gap_under_lowest_mm=0),
    )
    sizes = {height: f"high-{height:g}".replace(".", "-") for height in HEIGHTS}
    return Project(
        space=Space(length_mm=2310, depth_mm=450, height_limit_mm=1300),
        construction=construction,
        limits=Limits(bay_count=4, upright_rows=32, drawers_per_bay=5),
        box_sizes=tuple(
            BoxSize(id=size_id, name=f"{height:g}", width_mm=396, depth_mm=297, height_mm=height)
            for height, size_id in sizes.items()
        ),
        boxes=tuple(
            Box(id=f"box-{n}", label=f"Box {n}", size_id=sizes[height], loaded_mass_kg=2 + n / 2)
            for n, height in enumerate(HEIGHTS, 1)
        ),
    )


def test_the_sum_of_nominal_units_says_that_it_fits() -> None:
    assert sum(HEIGHTS) / UNIT_MM == 32
    assert len(HEIGHTS) == 4 * 5
    assert 8 * UNIT_MM + 5 * 32 == 1000
    assert 32 * 32 == 1024 >= 1000


def test_on_the_real_grid_it_cannot_be_drilled_with_32_mm_over_the_box() -> None:
    result = plan(wall(over_the_box_mm=32))
    assert result.status is PlanStatus.IMPOSSIBLE
    (conflict,) = [c for c in result.conflicts if c.unit == "rows"]
    assert (conflict.needed, conflict.available) == (130, 128)
    assert "130 rows needed, 4 bays × 32 rows = 128" in conflict.message


@pytest.mark.parametrize("over_the_box_mm", [23, 22, 20])
def test_with_23_mm_or_less_it_fits_and_is_proved_best(over_the_box_mm: float) -> None:
    project = wall(over_the_box_mm=over_the_box_mm)
    result = plan(project)
    assert result.status is PlanStatus.PROVED_BEST
    assert result.arrangement is not None
    assert {g.goal for g in result.goals if g.is_proved} >= {Goal.BAYS, Goal.ROWS, Goal.HANDLING}
    assert all(g.is_proved for g in result.goals)
    assert faults(project.replace(arrangement=result.arrangement)) == []


def test_the_mend_that_is_offered_is_the_one_that_works() -> None:
    (conflict,) = plan(wall(over_the_box_mm=32)).conflicts
    assert "clearance from 20 mm to 11 mm" in conflict.mend
    assert plan(wall(over_the_box_mm=12 + 11)).status is PlanStatus.PROVED_BEST
    assert plan(wall(over_the_box_mm=12 + 12)).status is PlanStatus.IMPOSSIBLE


def test_a_runner_line_at_20_mm_loses_the_lowest_row_and_it_fails_again() -> None:
    result = plan(wall(over_the_box_mm=23, line_offset_mm=20))
    assert result.status is PlanStatus.IMPOSSIBLE
    (conflict,) = [c for c in result.conflicts if c.unit == "rows"]
    assert (conflict.needed, conflict.available) == (126, 124)
    assert "16 mm" in conflict.mend
