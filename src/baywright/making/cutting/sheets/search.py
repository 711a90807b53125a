"""Tries to get all pieces onto a given set of boards: empties parts of some boards, fills them anew, keeps what helps.

What does not fit is out. A step takes one to three boards, on each a place of the tree (or all of it), and a few of
the pieces that are out, and fills those places anew from all that. It is kept where the weight that is out is no more
than before, or than some steps ago (late acceptance). Nothing out: the boards suffice.

A piece's weight is its share of a board's area, mixed with its share by one of the bound's pairs of functions, which
know what is hard to combine; it grows slowly while the piece is out. From time to time another pair is drawn.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from typing import NamedTuple

from baywright.making.cutting.sheets.bound import Shares
from baywright.making.cutting.sheets.filling import Draw, Fill, Place
from baywright.making.cutting.sheets.table import Table, numbers
from baywright.making.cutting.sheets.trees import Way, below, exchanged

MEMORY = 30
"""How many steps ago the weight is looked up that a step may come back to."""
FADING = 0.02
"""How fast that memory moves to the present weight."""
HEAVIER = 1.01
"""What the weight of a piece that is out grows by …"""
HEAVIER_EVERY = 200
"""… every so many steps."""
WEIGHED_ANEW = 20_000
"""Steps after which the weights are mixed anew."""
MIXES = (0.0, 0.3, 0.5, 0.7)
"""The part of the bound's shares in the weights; the first time it is `MIXES[1]` of the strongest pair."""
WHOLE_BOARDS = 0.1
"""How often whole boards are filled anew and not places on them."""
BOARDS_WHOLE = (1, 1, 2, 2, 2, 3, 3, 4)
BOARDS_IN_PART = (1, 2, 2, 3)
ENDINGS = (0.2, 0.35, 0.5)
"""The chance to end the way down a tree at each step."""
MOST_OUT = 6
"""At most so many pieces that are out are tried in one step."""


class Slot(NamedTuple):
    """A board of an attempt: its kind, the measures that may be used, and the states its filling may begin with."""

    kind: int
    length: int
    width: int
    states: tuple[int, ...]


class Attempt:
    """The search with one set of boards; `places` are their fillings, `out` is the mask of what is on none of them.

    Boards without a place are filled at once from what is out.
    """

    def __init__(
        self, table: Table, tools: tuple[Draw, Fill], chance: random.Random, slots: Sequence[Slot],
        places: Sequence[Place | None], shares: Shares,
    ) -> None:  # fmt: skip
        self.slots = list(slots)
        self.places = list(places)
        self._table = table
        self._draw, self._fill = tools
        self._chance = chance
        self.out = table.everything
        for place in places:
            self.out &= ~place[2] if place else -1
        for at, slot in enumerate(self.slots):
            if self.places[at] is None and self.out:
                place = self._fill(slot.length, slot.width, self.out, slot.states[0])
                self.places[at] = place
                self.out &= ~place[2] if place else -1
        self._shares = shares
        self._steps = 0
        self._weigh(1, MIXES[1])

    def _weigh(self, row: int, mix: float) -> None:
        """Mix the weights from the plain areas (row 0) and a row of the shares, and begin the memory anew."""
        plain, hard = self._shares[0], self._shares[min(row, len(self._shares) - 1)]
        self._weights = ((1 - mix) * plain + mix * hard).tolist()
        self._weight = self._weight_of(self.out)
        self._memory = [self._weight] * MEMORY

    def _weight_of(self, mask: int) -> float:
        weights, total = self._weights, 0.0
        while mask:
            number = mask.bit_length() - 1
            total += weights[number]
            mask ^= 1 << number
        return total

    def run(self, steps: int) -> int:
        """Take so many steps, or fewer where nothing is out any more; how many were taken."""
        for taken in range(steps):
            if not self.out:
                return taken
            self._step()
        return steps

    def _step(self) -> None:
        self._steps += 1
        holes, pool = self._holes()
        tried = self._tried()
        pool |= tried
        kept_out = self.out & ~tried
        self._draw()
        fill = self._fill
        filled: list[Place | None] = []
        for _, _, length, width, state in holes:
            place = fill(length, width, pool, state) if pool else None
            if place:
                pool &= ~place[2]
            filled.append(place)
        weight = self._weight_of(kept_out | pool)
        at = self._steps % MEMORY
        if weight <= self._weight or weight <= self._memory[at]:
            for (board, way, _, _, _), place in zip(holes, filled, strict=True):
                self.places[board] = exchanged(way, place) if way else place
            self.out = kept_out | pool
            self._weight = weight
        known = self._memory[at]
        self._memory[at] = min(self._weight, known * (1 - FADING) + self._weight * FADING)
        if self._steps % WEIGHED_ANEW == 0:
            draw = self._chance.random
            self._weigh(int(draw() * len(self._shares)), MIXES[int(draw() * len(MIXES))])
        elif self._steps % HEAVIER_EVERY == 0:
            for number in numbers(self.out):
                self._weights[number] *= HEAVIER
            self._weight = self._weight_of(self.out)

    def _holes(self) -> tuple[list[tuple[int, Way, int, int, int]], int]:
        """The places to fill anew, as (board, way to it, length, width, state), and the pieces taken out of them."""
        draw, chance = self._chance.random, self._chance
        whole = draw() < WHOLE_BOARDS
        counts = BOARDS_WHOLE if whole else BOARDS_IN_PART
        count = min(counts[int(draw() * len(counts))], len(self.places))
        ending = 1.0 if whole else ENDINGS[int(draw() * len(ENDINGS))]
        pool = 0
        holes: list[tuple[int, Way, int, int, int]] = []
        boards = len(self.places)
        first = int(draw() * boards)
        if count == 1:
            chosen = [first]
        elif count == 2:
            chosen = [first, (first + 1 + int(draw() * (boards - 1))) % boards]
        else:
            chosen = chance.sample(range(boards), count)
        for board in chosen:
            place = self.places[board]
            if place is None or whole:
                pool |= place[2] if place else 0
                _, length, width, states = self.slots[board]
                holes.append((board, [], length, width, states[int(draw() * len(states))]))
            else:
                way, at = below(place, chance, ending)
                pool |= at[2]
                holes.append((board, way, at[0], at[1], at[7]))
        return holes, pool

    def _tried(self) -> int:
        """The pieces that are out and take part in this step."""
        out = self.out
        if out.bit_count() <= MOST_OUT:
            return out
        mask = 0
        for number in self._chance.sample(numbers(out), MOST_OUT):
            mask |= 1 << number
        return mask
