"""Whole numbers of fillings out of the linear relaxation: the surest filling is fixed, what is left is solved anew.

The first dive takes the surest at every step; further ones choose among the surest few by chance.

Law: an answer takes no more bars than it was given and holds every piece asked for; without one nothing is proved.
"""

import random
from collections.abc import Sequence

from baywright.making.cutting.bars.budget import Budget
from baywright.making.cutting.bars.columns import Columns, cut_of
from baywright.making.cutting.bars.exchange import into
from baywright.making.cutting.bars.relaxation import Answer, Relaxation
from baywright.making.cutting.bars.task import Cut, Task

SURE = 0.85
"""A filling that is cut so often, of one bar, is taken as it is."""
FEW_BARS = 12
MORE_BARS = (160, 80, 40)
"""What is left for so few bars is also tried by exchanging pieces, and once each when it comes down to so many."""
FEW_FILLINGS = 4
"""Among so many fillings a further dive chooses."""
NOTHING_SHORT = 1e-6
SHORT_PRICE = 100.0
"""What a unit of length left out counts against a unit of bar."""


class Dive:
    """The way down from a relaxation to whole numbers for given bars."""

    def __init__(self, task: Task, relaxation: Relaxation, budget: Budget) -> None:
        self._task = task
        self._relaxation = relaxation
        self._budget = budget

    def run(self, bars: Sequence[int], needs: Sequence[int], seed: int = 0) -> list[Cut] | None:
        """All needed pieces from at most so many bars of each kind; None: not found this way."""
        task, left, limits = self._task, list(needs), list(bars)
        chance = random.Random(seed) if seed else None
        kind_costs = [kind.length / task.longest_bar for kind in task.kinds]
        self._relaxation.aim(kind_costs, [SHORT_PRICE * length / task.longest_bar for length in task.lengths])
        columns = Columns(task, self._relaxation, kind_costs)
        cuts: list[Cut] = []
        looks = list(MORE_BARS)
        while any(left):
            is_few = sum(limits) <= FEW_BARS
            while looks and sum(limits) <= looks[0]:
                looks.pop(0)
                is_few = True
            if is_few:
                rest = self._exchanged(left, limits, seed)
                if rest is not None:
                    return cuts + rest
            self._relaxation.ask(left, limits)

            def enough(_: Answer) -> bool:
                return self._relaxation.short() < NOTHING_SHORT

            columns.settle(left, limits, self._budget, enough)
            if self._relaxation.short() >= NOTHING_SHORT:
                return None
            fixed = self._fix(left, limits, chance)
            if not fixed:
                return None
            cuts += fixed
        return cuts

    def _fix(self, left: list[int], limits: list[int], chance: random.Random | None) -> list[Cut]:
        """Take the fillings that are sure, else one of the surest, out of what is left."""
        amounts = sorted(
            self._relaxation.amounts(), key=lambda pair: (-round(pair[0], 6), -self._task.filled(pair[1][1]), pair[1])
        )
        sure = [cut for amount, cut in amounts for _ in range(int(amount + 1 - SURE))]
        few = [cut for _, cut in amounts[:FEW_FILLINGS]]
        if chance is not None:
            chance.shuffle(few)
            sure = [cut for cut in sure if chance.random() < SURE]
        fixed: list[Cut] = []
        for cut in sure or few[:1]:
            kind, counts = cut
            if limits[kind] and all(left[number] >= count for number, count in counts):
                limits[kind] -= 1
                for number, count in counts:
                    left[number] -= count
                fixed.append(cut)
        return fixed

    def _exchanged(self, left: Sequence[int], limits: Sequence[int], seed: int) -> list[Cut] | None:
        task = self._task
        pieces = [length for length, count in zip(task.lengths, left, strict=True) for _ in range(count)]
        kinds = sorted((kind for kind, limit in enumerate(limits) for _ in range(limit)), reverse=True)
        effort = 1.0 + len(kinds)
        filled = into(pieces, [task.kinds[kind].length for kind in kinds], effort, seed, self._budget)
        if filled is None:
            return None
        return [cut_of(task, kind, held) for kind, held in zip(kinds, filled, strict=True) if held]
