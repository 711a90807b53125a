"""How boards creep, against the whole published table. Marks: V1 recomputed, V2 read second-hand."""

import pytest

from baywright.checks.creep import DEFORMATION_FACTORS, ServiceClass, deformation_factor, final_deflection_mm

TABLE: dict[str, tuple[float | None, float | None, float | None]] = {
    "solid timber": (0.60, 0.80, 2.00),
    "plywood": (0.80, 1.00, 2.50),
    "osb/2": (2.25, None, None),
    "osb/3": (1.50, 2.25, None),
    "particleboard p4": (2.25, None, None),
    "particleboard p5": (2.25, 3.00, None),
    "particleboard p6": (1.50, None, None),
    "particleboard p7": (1.50, 2.25, None),
    "hardboard hb.la": (2.25, None, None),
    "hardboard hb.hla": (2.25, 3.00, None),
    "fibreboard mbh.la": (3.00, None, None),
    "fibreboard mbh.hls": (3.00, 4.00, None),
    "mdf.la": (2.25, None, None),
    "mdf.hls": (2.25, 3.00, None),
}
"""V2: EN 1995-1-1:2004, table 3.2, k_def in service classes 1, 2, 3, through a national standard that reprints it."""


@pytest.mark.parametrize("material", TABLE)
def test_deformation_factors(material: str) -> None:
    """V2: EN 1995-1-1:2004, table 3.2; a dash in it is no value here either."""
    assert tuple(deformation_factor(material, climate) for climate in ServiceClass) == TABLE[material]


def test_the_table_has_no_line_more_than_the_standard() -> None:
    """V2: furniture particleboard (P2) is not in table 3.2; whoever reckons with P4 instead says so."""
    assert set(DEFORMATION_FACTORS) == set(TABLE)


@pytest.mark.parametrize(("factor", "final"), [(0.6, 3.2), (0.8, 3.6), (1.5, 5.0), (2.25, 6.5), (3.0, 8.0)])
def test_creep_of_two_millimetres(factor: float, final: float) -> None:
    """V1: u_fin = u_inst · (1 + k_def)."""
    assert final_deflection_mm(2.0, factor) == pytest.approx(final)


@pytest.mark.parametrize(
    ("at_once", "seasoned", "unseasoned"), [(5.109, 7.664, 10.219), (7.983, 11.975, 15.967), (1.825, 2.737, 3.650)]
)
def test_the_long_term_factors_of_the_american_standard(at_once: float, seasoned: float, unseasoned: float) -> None:
    """V2: NDS 3.5.2, 1.5 for seasoned and 2.0 for unseasoned wood, as an extra of 0.5 and 1.0; products V1."""
    found = [final_deflection_mm(at_once, extra) for extra in (0.5, 1.0)]
    assert found == pytest.approx([seasoned, unseasoned], abs=0.0015)
