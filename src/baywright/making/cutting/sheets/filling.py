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

import random
from collections.abc import Callable
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
DEEPEST = 300
"""Places nested deeper stay empty, so that a board of a thousand slivers ends no recursion."""
STAGES = 2
"""A state holds the stages left times this."""


def filler(table: Table, chance: random.Random) -> tuple[Draw, Fill]:
    """The drawing of choices, and the filling of a (length, width) from a pool in a state, for one table.

    The filling is written in one piece: it is where nearly all the time goes.
    """
    fits_length, fits_width, turned_length, turned_width = table.fits
    lengths, widths, turns = table.lengths, table.widths, table.turns
    draw_one = chance.random
    choices = [
        (near, share, passed, way)
        for near in table.near for share in NEARLY for passed in PASSED_OVER for way in range(4)
    ]  # fmt: skip
    near_length, near_width, near_turned_length, near_turned_width = table.near[0]
    share, passed, way = 1.0, 0.0, LARGER_REST

    def draw() -> None:
        nonlocal near_length, near_width, near_turned_length, near_turned_width, share, passed, way
        near, share, passed, way = choices[int(draw_one() * len(choices))]
        near_length, near_width, near_turned_length, near_turned_width = near

    def fill(length: int, width: int, pool: int, state: int, depth: int = 0) -> Place | None:
        lying = either = fits_length[length] & fits_width[width] & pool
        turned = 0
        if turns:
            turned = turned_length[length] & turned_width[width] & pool
            either |= turned
        if not either or depth > DEEPEST:
            return None
        if draw_one() < share:
            near_lying = (near_length[length] | near_width[width]) & lying
            near_turned = (near_turned_length[length] | near_turned_width[width]) & turned if turned else 0
            if near_lying or near_turned:
                lying, turned = near_lying, near_turned
                either = lying | turned
        code = either.bit_length() - 1
        while draw_one() < passed:
            either ^= 1 << code
            if not either:
                break
            code = either.bit_length() - 1
        mask = 1 << code
        if turned & mask and not (lying & mask and draw_one() < 0.5):
            piece_length, piece_width, code = widths[code], lengths[code], ~code
        else:
            piece_length, piece_width = lengths[code], widths[code]
        over_length, over_width = length - piece_length, width - piece_width
        pool &= ~mask
        beyond = beside = None
        across = over_length > 0
        beyond_state = beside_state = 0
        if over_length and over_width:
            if way == LARGER_REST:
                across = over_length * width > length * over_width
            elif way == SMALLER_REST:
                across = over_length * width < length * over_width
            elif way == BY_LOT:
                across = draw_one() < 0.5
            else:
                across = (over_length > over_width) == (draw_one() < FOLLOWED)
            if state:
                across, beyond_state, beside_state = _cut_in_stages(state, True, across)
            if pool and beside_state >= 0:
                if across:
                    beside = fill(piece_length, over_width, pool, beside_state, depth + 1)
                else:
                    beside = fill(over_length, piece_width, pool, beside_state, depth + 1)
                if beside:
                    mask |= beside[2]
                    pool &= ~beside[2]
        elif state:
            across, beyond_state, beside_state = _cut_in_stages(state, False, across)
        if pool and beyond_state >= 0:
            if across:
                if over_length:
                    beyond = fill(over_length, width, pool, beyond_state, depth + 1)
            elif over_width:
                beyond = fill(length, over_width, pool, beyond_state, depth + 1)
            if beyond:
                mask |= beyond[2]
        return (length, width, mask, code, across, beyond, beside, state)

    return draw, fill


def _cut_in_stages(state: int, both_over: bool, across: bool) -> tuple[bool, int, int]:
    """Whether to cut across, and the states beyond and beside (−1: may not be cut further, so stays empty).

    `across` is wished where both rests are there, else it is the only way.
    """
    stages, along = state // STAGES, bool(state % STAGES)
    if both_over and stages == 1:
        across = not along
    if across != along:
        beyond, turned = stages, stages - 1
    elif stages > 1:
        beyond, turned = stages - 1, stages - 2
    else:
        return across, -1, -1
    return across, beyond * STAGES + (not across), turned * STAGES + across if turned else -1
