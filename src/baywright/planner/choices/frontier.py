"""For one way to build the run every number of bays that lets it be lower, each with the lowest run that holds all.

Law: walked from the fewest bays on; each further shape has more bays and fewer rows than the one before, so that none
of them is worse than another in both.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.problem import Place
from baywright.planner.distribution.search import fewest, settle
from baywright.planner.framing.frame import Frame, Framer

MOST_SHAPES = 16
"""Shapes told of one way to build; a run of hundreds of bays has more than anybody looks at."""


@dataclass(frozen=True)
class Corner:
    """A shape with places for everything; `is_lowest` where it is proved that no lower run of its bays holds all."""

    frame: Frame
    places: tuple[Place, ...]
    is_lowest: bool


def corners(framer: Framer, bays: range, rows: range, budget: Callable[[], Budget]) -> Iterator[Corner]:
    """The shapes with numbers of bays and rows from those ranges; none where not even the largest holds everything.

    `budget` gives the effort for one shape. Raises `StoppedError` where the caller wants to stop.
    """
    if not bays or not rows:
        return
    first, most_bays, most_rows = bays.start, bays[-1], rows[-1]
    for _ in range(MOST_SHAPES):
        effort = budget()
        largest, answer = settle(framer.frame(most_bays, most_rows), effort)
        if not answer.holds:
            return
        corner = _corner(
            framer, range(first, most_bays), range(rows.start, most_rows), (largest, answer.places), effort
        )
        yield corner
        first, most_rows = max(first, corner.frame.bays) + 1, corner.frame.rows - 1
        if first > most_bays or most_rows < rows.start:
            return


def _corner(framer: Framer, bays: range, rows: range, known: tuple[Frame, tuple[Place, ...]], budget: Budget) -> Corner:
    """The fewest bays that hold everything at `rows.stop` rows, and then the fewest rows."""
    frame, places, _ = fewest(bays, lambda number: framer.frame(number, rows.stop), known, budget)
    narrow = frame.bays
    lowest, places, bound = fewest(rows, lambda number: framer.frame(narrow, number), (frame, places), budget)
    return Corner(lowest, places, bound >= lowest.rows)
