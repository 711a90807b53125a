"""The drawers: two sides, a front and a rear rail (as high as the sides, or lower), a bottom let into all four.

Laws: drawers of one kind of bay are alike, so their parts are counted, not varied; all sizes are the workings'. A
drawer is made where a box stands that is there; room that is only kept for a wished box gets none yet.
"""

from collections.abc import Iterable, Mapping, Sequence

from baywright.making.boards import plain_number
from baywright.making.piece import piece
from baywright.model.arrangement import Placement
from baywright.model.inventory import BoxStatus
from baywright.model.length import format_length
from baywright.model.making import Grain, Part
from baywright.model.project import Project
from baywright.model.stock import BoardRole
from baywright.workings import Workings

Drawers = Mapping[tuple[int, int], tuple[Placement, ...]]
"""The boxes of each drawer by its bay and row."""
Kinds = Mapping[tuple[int, int], str]
"""The kind of bay that each drawer is made for, by its bay and row."""


def drawers_to_make(project: Project) -> Drawers:
    """The drawers of the present arrangement with the boxes in them that are there."""
    owned = {box.id for box in project.boxes if box.status is BoxStatus.OWNED}
    found = {
        place: tuple(p for p in placements if p.box_id in owned)
        for place, placements in project.arrangement.drawers.items()
    }
    return {place: placements for place, placements in found.items() if placements}


def drawer_kinds(project: Project, workings: Workings, drawers: Drawers) -> Kinds:
    """The kind of bay that each drawer is made for; of kinds whose drawers are alike, the first."""
    made: dict[tuple[float, float], str] = {}
    alike = {k.id: made.setdefault((k.box_width_mm, k.zone_depth_mm), k.id) for k in workings.kinds}
    bays = workings.layout.bays
    plain = {bay.number: alike[workings.kind_of(bay)] for bay in bays if not bay.zones}
    sizes = {box.id: box.size_id for box in project.boxes}
    kinds = {}
    for (bay, row), placements in drawers.items():
        if bay in plain:
            kinds[bay, row] = plain[bay]
            continue
        rows = max(round(workings.value("opening_rows", sizes[p.box_id])) for p in placements)
        kind = workings.drawer_kind(bay, row, rows) if bay < len(bays) else ""
        kinds[bay, row] = alike[kind]
    return kinds


def drawer_parts(project: Project, workings: Workings, kinds: Kinds) -> list[Part]:
    """The parts of all drawers; none where there is no runner to hang them on."""
    found: dict[str, list[int]] = {}
    for (bay, _), kind in sorted(kinds.items()):
        found.setdefault(kind, []).append(bay)
    return [part for kind in sorted(found) for part in parts_of_kind(project, workings, kind, found[kind])]


def parts_of_kind(project: Project, workings: Workings, kind: str, bays: Sequence[int]) -> list[Part]:
    """The parts of drawers of one kind of bay, one drawer for each entry of `bays`, which says where it stands."""

    def value(name: str) -> float:
        return workings.at_kind(name, kind)

    if not bays or value("runner_length") <= 0:
        return []
    drawers, count = project.construction.drawers, len(bays)
    twice = tuple(bay for bay in bays for _ in range(2))
    groove = (
        f"groove for the {project.boards.drawer_bottom_mm:g} mm bottom, "
        f"{format_length(drawers.groove_depth_mm, project.unit)} deep, "
        f"{format_length(drawers.groove_offset_mm, project.unit)} over the lower edge"
    )
    lies = "in grooves all round"
    if drawers.groove_depth_mm <= 0:
        groove = f"no groove: the {project.boards.drawer_bottom_mm:g} mm bottom lies between sides and rails"
        lies = "between sides and rails, without grooves"
    of = kind.removeprefix("bay")
    words = next((f"; {k.words(project.unit)}" for k in workings.kinds if kind and k.id == kind), "")
    return [
        piece(
            project, BoardRole.DRAWER_SIDE, f"D1{of}", "Drawer side", 2 * count, value("drawer_outside_depth"),
            drawers.side_height_mm, mirrored=count, bays=twice,
            note=f"half of them mirrored; {groove}; upper edges rounded{words}",
        ),
        piece(
            project, BoardRole.DRAWER_SIDE, f"D2{of}", "Drawer rail, front and rear", 2 * count, value("rail_length"),
            value("drawer_rail_height"), bays=twice, note=f"between the sides; {groove}; upper edges rounded{words}",
        ),
        piece(
            project, BoardRole.DRAWER_BOTTOM, f"D3{of}", "Drawer bottom", count, value("bottom_width"),
            value("bottom_depth"), grain=Grain.ANY, bays=tuple(bays),
            note=f"length across the drawer; {lies}{words}",
        ),
    ]  # fmt: skip


def drawer_remarks(project: Project, workings: Workings) -> list[str]:
    """What does not go together at the drawers' grooves, in the thicknesses that were measured."""
    drawers, unit = project.construction.drawers, project.unit
    side, bottom = format_length(project.boards.drawer_side_mm, unit), project.boards.drawer_bottom_mm
    remarks = []
    if workings.value("groove_wood") <= 0:
        remarks.append(
            f"The groove for the drawer bottom, {format_length(drawers.groove_depth_mm, unit)} deep, would cut through "
            f"sides that are {side} thick: make it shallower, or take thicker boards."
        )
    if workings.value("wood_over_groove") < 0:
        remarks.append(
            f"The groove for a bottom {format_length(bottom, unit)} thick does not fit in the drawer's rails, which "
            f"are {format_length(workings.value('drawer_rail_height'), unit)} high: make them higher, or let the "
            "groove lie lower."
        )
    return remarks


def drawer_count(parts: Iterable[Part]) -> int:
    """How many drawers the parts make: one for each bottom."""
    return sum(part.quantity for part in parts if plain_number(part).partition("-")[0] == "D3")


def empty_drawer_kg(workings: Workings, kind: str = "") -> float | None:
    """Mass in kg of one drawer of a kind of bay, without its boxes; 0 where there is no runner to hang it on, None
    where the density of its boards is not known.
    """
    return workings.drawer_mass(kind) if workings.at_kind("runner_length", kind) > 0 else 0.0
