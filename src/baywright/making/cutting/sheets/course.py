"""What all parts of a pursuit share: pieces, kinds of boards, tools, and how much effort is left."""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

import numpy

from baywright.making.cutting.packing import Board, Packing, Piece, Rules
from baywright.making.cutting.sheets.bound import Shares
from baywright.making.cutting.sheets.filling import STAGES, Draw, Fill, Place, filler
from baywright.making.cutting.sheets.search import Attempt, Slot
from baywright.making.cutting.sheets.stock import Filled, Solution
from baywright.making.cutting.sheets.table import Table, numbers, table_of
from baywright.making.cutting.sheets.trees import layout

STEPS_AT_ONCE = 16
"""Steps between two questions whether to stop."""
NO_END = 1 << 60


@dataclass
class Course:
    """One search under way. `left`: steps that may still be taken; `states`: what a board's filling may begin with."""

    table: Table
    kinds: Sequence[Board]
    rules: Rules
    chance: random.Random
    left: int
    stop: Callable[[], bool]
    states: tuple[int, ...] = (0,)
    shares: Shares = field(default_factory=lambda: numpy.ones((1, 1)))
    """What share of the largest board each piece takes, in the order of the table: `costs.Needs.shares`."""
    tools: tuple[Draw, Fill] = field(init=False)

    def __post_init__(self) -> None:
        self.tools = filler(self.table, self.chance)

    def is_over(self) -> bool:
        """Whether the effort is spent or a stop was asked for."""
        return self.left <= 0 or self.stop()

    def tries(self, attempt: Attempt, steps: int) -> bool:
        """Run an attempt for so many steps; whether nothing is out any more."""
        while steps > 0 and attempt.out and not self.is_over():
            taken = attempt.run(min(STEPS_AT_ONCE, self.left))
            self.left -= taken
            steps -= taken
        return not attempt.out

    def slot(self, kind: int) -> Slot:
        """A whole board of a kind, as an attempt takes it."""
        board = self.kinds[kind]
        return Slot(kind, board.length, board.width, self.states)

    def attempt(self, slots: Sequence[Slot], places: Sequence[Place | None]) -> Attempt:
        """An attempt with these boards."""
        return Attempt(self.table, self.tools, self.chance, slots, places, self.shares)

    def cost(self, attempt: Attempt) -> int:
        """What the boards of an attempt cost."""
        return sum(self.kinds[slot.kind].cost for slot in attempt.slots)

    def packing(self, solution: Solution, bound: int, unplaceable: tuple[int, ...]) -> Packing:
        """A solution as it is told."""
        out = (self.table.pieces[number].id for number in numbers(solution.out))
        cost = solution.cost(self.kinds)
        layouts = tuple(
            layout(self.kinds[each.kind], each.place, self.table) for each in solution.boards
        )  # fmt: skip
        return Packing(layouts, tuple(sorted([*unplaceable, *out])), cost, min(bound, cost), unplaceable)


def course_of(
    pieces: Sequence[Piece], kinds: Sequence[Board], rules: Rules, chance: random.Random, effort: int | None,
    stop: Callable[[], bool],
) -> Course:  # fmt: skip
    """The course for pieces that each fit on one of the kinds."""
    table = table_of(pieces, max(board.length for board in kinds), max(board.width for board in kinds))
    first = (rules.stages or 0) * STAGES
    states = (first, first + 1) if rules.stages else (0,)
    return Course(table, kinds, rules, chance, NO_END if effort is None else effort, stop, states)


def reached(attempt: Attempt) -> Solution:
    """What an attempt has come to, without the boards left empty."""
    filled = zip(attempt.slots, attempt.places, strict=True)
    return Solution(tuple(Filled(slot.kind, place) for slot, place in filled if place), attempt.out)
