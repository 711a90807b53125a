"""The multipliers of the lifting equation against the printed tables of its manual, and its worksheets.

Source: *Applications Manual for the Revised NIOSH Lifting Equation*, DHHS (NIOSH) 94-110 (1994, revised 2021).
Marks: V1 recomputed, V2 read second-hand, MEM from memory. The manual rounds multipliers to two digits, the program
does not.
"""

import pytest

from baywright.checks.handling import GOAL
from baywright.planner.lifting import (
    HIGH_INDEX,
    LOAD_CONSTANT_KG,
    Coupling,
    Duration,
    Lift,
    Multipliers,
    asymmetry,
    coupling,
    distance,
    frequency,
    horizontal,
    lifting_index,
    multipliers,
    reach_from_width_cm,
)

POUND_KG = 0.45359237
INCH_CM = 2.54
LOW_CM, HIGH_CM = 74.9, 75.0
FREQUENCY_TABLE = """
0.2 1.00 1.00 .95 .95 .85 .85
0.5  .97  .97 .92 .92 .81 .81
1    .94  .94 .88 .88 .75 .75
2    .91  .91 .84 .84 .65 .65
3    .88  .88 .79 .79 .55 .55
4    .84  .84 .72 .72 .45 .45
5    .80  .80 .60 .60 .35 .35
6    .75  .75 .50 .50 .27 .27
7    .70  .70 .42 .42 .22 .22
8    .60  .60 .35 .35 .18 .18
9    .52  .52 .30 .30 .00 .15
10   .45  .45 .26 .26 .00 .13
11   .41  .41 .00 .23 .00 .00
12   .37  .37 .00 .21 .00 .00
13   .00  .34 .00 .00 .00 .00
14   .00  .31 .00 .00 .00 .00
15   .00  .28 .00 .00 .00 .00
15.1 .00  .00 .00 .00 .00 .00
"""
"""V2: table 5 (page 15): lifts a minute; up to 1, 2 and 8 hours, each under 75 cm and from there on."""


@pytest.mark.parametrize("line", FREQUENCY_TABLE.strip().splitlines())
def test_every_frequency_multiplier_of_table_5(line: str) -> None:
    rate, *printed = map(float, line.split())
    columns = [(duration, height) for duration in Duration for height in (LOW_CM, HIGH_CM)]
    assert [frequency(rate, duration, height) for duration, height in columns] == printed


@pytest.mark.parametrize(
    ("grip", "low", "high"), [(Coupling.GOOD, 1.0, 1.0), (Coupling.FAIR, 0.95, 1.0), (Coupling.POOR, 0.9, 0.9)]
)
def test_every_coupling_multiplier_of_table_7(grip: Coupling, low: float, high: float) -> None:
    """V2: table 7 (page 18), under 75 cm and from there on."""
    assert (coupling(grip, LOW_CM), coupling(grip, HIGH_CM)) == (low, high)


@pytest.mark.parametrize(("reach_in", "printed", "formula"), [(22, 0.46, 0.4545), (23, 0.44, 0.4348)])
def test_where_the_printed_horizontal_multiplier_is_not_the_formula(
    reach_in: float, printed: float, formula: float
) -> None:
    """V2: table 1 in inches prints .46 and .44 where 10/H gives less; with 25/H in cm besides 25.4 for 10 in, within
    a hundredth of it.
    """
    assert 10 / reach_in == pytest.approx(formula, abs=0.00005)
    found = horizontal(reach_in * INCH_CM)
    assert found == pytest.approx(formula, abs=0.01)
    assert found == pytest.approx(printed, abs=0.02)


def test_where_the_printed_distance_multiplier_is_not_the_formula() -> None:
    """V2: table 3, metric, prints .86 at 130 cm; the formula gives .8546."""
    assert distance(130) == pytest.approx(0.8546, abs=0.00005)
    assert distance(130) == pytest.approx(0.86, abs=0.01)


def test_the_load_constants_of_both_systems() -> None:
    """V2: 23 kg and 51 lb, which is 23.13 kg: they differ by 0.6 %."""
    assert LOAD_CONSTANT_KG == 23
    assert pytest.approx(1.006, abs=0.0005) == 51 * POUND_KG / LOAD_CONSTANT_KG


@pytest.mark.parametrize(
    ("depth_cm", "height_cm", "reach_cm"), [(30, 25, 35), (30, 24.9, 40), (40, 100, 40), (40, 0, 45), (86, 80, 63)]
)
def test_reach_where_it_cannot_be_measured(depth_cm: float, height_cm: float, reach_cm: float) -> None:
    """V2: H = 20 + W/2 cm from 25 cm of height on, else 25 + W/2 (8 + W/2 and 10 + W/2 in inches); sums V1."""
    assert reach_from_width_cm(depth_cm, height_cm) == pytest.approx(reach_cm)
    in_inches = (8 if height_cm >= 25 else 10) + depth_cm / INCH_CM / 2
    assert in_inches * INCH_CM == pytest.approx(reach_cm, abs=0.41)


def test_what_an_index_means() -> None:
    """V2: the manual aims at 1 or less; over 3 many people are at risk."""
    assert (GOAL, HIGH_INDEX) == (1.0, 3.0)
    assert lifting_index(23.0, Lift(25, 75, 25)) == GOAL


def test_a_limit_of_given_multipliers() -> None:
    """V1: HM .625 and CM .95 alone: 13.656 kg (made up: at 75 cm a fair grip would count 1.00)."""
    assert LOAD_CONSTANT_KG * Multipliers(0.625, 1, 1, 1, 1, 0.95).product == pytest.approx(13.656, abs=0.0005)


def _inches(
    reach: float, height: float, travel: float, twist: float = 0.0, rate: float = 0.2,
    grip: Coupling = Coupling.FAIR, origin: float | None = None,
) -> Lift:  # fmt: skip
    return Lift(
        reach * INCH_CM, height * INCH_CM, travel * INCH_CM, twist, rate, Duration.SHORT, grip,
        None if origin is None else origin * INCH_CM,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("lift", "printed", "limit_lb", "load_lb", "index"),
    [
        # example 4, package inspection (V2; the load, and the reach at the destination, MEM)
        (_inches(10, 22, 37, rate=3), (1.0, 0.94, 0.87, 1, 0.88, 0.95), 34.9, 26, 0.7),
        (_inches(20, 59, 37, rate=3, origin=22), (0.50, 0.78, 0.87, 1, 0.88, 1.0), 15.2, 26, 1.7),
        # example 1, loading a punch press (MEM 95 %, arithmetic V1)
        (_inches(23, 15, 49), (0.44, 0.89, 0.86, 1, 1, 0.95), 16.3, 44, 2.7),
        (_inches(23, 64, 49), (0.44, 0.75, 0.86, 1, 1, 1), 14.5, 44, 3.0),
        # example 2, loading supply rolls (MEM 95 %, arithmetic V1)
        (_inches(15, 27, 17, grip=Coupling.POOR), (0.67, 0.98, 0.93, 1, 1, 0.90), 28.0, 35, 1.3),
        (_inches(20, 10, 17, grip=Coupling.POOR), (0.50, 0.85, 0.93, 1, 1, 0.90), 18.1, 35, 1.9),
        # example 3, bags into a hopper (MEM 95 %, arithmetic V1)
        (_inches(18, 15, 21, 45), (0.56, 0.89, 0.91, 0.86, 1, 0.95), 18.9, 40, 2.1),
        # example 5, dish washing, at the origin only (MEM 90 %, arithmetic V1)
        (_inches(20, 44, 37, 30, rate=5), (0.50, 0.90, 0.87, 0.90, 0.80, 1.0), 14.4, 20, 1.4),
    ],
)
def test_worksheets_of_the_manual(
    lift: Lift, printed: tuple[float, ...], limit_lb: float, load_lb: float, index: float
) -> None:
    """Pages 33 to 46: multipliers as printed within ±0.02 (two digits, and 10 in is 25.4 cm), the limit and the index
    as the worksheet works them out from the rounded ones; ours, with the load constant and the least reach of the
    system in pounds and inches, within 4 % of the printed limit: the best height is 30 in there, 75 cm here, and the
    rounding of the worksheet is within that.
    """
    found = multipliers(lift)
    ours = (found.horizontal, found.vertical, found.distance, found.asymmetry, found.frequency, found.coupling)
    assert ours == pytest.approx(printed, abs=0.02)
    product = 51.0
    for factor in printed:
        product *= factor
    assert product == pytest.approx(limit_lb, abs=0.06)
    least_reach = 25.4 / 25 if lift.reach_cm >= 25.4 else lift.reach_cm / 25
    assert 51 * found.product * least_reach == pytest.approx(limit_lb, rel=0.04)
    assert load_lb / limit_lb == pytest.approx(index, abs=0.06)


def test_no_reach_and_no_twist_take_nothing_off() -> None:
    """V2: up to 25 cm HM is 1, and AM is 1 straight ahead, 0.71 at 90° and 0.57 at 135°."""
    assert (horizontal(10), asymmetry(0)) == (1, 1)
    assert (asymmetry(90), asymmetry(135)) == pytest.approx((0.712, 0.568))
