"""The pieces that are cut from bars: strips of edging by the thickness they cover, and rails where the owner wants it.

Laws: a strip is as long as the finished edge and what it is cut longer to be trimmed flush; every banded edge of every
piece has one.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from baywright.making.cutting.pieces import is_rail
from baywright.making.cutting.units import units
from baywright.making.hardware.edging import edging_width_mm
from baywright.model.construction import EdgingKind
from baywright.model.length import format_length
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.model.stock import BarUse, Stock


@dataclass(frozen=True)
class Strip:
    """One piece to cut from a bar, in hundredths of a mm."""

    part_number: str
    length: int


@dataclass(frozen=True)
class BarDemand:
    """All pieces of one use and section."""

    id: str
    name: str
    use: BarUse
    width_mm: float
    """Of a strip at least, of a rail exactly."""
    strips: tuple[Strip, ...]

    def is_in(self, stock: Stock) -> bool:
        """Whether the owner has entered bars that serve."""
        return any(bar.serves(self.use, self.width_mm) for bar in stock.bars)


def bar_demands(project: Project, parts: Sequence[Part]) -> list[BarDemand]:
    """What is to be cut from bars: edging, thick boards first (a wide strip covers less, never the other way round);
    then rails.
    """
    return [*_edgings(project, parts), *_rails(project, parts)]


def _edgings(project: Project, parts: Sequence[Part]) -> list[BarDemand]:
    edging = project.construction.edging
    if edging.kind is EdgingKind.NONE:
        return []
    banded = [part for part in parts if part.banded]
    kind = "Edging" if edging.kind is EdgingKind.BAND else "Lipping"
    found = []
    for thickness in sorted({round(part.thickness_mm, 2) for part in banded}, reverse=True):
        strips = tuple(
            Strip(part.number, units(part.edge_mm(side) + edging.overlength_mm))
            for part in banded
            if round(part.thickness_mm, 2) == thickness
            for _ in range(part.quantity)
            for side in part.banded
        )
        name = f"{kind} for boards of {format_length(thickness, project.unit)}"
        found.append(BarDemand(f"edging-{thickness:g}", name, BarUse.EDGING, edging_width_mm(thickness), strips))
    return found


def _rails(project: Project, parts: Sequence[Part]) -> list[BarDemand]:
    if not project.stock.rules.rails_from_bars:
        return []
    rails: dict[tuple[float, float], list[Part]] = {}
    for part in filter(is_rail, parts):
        rails.setdefault((round(part.cut_width_mm, 2), round(part.thickness_mm, 2)), []).append(part)
    return [
        BarDemand(
            f"rail-{width:g}x{thickness:g}",
            f"Rail {format_length(width, project.unit)} × {format_length(thickness, project.unit)}",
            BarUse.RAIL,
            width,
            tuple(Strip(part.number, units(part.cut_length_mm)) for part in of_it for _ in range(part.quantity)),
        )
        for (width, thickness), of_it in rails.items()
    ]
