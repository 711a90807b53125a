"""The rear: notches for rails and their screws, wall fixings, the full back's screws.

Laws: a rail's screws go through it into the grounds of the notches at the middle of every upright it crosses; wall
fixings stand clear of the uprights, the first within 100 mm of each end; screws through a back keep to the middle of
the upright's edge. Where a rail or back is joined, they keep to the middle of the half that it has, and are slender.
"""

from collections.abc import Sequence

from baywright.making.hardware.fasteners import SPACING_MM, in_joint, slender_screw, through_screw, wall_fixings
from baywright.making.machining.bench import Work
from baywright.making.machining.carcass import Board
from baywright.making.machining.meeting import clearance_mm, pilot_mm
from baywright.making.machining.places import LEAST_APART_MM, Interval, places_along
from baywright.making.machining.solid import fits
from baywright.making.machining.upright import UprightWork, notch
from baywright.model.machining import Hole, HolePurpose, Side
from baywright.model.project import Project

WALL_HOLE_MM = 6.5
"""For a 6 mm screw: common practice; the data sheet of the wall fixing decides."""
_SAME_MM = 1e-6


def fix_rails(
    uprights: Sequence[UprightWork], rails: Sequence[Board], *, is_upper: bool, is_fixed_to_wall: bool
) -> None:
    """Notches, screws and wall fixings of the rails at one height."""
    for left, rail in rails:
        part = rail.part
        crossed = [u for u in uprights if _overlap(left, rail, u) > _SAME_MM]
        for upright in crossed:
            high = upright.work.part.length_mm
            lower = high - part.width_mm if is_upper else 0.0
            _notch_once(upright, max(0.0, lower), min(high, lower + part.width_mm), part.thickness_mm)
            _screw_rail(left, rail, upright, lower)
        if is_fixed_to_wall:
            _wall_holes(left, rail, crossed)


def _overlap(left: float, rail: Work, upright: UprightWork) -> float:
    return min(left + rail.part.length_mm, upright.right_mm) - max(left, upright.standing.left_mm)


def _notch_once(upright: UprightWork, lower: float, upper: float, deep: float) -> None:
    if not any(g.from_mm == lower and g.depth_mm == upright.work.part.thickness_mm for g in upright.work.grooves):
        notch(upright, lower, upper, deep)


def _bearing_mm(left: float, board: Work, upright: UprightWork) -> float:
    """The middle of what an upright and a board share, along the run."""
    ends = max(left, upright.standing.left_mm), min(left + board.part.length_mm, upright.right_mm)
    return sum(ends) / 2


def _screw(left: float, board: Work, upright: UprightWork) -> tuple[float, int]:
    """Diameter and length of the screws from a board into an upright, all of which it covers or only a half."""
    is_half = _overlap(left, board, upright) < upright.work.part.thickness_mm - _SAME_MM
    return (slender_screw if is_half else through_screw)(board.part.thickness_mm)


def _screw_rail(left: float, rail: Work, upright: UprightWork, lower: float) -> None:
    screw = _screw(left, rail, upright)
    along = _bearing_mm(left, rail, upright)
    size = clearance_mm(screw[0])
    rows = upright.work.rows.heights if upright.work.rows else ()
    blocked = [(low - lower, high - lower) for low, high in rows]
    count = in_joint(rail.part.width_mm)
    upper = min(rail.part.width_mm, upright.work.part.length_mm - lower)
    screwed = [
        _through(rail, upright, along - left, place, lower + place, along, screw)
        for place in places_along(0.0, upper, count, size, blocked)
    ]
    if sum(screwed) < count:
        rail.lacks.append((Side.FACE, count, sum(screwed)))


def _through(
    board: Work, upright: UprightWork, x: float, y: float, height: float, along: float, screw: tuple[float, int]
) -> bool:
    """A screw through a board at the rear into an upright's rear edge; none where it would come out of either."""
    diameter, length = screw
    clear = Hole(
        side=Side.FACE, x_mm=x, y_mm=y, diameter_mm=clearance_mm(diameter), depth_mm=None, purpose=HolePurpose.SCREW
    )
    pilot = Hole(
        side=Side.REAR, x_mm=height, y_mm=upright.under_face_mm(along), diameter_mm=pilot_mm(diameter),
        depth_mm=length - board.part.thickness_mm, purpose=HolePurpose.SCREW,
    )  # fmt: skip
    notches = [g for g in upright.work.grooves if g.from_mm <= height <= g.to_mm]
    ground = max((groove.width_mm for groove in notches), default=0.0)
    if not fits(board.part, clear) or not fits(upright.work.part, pilot, ground):
        return False
    board.holes.append(clear)
    upright.work.holes.append(pilot)
    return True


def _wall_holes(left: float, rail: Work, crossed: Sequence[UprightWork]) -> None:
    part = rail.part
    for x in wall_places_mm(left, part.length_mm, [(u.standing.left_mm, u.right_mm) for u in crossed]):
        rail.holes.append(
            Hole(side=Side.FACE, x_mm=x, y_mm=part.width_mm / 2, diameter_mm=WALL_HOLE_MM, depth_mm=None,
                 purpose=HolePurpose.WALL)
        )  # fmt: skip


def wall_places_mm(left_mm: float, length_mm: float, crossed: Sequence[Interval]) -> list[float]:
    """Where along a rail the wall fixings go through it; `crossed` are the uprights behind which it runs."""
    room = WALL_HOLE_MM / 2 + LEAST_APART_MM
    blocked = [(low - left_mm - room, high - left_mm + room) for low, high in crossed]
    return places_along(0.0, length_mm, wall_fixings(length_mm), WALL_HOLE_MM, blocked)


def fix_back(project: Project, uprights: Sequence[UprightWork], backs: Sequence[Board], bases: Sequence[Board]) -> None:
    """Screws through the full back into the uprights' and the bases' rear edges."""
    base_mm = project.boards.base_mm
    for left, back in backs:
        screw = through_screw(back.part.thickness_mm)
        crossed = [u for u in uprights if _overlap(left, back, u) > _SAME_MM]
        for upright in crossed:
            high = upright.work.part.length_mm
            x = _bearing_mm(left, back, upright)
            top, count = min(high, back.part.width_mm - base_mm), in_joint(high)
            own = _screw(left, back, upright)
            screwed = [
                _through(back, upright, x - left, base_mm + place, place, x, own)
                for place in places_along(0.0, top, count, clearance_mm(own[0]))
            ]
            if sum(screwed) < count:
                back.lacks.append((Side.FACE, count, sum(screwed)))
        _screw_to_base(left, back, crossed, bases, screw)


def _screw_to_base(
    left: float, back: Work, crossed: Sequence[UprightWork], bases: Sequence[Board], screw: tuple[float, int]
) -> None:
    diameter, length = screw
    blocked = [(u.standing.left_mm - left, u.right_mm - left) for u in crossed]
    middle = bases[0][1].part.thickness_mm / 2 if bases else 0.0
    count = int(back.part.length_mm // SPACING_MM)
    for x in places_along(0.0, back.part.length_mm, count, clearance_mm(diameter), blocked):
        base = next(((at, b) for at, b in bases if at + 6.0 < left + x < at + b.part.length_mm - 6.0), None)
        if base is None:
            continue
        clear = Hole(
            side=Side.FACE, x_mm=x, y_mm=middle, diameter_mm=clearance_mm(diameter), depth_mm=None,
            purpose=HolePurpose.SCREW,
        )  # fmt: skip
        pilot = Hole(
            side=Side.REAR, x_mm=left + x - base[0], y_mm=middle, diameter_mm=pilot_mm(diameter),
            depth_mm=length - back.part.thickness_mm, purpose=HolePurpose.SCREW,
        )  # fmt: skip
        if fits(back.part, clear) and fits(base[1].part, pilot):
            back.holes.append(clear)
            base[1].holes.append(pilot)
