"""The boards of a packing while it is sought: which kinds are used, how they are filled, what that costs.

A kind is the number of a board in the list of those that hold at least one of the pieces.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from baywright.making.cutting.packing import Board
from baywright.making.cutting.sheets.filling import Fill, Place
from baywright.making.cutting.sheets.table import Table

ROOM = 1e-9
"""Added to a cost, so that of boards that cost nothing the one filled most goes first."""


@dataclass(frozen=True)
class Filled:
    """One board: its kind and its place, whose measures may be less than the board's."""

    kind: int
    place: Place


@dataclass(frozen=True)
class Solution:
    """Boards filled, and the mask of the pieces that are on none of them."""

    boards: tuple[Filled, ...]
    out: int

    def cost(self, kinds: Sequence[Board]) -> int:
        """What the boards cost."""
        return sum(kinds[each.kind].cost for each in self.boards)

    def counts(self, kinds: Sequence[Board]) -> list[int]:
        """How many boards of each kind are used."""
        counts = [0] * len(kinds)
        for each in self.boards:
            counts[each.kind] += 1
        return counts


def weight(mask: int, table: Table) -> int:
    """The area of the pieces in a mask."""
    total = 0
    while mask:
        number = mask.bit_length() - 1
        total += table.areas[number]
        mask ^= 1 << number
    return total


def greedy(table: Table, kinds: Sequence[Board], fill: Fill, states: Sequence[int]) -> Solution:
    """Board after board, always the kind that costs least for the area filled, until nothing fits any more."""
    left = [board.available if board.available is not None else len(table.pieces) for board in kinds]
    pool = table.everything
    boards: list[Filled] = []
    while pool:
        choices: list[tuple[float, int, Place]] = []
        for kind, board in enumerate(kinds):
            if left[kind]:
                for state in states:
                    place = fill(board.length, board.width, pool, state)
                    if place:
                        choices.append(((board.cost + ROOM) / weight(place[2], table), kind, place))
        if not choices:
            break
        _, kind, place = min(choices, key=lambda choice: choice[:2])
        boards.append(Filled(kind, place))
        left[kind] -= 1
        pool &= ~place[2]
    return Solution(tuple(boards), pool)
