"""How far a board bends between its supports: bending and shear deflection of a beam of rectangular section.

    deflection = k_b · W · L³ / (E · I) + k_s · W · L / (G · A′),  A′ = 5/6 · b · h

with W the whole load, and k_b and k_s by load and support. Source: Wood Handbook, “Structural Analysis Equations”,
eq. (8-2) of GTR-113 (1999), (9-2) in the editions of 2010 and 2021; read second-hand. The coefficients follow from
beam theory and are recomputed by the tests. All lengths mm, forces N, moduli N/mm².

Law: deflection is instantaneous; what stays on the board for years bends it further by creep (`creep_factor`).
"""

from dataclasses import dataclass
from enum import Enum

GRAVITY_M_S2 = 9.81


class Case(Enum):
    """Load and support: coefficients of bending (k_b) and shear (k_s), at the place of the greatest deflection."""

    UNIFORM_SIMPLE = (5 / 384, 1 / 8)
    UNIFORM_CLAMPED = (1 / 384, 1 / 8)
    POINT_SIMPLE = (1 / 48, 1 / 4)
    POINT_CLAMPED = (1 / 192, 1 / 4)
    UNIFORM_TWO_SPANS = (0.009151, 1 / 8)
    """Two equal spans that run through, with the load on one of them, the worse case: 0.00915 w·l⁴/(E·I) at 0.47 l,
    elementary beam theory; W and L are those of one span.
    """
    UNIFORM_CANTILEVER = (1 / 8, 1 / 2)
    POINT_CANTILEVER = (1 / 3, 1.0)

    @property
    def bending(self) -> float:
        """k_b."""
        return self.value[0]

    @property
    def shear(self) -> float:
        """k_s."""
        return self.value[1]


@dataclass(frozen=True)
class Section:
    """A board's cross section where it bends: `width_mm` across, `thickness_mm` in the direction of the load."""

    width_mm: float
    thickness_mm: float

    @property
    def second_moment_mm4(self) -> float:
        """I = b·h³/12."""
        return self.width_mm * self.thickness_mm**3 / 12.0

    @property
    def shear_area_mm2(self) -> float:
        """A′ = 5/6·b·h of a rectangle."""
        return 5.0 / 6.0 * self.width_mm * self.thickness_mm


def deflection_mm(
    case: Case, load_n: float, span_mm: float, section: Section, elastic_n_mm2: float, shear_n_mm2: float | None = None
) -> float:
    """The greatest deflection in mm; without a shear modulus only that of bending."""
    bending = case.bending * load_n * span_mm**3 / (elastic_n_mm2 * section.second_moment_mm4)
    if shear_n_mm2 is None:
        return bending
    return bending + case.shear * load_n * span_mm / (shear_n_mm2 * section.shear_area_mm2)


def weight_n(mass_kg: float) -> float:
    """The weight of a mass in N, with g = 9.81 m/s²."""
    return mass_kg * GRAVITY_M_S2
