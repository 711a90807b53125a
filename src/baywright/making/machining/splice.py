"""Boards that are joined end to end from their sections, the way the owner joins everything else.

Laws: loose tenons and dowels go equally deep into both ends, at the middle of the thickness; ends cannot be screwed
through a face, so that who joins with screws or pocket screws gets pockets from below in the left one of two sections:
common practice, and hidden under a base and a top. Fasteners keep clear of the joint with the upright there, and of
what would come out of a section there is none.
"""

from collections.abc import Sequence
from itertools import pairwise

from baywright.making.hardware.fasteners import dowel_size, in_joint, tenon_size
from baywright.making.machining.bench import Work
from baywright.making.machining.carcass import Board, Taken
from baywright.making.machining.meeting import POCKET_DIAMETER_MM, TENON_WIDTHS_MM, pocket
from baywright.making.machining.places import Interval, places_along
from baywright.making.machining.rows import LEAST_WALL_MM
from baywright.making.machining.solid import fits
from baywright.making.machining.upright import UprightWork
from baywright.model.construction import Jointing
from baywright.model.machining import Hole, HolePurpose, Joint, Side
from baywright.model.project import Project

_SAME_MM = 1e-6


def join_lengths(
    project: Project, boards: Sequence[Board], uprights: Sequence[UprightWork], taken: Taken, *, is_top: bool
) -> None:
    """Fastens sections of one board end to end, between the joints with the upright there."""
    end, below = (Side.END, Side.FACE) if is_top else (Side.START, Side.REVERSE)
    shift = project.construction.top.overhang_front_mm if is_top else 0.0
    for (left, before), (start, after) in pairwise(boards):
        joint_mm = left + before.part.length_mm
        is_one_board = before.part.number.partition(".")[0] == after.part.number.partition(".")[0]
        if abs(joint_mm - start) > _SAME_MM or not is_one_board or "." not in before.part.number:
            continue
        blocked = [
            (low + shift, high + shift)
            for index, upright in enumerate(uprights)
            if abs(upright.middle_mm - joint_mm) < upright.work.part.thickness_mm
            for low, high in taken[index, end.value]
        ]
        spans = _end_to_end(before, after, project.construction.jointing, below, blocked)
        taken[-1 - len(taken), end.value] = [(low - shift, high - shift) for low, high in spans]


def _end_to_end(
    before: Work, after: Work, jointing: Jointing, below: Side, blocked: Sequence[Interval]
) -> list[Interval]:
    """Fasteners in the ends of two sections, and what they take of the joint."""
    part = before.part
    count, (size, long) = in_joint(part.width_mm), _measures(jointing, part.thickness_mm)
    done = [
        (place - size / 2, place + size / 2)
        for place in places_along(0.0, part.width_mm, count, size, blocked)
        if _is_worked(before, after, jointing, below, place, long)
    ]
    if len(done) < count:
        before.lacks.append((Side.END, count, len(done)))
    return done


def _measures(jointing: Jointing, thickness_mm: float) -> tuple[float, int]:
    """What a fastener takes of the joint's length, and how long it is, in mm."""
    match jointing:
        case Jointing.LOOSE_TENON:
            thick, long = tenon_size(thickness_mm)
            return TENON_WIDTHS_MM[thick], long
        case Jointing.DOWEL:
            diameter, long = dowel_size(thickness_mm)
            return float(diameter), long
        case Jointing.POCKET_SCREW | Jointing.SCREW:
            return POCKET_DIAMETER_MM, 0


def _is_worked(before: Work, after: Work, jointing: Jointing, below: Side, place: float, long: int) -> bool:
    """Works one fastener into both sections; not where it would come out of one of them."""
    if jointing in (Jointing.POCKET_SCREW, Jointing.SCREW):
        hole = pocket(before.part, Side.END, place, below)
        if fits(before.part, hole):
            before.holes.append(hole)
            return True
        return False
    if min(before.part.length_mm, after.part.length_mm) < long / 2 + LEAST_WALL_MM:
        return False
    for work, side, other in ((before, Side.END, after), (after, Side.START, before)):
        middle = work.part.thickness_mm / 2
        if jointing is Jointing.DOWEL:
            diameter, _ = dowel_size(before.part.thickness_mm)
            work.holes.append(
                Hole(side=side, x_mm=place, y_mm=middle, diameter_mm=diameter, depth_mm=long / 2,
                     purpose=HolePurpose.DOWEL)
            )  # fmt: skip
        else:
            thick, _ = tenon_size(before.part.thickness_mm)
            work.joints.append(
                Joint(side=side, x_mm=place, y_mm=middle, is_along=True, long_mm=TENON_WIDTHS_MM[thick],
                      thick_mm=thick, depth_mm=long / 2, meets=other.part.number)
            )  # fmt: skip
    return True
