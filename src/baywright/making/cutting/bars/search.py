"""Cutting bars at least cost; at equal cost of the shortest bars; then with the longest rest in one piece."""

from collections.abc import Callable, Sequence

from baywright.making.cutting.bars.budget import never
from baywright.making.cutting.bars.stock import Bar, BarPacking, Length


def cut_bars(
    lengths: Sequence[Length],
    bars: Sequence[Bar],
    *,
    effort: float | None,
    seed: int = 0,
    stop: Callable[[], bool] = never,
    found: Callable[[BarPacking], None] | None = None,
) -> BarPacking:
    """Cut the pieces from bars: all that can be, at least cost, of the shortest bars, with the longest rest in one.

    `effort` is the most steps of search, a step about a millisecond (None: until the cost is proved, or stopped); the
    same effort and seed give the same answer. `stop` is asked often and ends the search with the best so far; `found`
    is told of each better answer, of the first one at once. Raises ValueError where two pieces or bars have one id, a
    length is not positive, or a cost or count is negative.
    """
    from baywright.making.cutting.bars.job import solve  # late: its tables take long to import, and not all cut bars

    return solve(lengths, bars, effort=effort, seed=seed, stop=stop, found=found)
