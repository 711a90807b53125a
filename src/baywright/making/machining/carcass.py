"""Joints of the carcass: uprights to base and top, lower tops to higher uprights, carcasses beside each other.

Laws: an upright stands on the middle of its line in the base and under the top, its front edge flush with the base's;
where a board is joined over an upright, half of the fasteners go into each piece, in the middle of what it has of the
upright, and slender screws stand for dowels and pocket screws, which are too thick there; a top that ends at the face
of a higher upright is fastened to that face.
"""

from collections.abc import Sequence
from itertools import pairwise

from baywright.making.hardware.fasteners import in_joint
from baywright.making.machining.bench import Work
from baywright.making.machining.meeting import Meeting, fasten
from baywright.making.machining.places import LEAST_APART_MM, Interval, places_along
from baywright.making.machining.upright import UprightWork
from baywright.model.construction import Jointing
from baywright.model.machining import Hole, HolePurpose, Side
from baywright.model.project import Project
from baywright.workings import Workings

_SAME_MM = 1e-6
BOLT_DIAMETER_MM = 8.0
"""Hole for the sleeve of a connecting bolt; common practice, the maker's data sheet decides."""

_LEAST_FROM_JOINT_MM = 4.0
"""From the place where a board is joined to a fastener beside it: half of a 4 mm tenon and 2 mm of wood."""

Board = tuple[float, Work]
"""A board along the run: where its left end lies, and its work."""
Taken = dict[tuple[int, str], list[Interval]]
"""What the joint of an upright takes of its depth, by the upright's number and the end of it."""


def join_ends(
    project: Project, uprights: Sequence[UprightWork], boards: Sequence[Board], *,
    is_top: bool, rail_mm: float,
) -> Taken:  # fmt: skip
    """Fastens the uprights' lower ends to the base, or their upper ends to the top; `rail_mm` is the notch there."""
    end = Side.END if is_top else Side.START
    shift = project.construction.top.overhang_front_mm if is_top else 0.0
    diameter = project.construction.hole_rows.hole_diameter_mm
    jointing, taken = project.construction.jointing, {}
    for index, upright in enumerate(uprights):
        part = upright.work.part
        blocked, count = upright.blocked(diameter), in_joint(part.width_mm)
        under = [board for board in boards if _carries(board, upright)]
        halves = len(under) > 1
        spans: list[Interval] = []
        for number, (left, board) in enumerate(under):
            at = upright.middle_mm
            if halves:
                at += max(part.thickness_mm / 4, _LEAST_FROM_JOINT_MM) * (-1 if number == 0 else 1)
            meeting = Meeting(
                upright.work, end, board, Side.FACE, at - left, 0.0, part.width_mm - rail_mm, shift,
                upright.under_face_mm(at),
            )  # fmt: skip
            if halves:
                way = Jointing.LOOSE_TENON if jointing is Jointing.LOOSE_TENON else Jointing.SCREW
                spans += fasten(meeting, way, max(2, (count + 1) // 2), [*blocked, *spans], in_half=True)
            else:
                spans += fasten(meeting, jointing, count, blocked)
        taken[index, end.value] = spans
    return taken


def _carries(board: Board, upright: UprightWork) -> bool:
    """Whether an upright stands with its middle, or with half of itself, on a board (or under it)."""
    left, work = board
    right = left + work.part.length_mm
    covers = left - _SAME_MM <= upright.middle_mm <= right + _SAME_MM
    return covers and min(right, upright.right_mm) - max(left, upright.standing.left_mm) > _SAME_MM


def join_steps(project: Project, uprights: Sequence[UprightWork], tops: Sequence[Board]) -> None:
    """Fastens a lower top to the face of the higher upright at which it ends."""
    for left, top in tops:
        for is_right, along in ((True, left), (False, left + top.part.length_mm)):
            upright = next((u for u in uprights if abs(_face_mm(u, is_right=is_right) - along) < _SAME_MM), None)
            under = [u for u in uprights if u is not upright and _carries((left, top), u)] if upright else []
            if upright is None or not under or _ends_on(under, along):
                continue
            height = max(u.work.part.length_mm for u in under)
            if height < upright.work.part.length_mm - _SAME_MM:
                _join_to_face(project, top, Side.START if is_right else Side.END, upright, height, is_right=is_right)


def _face_mm(upright: UprightWork, *, is_right: bool) -> float:
    return upright.right_mm if is_right else upright.standing.left_mm


def _join_to_face(
    project: Project, top: Work, end: Side, upright: UprightWork, height_mm: float, *, is_right: bool
) -> None:  # fmt: skip
    overhang = project.construction.top.overhang_front_mm
    deep, middle = upright.work.part.width_mm, height_mm + top.part.thickness_mm / 2
    face = upright.side(is_right=is_right)
    meeting = Meeting(top, end, upright.work, face, middle, overhang, overhang + deep, -overhang)
    blocked = upright.blocked(project.construction.hole_rows.hole_diameter_mm)
    way = project.construction.jointing
    if way is Jointing.SCREW:
        way = Jointing.POCKET_SCREW  # a screw through the upright would show in the bay behind it
    fasten(meeting, way, in_joint(deep), [(low + overhang, high + overhang) for low, high in blocked])


def _ends_on(uprights: Sequence[UprightWork], along_mm: float) -> bool:
    """Whether a board that ends there bears on an upright to its very end, as on carcasses of their own."""
    return any(min(abs(u.right_mm - along_mm), abs(u.standing.left_mm - along_mm)) < _SAME_MM for u in uprights)


def bolt_carcasses(
    workings: Workings, uprights: Sequence[UprightWork], diameter_mm: float, rail_mm: float
) -> None:  # fmt: skip
    """Bolts through own uprights that stand side by side: two near the front and two near the rear."""
    first, pitch = workings.value("first_row"), workings.value("pitch")
    for left, right in pairwise(uprights):
        if abs(left.right_mm - right.standing.left_mm) > _SAME_MM:
            continue
        depth, lines = left.work.part.width_mm, sorted(left.lines | right.lines)
        rows = min(left.standing.rows, right.standing.rows)
        heights = sorted({first + pitch * (row + 0.5) for row in (min(1, rows - 2), max(rows - 3, 0)) if rows > 1})
        is_clear = pitch / 2 - (diameter_mm + BOLT_DIAMETER_MM) / 2 >= LEAST_APART_MM
        blocked = [] if is_clear else [(line - diameter_mm / 2, line + diameter_mm / 2) for line in lines]
        for y in places_along(0.0, depth - rail_mm, 2, BOLT_DIAMETER_MM, blocked):
            for x in heights or [min(left.work.part.length_mm, right.work.part.length_mm) / 2]:
                for upright in (left, right):
                    upright.work.holes.append(
                        Hole(side=Side.FACE, x_mm=x, y_mm=y, diameter_mm=BOLT_DIAMETER_MM, depth_mm=None,
                             purpose=HolePurpose.BOLT)
                    )  # fmt: skip
