"""What boards are able to do: stiffness, density, and where the figures come from.

Laws: a material that is not in the table is unknown, and what depends on it is not checked; the lower end of a range is
taken. Stiffness differs from sheet to sheet: the maker's declaration comes first.
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


MATERIALS: Mapping[BoardMaterial, Stiffness] = {
    BoardMaterial.BIRCH_PLYWOOD: Stiffness(
        6_960.0, None, 0.60, "plywood",
        "Wood Handbook (GTR-190), table 12-1, lower end for plywood; from memory, 85 %",
    ),
    BoardMaterial.FIBREBOARD: Stiffness(
        2_200.0, None, 0.70, "mdf", "EN 622-5, least mean value for 12 to 19 mm; from memory, 90 %"
    ),
    BoardMaterial.PARTICLEBOARD: Stiffness(
        1_600.0, None, 0.62, "particleboard p4",
        "EN 312, type P2, over 13 to 20 mm; from memory, 90 %. P2 is no structural board and not in table 3.2 of "
        "EN 1995-1-1: the creep of P4 is a choice, not the standard",
    ),
    BoardMaterial.STRAND_BOARD: Stiffness(4_410.0, None, 0.60, "osb/3", "Wood Handbook, table 12-1; read second-hand"),
    BoardMaterial.RED_OAK: Stiffness(
        12_548.0, None, 0.56, "solid timber", "Architectural Woodwork Standards 2009, 1.82·10⁶ psi; read second-hand"
    ),
    BoardMaterial.SPRUCE: Stiffness(11_000.0, 690.0, 0.42, "solid timber", "EN 338, C24; read second-hand"),
}  # fmt: skip
