"""The goal of easiest handling: in a frame that is settled, the plan of least cost and a bound that proves it.

Law: where the present arrangement is as good as any, it is the answer, so that no change in gives no move out.
"""

from collections import Counter
from dataclasses import dataclass, replace

from baywright.planner.distribution import paths
from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.flow import FlowModel, size
from baywright.planner.distribution.polish import polished
from baywright.planner.distribution.pricing import Pricing
from baywright.planner.distribution.problem import Place, Problem, is_kept
from baywright.planner.distribution.search import MOST_VARIABLES

MOST_ROUNDS = 12
"""How often the pricing is refined at most."""
ROUND_SHARE = 0.5
"""Share of the effort left that one round of pricing may take."""
LEAST_EFFORT = 0.05
"""With less effort left than this, no further round is begun."""
LARGE = 4_000
"""From so many variables on, the limit on drawers is first left aside and seen to afterwards."""
DEAL_SHARE = 0.3
"""Share of the effort left that may go into keeping the limit on drawers afterwards."""


@dataclass(frozen=True)
class Cheapest:
    """The cheapest plan found in a frame, and a proved lower bound for the cost of any."""

    places: tuple[Place, ...]
    bound: int


def improved(problem: Problem, places: tuple[Place, ...], present: paths.Present, budget: Budget) -> Cheapest:
    """The cheapest places of a problem, from a plan that keeps its rules and from where items stand now."""
    best = polished(problem, places, budget.check)
    standing = tuple(Place(item, *where) for item, where in sorted(present.items()))
    if is_kept(problem, standing) and problem.cost(standing) <= problem.cost(best):
        best = standing
    answer = Cheapest(best, least_cost(problem))
    if problem.cost(best) > answer.bound and size(problem) <= MOST_VARIABLES:
        answer = _Search(problem, present, budget).improve(answer)
    return answer


def least_cost(problem: Problem) -> int:
    """A bound that needs no search: every item at its own cheapest row."""
    least = []
    for shape in problem.shapes:
        rows = {row for kind, span in zip(problem.kinds, shape.spans, strict=True) for row in kind.starts(span)}
        least.append(min((shape.penalty(row) for row in rows), default=0))
    return sum(item.weight * least[item.shape] for item in problem.items)


class _Search:
    """The solver's rounds on one problem."""

    def __init__(self, problem: Problem, present: paths.Present, budget: Budget) -> None:
        self._problem = problem
        self._present = present
        self._present_rows = {item: row for item, (_, _, row) in present.items()}
        self._budget = budget

    def improve(self, known: Cheapest) -> Cheapest:
        """A cheaper plan, a better bound, or both; what is known where neither is found."""
        if size(self._problem) > LARGE and any(kind.drawers is not None for kind in self._problem.kinds):
            known = self._rounds(known, without_limit=True)
            if self._problem.cost(known.places) <= known.bound:
                return known
        return self._rounds(known, without_limit=False)

    def _rounds(self, known: Cheapest, *, without_limit: bool) -> Cheapest:
        problem = self._problem
        if without_limit:
            problem = replace(problem, kinds=tuple(replace(kind, drawers=None) for kind in problem.kinds))
        flow = FlowModel(problem)
        pricing = Pricing(flow)
        best, bound = known.places, known.bound
        for _ in range(MOST_ROUNDS):
            outcome = self._budget.minimise(flow.model, ROUND_SHARE, is_loose=bool(problem.teams))
            bound = max(bound, outcome.bound)
            if outcome.value is None:
                break
            starts, rows = flow.starts(outcome.value), pricing.rows(outcome.value, self._present_rows)
            if without_limit:
                places = self._dealt(flow.counts(starts), rows)
            else:
                places = paths.split(problem, flow.family_of, starts, rows, self._present)
            if places is not None and self._problem.cost(places) < self._problem.cost(best):
                best = places
            done = self._problem.cost(best) <= bound or not pricing.refine(outcome.value)
            if done or self._budget.left < LEAST_EFFORT:
                break
        return Cheapest(best, bound)

    def _dealt(self, wanted: Counter[tuple[int, int]], rows: tuple[int, ...]) -> tuple[Place, ...] | None:
        """The same starts dealt out to bays so that the limit on drawers is kept, if that can be."""
        flow = FlowModel(self._problem)
        for key, arcs in flow.starting.items():
            flow.model.add(sum(arcs) == wanted[key])
        outcome = self._budget.fit(flow.model, DEAL_SHARE)
        if outcome.value is None:
            return None
        return paths.split(self._problem, flow.family_of, flow.starts(outcome.value), rows, self._present)
