"""The drawers: grooves, corners, and where the runners are screwed on.

Laws: FACE of sides and rails is the inside of the drawer, y grows from the lower edge, x of a side from its front end;
the side at the left is not mirrored, the one at the right is. What is drilled from outside stops short of the groove
on the inside; corners keep clear of it.
"""

from collections.abc import Sequence
from dataclasses import replace

from baywright.making.hardware.fasteners import RUNNER_SCREW_MM, in_drawer_corner, runner_screw
from baywright.making.machining.bench import Work
from baywright.making.machining.lines import runner_holes_mm
from baywright.making.machining.meeting import Meeting, fasten, pilot_mm
from baywright.making.machining.places import LEAST_APART_MM, Interval
from baywright.making.machining.rows import LEAST_WALL_MM
from baywright.model.construction import Jointing
from baywright.model.machining import EdgeForm, Groove, Hole, HolePurpose, ShapedEdge, Side
from baywright.model.project import Project

ROUNDING_MM = 3.0
"""Radius of the upper edges of drawer sides and rails; common practice."""
_ROOM_FOR_TWO_MM = 30.0
"""Wood over the groove under which a corner gets one screw or dowel and glue: two want four diameters between them
(NDS 2018, 12.5.1, from memory) and wood to the edges."""


def _groove(project: Project, width_mm: float, length_mm: float) -> Groove:
    """The groove for the bottom, all along a side or rail."""
    drawers = project.construction.drawers
    return Groove(
        side=Side.FACE, is_along=True, offset_mm=drawers.groove_offset_mm,
        width_mm=width_mm, depth_mm=drawers.groove_depth_mm,
        from_mm=0.0, to_mm=length_mm,
    )  # fmt: skip


def round_upper_edge(work: Work) -> None:
    """Rounds the upper edge, no farther than to the middle of the board."""
    size = min(ROUNDING_MM, work.part.thickness_mm / 2)
    work.shaped_edges.append(ShapedEdge(side=Side.REAR, form=EdgeForm.ROUNDED, size_mm=size))


def build_drawer(project: Project, groove_mm: float, side: Work, rails: Sequence[Work]) -> None:
    """Works the sides and the front and rear rail of the drawers of one kind, with a groove of that width for the
    bottom.
    """
    for work in (side, *rails):
        if project.construction.drawers.groove_depth_mm > 0:
            work.grooves.append(_groove(project, groove_mm, work.part.length_mm))
        round_upper_edge(work)
    front, rear = rails[0], rails[-1]
    thickness = rear.part.thickness_mm
    for rail, end, at in (
        (front, Side.START, thickness / 2),
        (rear, Side.END, side.part.length_mm - thickness / 2),
    ):
        _corner(project, Meeting(rail, end, side, Side.FACE, at, 0.0, min(rail.part.width_mm, side.part.width_mm)))
    for rail, end in ((front, Side.END), (rear, Side.START)):
        if rail is front or front is not rear:
            _other_end(rail, end)
    _hang(project, side)


def over_groove(project: Project, rail: Work) -> tuple[float, float, list[Interval]]:
    """Where the wood over the groove begins and ends in a rail's height, and the groove as something in the way."""
    upper = rail.part.width_mm - min(ROUNDING_MM, rail.part.thickness_mm / 2)
    groove = next(iter(rail.grooves), None)
    if groove is None:
        return 0.0, upper, []
    top = groove.offset_mm + groove.width_mm
    return top, upper, [(0.0, top)]


def _corner(project: Project, meeting: Meeting) -> None:
    lowest, upper, blocked = over_groove(project, meeting.end)
    way = Jointing.DOWEL if project.construction.jointing is Jointing.DOWEL else Jointing.SCREW
    within = replace(meeting, from_mm=lowest, to_mm=min(upper, meeting.to_mm))
    room = within.to_mm - within.from_mm
    fasten(within, way, in_drawer_corner(meeting.to_mm) if room >= _ROOM_FOR_TWO_MM else 1, blocked)


def _other_end(rail: Work, end: Side) -> None:
    """A rail's other end is drilled like the first: the sides mirror each other."""
    first = Side.START if end is Side.END else Side.END
    if not any(hole.side is end for hole in rail.holes):
        rail.holes.extend(hole.replace(side=end) for hole in list(rail.holes) if hole.side is first)


def _hang(project: Project, side: Work) -> None:
    """Pilot holes for the runner's screws, on the outside at the runner's line."""
    part, offset = side.part, project.construction.runners.line_offset_mm
    pilot = pilot_mm(RUNNER_SCREW_MM)
    if not pilot / 2 + LEAST_WALL_MM <= offset <= part.width_mm - pilot / 2 - LEAST_WALL_MM:
        side.lacks.append((Side.REVERSE, len(runner_holes_mm(part.length_mm)), 0))
        return
    depth = float(min(runner_screw(part.thickness_mm), part.thickness_mm - LEAST_WALL_MM))
    for groove in side.grooves:
        low, high = groove.offset_mm - pilot / 2 - LEAST_APART_MM, groove.offset_mm + groove.width_mm + pilot / 2
        if low < offset < high + LEAST_APART_MM:
            depth = min(depth, part.thickness_mm - groove.depth_mm - LEAST_WALL_MM)
    if depth < LEAST_WALL_MM:
        side.lacks.append((Side.REVERSE, len(runner_holes_mm(part.length_mm)), 0))
        return
    side.holes.extend(
        Hole(side=Side.REVERSE, x_mm=x, y_mm=offset, diameter_mm=pilot, depth_mm=depth, purpose=HolePurpose.RUNNER)
        for x in runner_holes_mm(part.length_mm)
    )
