"""Stiffness of boards and usual loads against the tables they are taken from.

Marks: V1 recomputed, V2 read second-hand, MEM from memory, as also stands beside each figure in the program.
"""

import pytest

from baywright.model.material import MATERIALS
from baywright.model.safety import BoardMaterial, Safety

PSI_N_MM2 = 0.006894757
POUND_KG, FOOT_M = 0.45359237, 0.3048


@pytest.mark.parametrize(
    ("material", "elastic_n_mm2"),
    [
        (BoardMaterial.RED_OAK, 1.82e6 * PSI_N_MM2),  # V2: Architectural Woodwork Standards 2009, northern red oak
        (BoardMaterial.STRAND_BOARD, 4410),  # V2: Wood Handbook (GTR-190), table 12-1, lower end of 4.41 to 6.28 GPa
        (BoardMaterial.BIRCH_PLYWOOD, 6960),  # MEM 85 %: the same table, lower end of 6.96 to 8.55 GPa for plywood
        (BoardMaterial.PARTICLEBOARD, 1600),  # MEM 90 %: EN 312, P2, over 13 to 20 mm
        (BoardMaterial.FIBREBOARD, 2200),  # MEM 90 %: EN 622-5, over 12 to 19 mm
        (BoardMaterial.SPRUCE, 11_000),  # V2: C24 as in Benoit, Legrand, Tastet 2008, ex. 2.3.1, with G 690
    ],
)
def test_elastic_moduli(material: BoardMaterial, elastic_n_mm2: float) -> None:
    assert MATERIALS[material].elastic_n_mm2 == pytest.approx(elastic_n_mm2, rel=5e-5)


def test_the_shear_modulus_of_spruce() -> None:
    """V2: 690 N/mm² for C24, in the same example."""
    assert MATERIALS[BoardMaterial.SPRUCE].shear_n_mm2 == 690


@pytest.mark.parametrize(
    ("pounds_a_square_foot", "kg_m2"),
    [
        (40, 195.3),  # V2: Architectural Woodwork Standards 2009, page 253: shelves in general
        (50, 244.1),  # V2: the same, shelves for books
        (15, 73.2),  # V2 for drawers, MEM 85 % for shelves: ANSI/KCMA A161.1
    ],
)
def test_usual_loads_in_kg_a_square_metre(pounds_a_square_foot: float, kg_m2: float) -> None:
    assert pounds_a_square_foot * POUND_KG / FOOT_M**2 == pytest.approx(kg_m2, abs=0.06)


def test_a_shelf_is_loaded_as_that_standard_says_until_the_owner_says_otherwise() -> None:
    assert Safety().shelf_load_kg_m2 == pytest.approx(40 * POUND_KG / FOOT_M**2, abs=0.5)


def test_fifteen_pounds_a_square_foot_in_pascals() -> None:
    """V2: 718 Pa."""
    assert pytest.approx(718, abs=0.5) == 15 * POUND_KG / FOOT_M**2 * 9.80665
