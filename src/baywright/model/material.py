"""What board materials are able to do: stiffness, density, and where the figures come from. The only such table.

Laws: a material that is not in the table is unknown, and what depends on it is not checked; of stiffness the lower end
of a range is taken, of density the middle. Both differ from sheet to sheet: the maker's declaration comes first.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from baywright.model.safety import BoardMaterial


@dataclass(frozen=True)
class Stiffness:
    """Elastic modulus along the board in bending, shear modulus (None: not known, shear left out), density."""

    elastic_n_mm2: float
    shear_n_mm2: float | None
    specific_gravity: float
    """For screw withdrawal: oven-dry mass over that of as much water."""
    creep: str
    """Its line in the table of deformation factors."""
    source: str
    density_kg_m3: float
    """As boards lie in a heated room."""
    density_source: str


MATERIALS: Mapping[BoardMaterial, Stiffness] = {
    BoardMaterial.BIRCH_PLYWOOD: Stiffness(
        6_960.0, None, 0.60, "plywood",
        "Wood Handbook (GTR-190), table 12-1, lower end for plywood; from memory, 85 %",
        680.0, "From memory; makers print 640 to 720",
    ),
    BoardMaterial.FIBREBOARD: Stiffness(
        2_200.0, None, 0.70, "mdf.la",
        "EN 622-5, least mean value for 12 to 19 mm; from memory, 90 %. The creep is that of MDF.LA, for the dry only",
        740.0, "From memory; makers print 700 to 780 for boards of 12 to 19 mm",
    ),
    BoardMaterial.PARTICLEBOARD: Stiffness(
        1_600.0, None, 0.62, "particleboard p4",
        "EN 312, type P2, over 13 to 20 mm; from memory, 90 %. P2 is no structural board and not in table 3.2 of "
        "EN 1995-1-1: the creep of P4 is a choice, not the standard",
        660.0, "From memory; makers print 620 to 700",
    ),
    BoardMaterial.STRAND_BOARD: Stiffness(
        4_410.0, None, 0.60, "osb/3", "Wood Handbook, table 12-1; read second-hand",
        620.0, "From memory; makers print 600 to 640",
    ),
    BoardMaterial.RED_OAK: Stiffness(
        12_548.0, None, 0.56, "solid timber", "Architectural Woodwork Standards 2009, 1.82·10⁶ psi; read second-hand",
        705.0, "Wood Handbook, table 5-3: specific gravity 0.63 at 12 % moisture, so 0.63 × 1.12; from memory, 85 %",
    ),
    BoardMaterial.SPRUCE: Stiffness(
        11_000.0, 690.0, 0.42, "solid timber", "EN 338, C24; read second-hand",
        420.0, "EN 338, C24, mean density; from memory, 90 %",
    ),
}  # fmt: skip
