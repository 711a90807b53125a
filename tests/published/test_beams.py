"""Sag against worked examples, published span tables and the elementary beam formulas.

Marks: V1 read in the source or recomputed here, V2 read second-hand, MEM from memory.
"""

import pytest

from baywright.checks.beam import Case, Section, deflection_mm, weight_n
from baywright.checks.creep import ServiceClass, deformation_factor, final_deflection_mm

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
    ("elastic_psi", "thickness_in", "at_40_psf", "at_50_psf"),
    [
        (0.95e6, 0.75, 40, 37), (0.95e6, 1.0, 53, 49), (1.80e6, 0.75, 49, 46),
        (1.80e6, 1.0, 66, 61), (1.82e6, 0.75, 49, 46), (1.82e6, 1.0, 66, 61),
    ],
)  # fmt: skip
def test_longest_shelves_of_a_published_table(
    elastic_psi: float, thickness_in: float, at_40_psf: int, at_50_psf: int
) -> None:
    """V2: *Architectural Woodwork Standards*, 1st edition 2009, 4.4.14.10: limit span/144, load 40 or 50 lb/ft²."""
    section = Section(12 * INCH, thickness_in * INCH)
    for pounds_a_square_foot, longest_in in ((40, at_40_psf), (50, at_50_psf)):
        load_n_mm = pounds_a_square_foot / 144 * PSI * section.width_mm
        trial = 1000.0
        sag = deflection_mm(Case.UNIFORM_SIMPLE, load_n_mm * trial, trial, section, elastic_psi * PSI)
        span = trial * (trial / 144 / sag) ** (1 / 3)  # sag over span grows with the third power of the span
        assert span / INCH == pytest.approx(longest_in, abs=1.0)
        assert round(span / INCH - 0.25) <= longest_in


@pytest.mark.parametrize(
    ("material", "service_class", "factor"),
    [
        ("solid timber", "1", 0.60), ("solid timber", "3", 2.00), ("plywood", "1", 0.80), ("plywood", "2", 1.00),
        ("osb/3", "1", 1.50), ("osb/3", "2", 2.25), ("particleboard p5", "1", 2.25), ("mdf", "2", 3.00),
        ("mdf", "3", None),
    ],
)  # fmt: skip
def test_deformation_factors(material: str, service_class: str, factor: float | None) -> None:
    """V2: EN 1995-1-1:2004, table 3.2, through a national standard that reprints it."""
    assert deformation_factor(material, ServiceClass(service_class)) == factor


@pytest.mark.parametrize(("factor", "final"), [(0.6, 3.2), (0.8, 3.6), (1.5, 5.0), (2.25, 6.5), (3.0, 8.0)])
def test_creep_of_two_millimetres(factor: float, final: float) -> None:
    """V1: u_fin = u_inst · (1 + k_def)."""
    assert final_deflection_mm(2.0, factor) == pytest.approx(final)
