"""The plinth: its long boards to the cross pieces, and the base screwed down on these.

Laws: a cross piece lies under the middle of every upright, or one on each side of the place where the plinth is
joined; the base is screwed down before the uprights stand on it, clear of their joints.
"""

from collections.abc import Sequence

from baywright.making.hardware.fasteners import in_joint, through_screw
from baywright.making.machining.bench import Work
from baywright.making.machining.carcass import Board, Taken
from baywright.making.machining.meeting import clearance_mm, pilot_mm
from baywright.making.machining.places import Interval, places_along
from baywright.making.machining.solid import fits
from baywright.making.machining.upright import UprightWork
from baywright.model.machining import Hole, HolePurpose, Side
from baywright.model.project import Project

_SAME_MM = 1e-6
BASE_SCREWS = 2
"""In every cross piece: common practice."""


def crossings_mm(uprights: Sequence[UprightWork], plinths: Sequence[Board]) -> list[tuple[int, float]]:
    """The upright over each cross piece, by its number from 0, and the middle of the cross piece along the run."""
    ends = [left for left, _ in plinths] + [left + work.part.length_mm for left, work in plinths]
    found = []
    for index, upright in enumerate(uprights):
        joined = sum(abs(end - upright.middle_mm) < _SAME_MM for end in ends) > 1
        thickness = plinths[0][1].part.thickness_mm if plinths else 0.0
        offsets = (-thickness / 2, thickness / 2) if joined else (0.0,)
        found += [(index, upright.middle_mm + offset) for offset in offsets]
    return found


def build_plinth(uprights: Sequence[UprightWork], fronts: Sequence[Board], rears: Sequence[Board], cross: Work) -> None:
    """Screws through the long boards into both ends of the cross pieces."""
    screw = through_screw(cross.part.thickness_mm)
    diameter, length = screw
    deep, count = length - cross.part.thickness_mm, in_joint(cross.part.width_mm)
    places = [
        place
        for place in places_along(0.0, cross.part.width_mm, count, clearance_mm(diameter))
        if fits(cross.part, _pilot(cross, Side.START, place, diameter, deep))
    ]
    for side in (Side.START, Side.END):
        cross.holes.extend(_pilot(cross, side, place, diameter, deep) for place in places)
        if len(places) < count:
            cross.lacks.append((side, count, len(places)))
    for boards, side in ((fronts, Side.FACE), (rears, Side.REVERSE)):
        for _, along in crossings_mm(uprights, fronts):
            board = _under(boards, along)
            if board is None:
                continue
            board[1].holes.extend(
                Hole(side=side, x_mm=along - board[0], y_mm=place, diameter_mm=clearance_mm(diameter), depth_mm=None,
                     purpose=HolePurpose.SCREW)
                for place in places
            )  # fmt: skip


def _pilot(cross: Work, side: Side, place: float, screw_mm: float, deep: float) -> Hole:
    return Hole(
        side=side, x_mm=place, y_mm=cross.part.thickness_mm / 2, diameter_mm=pilot_mm(screw_mm), depth_mm=deep,
        purpose=HolePurpose.SCREW,
    )  # fmt: skip


def screw_base_down(
    project: Project, uprights: Sequence[UprightWork], bases: Sequence[Board], plinths: Sequence[Board], cross: Work,
    taken: Taken,
) -> None:  # fmt: skip
    """Screws through the base into the upper edges of the cross pieces, at the same places of all of them."""
    front = project.construction.standing.plinth_setback_mm + project.boards.plinth_mm
    diameter, length = through_screw(project.boards.base_mm)
    blocked = _all_blocked(taken, front)
    deep = length - project.boards.base_mm
    places = [
        place
        for place in places_along(0.0, cross.part.length_mm, BASE_SCREWS, clearance_mm(diameter), blocked)
        if fits(cross.part, _pilot(cross, Side.REAR, place, diameter, deep))
    ]
    for place in places:
        cross.holes.append(_pilot(cross, Side.REAR, place, diameter, deep))
        for _, along in crossings_mm(uprights, plinths):
            base = _under(bases, along)
            if base is not None:
                base[1].holes.append(
                    Hole(side=Side.FACE, x_mm=along - base[0], y_mm=front + place, diameter_mm=clearance_mm(diameter),
                         depth_mm=None, purpose=HolePurpose.SCREW)
                )  # fmt: skip
    if len(places) < BASE_SCREWS:
        cross.lacks.append((Side.REAR, BASE_SCREWS, len(places)))


def _all_blocked(taken: Taken, front: float) -> list[Interval]:
    """What joints take anywhere under an upright, so that all cross pieces can be alike."""
    found = {
        (low - front, high - front)
        for (_, end), spans in taken.items()
        if end == Side.START.value
        for low, high in spans
    }
    return sorted(found)


def _under(boards: Sequence[Board], along_mm: float) -> Board | None:
    """The board whose middle part is at that place along the run."""
    return next(
        ((left, work) for left, work in boards if left - _SAME_MM < along_mm < left + work.part.length_mm + _SAME_MM),
        None,
    )
