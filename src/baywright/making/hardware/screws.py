"""Wood screws: counted where they are used, ordered by diameter and length.

Laws: every use is counted once; equal screws of several uses are one line whose note lists the uses.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from baywright.making.boards import bearings, pieces_of
from baywright.making.drawers import drawer_count
from baywright.making.hardware.fasteners import (
    SPACING_MM,
    WOOD_SCREW_LENGTHS_MM,
    face_screw,
    in_drawer_corner,
    in_joint,
    in_runner,
    through_screw,
)  # fmt: skip
from baywright.making.frame import Frame
from baywright.making.hardware.packing import pieces
from baywright.model.making import HardwareItem, Part
from baywright.model.project import Project
from baywright.workings import Workings

PACK = 200


@dataclass(frozen=True)
class Use:
    """Screws for one purpose: how many, and of which size in mm."""

    purpose: str
    count: int
    diameter_mm: float
    length_mm: int


def screw_order(project: Project, workings: Workings, frame: Frame, parts: list[Part]) -> list[HardwareItem]:
    """All wood screws of the run, short ones first."""
    uses = [
        *_drawer_uses(project, workings, parts),
        *_stand_uses(project, parts),
        *_rear_uses(workings, parts, frame),
    ]
    return _grouped(use for use in uses if use.count)


def _drawer_uses(project: Project, workings: Workings, parts: list[Part]) -> list[Use]:
    drawers = drawer_count(parts)
    side = project.boards.drawer_side_mm
    on_runner = 2 * in_runner(workings.value("runner_length")) * drawers
    in_corners = 4 * in_drawer_corner(project.construction.drawers.side_height_mm) * drawers
    length = face_screw(side, WOOD_SCREW_LENGTHS_MM)
    purpose = "runners to drawer sides"
    if length >= side:
        purpose += f", which are only {side:g} mm thick: these would come through; bolt the runners on instead"
    return [
        Use(purpose, on_runner, 4.0, length),
        Use("drawer corners, with glue (or as many dowels)", in_corners, *through_screw(side)),
    ]


def _stand_uses(project: Project, parts: list[Part]) -> list[Use]:
    crossings = sum(part.quantity for part in parts if part.number == "P3")
    boards, height = project.boards, project.construction.standing.height_mm
    return [
        Use("plinth corners and cross pieces", 2 * in_joint(height) * crossings, *through_screw(boards.plinth_mm)),
        Use("base to plinth", 2 * crossings, *through_screw(boards.base_mm)),
    ]


def _rear_uses(workings: Workings, parts: list[Part], frame: Frame) -> list[Use]:
    uses = []
    for number, purpose in (("R2", "upper brace"), ("R3", "lower brace"), ("R4", "fixing rail")):
        for rail in pieces_of(number, parts)[:1]:
            count = in_joint(rail.width_mm) * bearings(number, parts, frame)
            uses.append(Use(f"{purpose} to uprights", count, *through_screw(rail.thickness_mm)))
    for back in pieces_of("R1", parts)[:1]:
        along_base = sum(p.quantity * int(p.length_mm // SPACING_MM) for p in pieces_of("R1", parts))
        count = in_joint(workings.value("upright_height")) * bearings("R1", parts, frame) + along_base
        uses.append(Use("back to uprights and base", count, *through_screw(back.thickness_mm)))
    return uses


def _grouped(uses: Iterable[Use]) -> list[HardwareItem]:
    sizes: dict[tuple[float, int], list[Use]] = {}
    for use in uses:
        sizes.setdefault((use.diameter_mm, use.length_mm), []).append(use)
    return [
        pieces(
            f"WS{diameter:g}x{length}", "Wood screw", f"{diameter:g} × {length} mm", sum(use.count for use in same),
            PACK, note="; ".join(f"{use.count} {use.purpose}" for use in same),
        )
        for (diameter, length), same in sorted(sizes.items())
    ]  # fmt: skip
