"""Fills a rectangle from a pool of pieces: one in its corner, a cut along its side, and the same for both rests.

A filled place is a tuple, for speed: `(length, width, mask, code, across, beyond, beside, state)`. `mask`: the pieces
in it; `code`: the corner piece's number, or −1 − number where it is turned; `across`: the first cut runs along y at
the piece's length, so `beyond` (behind that cut) has the place's full width and `beside` lies above the piece, else
the first cut runs along x at the piece's width, `beyond` lies above it over the full length and `beside` next to the
piece; `beyond` and `beside` are filled places or None where nothing was put. `state`: 0 without a limit of stages,
else 2 · stages left + (1 where they begin with cuts along x).

The choices (largest fitting piece, or largest of those that nearly fill the place; how often the largest is passed
over; which way to cut) are drawn anew for each filling, which is where the variety of the search comes from.
"""

from __future__ import annotations

from collections.abc import Callable
from random import Random
from typing import TypeAlias

from baywright.making.cutting.sheets.table import Table

Place: TypeAlias = "tuple[int, int, int, int, bool, Place | None, Place | None, int]"
Fill: TypeAlias = "Callable[[int, int, int, int], Place | None]"
Draw: TypeAlias = Callable[[], None]

PASSED_OVER = (0.0, 0.05, 0.15, 0.3, 0.5)
"""How often the best piece is passed over for the next."""
NEARLY = (0.0, 0.5, 0.9, 1.0, 1.0)
"""How often a piece that nearly fills the place goes before a larger one."""
LARGER_REST, SMALLER_REST, BY_LOT, LONGER_SIDE = range(4)
FOLLOWED = 0.8
"""How often the cut by the longer side is followed."""
STAGES = 2
"""A state holds the stages left times this."""


def filler(table: Table, chance: Random) -> tuple[Draw, Fill]:
    """The drawing of choices, and the filling of a (length, width) from a pool in a state, for one table."""
    fits_length, fits_width, turned_length, turned_width = table.fits
    lengths, widths, turns = table.lengths, table.widths, table.turns
    draw_one = chance.random
    choices = [(near, share, passed, way) for near in table.near for share in NEARLY for passed in PASSED_OVER
               for way in range(4)]  # fmt: skip
    near_length, near_width, near_turned_length, near_turned_width = table.near[0]
    share, passed, way = 1.0, 0.0, LARGER_REST

    def draw() -> None:
        nonlocal near_length, near_width, near_turned_length, near_turned_width, share, passed, way
        near, share, passed, way = choices[int(draw_one() * len(choices))]
        near_length, near_width, near_turned_length, near_turned_width = near

    def pick(length: int, width: int, pool: int) -> int | None:
        """The code of the piece for the corner, or None where nothing fits."""
        lying = fits_length[length] & fits_width[width] & pool
        turned = turned_length[length] & turned_width[width] & pool if turns else 0
        either = lying | turned
        if not either:
            return None
        if draw_one() < share:
            near_lying = (near_length[length] | near_width[width]) & lying
            near_turned = (near_turned_length[length] | near_turned_width[width]) & turned if turned else 0
            if near_lying or near_turned:
                lying, turned = near_lying, near_turned
                either = lying | turned
        number = either.bit_length() - 1
        while draw_one() < passed:
            either ^= 1 << number
            if not either:
                break
            number = either.bit_length() - 1
        bit = 1 << number
        if turned & bit and not (lying & bit and draw_one() < 0.5):
            return -1 - number
        return number

    def cut_across(length: int, width: int, over_length: int, over_width: int) -> bool:
        if way == LARGER_REST:
            return over_length * width > length * over_width
        if way == SMALLER_REST:
            return over_length * width < length * over_width
        if way == BY_LOT:
            return draw_one() < 0.5
        return (over_length > over_width) == (draw_one() < FOLLOWED)

    def fill(length: int, width: int, pool: int, state: int) -> Place | None:
        code = pick(length, width, pool)
        if code is None:
            return None
        if code >= 0:
            piece_length, piece_width, mask = lengths[code], widths[code], 1 << code
        else:
            piece_length, piece_width, mask = widths[~code], lengths[~code], 1 << ~code
        over_length, over_width = length - piece_length, width - piece_width
        beyond = beside = None
        across = True
        if state:
            across, beyond_state, beside_state = _cut_in_stages(
                state, over_length, over_width, cut_across(length, width, over_length, over_width)
            )
        else:
            beyond_state = beside_state = 0
            if over_length and over_width:
                across = cut_across(length, width, over_length, over_width)
            else:
                across = over_length > 0
        if over_length and over_width and beside_state >= 0:
            if across:
                beside = fill(piece_length, over_width, pool & ~mask, beside_state)
            else:
                beside = fill(over_length, piece_width, pool & ~mask, beside_state)
            if beside:
                mask |= beside[2]
        if (over_length if across else over_width) and beyond_state >= 0:
            if across:
                beyond = fill(over_length, width, pool & ~mask, beyond_state)
            else:
                beyond = fill(length, over_width, pool & ~mask, beyond_state)
            if beyond:
                mask |= beyond[2]
        return (length, width, mask, code, across, beyond, beside, state)

    return draw, fill


def _cut_in_stages(state: int, over_length: int, over_width: int, wished: bool) -> tuple[bool, int, int]:
    """Whether to cut across, and the states beyond and beside (−1: may not be cut further, so stays empty)."""
    stages, along = state // STAGES, bool(state % STAGES)
    across = (wished if stages > 1 else not along) if over_length and over_width else over_length > 0
    if across != along:
        beyond, turned = stages, stages - 1
    elif stages > 1:
        beyond, turned = stages - 1, stages - 2
    else:
        return across, -1, -1
    return across, beyond * STAGES + (not across), turned * STAGES + across if turned else -1
