"""What is screwed on from within: front panels, box stops, end panels.

Laws: a screw goes through the board it starts in and ends 2 mm short of the panel's other face; clearance hole and
pilot hole lie at the same place of the run, whatever each part measures from. Of a front or end panel, FACE is the side
that is screwed to.
"""

from collections.abc import Sequence

from baywright.making.hardware.fasteners import from_behind, in_joint
from baywright.making.machining.bench import Work
from baywright.making.machining.drawer import over_groove
from baywright.making.machining.meeting import clearance_mm, pilot_mm
from baywright.making.machining.places import places_along
from baywright.making.machining.rows import LEAST_WALL_MM
from baywright.making.machining.upright import UprightWork
from baywright.model.machining import Hole, HolePurpose, Side
from baywright.model.making import Part
from baywright.model.project import Project

STOP_SCREWS = 2
"""In each box stop, from below through the drawer's bottom: common practice."""
_ROWS_OF_FRONT, _COLUMNS_OF_FRONT, _COLUMNS_OF_WIDE_FRONT, _WIDE_MM = 2, 2, 3, 600.0
"""A front hangs on four screws, on six where it is wide: common practice."""

_REAR_MM = 50.0
"""What rails, their screws and notches may take of an upright's depth at the rear."""


def clear_front_rail(project: Project, rail: Work) -> list[tuple[float, float]]:
    """Drills a front rail for the screws of its front panel; returns their places in the rail."""
    diameter, _ = from_behind(rail.part.thickness_mm, project.boards.front_mm)
    size = clearance_mm(diameter)
    low, high, blocked = over_groove(project, rail)
    rows = places_along(low, high, _ROWS_OF_FRONT, size, blocked)
    columns = _COLUMNS_OF_WIDE_FRONT if rail.part.length_mm > _WIDE_MM else _COLUMNS_OF_FRONT
    places = [(x, y) for x in places_along(0.0, rail.part.length_mm, columns, size) for y in rows]
    rail.holes.extend(_clearance(x, y, size) for x, y in places)
    if len(places) < columns:
        rail.lacks.append((Side.FACE, columns, len(places)))
    return places


def pilot_front(
    project: Project, panel: Work, rail: Part, places: Sequence[tuple[float, float]], across_mm: float, up_mm: float
) -> None:
    """Drills a front panel for those screws; its rail begins `across_mm` and `up_mm` from its lower left corner."""
    diameter, length = from_behind(rail.thickness_mm, panel.part.thickness_mm)
    wall = pilot_mm(diameter) / 2 + LEAST_WALL_MM
    for x, y in ((across_mm + x, up_mm + y) for x, y in places):
        if wall <= x <= panel.part.length_mm - wall and wall <= y <= panel.part.width_mm - wall:
            panel.holes.append(_pilot(Side.FACE, x, y, diameter, length - rail.thickness_mm))
    if len(panel.holes) < len(places):
        panel.lacks.append((Side.FACE, len(places), len(panel.holes)))


def fix_stop(project: Project, stop: Work, bottoms: Sequence[tuple[Work, float]]) -> None:
    """Drills box stops and the bottoms under them; each bottom with the place of the stop's middle from its front."""
    bottom_mm = project.boards.drawer_bottom_mm
    diameter, length = from_behind(bottom_mm, stop.part.thickness_mm)
    size = clearance_mm(diameter)
    places = places_along(0.0, stop.part.length_mm, STOP_SCREWS, size)
    stop.holes.extend(
        _pilot(Side.FRONT, x, stop.part.thickness_mm / 2, diameter, min(length - bottom_mm, stop.part.width_mm - 2.0))
        for x in places
    )
    for bottom, y in bottoms:
        play = (bottom.part.length_mm - stop.part.length_mm) / 2
        bottom.holes.extend(_clearance(x + play, y, size) for x in places)


def fix_end_panel(project: Project, panel: Work, upright: UprightWork, lower_mm: float) -> None:
    """Screws through an end upright into the panel that covers it; the upright stands `lower_mm` over the floor."""
    part, thickness = upright.work.part, upright.work.part.thickness_mm
    diameter, length = from_behind(thickness, panel.part.thickness_mm)
    size = clearance_mm(diameter)
    blocked = upright.blocked(project.construction.hole_rows.hole_diameter_mm)
    blocked.append((part.width_mm - _REAR_MM, part.width_mm))
    for y in places_along(0.0, part.width_mm, 2, size, blocked):
        for x in places_along(0.0, part.length_mm, in_joint(part.length_mm), size):
            upright.work.holes.append(_clearance(x, y, size))
            panel.holes.append(_pilot(Side.FACE, lower_mm + x, y, diameter, length - thickness))


def _clearance(x: float, y: float, diameter: float) -> Hole:
    return Hole(side=Side.FACE, x_mm=x, y_mm=y, diameter_mm=diameter, depth_mm=None, purpose=HolePurpose.SCREW)


def _pilot(side: Side, x: float, y: float, screw_mm: float, depth: float) -> Hole:
    return Hole(
        side=side, x_mm=x, y_mm=y, diameter_mm=pilot_mm(screw_mm), depth_mm=depth, purpose=HolePurpose.SCREW
    )  # fmt: skip
