"""Glue by the area of the joints, and oil or varnish by the area of the parts.

Laws: amounts are estimates by area, in litres, with what is assumed named in the note; the maker's data sheet decides.
"""

from collections.abc import Sequence

from baywright.making.frame import Frame
from baywright.making.hardware.need import Need
from baywright.model.catalogue import HardwareKind
from baywright.model.construction import EdgingKind, Jointing
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.workings import Workings

GLUE_LITRES_PER_M2 = 0.2
"""White wood glue on one of two faces; common practice, from memory: makers print 120 to 200 g/m², and ends drink."""
GLUE_LOSS_SHARE = 0.25
GLUE_PACK_LITRES = 0.5
COATS = 2
FINISH_LITRES_PER_M2 = 0.08
"""Of oil or varnish for one coat on planed wood; common practice, from memory: makers print 8 to 16 m² a litre."""
FINISH_LOSS_SHARE = 0.1
FINISH_PACK_LITRES = 1.0
_GLUED_JOINTS = (Jointing.LOOSE_TENON, Jointing.DOWEL)
_DECIMALS = 3


def glue_needs(project: Project, workings: Workings, frame: Frame, parts: Sequence[Part]) -> list[Need]:
    """The glue for carcass joints (tenons and dowels), drawer corners and bottoms, and solid lippings."""
    area = glued_area_m2(project, workings, frame, parts)
    litres = round(area * GLUE_LITRES_PER_M2, _DECIMALS)
    return [Need(
        number="GL", kind=HardwareKind.GLUE, name="Wood glue", specification="white glue for wood, indoors",
        needed=litres, spare=round(litres * GLUE_LOSS_SHARE, _DECIMALS), unit="l", pack_size=GLUE_PACK_LITRES,
        note=f"for {area:.2f} m² of joints, {GLUE_LITRES_PER_M2:g} l/m²: an estimate, by common practice",
    )]  # fmt: skip


def glued_area_m2(project: Project, workings: Workings, frame: Frame, parts: Sequence[Part]) -> float:
    """Area in m² that is glued, counted once for the two faces that meet."""
    boards, drawers, construction = project.boards, project.construction.drawers, project.construction
    area = 0.0
    if construction.jointing in _GLUED_JOINTS:
        area += 2 * len(frame.uprights) * boards.upright_mm * workings.value("upright_depth")
    for part in parts:
        if part.number.startswith("D2"):
            area += part.quantity * 2 * part.thickness_mm * part.width_mm
        elif part.number.startswith("D3"):
            area += part.quantity * 4 * (part.length_mm + part.width_mm) * drawers.groove_depth_mm
    if construction.edging.kind is EdgingKind.LIPPING:
        area += sum(part.quantity * part.edged_length_mm * part.thickness_mm for part in parts)
    return area * 1e-6


def finish_needs(parts: Sequence[Part]) -> list[Need]:
    """Oil or varnish for both faces and the edges of every part."""
    area = coated_area_m2(parts)
    litres = round(area * COATS * FINISH_LITRES_PER_M2, _DECIMALS)
    return [Need(
        number="FI", kind=HardwareKind.FINISH, name="Oil or varnish", specification="for wood indoors",
        needed=litres, spare=round(litres * FINISH_LOSS_SHARE, _DECIMALS), unit="l", pack_size=FINISH_PACK_LITRES,
        note=f"{COATS} coats on {area:.1f} m² (both faces and all edges), {FINISH_LITRES_PER_M2:g} l/m² a coat: an "
        "estimate, by common practice; oily rags can catch fire by themselves: dry them spread out, outdoors",
    )]  # fmt: skip


def coated_area_m2(parts: Sequence[Part]) -> float:
    """Area in m² of both faces and the four edges of all pieces."""
    return 1e-6 * sum(
        2 * part.quantity * (
            part.length_mm * part.width_mm + (part.length_mm + part.width_mm) * part.thickness_mm
        )
        for part in parts
    )  # fmt: skip
