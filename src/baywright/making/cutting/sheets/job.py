"""The whole task of one packing: what is placeable, the bound, a first packing, then cheaper and better ones."""

import random
from collections.abc import Callable, Sequence

from baywright.making.cutting.packing import Board, Packing, Piece, Rules
from baywright.making.cutting.sheets.costs import fits
from baywright.making.cutting.sheets.course import course_of
from baywright.making.cutting.sheets.pursuit import Pursuit


def solve(
    pieces: Sequence[Piece],
    boards: Sequence[Board],
    rules: Rules,
    *,
    effort: int | None,
    seed: int,
    stop: Callable[[], bool],
    found: Callable[[Packing], None] | None,
) -> Packing:
    """Answer `packing.pack`."""
    _check(pieces, boards, rules)
    there = [board for board in boards if board.available != 0]
    unplaceable = tuple(piece.id for piece in pieces if not any(fits(piece, board) for board in there))
    hopeless = set(unplaceable)
    placeable = [piece for piece in pieces if piece.id not in hopeless]
    kinds = [board for board in there if any(fits(piece, board) for piece in placeable)]
    if not kinds:
        packing = Packing((), unplaceable, 0, 0, unplaceable)
        if found:
            found(packing)
        return packing
    course = course_of(placeable, kinds, rules, random.Random(seed), effort, stop)
    return Pursuit(course, unplaceable, found).run()


def _check(pieces: Sequence[Piece], boards: Sequence[Board], rules: Rules) -> None:
    if len({piece.id for piece in pieces}) < len(pieces):
        raise ValueError("Two pieces have the same id.")
    if len({board.id for board in boards}) < len(boards):
        raise ValueError("Two boards have the same id.")
    measured: list[Piece | Board] = [*pieces, *boards]
    for each in measured:
        if each.length <= 0 or each.width <= 0:
            raise ValueError(f"{each} has a measure that is not above zero.")
    for board in boards:
        if board.cost < 0 or (board.available is not None and board.available < 0):
            raise ValueError(f"{board} costs or counts less than nothing.")
    if rules.stages is not None and rules.stages < 2:
        raise ValueError("Boards are cut in two stages at least.")
    if min(rules.rest_least) < 0:
        raise ValueError("A rest’s least sides are not below zero.")
