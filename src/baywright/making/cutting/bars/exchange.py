"""All pieces into given bars: the longest first, each bar as full as it goes, then a few bars emptied and filled anew.

Law: an answer holds every piece, in bars no fuller than they are long; without one nothing is proved.
"""

import random
from collections.abc import Sequence

from baywright.making.cutting.bars.budget import Budget
from baywright.making.cutting.bars.filling import fullest_of_many, steps

MOST_OUT = 6
"""So many pieces that are out are tried at a time."""
MEMORY = 50
"""A change is taken that is no worse than what was so many changes ago."""
SLACKS = (0.0, 1.0, 2.0, 0.5)
"""How much may stay free in a bar where longer pieces can be taken for it, in parts of what is free on average."""

STEPS_TO_CHANGE = 0.02

Filled = list[list[int]]
"""The pieces in each bar."""


def laid_in(pieces: Sequence[int], bars: Sequence[int], slack: int, budget: Budget) -> tuple[Filled, list[int]]:
    """The bars filled one after the other, and the pieces that are left; pieces are given longest first."""
    left = list(pieces)
    filled: Filled = []
    for room in bars:
        first = next((place for place, piece in enumerate(left) if piece <= room), None)
        if first is None:
            filled.append([])
            continue
        behind = left[first + 1 :]
        budget.spend(steps(len(behind), room))
        taken = {place + first + 1 for place in fullest_of_many(behind, room - left[first], slack)} | {first}
        filled.append([left[place] for place in sorted(taken)])
        left = [piece for place, piece in enumerate(left) if place not in taken]
    return filled, left


def into(pieces: Sequence[int], bars: Sequence[int], effort: float, seed: int, budget: Budget) -> Filled | None:
    """All pieces in the given bars, by at most so many steps of search; None: not found."""
    free = sum(bars) - sum(pieces)
    if free < 0 or not bars:
        return [] if not pieces and not bars else None
    ordered = sorted(pieces, reverse=True)
    tries = []
    for slack in dict.fromkeys(int(free * share / len(bars)) for share in SLACKS):
        filled, out = laid_in(ordered, bars, slack, budget)
        if not out:
            return filled
        tries.append((sum(out), filled, out))
    _, filled, out = min(tries, key=lambda found: found[0])
    return Exchange(filled, out, bars, seed).run(effort, budget)


class Exchange:
    """Bars in work, and the pieces that are out."""

    def __init__(self, filled: Filled, out: list[int], bars: Sequence[int], seed: int) -> None:
        self._chance = random.Random(seed)
        self._filled = [list(pieces) for pieces in filled]
        self._out = list(out)
        self._bars = bars
        self._length_out = sum(out)
        self._passed = [self._length_out] * MEMORY

    def run(self, effort: float, budget: Budget) -> Filled | None:
        """Go on until nothing is out, or the effort is spent (None)."""
        end, turn = budget.spent + effort, 0
        while budget.spent < end:
            if self._step(turn % MEMORY, budget):
                return self._filled
            turn += 1
        return None

    def _step(self, turn: int, budget: Budget) -> bool:
        """Empty a few bars and fill them anew; whether nothing is out any more."""
        chance = self._chance
        few = min(len(self._bars), chance.choice((1, 2, 2, 3, 3, 4)))
        chosen = chance.sample(range(len(self._bars)), few)
        waiting = list(self._out)
        chance.shuffle(waiting)
        pool, waiting = waiting[:MOST_OUT], waiting[MOST_OUT:]
        before = 0
        for bar in chosen:
            pool += self._filled[bar]
            before += sum(self._filled[bar])
        chance.shuffle(pool)
        if chance.random() < 0.5:
            pool.sort(reverse=True)
        anew, effort = [], STEPS_TO_CHANGE
        for bar in chosen:
            effort += 2 * steps(len(pool), self._bars[bar])
            taken = set(fullest_of_many(pool, self._bars[bar]))
            anew.append([pool[place] for place in sorted(taken)])
            pool = [piece for place, piece in enumerate(pool) if place not in taken]
        budget.spend(effort)
        length_out = self._length_out + before - sum(map(sum, anew))
        if length_out <= max(self._length_out, self._passed[turn]):
            self._out, self._length_out = waiting + pool, length_out
            for bar, pieces in zip(chosen, anew, strict=True):
                self._filled[bar] = pieces
        self._passed[turn] = self._length_out
        return not self._out
