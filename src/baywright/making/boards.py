"""Boards that run through over several uprights, divided into sections where they are longer than any to be had.

Laws: the sections' lengths add up to the board's; an undivided board has the plain number, sections have `.1`, `.2` …
from the left; sections of own carcasses are never joined within a carcass.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from baywright.making.frame import Frame
from baywright.making.material import plywood
from baywright.making.sections import divide
from baywright.model.length import format_length
from baywright.model.making import Grain, Part
from baywright.model.project import Project


@dataclass(frozen=True)
class Board:
    """A board before it is divided: what it is, where it lies along the run, and its other two measures in mm."""

    number: str
    name: str
    left_mm: float
    right_mm: float
    width_mm: float
    thickness_mm: float
    grain: Grain = Grain.LENGTH
    edged_front: bool = False
    edged_ends: bool = False
    note: str = ""


def sectioned(board: Board, joints_mm: Sequence[float], project: Project, frame: Frame) -> list[Part]:
    """The parts of a board: one, or the fewest sections no longer than the longest board, joined at `joints_mm`."""
    ends = divide(board.left_mm, board.right_mm, joints_mm, project.construction.boards.longest_mm)
    if len(ends) == 2:
        return [_part(board, board.number, board.left_mm, board.right_mm, board.note)]
    sections = list(pairwise(ends))
    parts = []
    for index, (left, right) in enumerate(sections, 1):
        place = f"section {index} of {len(sections)} from the left"
        if index < len(sections):
            distance = format_length(right - ends[0], project.unit)
            place += f"; joined to the next over the middle of {frame.upright_at(right)}, {distance} from the left end"
        parts.append(_part(board, f"{board.number}.{index}", left, right, "; ".join(filter(None, (place, board.note)))))
    return parts


def _part(board: Board, number: str, left_mm: float, right_mm: float, note: str) -> Part:
    outer_ends = (left_mm == board.left_mm) + (right_mm == board.right_mm)
    edged_ends = outer_ends if board.edged_ends else 0
    edged = (right_mm - left_mm) * board.edged_front + edged_ends * board.width_mm
    return Part(
        number=number, name=board.name, quantity=1, length_mm=right_mm - left_mm, width_mm=board.width_mm,
        thickness_mm=board.thickness_mm, material=plywood(board.thickness_mm), grain=board.grain,
        edged_length_mm=edged, edging_strips=board.edged_front + edged_ends, note=note,
    )  # fmt: skip


def over_carcasses(board: Board, project: Project, frame: Frame) -> list[Part]:
    """One board for each carcass; equal ones of drawer carcasses are one line, the shelf carcass's is numbered next.

    With shared uprights the whole run is one carcass, and the board is divided over its inner uprights.
    """
    if len(frame.carcasses_mm) == 1:
        return sectioned(board, frame.joints_mm, project, frame)
    parts: list[Part] = []
    for (left, right), span in zip(frame.carcasses_mm, frame.spans, strict=True):
        number = board.number if span.bay is not None else f"{board.number}s"
        where = "one for each drawer bay" if span.bay is not None else "for the shelf bay"
        part = _part(board, number, left, right, "; ".join(filter(None, (where, board.note))))
        if parts and parts[-1].number == number:
            parts[-1] = parts[-1].replace(quantity=parts[-1].quantity + 1)
        else:
            parts.append(part)
    return parts


def sections_of(number: str, parts: Sequence[Part]) -> list[Part]:
    """The parts that a board with that number became: itself, its sections, or one for each carcass."""
    return [part for part in parts if part.number.partition(".")[0].removesuffix("s") == number]


def bearings(number: str, parts: Sequence[Part], frame: Frame) -> int:
    """On how many upright edges the sections of a board bear: one an upright, two where a joint lies over one."""
    pieces = sum(part.quantity for part in sections_of(number, parts))
    joints = pieces - 1 if len(frame.carcasses_mm) == 1 else 0
    return len(frame.uprights) + joints if pieces else 0
