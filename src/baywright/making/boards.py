"""Boards that run through over several uprights, divided into pieces where they are longer than any to be had.

Laws: the pieces' lengths add up to the board's; an undivided board has the plain number, pieces have `.1`, `.2` …
from the left; boards of own carcasses are never joined within a carcass. Where the run has several sections or steps
in height, each has boards of its own, numbered with a letter: `T1`, `T1b`, `T1c` …
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from string import ascii_lowercase

from baywright.making.frame import Frame
from baywright.making.piece import piece
from baywright.making.sections import divide
from baywright.model.length import format_length
from baywright.model.machining import Side
from baywright.model.making import Grain, Part
from baywright.model.project import Project
from baywright.model.stock import BoardRole


@dataclass(frozen=True)
class Board:
    """A board before it is divided: what it is, where it lies along the run, and how wide it is, in mm."""

    role: BoardRole
    number: str
    name: str
    left_mm: float
    right_mm: float
    width_mm: float
    grain: Grain = Grain.LENGTH
    banded: tuple[Side, ...] = ()
    """Its edges that are covered with edging; START is its left end."""
    note: str = ""


def lettered(boards: Sequence[Board]) -> list[Board]:
    """Boards of one number, each but the first with a letter of its own."""
    return [
        board if index == 0 else replace(board, number=f"{board.number}{ascii_lowercase[index % 26]}")
        for index, board in enumerate(boards)
    ]


def sectioned(board: Board, joints_mm: Sequence[float], project: Project, frame: Frame) -> list[Part]:
    """The parts of a board: one, or the fewest pieces no longer than the longest board, joined at `joints_mm`."""
    # Over the end uprights of the board itself, as where the run steps up, a joint would leave a sliver.
    least, most = board.left_mm + frame.upright_mm, board.right_mm - frame.upright_mm
    inner = [x for x in joints_mm if least <= x <= most]
    ends = divide(board.left_mm, board.right_mm, inner, project.boards.longest_mm)
    if len(ends) == 2:
        return [_part(board, board.number, board.left_mm, board.right_mm, board.note, project, frame)]
    pieces = list(pairwise(ends))
    parts = []
    for index, (left, right) in enumerate(pieces, 1):
        place = f"section {index} of {len(pieces)} from the left"
        if index < len(pieces):
            distance = format_length(right - ends[0], project.unit)
            place += f"; joined to the next over the middle of {frame.upright_at(right)}, {distance} from the left end"
        note = "; ".join(filter(None, (place, board.note)))
        parts.append(_part(board, f"{board.number}.{index}", left, right, note, project, frame))
    return parts


def _part(
    board: Board, number: str, left_mm: float, right_mm: float, note: str, project: Project, frame: Frame
) -> Part:
    length = round(right_mm - left_mm, 9)  # places add up with noise in the last digits; equal boards are one line
    inner = {
        side for side, is_outer in ((Side.START, left_mm == board.left_mm), (Side.END, right_mm == board.right_mm))
        if not is_outer
    }  # fmt: skip
    return piece(
        project, board.role, number, board.name, 1, length, board.width_mm, grain=board.grain,
        banded=tuple(side for side in board.banded if side not in inner), note=note,
        bays=frame.bays_over(left_mm, right_mm), lefts_mm=(left_mm,),
    )  # fmt: skip


def over_carcasses(boards: Sequence[Board], project: Project, frame: Frame) -> list[Part]:
    """The parts of boards that lie over carcasses, one board for each carcass in their order.

    With shared uprights each is divided over its inner uprights where it must be; with own ones equal boards of
    drawer carcasses are one line, and the shelf carcass's is numbered with an `s`.
    """
    if not frame.own_uprights:
        return [part for board in lettered(boards) for part in sectioned(board, frame.joints_mm, project, frame)]
    parts: list[Part] = []
    for board, span in zip(boards, frame.spans, strict=True):
        where = "one for each drawer bay" if span.bay is not None else "for the shelf bay"
        note = "; ".join(filter(None, (where, board.note)))
        part = _part(board, board.number, board.left_mm, board.right_mm, note, project, frame)
        if span.bay is None:
            parts.append(part.replace(number=f"{board.number}s"))
            continue
        like = next((i for i, known in enumerate(parts) if known == part.replace(
            number=known.number, quantity=known.quantity, lefts_mm=known.lefts_mm, bays=known.bays)), None)  # fmt: skip
        if like is not None:
            known = parts[like]
            parts[like] = known.replace(
                quantity=known.quantity + 1, lefts_mm=known.lefts_mm + part.lefts_mm, bays=known.bays + part.bays
            )
        else:
            parts.append(part.replace(number=part.number + (ascii_lowercase[len(parts) % 26] if parts else "")))
    return parts


def pieces_of(number: str, parts: Sequence[Part]) -> list[Part]:
    """The parts that the boards of a number became: themselves, their pieces, or one for each carcass."""
    return [part for part in parts if plain_number(part).partition(".")[0].rstrip(ascii_lowercase) == number]


def plain_number(part: Part) -> str:
    """The number of a part without that of its variant, in which pieces are worked alike."""
    return part.number.partition("/")[0]
