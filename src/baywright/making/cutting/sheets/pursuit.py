"""One packing pursued: first layouts, then sets of boards that cost less, then better rests and fewer cuts.

Laws: every packing told is better than the one before, the returned one is the last told; all chance comes from the
seed, and the effort counts steps, so that only `stop` depends on the clock.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

from baywright.making.cutting.packing import Board, Packing, Piece, Rules
from baywright.making.cutting.sheets.costs import least_cost, needs_of
from baywright.making.cutting.sheets.filling import STAGES, Place, filler
from baywright.making.cutting.sheets.search import Attempt, Slot
from baywright.making.cutting.sheets.stock import Filled, Solution, greedy, weight
from baywright.making.cutting.sheets.table import numbers, table_of
from baywright.making.cutting.sheets.targets import cheaper
from baywright.making.cutting.sheets.trees import layout

OPENINGS = 30
"""So many first packings are made at most."""
STEPS_AT_ONCE = 16
"""Steps between two questions whether to stop."""
FIRST_SLICE = 1_000
"""Steps for each set of boards in the first round; every round has twice as many."""
LONGEST_SLICE = 1 << 60


class Pursuit:
    """The state of one `pack`; pieces and boards are those that fit somewhere, or hold something."""

    def __init__(
        self, pieces: Sequence[Piece], kinds: Sequence[Board], rules: Rules, unplaceable: tuple[int, ...], *, seed: int,
        effort: int | None, stop: Callable[[], bool], found: Callable[[Packing], None] | None,
    ) -> None:  # fmt: skip
        self._kinds = kinds
        self._rules = rules
        self._unplaceable = unplaceable
        self._chance = Random(seed)
        self._left = effort if effort is not None else LONGEST_SLICE
        self._stop = stop
        self._found = found
        self._table = table_of(pieces, max(board.length for board in kinds), max(board.width for board in kinds))
        self._tools = filler(self._table, self._chance)
        first = (rules.stages or 0) * STAGES
        self._states = (first, first + 1) if rules.stages else (0,)
        self._bound = 0
        self._best: Solution | None = None
        self._packing: Packing | None = None

    def run(self) -> Packing:
        """Go through all the stages, or as far as effort and `stop` let it."""
        self._offer(greedy(self._table, self._kinds, self._tools[1], self._states))
        needs = needs_of(self._table.pieces, self._kinds)
        self._needs = needs
        self._bound = least_cost(needs, self._kinds, len(self._table.pieces))
        for _ in range(OPENINGS):
            if self._is_over() or self._is_cheapest():
                break
            self._tools[0]()
            self._offer(greedy(self._table, self._kinds, self._tools[1], self._states))
            self._left -= 1
        while not self._is_over() and not self._is_cheapest():
            if not self._save():
                break
        return self._told()

    # what is best

    def _offer(self, solution: Solution) -> bool:
        """Take the solution where it is better: less area out, then less cost, then rests and cuts."""
        if self._best is not None and self._rank(solution) >= self._rank(self._best):
            return False
        self._best = solution
        self._packing = None
        packing = self._told()
        if self._found:
            self._found(packing)
        return True

    def _rank(self, solution: Solution) -> tuple[int, int]:
        return weight(solution.out, self._table), solution.cost(self._kinds)

    def _told(self) -> Packing:
        best = self._best
        assert best is not None
        kinds = self._kinds
        layouts = tuple(
            layout(kinds[each.kind].id, kinds[each.kind].length, kinds[each.kind].width, each.place, self._table)
            for each in best.boards
        )
        unplaced = tuple(sorted([*self._unplaceable, *(self._table.pieces[number].id for number in numbers(best.out))]))
        return Packing(layouts, unplaced, best.cost(kinds), min(self._bound, best.cost(kinds)), self._unplaceable)

    # going on

    def _is_over(self) -> bool:
        return self._left <= 0 or self._stop()

    def _is_cheapest(self) -> bool:
        assert self._best is not None
        return not self._best.out and self._best.cost(self._kinds) <= self._bound

    def _save(self) -> bool:
        """Try the sets of boards that cost less in turn; whether one of them did."""
        best = self._best
        assert best is not None
        if best.out:
            return self._place_more(best)
        attempts = [
            self._attempt(best, target)
            for target in cheaper(best.counts(self._kinds), self._kinds, self._needs, self._bound)
        ]
        steps = FIRST_SLICE
        while attempts and not self._is_over():
            for attempt in attempts:
                if self._try(attempt, steps):
                    return self._offer(solution(attempt))
            steps *= 2
        return False

    def _place_more(self, best: Solution) -> bool:
        """Where the stock did not suffice: all boards there are, until everything is placed or the effort is spent."""
        attempt = self._attempt(best, [board.available or 0 for board in self._kinds])
        while attempt.out and not self._is_over():
            self._try(attempt, STEPS_AT_ONCE)
            self._offer(solution(attempt))
        return not attempt.out

    def _try(self, attempt: Attempt, steps: int) -> bool:
        """Run an attempt for so many steps; whether nothing is out any more."""
        while steps > 0 and attempt.out and not self._is_over():
            taken = attempt.run(min(STEPS_AT_ONCE, self._left))
            self._left -= taken
            steps -= taken
        return not attempt.out

    def _attempt(self, best: Solution, target: Sequence[int]) -> Attempt:
        """An attempt with the target's boards, beginning with those of the best solution, the fullest of a kind."""
        wanted = list(target)
        slots: list[Slot] = []
        places: list[Place | None] = []
        for each in sorted(best.boards, key=lambda each: -weight(each.place[2], self._table)):
            if wanted[each.kind]:
                wanted[each.kind] -= 1
                slots.append(self._slot(each.kind))
                places.append(each.place)
        for kind, count in enumerate(wanted):
            slots += [self._slot(kind)] * count
            places += [None] * count
        return Attempt(self._table, self._tools, self._chance, slots, places)

    def _slot(self, kind: int) -> Slot:
        board = self._kinds[kind]
        return Slot(kind, board.length, board.width, self._states)


def solution(attempt: Attempt) -> Solution:
    """What an attempt has reached, without the boards left empty."""
    boards = tuple(
        Filled(slot.kind, place) for slot, place in zip(attempt.slots, attempt.places, strict=True) if place
    )  # fmt: skip
    return Solution(boards, attempt.out)
