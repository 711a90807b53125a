"""The whole task: least cost; at equal cost the shortest bars; then the longest rest in one piece."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from baywright.making.cutting.bars.budget import Budget, StoppedError, never
from baywright.making.cutting.bars.choice import Cap
from baywright.making.cutting.bars.first import first_answers
from baywright.making.cutting.bars.rest import longer_rest
from baywright.making.cutting.bars.settling import Search
from baywright.making.cutting.bars.stock import Bar, BarPacking, Length
from baywright.making.cutting.bars.task import Cut, Reading, Task

SHARE = 0.1
"""Of the effort, kept for shorter bars at least, and as much for a longer rest."""
ENOUGH = 500.0
"""The most steps for each of these."""


def solve(
    lengths: Sequence[Length],
    bars: Sequence[Bar],
    *,
    effort: float | None,
    seed: int,
    stop: Callable[[], bool],
    found: Callable[[BarPacking], None] | None,
) -> BarPacking:
    """Answer `search.cut_bars`."""
    reading = Reading(lengths, bars)
    task = reading.task
    if not task.lengths or not task.kinds:
        return reading.packing((), 0)

    def tell(cuts: Sequence[Cut], bound: int) -> None:
        if found is not None:
            found(reading.packing(cuts, bound))

    search = Search(task, seed, tell)
    first = first_answers(task, Budget(None, never))
    budget = Budget(None if effort is None else (1 - 2 * SHARE) * effort, stop)
    search.run(first, budget)
    left = None if effort is None else effort - budget.spent
    for better, kept in ((_shorter_bars, SHARE), (longer_rest, 0.0)):
        if stop():
            break
        budget = Budget(ENOUGH if left is None or effort is None else min(ENOUGH, left - kept * effort), stop)
        try:
            cuts = better(task, search.cuts, seed, budget)
        except StoppedError:
            cuts = None
        left = None if left is None else left - budget.spent
        if cuts is not None:
            search.cuts = cuts
            tell(cuts, search.bound)
    return reading.packing(search.cuts, search.bound)


def _shorter_bars(task: Task, cuts: Sequence[Cut], seed: int, budget: Budget) -> list[Cut] | None:
    """The same pieces from bars that cost no more and are shorter together; None: none found."""
    if len(task.kinds) == 1 and task.kinds[0].cost:
        return None  # as many bars as cost least are as short as can be
    pieces = [count - left for count, left in zip(task.counts, task.left_over(cuts), strict=True)]
    held = [number for number, count in enumerate(pieces) if count]
    by_length = Task(
        tuple(task.lengths[number] for number in held),
        tuple(pieces[number] for number in held),
        (0,) * len(held),
        tuple(replace(kind, cost=kind.measure) for kind in task.kinds),
    )
    to, back = {number: n for n, number in enumerate(held)}, dict(enumerate(held))
    given = [(kind, tuple((to[number], n) for number, n in counts)) for kind, counts in cuts]
    search = Search(by_length, seed, lambda *_: None, Cap(tuple(kind.cost for kind in task.kinds), task.cost(cuts)))
    search.run(given, budget)
    if by_length.cost(search.cuts) == by_length.cost(given):
        return None
    return [(kind, tuple((back[number], n) for number, n in counts)) for kind, counts in search.cuts]
