"""Wood screws: counted where they are used, ordered by diameter and length.

Laws: every use is counted once; equal screws of several uses are one line whose note lists the uses.
"""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from baywright.making.boards import bearings, pieces_of
from baywright.making.drawers import Kinds
from baywright.making.frame import Frame
from baywright.making.hardware.fasteners import (
    SPACING_MM,
    WOOD_SCREW_LENGTHS_MM,
    face_screw,
    from_behind,
    in_drawer_corner,
    in_joint,
    in_panel,
    in_runner,
    through_screw,
)  # fmt: skip
from baywright.making.hardware.need import Need, long, thick
from baywright.making.hardware.runners import Amounts, by_bay, hung
from baywright.model.catalogue import HardwareKind
from baywright.model.construction import Jointing
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.workings import Workings

PACK = 200
STOP_SCREWS = 2
"""In each box stop, from below through the drawer's bottom: common practice."""


@dataclass(frozen=True)
class Use:
    """Screws for one purpose: how many, and of which size in mm; in which bays, if not all along the run."""

    purpose: str
    count: int
    diameter_mm: float
    length_mm: int
    bays: Amounts = ()


def screw_needs(project: Project, workings: Workings, frame: Frame, parts: list[Part], kinds: Kinds) -> list[Need]:
    """All wood screws of the run, short ones first."""
    uses = [
        *_drawer_uses(project, workings, kinds),
        *_panel_uses(project, parts),
        *_carcass_uses(project, workings, frame),
        *_stand_uses(project, parts),
        *_rear_uses(workings, parts, frame),
    ]
    return _grouped(use for use in uses if use.count)


def _drawer_uses(project: Project, workings: Workings, kinds: Kinds) -> list[Use]:
    places = hung(workings, kinds)
    side = project.boards.drawer_side_mm
    on_runners: Counter[int] = Counter()
    for (bay, _), runner_mm in places.items():
        on_runners[bay] += 2 * in_runner(runner_mm)
    in_corners = 4 * in_drawer_corner(project.construction.drawers.side_height_mm)
    length = face_screw(side, WOOD_SCREW_LENGTHS_MM)
    purpose = "runners to drawer sides"
    if length >= side:
        purpose += f", which are only {side:g} mm thick: these would come through; bolt the runners on instead"
    bays = [bay for bay, _ in places]
    return [
        Use(purpose, sum(on_runners.values()), 4.0, length, tuple(sorted(on_runners.items()))),
        Use("drawer corners, with glue (or as many dowels)", in_corners * len(bays), *through_screw(side),
            by_bay(bays, in_corners)),
    ]  # fmt: skip


def _panel_uses(project: Project, parts: list[Part]) -> list[Use]:
    """Screws from within into front panels, box stops and end panels."""
    boards = project.boards
    fronts, stops = _of("F1", parts), _of("D4", parts)
    ends = [part for part in parts if part.number.startswith("E1")]
    in_fronts = sum(part.quantity * in_panel(part.length_mm, part.width_mm) for part in fronts)
    in_ends = sum(part.quantity * in_panel(part.width_mm, part.length_mm) for part in ends)
    return [
        Use("drawers to front panels", in_fronts, *from_behind(boards.drawer_side_mm, boards.front_mm), _used(fronts)),
        Use("drawer bottoms to box stops", STOP_SCREWS * sum(part.quantity for part in stops),
            *from_behind(boards.drawer_bottom_mm, boards.drawer_side_mm), _used(stops)),
        Use("uprights to end panels", in_ends, *from_behind(boards.upright_mm, boards.end_panel_mm), _used(ends)),
    ]  # fmt: skip


def _carcass_uses(project: Project, workings: Workings, frame: Frame) -> list[Use]:
    if project.construction.jointing is not Jointing.SCREW:
        return []
    in_ends = in_joint(workings.value("upright_depth")) * len(frame.uprights)
    boards = project.boards
    return [
        Use("base to uprights", in_ends, *through_screw(boards.base_mm)),
        Use("top to uprights", in_ends, *through_screw(boards.top_mm)),
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


def _of(number: str, parts: list[Part]) -> list[Part]:
    """The parts of drawers of that number, whatever the kind of bay."""
    return [part for part in parts if part.number.partition("-")[0] == number]


def _used(parts: list[Part]) -> Amounts:
    """In which bays the parts are, each piece alike."""
    return by_bay(bay for part in parts for bay in part.bays)


def _grouped(uses: Iterable[Use]) -> list[Need]:
    sizes: dict[tuple[float, int], list[Use]] = {}
    for use in uses:
        sizes.setdefault((use.diameter_mm, use.length_mm), []).append(use)
    return [
        Need(
            number=f"WS{diameter:g}x{length}", kind=HardwareKind.WOOD_SCREW, name="Wood screw",
            specification=f"{diameter:g} × {length} mm", needed=sum(use.count for use in same), pack_size=PACK,
            note="; ".join(f"{use.count} {use.purpose}" for use in same),
            measures=(thick(diameter, 0.25), long(length)), bays=_together(same),
        )
        for (diameter, length), same in sorted(sizes.items())
    ]  # fmt: skip


def _together(uses: list[Use]) -> Amounts:
    """In which bays screws of several uses are; all along the run where those of one use are."""
    if any(not use.bays for use in uses):
        return ()
    totals: Counter[int] = Counter()
    for use in uses:
        held = sum(amount for _, amount in use.bays)
        for bay, amount in use.bays:
            totals[bay] += amount * use.count / held  # type: ignore[assignment]  # a share may be half a screw
    return tuple(sorted(totals.items()))
