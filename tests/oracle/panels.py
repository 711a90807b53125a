"""The least cost of cutting a few rectangles from boards, by trying everything; written apart from the engine.

A rectangle is cut at every whole position, its pieces shared out between both halves in every way. Only for a handful
of pieces on small boards. Stages as in the trade: freeing a piece that already fills its cell one way is not counted.
"""

from collections.abc import Sequence
from functools import cache

Piece = tuple[int, int, bool]
"""Length, width, may turn."""
Board = tuple[int, int, int, int | None]
"""Length, width, cost, how many there are."""


def least_cost(pieces: Sequence[Piece], boards: Sequence[Board], stages: int | None = None) -> int | None:
    """The least cost of boards that hold all the pieces; None where the stock does not suffice."""
    everything = (1 << len(pieces)) - 1
    best: dict[int, int] = {0: 0}
    for length, width, cost, count in boards:
        held = _held_by(tuple(pieces), length, width, stages)
        for _ in range(len(pieces) if count is None else min(count, len(pieces))):
            further = dict(best)
            for done, paid in best.items():
                for more in held:
                    if not done & more and paid + cost < further.get(done | more, paid + cost + 1):
                        further[done | more] = paid + cost
            best = further
    return best.get(everything)


def _held_by(pieces: tuple[Piece, ...], length: int, width: int, stages: int | None) -> list[int]:
    """The sets of pieces, as masks, that one board holds."""

    @cache
    def holds(along: int, over: int, mask: int) -> bool:
        """Without a limit of stages."""
        if mask & (mask - 1) == 0:
            return _fits(pieces[mask.bit_length() - 1], along, over)
        for part in _shares(mask):
            if any(holds(at, over, part) and holds(along - at, over, mask ^ part) for at in range(1, along)):
                return True
            if any(holds(along, at, part) and holds(along, over - at, mask ^ part) for at in range(1, over)):
                return True
        return False

    @cache
    def holds_in(along: int, over: int, mask: int, left: int, across: bool) -> bool:
        """With so many stages left, the first of which cuts across or not."""
        if mask & (mask - 1) == 0:
            piece = pieces[mask.bit_length() - 1]
            return _fits(piece, along, over) if left else _fills_one_way(piece, along, over)
        if left == 0:
            return False
        if holds_in(along, over, mask, left - 1, not across):
            return True
        for part in _shares(mask):
            for at in range(1, along if across else over):
                first, second = ((at, over), (along - at, over)) if across else ((along, at), (along, over - at))
                if holds_in(*first, part, left, across) and holds_in(*second, mask ^ part, left, across):
                    return True
        return False

    masks = range(1, 1 << len(pieces))
    if stages is None:
        return [mask for mask in masks if holds(length, width, mask)]
    return [mask for mask in masks if any(holds_in(length, width, mask, stages, across) for across in (True, False))]


def _shares(mask: int) -> list[int]:
    """The parts of a set that are neither empty nor all of it."""
    found, part = [], (mask - 1) & mask
    while part:
        found.append(part)
        part = (part - 1) & mask
    return found


def _ways(piece: Piece) -> list[tuple[int, int]]:
    length, width, may_turn = piece
    return [(length, width), (width, length)] if may_turn else [(length, width)]


def _fits(piece: Piece, along: int, over: int) -> bool:
    return any(length <= along and width <= over for length, width in _ways(piece))


def _fills_one_way(piece: Piece, along: int, over: int) -> bool:
    return any(
        length <= along and width <= over and (length == along or width == over) for length, width in _ways(piece)
    )
