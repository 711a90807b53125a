"""Sag against worked examples, published span tables and the elementary beam formulas.

Marks: V1 read in the source or recomputed here, V2 read second-hand, MEM from memory.
"""

import pytest

from baywright.checks.beam import Case, Section, deflection_mm, weight_n
from baywright.checks.span import ORIGINS, allowed_mm, origin

PSI = 0.006894757
INCH = 25.4


@pytest.mark.parametrize(
    ("elastic", "uniform", "clamped", "point", "point_clamped"),
    [(2500, 5.109, 1.022, 8.175, 2.044), (1600, 7.983, 1.597, 12.773, 3.193), (7000, 1.825, 0.365, 2.920, 0.730)],
)
def test_a_shelf_of_900_by_300_by_18_under_20_kg(
    elastic: float, uniform: float, clamped: float, point: float, point_clamped: float
) -> None:
    """V1: the equation of the Wood Handbook (GTR-113, eq. 8-2), recomputed by hand; bending only."""
    section = Section(300, 18)
    assert section.second_moment_mm4 == pytest.approx(145_800)
    load = weight_n(20)
    cases = (Case.UNIFORM_SIMPLE, Case.UNIFORM_CLAMPED, Case.POINT_SIMPLE, Case.POINT_CLAMPED)
    found = [deflection_mm(case, load, 900, section, elastic) for case in cases]
    assert found == pytest.approx([uniform, clamped, point, point_clamped], abs=0.0006)


@pytest.mark.parametrize(
    ("load_n_mm", "bending", "whole"), [(0.75, 7.281, 7.501), (1.0, 9.708, 10.001), (0.306, None, 3.060)]
)
def test_a_rafter_of_75_by_200_over_4500(load_n_mm: float, bending: float | None, whole: float) -> None:
    """V2, recomputed V1: Benoit, Legrand, Tastet, *Calcul de structures en bois*, Eyrolles–AFNOR 2008, ex. 2.3.1."""
    section, load = Section(75, 200), load_n_mm * 4500
    if bending is not None:
        assert deflection_mm(Case.UNIFORM_SIMPLE, load, 4500, section, 11_000) == pytest.approx(bending, abs=0.0006)
    assert deflection_mm(Case.UNIFORM_SIMPLE, load, 4500, section, 11_000, 690) == pytest.approx(whole, abs=0.0006)


def test_the_same_rafter_after_years() -> None:
    """V2: the same example, w_net,fin = 13.06 mm: 10.001 mm at once and creep of the lasting load."""
    section = Section(75, 200)
    creep = deflection_mm(Case.UNIFORM_SIMPLE, 0.306 * 4500, 4500, section, 11_000, 690)
    at_once = deflection_mm(Case.UNIFORM_SIMPLE, 1.0 * 4500, 4500, section, 11_000, 690)
    assert at_once + creep == pytest.approx(13.06, abs=0.005)


@pytest.mark.parametrize(
    ("elastic_psi", "thickness_in", "at_40_psf", "at_50_psf", "exactly"),
    [
        (0.95e6, 0.75, 40, 37, (40.03, 37.16)), (0.95e6, 1.0, 53, 49, (53.37, 49.54)),
        (1.80e6, 0.75, 49, 46, (49.53, 45.98)), (1.80e6, 1.0, 66, 61, (66.04, 61.30)),
        (1.82e6, 0.75, 49, 46, (49.71, 46.15)), (1.82e6, 1.0, 66, 61, (66.28, 61.53)),
    ],
)  # fmt: skip
def test_longest_shelves_of_a_published_table(
    elastic_psi: float, thickness_in: float, at_40_psf: int, at_50_psf: int, exactly: tuple[float, float]
) -> None:
    """V2: *Architectural Woodwork Standards*, 1st edition 2009, 4.4.14.10: limit span/144, load 40 or 50 lb/ft²; V1:
    the exact spans, L³ = 384·E·t³/(60·w).
    """
    section = Section(12 * INCH, thickness_in * INCH)
    for pounds_a_square_foot, longest_in, exact_in in zip((40, 50), (at_40_psf, at_50_psf), exactly, strict=True):
        load_n_mm = pounds_a_square_foot / 144 * PSI * section.width_mm
        trial = 1000.0
        sag = deflection_mm(Case.UNIFORM_SIMPLE, load_n_mm * trial, trial, section, elastic_psi * PSI)
        span = trial * (trial / 144 / sag) ** (1 / 3)  # sag over span grows with the third power of the span
        assert span / INCH == pytest.approx(exact_in, abs=0.006)
        assert span / INCH == pytest.approx(longest_in, abs=1.0)
        assert round(span / INCH - 0.25) <= longest_in


@pytest.mark.parametrize(
    ("case", "bending", "shear"),
    [
        (Case.UNIFORM_SIMPLE, 5 / 384, 1 / 8), (Case.UNIFORM_CLAMPED, 1 / 384, 1 / 8),
        (Case.POINT_SIMPLE, 1 / 48, 1 / 4),
        (Case.POINT_CLAMPED, 1 / 192, 1 / 4), (Case.UNIFORM_CANTILEVER, 1 / 8, 1 / 2),
        (Case.POINT_CANTILEVER, 1 / 3, 1),
    ],
)  # fmt: skip
def test_coefficients_of_the_handbook(case: Case, bending: float, shear: float) -> None:
    """MEM 95 %: Wood Handbook, table 9-1 (GTR-190), k_b and k_s; a library solves the bending ones anew."""
    assert (case.bending, case.shear) == (bending, shear)


@pytest.mark.parametrize(
    ("case", "moment"),
    [
        (Case.UNIFORM_SIMPLE, 1 / 8), (Case.POINT_SIMPLE, 1 / 4), (Case.UNIFORM_CANTILEVER, 1 / 2),
        (Case.POINT_CANTILEVER, 1.0),
    ],
)  # fmt: skip
def test_shear_deflects_as_far_as_the_moment_says(case: Case, moment: float) -> None:
    """V1: γ = V/(G·A′) and M′ = V, so the deflection by shear is the moment there over G·A′ (at a cantilever's end the
    moment at its root); greatest moments W·L/8, W·L/4, W·L/2, W·L.
    """
    section, load = Section(300, 18), 196.0
    by_shear = deflection_mm(case, load, 900, section, 1e12, 690)
    assert by_shear == pytest.approx(moment * load * 900 / (690 * section.shear_area_mm2), rel=1e-4)


def test_the_formula_of_the_european_fibreboard_makers() -> None:
    """V2: technical guide of the European MDF association, d = 5·W·L³·9.81/(32·E·b·t³), W in kg; V1: 5.109 mm."""
    theirs = 5 * 20 * 900**3 * 9.81 / (32 * 2500 * 300 * 18**3)
    assert theirs == pytest.approx(5.109, abs=0.0006)
    assert deflection_mm(Case.UNIFORM_SIMPLE, weight_n(20), 900, Section(300, 18), 2500) == pytest.approx(theirs)


@pytest.mark.parametrize(
    ("ratio", "span_mm", "allowed"),
    [
        (384, 900, 2.34),  # V2: Building Furniture, 2007, page 25
        (600, 900, 1.50),  # V2: the same
        (140, 48 * INCH, 0.343 * INCH),  # V2: ANSI MH28.1, 48 in
        (200, 900, 4.50),  # common practice
        (300, 900, 3.00),  # common practice
        (144, 900, 6.25),  # V2: Architectural Woodwork Standards 2009; quotient V1
        (240, 900, 3.75),  # V2: Composite Panel Association; quotient V1
    ],
)  # fmt: skip
def test_how_far_boards_may_sag(ratio: float, span_mm: float, allowed: float) -> None:
    assert allowed_mm(span_mm, ratio) == pytest.approx(allowed, abs=0.005)
    assert ratio in ORIGINS


def test_a_ratio_of_the_owner_is_nobody_elses() -> None:
    assert origin(200) == "common practice"
    assert origin(250) == "chosen by the owner"
