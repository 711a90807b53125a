"""What boards are made of: a plain name for the timber yard, and the mass of a piece.

Laws: one material a thickness; a mass is volume times density, nothing else.
"""

from collections.abc import Iterable

from baywright.model.making import Part
from baywright.workings.inputs import PLYWOOD_DENSITY_KG_PER_M3

__all__ = ["PLYWOOD_DENSITY_KG_PER_M3", "mass_kg", "plywood"]


def plywood(thickness_mm: float) -> str:
    """The material's name as ordered, e.g. “birch plywood 18 mm”; thickness as measured, in mm.

    Thickness stays in mm in every project, because that is how the boards are sold and measured.
    """
    return f"birch plywood {round(thickness_mm, 2):g} mm"


def mass_kg(parts: Iterable[Part]) -> float:
    """Mass of the parts with their quantities, in kg."""
    volume_mm3 = sum(p.quantity * p.length_mm * p.width_mm * p.thickness_mm for p in parts)
    return volume_mm3 * 1e-9 * PLYWOOD_DENSITY_KG_PER_M3
