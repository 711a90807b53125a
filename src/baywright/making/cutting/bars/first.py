"""A first answer at once: the bar that costs least for what it takes, filled as full as it goes, and again.

Law: every piece is cut that some bar still left is long enough for; no bar is empty.
"""

from collections.abc import Sequence

from baywright.making.cutting.bars.budget import Budget
from baywright.making.cutting.bars.filling import fullest_of_many, steps
from baywright.making.cutting.bars.task import Counts, Cut, Task

MOST_BITS = 1 << 23
"""Bits of sums kept for one bar; a first answer has to be quick."""


def first_answers(task: Task, budget: Budget) -> list[Cut]:
    """The best of a few first answers: with all kinds of bar, and with those without limit one at a time."""
    every = [kind.available for kind in task.kinds]
    pieces = sum(task.counts)
    tries = [_laid(task, every, budget)]
    for chosen, kind in enumerate(task.kinds):
        if kind.available == pieces and len(task.kinds) > 1:
            only = [n if n < pieces or number == chosen else 0 for number, n in enumerate(every)]
            tries.append(_laid(task, only, budget))
    return min(tries, key=lambda cuts: (sum(task.left_over(cuts)), task.cost(cuts)))


def _laid(task: Task, available: Sequence[int], budget: Budget) -> list[Cut]:
    left, stock = list(task.counts), list(available)
    cuts: list[Cut] = []
    while True:
        held = {kind: _filling(task, left, kind, budget) for kind, n in enumerate(stock) if n}
        held = {kind: counts for kind, counts in held.items() if counts}
        if not held:
            return cuts
        kind = min(held, key=lambda kind: _rank(task, left, kind, held[kind]))
        times = min(stock[kind], *(left[number] // count for number, count in held[kind]))
        cuts += [(kind, held[kind])] * times
        stock[kind] -= times
        for number, count in held[kind]:
            left[number] -= times * count


def _rank(task: Task, left: Sequence[int], kind: int, counts: Counts) -> tuple[float, float]:
    """Cost by length taken, and the waste; a bar that takes all that is left is seen as full."""
    filled = task.filled(counts)
    everything = sum(length * count for length, count in zip(task.lengths, left, strict=True))
    length, cost = task.kinds[kind].length, task.kinds[kind].cost
    return cost / (task.longest_bar if filled == everything else filled), length / filled


def _filling(task: Task, left: Sequence[int], kind: int, budget: Budget) -> Counts:
    """The fullest filling of a bar that takes the longest piece left that fits; empty where none fits."""
    room = task.kinds[kind].length
    pieces: list[int] = []
    for number, length in enumerate(task.lengths):
        if length <= room:
            pieces += [number] * min(left[number], room // length)
    if not pieces:
        return ()
    budget.spend(0.1 + 2 * steps(len(pieces), room))
    others = [task.lengths[number] for number in pieces[1:]]
    taken = fullest_of_many(others, room - task.lengths[pieces[0]], most_bits=MOST_BITS)
    chosen = [pieces[0], *(pieces[place + 1] for place in taken)]
    return tuple((number, chosen.count(number)) for number in sorted(set(chosen)))
