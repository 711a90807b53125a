"""The lifting equation against the worked examples of its manual and its limits.

Marks: V1 recomputed from the formulas, V2 read second-hand, MEM from memory (inputs), each named at the row.
"""

import pytest

from baywright.checks.composite import Task, composite_index
from baywright.planner.lifting import (
    Coupling,
    Duration,
    Lift,
    frequency,
    horizontal,
    lifting_index,
    recommended_kg,
    vertical,
)

POUND_KG = 0.45359237


def lift(
    reach_in: float, height_in: float, travel_in: float, twist: float = 0.0, rate: float = 0.2,
    grip: Coupling = Coupling.GOOD, origin_in: float | None = None,
) -> Lift:  # fmt: skip
    """A lift given in inches, as the manual's examples are."""
    origin = None if origin_in is None else origin_in * 2.54
    return Lift(reach_in * 2.54, height_in * 2.54, travel_in * 2.54, twist, rate, Duration.SHORT, grip, origin)


@pytest.mark.parametrize(
    ("found", "limit_kg", "load_lb", "index"),
    [
        # example 4, package inspection: V2 (the load of 26 lb MEM)
        (lift(10, 22, 37, rate=3, grip=Coupling.FAIR), 15.48, 26, 0.76),
        (lift(20, 59, 37, rate=3, grip=Coupling.FAIR, origin_in=22), 6.70, 26, 1.76),
        # example 1, loading a punch press: inputs MEM, arithmetic V1
        (lift(23, 15, 49, grip=Coupling.FAIR), 7.12, 44, 2.80),
        (lift(23, 64, 49, grip=Coupling.FAIR), 6.21, 44, 3.21),
        # example 2, loading supply rolls: inputs MEM, arithmetic V1
        (lift(15, 27, 17, grip=Coupling.POOR), 12.31, 35, 1.29),
        (lift(20, 10, 17, grip=Coupling.POOR), 8.01, 35, 1.98),
        # example 3, bags into a hopper: inputs MEM, arithmetic V1
        (lift(18, 15, 21, 45, grip=Coupling.FAIR), 8.23, 40, 2.21),
        # example 5, dish washing, origin: inputs MEM, arithmetic V1
        (lift(20, 44, 37, 30, rate=5), 6.32, 20, 1.44),
    ],
)
def test_examples_of_the_manual_in_metric(found: Lift, limit_kg: float, load_lb: float, index: float) -> None:
    """Applications Manual for the Revised NIOSH Lifting Equation, DHHS (NIOSH) 94-110, pages 33 to 46."""
    assert recommended_kg(found) == pytest.approx(limit_kg, abs=0.06)  # 51 lb is 23.13 kg: the two systems differ
    assert lifting_index(load_lb * POUND_KG, found) == pytest.approx(index, abs=0.02)


@pytest.mark.parametrize(
    ("found", "limit_kg"),
    [
        (Lift(25, 75, 25), 23.000),
        (Lift(40, 20, 60, lifts_a_minute=1, coupling=Coupling.FAIR), 9.593),
        (Lift(40, 150, 75, lifts_a_minute=1), 9.216),
        (Lift(63, 175, 175, 135), 3.069),
        (Lift(50, 30, 70, 45, lifts_a_minute=3, coupling=Coupling.POOR), 5.964),
    ],
)
def test_derived_limits(found: Lift, limit_kg: float) -> None:
    """V1: computed by hand from the formulas."""
    assert recommended_kg(found) == pytest.approx(limit_kg, abs=0.001)


@pytest.mark.parametrize(
    "found",
    [Lift(63.1, 75, 25), Lift(25, 175.1, 25), Lift(25, 75, 175.1), Lift(25, 75, 25, 135.1), Lift(25, 75, 25, 0, 15.1)],
)
def test_outside_its_limits_nothing_may_be_lifted(found: Lift) -> None:
    """V2: the manual's limits of every multiplier."""
    assert recommended_kg(found) == 0
    assert lifting_index(1.0, found) == float("inf")


@pytest.mark.parametrize(("reach", "expected"), [(28, 0.89), (30, 0.83), (40, 0.63), (50, 0.50), (63, 0.40)])
def test_horizontal_multipliers_of_table_1(reach: float, expected: float) -> None:
    """V2: table 1, metric column; the formula agrees within a hundredth."""
    assert horizontal(reach) == pytest.approx(expected, abs=0.01)


@pytest.mark.parametrize(
    ("height", "expected"), [(0, 0.78), (30, 0.87), (50, 0.93), (75, 1.0), (100, 0.93), (150, 0.78), (175, 0.70)]
)
def test_vertical_multipliers_of_table_2(height: float, expected: float) -> None:
    """V2: table 2, metric column."""
    assert vertical(height) == pytest.approx(expected, abs=0.01)


@pytest.mark.parametrize(
    ("rate", "duration", "height", "expected"),
    [
        (0.1, Duration.LONG, 50, 0.85), (1, Duration.SHORT, 50, 0.94), (12, Duration.SHORT, 50, 0.37),
        (13, Duration.SHORT, 50, 0.0), (13, Duration.SHORT, 75, 0.34), (15, Duration.SHORT, 80, 0.28),
        (10, Duration.MODERATE, 50, 0.26), (11, Duration.MODERATE, 50, 0.0), (9, Duration.LONG, 50, 0.0),
        (9, Duration.LONG, 75, 0.15), (3.5, Duration.SHORT, 50, 0.86), (5.333, Duration.LONG, 50, 0.3234),
    ],
)  # fmt: skip
def test_frequency_multipliers_of_table_5(rate: float, duration: Duration, height: float, expected: float) -> None:
    """V2: table 5 (page 15), straight between its lines; 5.33 a minute is the manual's special adjustment (page 16)."""
    assert frequency(rate, duration, height) == pytest.approx(expected, abs=0.001)


def test_three_tasks_in_turn() -> None:
    """The manual's example of page 28 (MEM 90 %, arithmetic V1): loads 30, 20, 10 lb at 1, 2, 4 lifts a minute."""
    limits_lb, loads_lb, rates = (20.0, 20.0, 15.0), (30.0, 20.0, 10.0), (1.0, 2.0, 4.0)
    tasks = []
    for limit, load, rate in zip(limits_lb, loads_lb, rates, strict=True):
        # A lift whose limit without frequency is that of the example: half by reach, the rest by turning.
        twist = (1.0 - limit * POUND_KG / 11.5) / 0.0032
        tasks.append(Task(load * POUND_KG, Lift(50, 75, 25, twist, lifts_a_minute=rate)))
    assert [round(task.once, 2) for task in tasks] == [1.5, 1.0, 0.67]
    assert [round(task.alone, 1) for task in tasks] == [1.6, 1.1, 0.8]
    assert composite_index(tasks) == pytest.approx(1.87, abs=0.01)
    assert composite_index([]) == 0
    assert composite_index(tasks[:1]) == tasks[0].alone
