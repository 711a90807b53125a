"""Whether pieces go into given bars, by trying all that matters; for few pieces, where rounding up is not enough.

The longest piece left has to lie in some bar: every length of bar is tried for it, with every way to fill the bar up
so that nothing left would still go in. What does not go in so does not go in at all.
"""

from collections.abc import Iterator, Sequence

from baywright.making.cutting.bars.budget import Budget
from baywright.making.cutting.bars.task import Counts, Cut, Task

MOST_PIECES = 40
"""More pieces are not asked about."""
STEPS_A_LOOK = 0.01


class UndecidedError(Exception):
    """The effort was not enough to try everything."""


class Fitting:
    """One question, and what was refuted on the way."""

    def __init__(self, task: Task, effort: float, budget: Budget) -> None:
        self._task = task
        self._left = effort
        self._budget = budget
        self._refuted: set[tuple[tuple[int, ...], tuple[int, ...]]] = set()

    def cuts(self, needs: Sequence[int], bars: Sequence[int]) -> list[Cut] | None:
        """The pieces in these bars; None: they do not go in. Raises `UndecidedError` where the effort does not do."""
        if sum(needs) > MOST_PIECES:
            raise UndecidedError
        return self._cuts(tuple(needs), tuple(bars))

    def _cuts(self, needs: tuple[int, ...], bars: tuple[int, ...]) -> list[Cut] | None:
        self._look()
        longest = next((number for number, need in enumerate(needs) if need), None)
        if longest is None:
            return []
        kinds, lengths = self._task.kinds, self._task.lengths
        waste = sum(kind.length * n for kind, n in zip(kinds, bars, strict=True)) - sum(
            length * need for length, need in zip(lengths, needs, strict=True)
        )
        if waste < 0 or (needs, bars) in self._refuted:
            return None
        first = tuple(need - (number == longest) for number, need in enumerate(needs))
        for kind, n in enumerate(bars):
            if not n or kinds[kind].length < lengths[longest]:
                continue
            fewer = tuple(count - (number == kind) for number, count in enumerate(bars))
            for more in self._fillings(first, longest, kinds[kind].length - lengths[longest], waste):
                rest = self._cuts(tuple(need - count for need, count in zip(first, more, strict=True)), fewer)
                if rest is not None:
                    counts: Counts = tuple(
                        (number, count + (number == longest))
                        for number, count in enumerate(more)
                        if count or number == longest
                    )
                    return [(kind, counts), *rest]
        self._refuted.add((needs, bars))
        return None

    def _fillings(self, needs: Sequence[int], number: int, room: int, waste: int) -> Iterator[tuple[int, ...]]:
        """Ways to fill a room from one length on, leaving at most `waste`, and nothing out that would go in."""
        lengths = self._task.lengths
        reach = [0] * (len(lengths) + 1)
        for each in range(len(lengths) - 1, -1, -1):
            reach[each] = reach[each + 1] + lengths[each] * needs[each]
        taken = [0] * len(lengths)

        def fill(each: int, left: int, least_out: int | None) -> Iterator[tuple[int, ...]]:
            self._look()
            if left - reach[each] > waste:
                return
            if each == len(lengths):
                if least_out is None or left < least_out:
                    yield tuple(taken)
                return
            most = min(needs[each], left // lengths[each])
            for count in range(most, -1, -1):
                taken[each] = count
                yield from fill(
                    each + 1, left - count * lengths[each], lengths[each] if count < needs[each] else least_out
                )
            taken[each] = 0

        yield from fill(number, room, None)

    def _look(self) -> None:
        self._left -= STEPS_A_LOOK
        if self._left <= 0:
            raise UndecidedError
        self._budget.spend(STEPS_A_LOOK)
