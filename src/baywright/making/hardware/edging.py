"""Edging by the metre, one line for each board thickness: bands from the roll, or solid lipping.

Laws: the need is the sum of the parts' edged lengths and of what every strip is cut longer; the allowance is 10 % of
it (common practice). Where the owner has entered bars that are wide enough for boards of a thickness, the cutting of
bars tells what to buy for these, and nothing is ordered here.
"""

from collections.abc import Sequence

from baywright.making.hardware.need import LOSS_SHARE, Measure, Need
from baywright.model.catalogue import HardwareKind
from baywright.model.construction import EdgingKind
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.model.stock import BarUse

ROLL_M = 25.0
STRIP_M = 2.5
WIDER_MM = 2.0
"""What edging is wider than the board at least, to be trimmed flush: common practice."""
_FINE_MM = 0.11


def edging_needs(project: Project, parts: Sequence[Part]) -> list[Need]:
    """The edging for the parts, thin boards first."""
    if project.construction.edging.kind is EdgingKind.NONE:
        return []
    edged = [part for part in parts if part.edging_strips]
    return [
        _need(project, thickness, [part for part in edged if part.thickness_mm == thickness])
        for thickness in sorted({part.thickness_mm for part in edged})
        if not any(bar.serves(BarUse.EDGING, edging_width_mm(thickness)) for bar in project.stock.bars)
    ]


def edging_width_mm(thickness_mm: float) -> float:
    """How wide a strip for boards of that thickness is at least, in mm to a hundredth."""
    return round(thickness_mm + WIDER_MM, 2)


def _need(project: Project, thickness_mm: float, parts: Sequence[Part]) -> Need:
    """The edging for the boards of one thickness."""
    edging = project.construction.edging
    is_band = edging.kind is EdgingKind.BAND
    strips = sum(part.quantity * part.edging_strips for part in parts)
    needed = sum(part.quantity * part.edged_length_mm for part in parts) + strips * edging.overlength_mm
    width = edging_width_mm(thickness_mm)
    longest = max(edge for part in parts for edge in (part.length_mm, part.width_mm)) + edging.overlength_mm
    note = f"{strips} strips on {', '.join(dict.fromkeys(part.number for part in parts))}; sizes are finished sizes, "
    note += "with the edging on"
    if not is_band:
        note += f"; the longest strip is about {longest:g} mm: what is left of each bar is not in the allowance"
    return Need(
        number=f"ED{thickness_mm:g}", kind=HardwareKind.EDGING, name="Edging" if is_band else "Lipping",
        specification=f"{edging.thickness_mm:g} mm thick, for {thickness_mm:g} mm boards, at least {width:g} mm wide",
        needed=needed / 1000, spare=needed / 1000 * LOSS_SHARE, unit="m", pack_size=ROLL_M if is_band else STRIP_M,
        note=note,
        measures=(
            Measure("thickness_mm", edging.thickness_mm - _FINE_MM, edging.thickness_mm + _FINE_MM,
                    f"of {edging.thickness_mm:g} mm thickness", is_needed=False),
            Measure("width_mm", width, float("inf"), f"of {width:g} mm width or more"),
        ),
    )  # fmt: skip
