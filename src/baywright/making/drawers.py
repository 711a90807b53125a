"""The drawers: low trays of two sides, a front and a rear rail, and a bottom let into grooves on all four.

Laws: every drawer of a run is alike, made for the same box width, so its parts are counted, not varied; all sizes are
the workings'.
"""

from baywright.making.material import mass_kg, plywood
from baywright.model.length import format_length
from baywright.model.making import Grain, Part
from baywright.model.project import Project
from baywright.workings import Workings


def drawer_parts(project: Project, workings: Workings, count: int) -> list[Part]:
    """The parts of `count` drawers; none where there is no runner to hang them on."""
    if count == 0 or workings.value("runner_length") <= 0:
        return []
    boards, drawers = project.construction.boards, project.construction.drawers
    side, bottom = boards.drawer_side_mm, boards.drawer_bottom_mm
    groove = (
        f"groove for the {bottom:g} mm bottom, {format_length(drawers.groove_depth_mm, project.unit)} deep, "
        f"{format_length(drawers.groove_offset_mm, project.unit)} over the lower edge"
    )
    return [
        Part(
            number="D1", name="Drawer side", quantity=2 * count, length_mm=workings.value("drawer_outside_depth"),
            width_mm=drawers.side_height_mm, thickness_mm=side, material=plywood(side), grain=Grain.LENGTH,
            note=f"half of them mirrored; {groove}; upper edges rounded",
        ),
        Part(
            number="D2", name="Drawer rail, front and rear", quantity=2 * count,
            length_mm=workings.value("rail_length"), width_mm=drawers.side_height_mm, thickness_mm=side,
            material=plywood(side), grain=Grain.LENGTH, note=f"between the sides; {groove}; upper edges rounded",
        ),
        Part(
            number="D3", name="Drawer bottom", quantity=count, length_mm=workings.value("bottom_width"),
            width_mm=workings.value("bottom_depth"), thickness_mm=bottom, material=plywood(bottom), grain=Grain.ANY,
            note="length across the drawer; in grooves all round",
        ),
    ]  # fmt: skip


def empty_drawer_kg(project: Project, workings: Workings) -> float:
    """Mass of one drawer without its box, in kg."""
    return mass_kg(drawer_parts(project, workings, 1))
