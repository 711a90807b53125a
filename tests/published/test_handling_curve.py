"""The planner's handling goal is the lifting index itself, over that at the easier edge of the comfortable band.

Source: Waters, Putz-Anderson, Garg, *Applications Manual for the Revised NIOSH Lifting Equation*, DHHS (NIOSH) 94-110.
Marks: V2, read second-hand; the band of 500 to 1,400 mm is common practice.
"""

from fractions import Fraction

import pytest

from baywright.model.inventory import BoxSize
from baywright.model.safety import Grip, Safety
from baywright.planner.handling import PER_INDEX, Habits, ends_of_lift, habits, over_comfort
from baywright.planner.lifting import lifting_index, vertical
from tests.oracle.back import AT_ONE_HOUR, strain

USUAL = habits(Safety())
DEPTH_MM, HEIGHT_MM = 300.0, 220.0
HEIGHTS_MM = range(0, 2_301, 10)


def index(grip_mm: float, how: Habits = USUAL) -> float:
    """The lifting index of 1 kg at a height, as the checks compute it."""
    return max(lifting_index(1.0, end) for end in ends_of_lift(DEPTH_MM, HEIGHT_MM, grip_mm, how))


@pytest.mark.parametrize("grip_mm", HEIGHTS_MM)
def test_what_is_counted_is_what_the_index_is_over_that_at_the_edge(grip_mm: int) -> None:
    counted = over_comfort(DEPTH_MM, HEIGHT_MM, float(grip_mm), USUAL)
    if 500 <= grip_mm <= 1_400:
        assert counted == 0
    elif grip_mm > 1_750:
        assert index(grip_mm) == float("inf")
        assert counted > over_comfort(DEPTH_MM, HEIGHT_MM, 0.0, USUAL), "worse than all that may be lifted"
    else:
        assert counted / PER_INDEX == pytest.approx(
            max(0.0, index(grip_mm) - min(index(500), index(1_400))), abs=0.5 / PER_INDEX + 1e-9
        )


def test_a_place_that_counts_more_has_a_higher_index() -> None:
    outside = [mm for mm in HEIGHTS_MM if not 500 <= mm <= 1_400]
    by_cost = sorted(outside, key=lambda mm: over_comfort(DEPTH_MM, HEIGHT_MM, float(mm), USUAL))
    known = [index(mm) for mm in by_cost if over_comfort(DEPTH_MM, HEIGHT_MM, float(mm), USUAL)]
    assert known == pytest.approx(sorted(known), abs=1 / PER_INDEX)


def test_the_vertical_multiplier_alone_would_order_heights_otherwise() -> None:
    """Hands at 200 mm are nearer to 750 mm than at 1,700, yet reach, travel and grip make the lift harder."""
    assert vertical(20.0) > vertical(170.0)
    assert index(200) > index(1_700)
    assert over_comfort(DEPTH_MM, HEIGHT_MM, 200.0, USUAL) > over_comfort(DEPTH_MM, HEIGHT_MM, 1_700.0, USUAL)


def test_where_a_box_is_set_down_changes_which_height_is_better() -> None:
    """The distance multiplier: from a high shelf down to a low bench is the longer way."""
    low, high = (habits(Safety(set_down_height_mm=bench, grip=Grip.GOOD)) for bench in (300.0, 1_300.0))
    assert over_comfort(DEPTH_MM, HEIGHT_MM, 1_700.0, low) > over_comfort(DEPTH_MM, HEIGHT_MM, 260.0, low)
    assert 0 < over_comfort(DEPTH_MM, HEIGHT_MM, 1_700.0, high) < over_comfort(DEPTH_MM, HEIGHT_MM, 260.0, high)


@pytest.mark.parametrize("rate", AT_ONE_HOUR)
@pytest.mark.parametrize("grip", list(Grip))
@pytest.mark.parametrize("bench_mm", [0.0, 900.0, 2_000.0])
def test_the_same_in_exact_fractions(rate: float, grip: Grip, bench_mm: float) -> None:
    """V1: recomputed from the published equation without the program's code."""
    safety = Safety(set_down_height_mm=bench_mm, grip=grip, lifts_a_minute=rate, twist_degrees=45.0)
    for size in (
        BoxSize(id="low", name="Low", width_mm=400, depth_mm=DEPTH_MM, height_mm=60),
        BoxSize(id="deep", name="Deep", width_mm=400, depth_mm=900, height_mm=HEIGHT_MM),
    ):
        for grip_mm in range(0, 2_300, 37):
            ours = over_comfort(size.depth_mm, size.height_mm, float(grip_mm), habits(safety))
            assert ours == strain(size, Fraction(grip_mm), safety), (size.id, grip_mm)
