"""Screw withdrawal and board tolerances against published values. Marks: V1 recomputed, V2 read second-hand."""

import pytest

from baywright.checks.tolerance import Deviation, likely_case, plywood_thickness, worst_case
from baywright.checks.withdrawal import (
    POUND_FORCE_N,
    lag_n_per_mm,
    nail_n_per_mm,
    reference_n,
    reference_n_per_mm,
    ultimate_n,
)

INCH = 25.4


@pytest.mark.parametrize(
    ("gravity", "diameter_in", "pounds_an_inch"),
    [(0.45, 0.190, 109.65), (0.50, 0.164, 116.85), (0.50, 0.190, 135.4), (0.67, 0.164, 209.8), (0.42, 0.164, 82.4)],
)
def test_withdrawal_of_wood_screws(gravity: float, diameter_in: float, pounds_an_inch: float) -> None:
    """NDS 2018, eq. 12.2-2 (V2, the published example prints 109 for the first row; the others V1)."""
    found = reference_n_per_mm(gravity, diameter_in * INCH)
    assert found == pytest.approx(pounds_an_inch * POUND_FORCE_N / INCH, rel=0.001)


@pytest.mark.parametrize(("gravity", "diameter_in", "n_mm"), [(0.50, 0.164, 20.46), (0.50, 0.190, 23.71)])
def test_the_same_in_newtons_a_millimetre(gravity: float, diameter_in: float, n_mm: float) -> None:
    """V1: No. 8 and No. 10 in wood of G 0.50."""
    assert reference_n_per_mm(gravity, diameter_in * INCH) == pytest.approx(n_mm, abs=0.006)


def test_a_nail_of_a_published_example() -> None:
    """V2 and V1: American Wood Council, solved example E2.1a: 8d nail, D 0.131 in, G 0.42: 20.67 lb/in, 49.5 lb
    in 2.395 in of wood.
    """
    found = nail_n_per_mm(0.42, 0.131 * INCH)
    assert found * INCH / POUND_FORCE_N == pytest.approx(20.67, abs=0.006)
    assert found * 2.395 * INCH / POUND_FORCE_N == pytest.approx(49.5, abs=0.06)


def test_a_lag_screw_of_a_published_example() -> None:
    """V2: American Wood Council, solved example E2.3: ½ × 4 in, G 0.55: 955 lb = 4.248 kN. The thread without its tip,
    2 3/16 in, is MEM 90 % (½ in lag screws of 4 in, NDS table L2).
    """
    newtons = lag_n_per_mm(0.55, 0.5 * INCH) * 2.1875 * INCH
    assert newtons / POUND_FORCE_N == pytest.approx(955, abs=0.5)
    assert newtons == pytest.approx(4248, abs=2)


def test_with_too_little_thread_nothing_is_counted() -> None:
    """V2: NDS, least penetration six diameters."""
    assert reference_n(0.5, 4.0, 23.9) == 0
    assert reference_n(0.5, 4.0, 24.0) > 0


@pytest.mark.parametrize(
    ("nominal", "sanded", "over", "under"),
    [
        (12, True, 0.56, 0.76), (18, True, 0.74, 0.94), (24, True, 0.92, 1.12), (30, True, 1.10, 1.30),
        (18, False, 1.34, 0.94),
    ],
)  # fmt: skip
def test_thickness_of_plywood(nominal: float, sanded: bool, over: float, under: float) -> None:
    """EN 315:2000 (formula V2, evaluated V1; a maker's table prints the same, rounded to tenths)."""
    assert plywood_thickness(nominal, sanded=sanded) == pytest.approx((under, over))


def test_worst_and_likely_case_of_four_boards() -> None:
    """V1: elementary; four equal independent deviations of ±0.5 add to ±2 at worst and to ±1 as root-sum-square."""
    four = [Deviation("side", 0.5, 0.5)] * 4
    assert (worst_case(four).least_mm, worst_case(four).most_mm) == (-2.0, 2.0)
    assert (likely_case(four).least_mm, likely_case(four).most_mm) == pytest.approx((-1.0, 1.0))
    assert worst_case([Deviation("taken off", 0.2, 0.1, times=-2)]).most_mm == pytest.approx(0.4)


def test_where_a_screw_tears_out() -> None:
    """Wood Handbook, eq. 8-10 (MEM 85 %, arithmetic V1): 15 700·G²·D·L lb; 2,863 N for a No. 8 with 1 in in G 0.50."""
    assert ultimate_n(0.50, 4.166, 25.4) == pytest.approx(2863, rel=0.001)
    in_pounds = 15_700 * 0.5**2 * (4.166 / INCH) * 1.0 * POUND_FORCE_N
    assert ultimate_n(0.50, 4.166, 25.4) == pytest.approx(in_pounds, rel=0.0005)
    assert ultimate_n(0.5, 5, 40) / reference_n(0.5, 5, 40) == pytest.approx(5.51, abs=0.01)
