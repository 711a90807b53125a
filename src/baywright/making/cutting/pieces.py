"""The pieces that the parts come to, by the material they are cut from.

Laws: every piece of every part is asked for once; the grain of a part runs along the sheet's length wherever the
material has one, so that only parts that may lie any way, and parts of a material without grain, may be turned.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from baywright.making.cutting.units import millimetres, units
from baywright.model.making import Grain, Part
from baywright.model.stock import BoardRole, Material


@dataclass(frozen=True)
class Wanted:
    """One piece to cut, in hundredths of a mm, as it is to lie if it is not turned."""

    part: Part
    length: int
    """Along the sheet's length."""
    width: int
    may_turn: bool
    is_crossed: bool
    """Lies with the part's length across the sheet even when it is not turned."""


@dataclass(frozen=True)
class Demand:
    """All that is to be cut of one material."""

    material: Material
    parts: tuple[Part, ...]

    @property
    def thickness_mm(self) -> float:
        """The thickness of most of the pieces."""
        counts: dict[float, int] = {}
        for part in self.parts:
            counts[part.thickness_mm] = counts.get(part.thickness_mm, 0) + part.quantity
        return max(counts, key=lambda thickness: (counts[thickness], -thickness))

    @property
    def thicknesses_mm(self) -> tuple[float, ...]:
        """Every thickness that parts of it have, to a hundredth; more than one is a contradiction."""
        return tuple(sorted({round(part.thickness_mm, 2) for part in self.parts}))

    def wanted(self) -> list[Wanted]:
        """Every piece, part by part."""
        return [piece for part in self.parts for piece in [_wanted(part, self.material)] * part.quantity]


def _wanted(part: Part, material: Material) -> Wanted:
    length, width = units(part.cut_length_mm), units(part.cut_width_mm)
    is_crossed = part.grain is Grain.WIDTH
    if is_crossed:
        length, width = width, length
    return Wanted(part, length, width, part.grain is Grain.ANY or not material.has_grain, is_crossed)


def demands(parts: Iterable[Part], materials: Iterable[Material]) -> list[Demand]:
    """What is to be cut of each material, in the order of the parts list. `materials` are all that parts are of."""
    known = {material.id: material for material in materials}
    found: dict[str, list[Part]] = {}
    for part in parts:
        found.setdefault(part.material_id, []).append(part)
    return [Demand(known[identifier], tuple(of_it)) for identifier, of_it in found.items()]


def is_rail(part: Part) -> bool:
    """Whether a part may as well be cut from bars: a brace, or the fixing rail on a wall."""
    return part.role is BoardRole.BRACE


def longest_mm(pieces: Sequence[Wanted]) -> float:
    """Length of the longest piece, in mm; 0 without pieces."""
    return millimetres(max((piece.length for piece in pieces), default=0))
