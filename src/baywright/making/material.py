"""What the parts are made of, and what they weigh.

Laws: a part is of the material of its role; its mass is its finished volume times that material's density, edging
counted as board; where a density is not known, so is the mass of the part and of every sum that it is in.
"""

from collections.abc import Iterable

from baywright.model.making import Part
from baywright.model.stock import Material
from baywright.workings.material import board_name, density_kg_m3, material_of

__all__ = ["board_name", "density_kg_m3", "mass_kg", "mass_of_board_kg", "material_of", "material_remarks"]


def mass_of_board_kg(material: Material, length_mm: float, width_mm: float, thickness_mm: float) -> float | None:
    """Mass in kg of one board of those measures; None where its material's density is not known."""
    density = density_kg_m3(material)
    return None if density is None else length_mm * width_mm * thickness_mm * 1e-9 * density


def mass_kg(parts: Iterable[Part]) -> float | None:
    """Mass of the parts with their quantities, in kg; None where that of any is not known."""
    total = 0.0
    for part in parts:
        if part.mass_kg is None:
            return None
        total += part.quantity * part.mass_kg
    return total


def material_remarks(parts: Iterable[Part]) -> list[str]:
    """Of which boards the mass is not known, and what to do."""
    unknown = dict.fromkeys(part.material for part in parts if part.mass_kg is None)
    return [
        f"How heavy “{name}” is, is not known: its parts have no mass, and neither has the run. Enter the density of "
        "the material."
        for name in unknown
    ]
