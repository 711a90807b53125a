"""One packing pursued: first layouts, then sets of boards that cost less, then better rests and fewer cuts.

Laws: every packing told is better than the one before, the returned one is the last told; all chance comes from the
seed, and the effort counts steps, so that only `stop` depends on the clock.
"""

from __future__ import annotations

from collections.abc import Callable

from baywright.making.cutting.packing import Packing
from baywright.making.cutting.sheets.costs import least_cost, needs_of
from baywright.making.cutting.sheets.course import Course
from baywright.making.cutting.sheets.keeping import fewer_cuts, larger_rests
from baywright.making.cutting.sheets.rests import Quality, quality
from baywright.making.cutting.sheets.saving import placing_more, saved
from baywright.making.cutting.sheets.stock import Solution, greedy, weight

OPENINGS = 30
"""So many first packings are made at most."""
FOR_KEEPING = 0.3
"""This part of the effort is kept back for rests and cuts."""


class Pursuit:
    """The state of one `pack`: the best solution, and whom to tell."""

    def __init__(
        self, course: Course, unplaceable: tuple[int, ...], found: Callable[[Packing], None] | None
    ) -> None:  # fmt: skip
        self._course = course
        self._unplaceable = unplaceable
        self._found = found
        self._bound = 0
        self._best = greedy(course.table, course.kinds, course.tools[1], course.states)
        self._tell()

    def run(self) -> Packing:
        """Go on as far as effort and `stop` let it."""
        course = self._course
        kept_back = int(course.left * FOR_KEEPING)
        course.left -= kept_back
        self._cheapen()
        course.left += kept_back
        if not course.is_over():
            for solution in larger_rests(course, self._best):
                self._offer_closely(solution)
            changes = fewer_cuts(course, self._best)
            change = next(changes, None)
            while change is not None:
                self._offer_closely(change)
                try:
                    change = changes.send(self._best)
                except StopIteration:
                    break
        return course.packing(self._best, self._bound, self._unplaceable)

    def _cheapen(self) -> None:
        course = self._course
        if course.is_over():  # nothing but a first packing was asked for: it must not wait for a bound
            return
        needs = needs_of(course.table.pieces, course.kinds)
        course.shares = needs.shares
        self._bound = least_cost(needs, course.kinds, len(course.table.pieces))
        draw, fill = course.tools
        for _ in range(OPENINGS):
            if self._is_cheapest() or course.is_over():
                return
            draw()
            course.left -= 1
            self._offer(greedy(course.table, course.kinds, fill, course.states))
        if self._best.out:
            for solution in placing_more(course, self._best):
                self._offer(solution)
        while not self._best.out and not self._is_cheapest():
            solution_or_none = saved(course, self._best, needs, self._bound)
            if solution_or_none is None or not self._offer(solution_or_none):
                return

    def _is_cheapest(self) -> bool:
        return not self._best.out and self._best.cost(self._course.kinds) <= self._bound

    def _rank(self, solution: Solution) -> tuple[int, int]:
        return weight(solution.out, self._course.table), solution.cost(self._course.kinds)

    def _offer(self, solution: Solution) -> bool:
        """Take the solution where less area is out, or else it costs less."""
        if self._rank(solution) >= self._rank(self._best):
            return False
        self._best = solution
        self._tell()
        return True

    def _offer_closely(self, solution: Solution) -> None:
        """Take the solution also where it only leaves a better rest, or takes fewer cuts."""
        rank, best = self._rank(solution), self._rank(self._best)
        if rank < best or (rank == best and self._quality(solution) > self._quality(self._best)):
            self._best = solution
            self._tell()

    def _quality(self, solution: Solution) -> Quality:
        course = self._course
        layouts = course.packing(solution, 0, ()).layouts
        kinds = (course.kinds[each.kind] for each in solution.boards)
        return quality(list(zip(layouts, kinds, strict=True)), course.rules)

    def _tell(self) -> None:
        if self._found:
            self._found(self._course.packing(self._best, self._bound, self._unplaceable))
