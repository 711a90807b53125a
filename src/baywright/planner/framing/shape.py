"""The shape of the run: the fewest bays that hold everything, then the lowest uprights for so many.

Laws: these two goals come before all others; what cannot be settled within the effort keeps its proved bound. The
shape that stands already is the answer wherever no better one is found.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace

from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.problem import Place
from baywright.planner.distribution.search import fewest, settle
from baywright.planner.framing.frame import Frame, Framer


@dataclass(frozen=True)
class Shape:
    """A shape of the run with places for everything, and what is proved of its bays and rows."""

    frame: Frame
    places: tuple[Place, ...]
    bays_bound: int
    rows_bound: int = 1

    @property
    def size(self) -> tuple[int, int]:
        """Bays and rows."""
        return self.frame.bays, self.frame.rows


Report = Callable[[Shape], None]


class ShapeSearch:
    """The search for the best shape of one project."""

    def __init__(self, framer: Framer, budget: Budget, report: Report) -> None:
        self._framer = framer
        self._limits = framer.project.limits
        self._budget = budget
        self._report = report

    def best(self, found: Shape, present: Shape | None) -> Shape:
        """The best shape, from one of the most rows that holds everything; `present` is the one that stands, where it
        does so, too.
        """
        self._report(found if present is None or found.size < present.size else present)
        if self._limits.bay_count is None:
            found = self._fewest_bays(found)
        else:
            found = replace(found, bays_bound=found.frame.bays)
        if present is not None and present.size <= found.size:
            found = replace(present, bays_bound=found.bays_bound)
        self._report(found)
        if self._limits.upright_rows is not None:
            return replace(found, rows_bound=found.frame.rows)
        known, bays = (found.frame, found.places), found.frame.bays
        numbers = range(self._framer.least_rows, found.frame.rows)
        frame, places, bound = fewest(numbers, lambda n: self._framer.frame(bays, n), known, self._budget)
        found = Shape(frame, places, found.bays_bound, min(bound, frame.rows))
        self._report(found)
        return found

    def _fewest_bays(self, found: Shape) -> Shape:
        rows = found.frame.rows
        used = {found.frame.indices[place.kind][place.bay] for place in found.places}
        enough = max(len(used), self._framer.fewest_bays)
        known = (found.frame, found.places)
        if enough < found.frame.bays:
            smaller, answer = settle(self._framer.frame(enough, rows), self._budget)
            if answer.holds:
                known = (smaller, answer.places)
        numbers = range(self._framer.fewest_bays, known[0].bays)
        best = fewest(numbers, lambda n: self._framer.frame(n, rows), known, self._budget)
        return Shape(best[0], best[1], best[2])
