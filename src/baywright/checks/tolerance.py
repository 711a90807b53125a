"""How much a sum of parts can be off: the worst case, and the likely case of many independent deviations.

Thickness of plywood: EN 315:2000, table 1 (read second-hand): sanded +(0.2 + 0.03·t) / −(0.4 + 0.03·t), unsanded
+(0.8 + 0.03·t) / −(0.4 + 0.03·t) mm, at 10 ± 2 % moisture. Of other boards see `THICKNESS`.

Laws: worst case adds all deviations in one direction; the likely case takes the root of the sum of squares of the half
ranges about their middles, which holds where deviations are independent.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import sqrt

from baywright.model.safety import BoardMaterial

THICKNESS: Mapping[BoardMaterial, tuple[float, str]] = {
    BoardMaterial.PARTICLEBOARD: (0.3, "a maker's table after EN 324 and EN 312, ±0.3 mm; read second-hand"),
    BoardMaterial.FIBREBOARD: (0.2, "EN 622-1, ±0.2 mm; from memory, 70 %"),
    BoardMaterial.STRAND_BOARD: (0.8, "EN 300, unsanded, ±0.8 mm; from memory, 80 %"),
    BoardMaterial.RED_OAK: (0.5, "planed in a small workshop, ±0.5 mm; common practice"),
    BoardMaterial.SPRUCE: (0.5, "planed in a small workshop, ±0.5 mm; common practice"),
}
"""How far boards of other materials may be from their nominal thickness, and who says so."""


@dataclass(frozen=True)
class Deviation:
    """How far a measure may be under and over its nominal value, in mm; `times` it goes into the sum (negative: it is
    taken off).
    """

    name: str
    under_mm: float
    over_mm: float
    times: float = 1.0

    @property
    def least_mm(self) -> float:
        """Its lowest share in the sum."""
        return min(-self.under_mm * self.times, self.over_mm * self.times)

    @property
    def most_mm(self) -> float:
        """Its highest share in the sum."""
        return max(-self.under_mm * self.times, self.over_mm * self.times)


@dataclass(frozen=True)
class Range:
    """From the least to the most that a sum may be off, in mm."""

    least_mm: float
    most_mm: float


def plywood_thickness(nominal_mm: float, *, sanded: bool = True) -> tuple[float, float]:
    """How far a plywood board may be under and over its nominal thickness, in mm, by EN 315."""
    return 0.4 + 0.03 * nominal_mm, (0.2 if sanded else 0.8) + 0.03 * nominal_mm


def worst_case(deviations: Iterable[Deviation]) -> Range:
    """All deviations in one direction at once."""
    found = list(deviations)
    return Range(sum(d.least_mm for d in found), sum(d.most_mm for d in found))


def likely_case(deviations: Iterable[Deviation]) -> Range:
    """Independent deviations together, root-sum-square about the middles of their ranges."""
    found = list(deviations)
    middle = sum((d.most_mm + d.least_mm) / 2 for d in found)
    half = sqrt(sum(((d.most_mm - d.least_mm) / 2) ** 2 for d in found))
    return Range(middle - half, middle + half)
