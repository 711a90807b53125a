"""How thick the boards of a role really are: from the least to the most, and who says so.

Laws: a batch in use is between its own thinnest and thickest reading; of boards that were not measured a standard says
how far they may be off; of a board that nothing is known of, nothing is claimed.
"""

from dataclasses import dataclass

from baywright.checks.tolerance import THICKNESS, plywood_thickness
from baywright.making.material import material_of
from baywright.making.piece import thickness_mm
from baywright.model.project import Project
from baywright.model.safety import BoardMaterial
from baywright.model.stock import BoardRole


@dataclass(frozen=True)
class Thickness:
    """What boards of a role may measure, in mm; `reckoned_mm` is the thickness in force."""

    least_mm: float
    reckoned_mm: float
    most_mm: float
    source: str
    is_measured: bool = False

    @property
    def under_mm(self) -> float:
        """How much thinner than reckoned they may be."""
        return self.reckoned_mm - self.least_mm

    @property
    def over_mm(self) -> float:
        """How much thicker than reckoned they may be."""
        return self.most_mm - self.reckoned_mm


def thickness(project: Project, role: BoardRole) -> Thickness | None:
    """What the boards of a role may measure; None where nothing is known of it."""
    material, reckoned = material_of(project, role), thickness_mm(project, role)
    if material.batch is not None and len(material.batch.readings_mm) > 1:
        batch = material.batch
        source = f"batch “{batch.name}”, {len(batch.readings_mm)} readings"
        return Thickness(min(batch.least_mm, reckoned), reckoned, max(batch.most_mm, reckoned), source, True)
    if material.kind is BoardMaterial.BIRCH_PLYWOOD:
        under, over = plywood_thickness(reckoned)
        return Thickness(reckoned - under, reckoned, reckoned + over, "EN 315:2000, sanded plywood; read second-hand")
    if material.kind in THICKNESS:
        most, source = THICKNESS[material.kind]
        return Thickness(reckoned - most, reckoned, reckoned + most, source)
    return None
