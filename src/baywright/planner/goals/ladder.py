"""The goals one after the other: each is brought to its best without worsening one before it, and bounded.

Laws: no plan is taken that is not legal and better by the goals in their order; what effort does not settle keeps a
bound that holds. Where no goal so far tells bays apart, handling and the free piece are settled by the flow of alike
bays; otherwise every bay is told apart.
"""

from collections.abc import Callable
from dataclasses import dataclass, field

from baywright.model.goals import MORE_IS_BETTER, Goal
from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.cheapest import improved
from baywright.planner.distribution.flow import size
from baywright.planner.distribution.solving import Verdict
from baywright.planner.figures import AGAINST_STANDING
from baywright.planner.framing.frame import Framer
from baywright.planner.goals.alike import ALIKE, AlikeBays
from baywright.planner.goals.alone import bays_with_handling
from baywright.planner.goals.bound import easy_bounds
from baywright.planner.goals.exchange import Exchange
from baywright.planner.goals.kept import kept
from baywright.planner.goals.model import GoalModel
from baywright.planner.goals.spread import SpreadBound
from baywright.planner.goals.task import Figures, Held, Spots, Task, rank

MOST_ARCS = 40_000
"""A model with every bay told apart that is larger than this is not given to the solver."""
MOST_LOOSE_ARCS = 2_000
"""The same where no number of moves is held: nothing is settled by what stands, and only small runs are proved."""
LEAST_EFFORT = 0.02
SHARE = 0.6
"""Share of the effort left that the solver may take for one goal."""
HANDLING_SHARE = 0.7
"""Share of the effort left that handling may take where nothing comes before it."""
MOST_SPREAD = 400
"""With more boxes than this the bound that sees where boxes must stand is not sought."""
TRIES_A_BOX = 1_200
TRIES_A_UNIT = 20_000
"""So many exchanges are tried for one unit of effort."""
EXCHANGE_SHARE = 0.4
"""Share of the effort left that may go into exchanging."""


@dataclass
class Reached:
    """The best plan so far, its figures, and the bounds proved so far."""

    spots: Spots
    figures: Figures
    bounds: dict[Goal, int] = field(default_factory=dict)


Report = Callable[[Reached], None]
"""Is told of every better plan and every better bound."""


class Ladder:
    """One climb through the goals of a task."""

    def __init__(self, task: Task, framer: Framer, budget: Budget, report: Report) -> None:
        self._task = task
        self._framer = framer
        self._budget = budget
        self._report = report

    def climb(self, candidates: list[Spots]) -> Reached:
        """The best plan by all goals; `candidates` are legal plans, the one to keep where all are alike first."""
        staying = kept(self._task, self._budget.check) if Goal.MOVES in self._task.goals else None
        plans = candidates if staying is None else [*candidates, staying]
        figures, spots = min(((self._task.figures(spots), spots) for spots in plans), key=lambda plan: rank(plan[0]))
        best = Reached(spots, figures, easy_bounds(self._task))
        self._report(best)
        held: list[Held] = []
        for goal in self._task.goals:
            if not self.is_settled(best, goal):
                try:
                    self._settle(best, held, goal)
                finally:
                    self._report(best)  # also where the caller stops: what was found so far is the answer
            held.append(Held(goal, best.figures[goal]))
        return best

    @staticmethod
    def is_settled(best: Reached, goal: Goal) -> bool:
        """Whether a goal's figure meets its bound."""
        figure, bound = best.figures[goal], best.bounds[goal]
        return figure >= bound if goal in MORE_IS_BETTER else figure <= bound

    def _settle(self, best: Reached, held: list[Held], goal: Goal) -> None:
        before = {h.goal for h in held}
        if goal in ALIKE and not before & AGAINST_STANDING:
            self._settle_alike(best, held, goal)
        if goal is Goal.GROUPS and Goal.HANDLING in before and len(best.spots) <= MOST_SPREAD:
            fewest = bays_with_handling(self._task, held, self._budget)
            outcome = self._budget.minimise(SpreadBound(self._task, held, fewest).model, SHARE / 4)
            self._raise(best, goal, outcome.bound)
        if not self.is_settled(best, goal) and Goal.MOVES not in before and goal not in AGAINST_STANDING:
            self._exchange(best, held, goal)
        if not self.is_settled(best, goal):
            self._solve(best, held, goal)

    def _settle_alike(self, best: Reached, held: list[Held], goal: Goal) -> None:
        """Easiest handling or the longest free piece where nothing before tells bays apart, or a bound for it."""
        if goal is Goal.HANDLING and not held:
            self._handle(best)
        elif size(self._task.frame.problem) <= MOST_ARCS and self._budget.left >= LEAST_EFFORT:
            alike = AlikeBays(self._task, held)
            seek = alike.easiest if goal is Goal.HANDLING else alike.longest_piece
            answer = seek(best.figures[goal], self._budget)
            if answer.bound is not None:
                self._raise(best, goal, answer.bound)
            if answer.spots is not None:
                self._take(best, answer.spots)

    def _handle(self, best: Reached) -> None:
        """Easiest handling where nothing before it tells bays apart."""
        frame, task = self._task.frame, self._task
        part = Budget(self._budget.left * HANDLING_SHARE, self._budget.stop)
        easiest = improved(frame.problem, task.places(best.spots), self._framer.present(frame), part)
        self._budget.spend(part.spent)
        self._raise(best, Goal.HANDLING, easiest.bound + frame.pinned_cost)
        self._take(best, task.spots(easiest.places))

    def _exchange(self, best: Reached, held: list[Held], goal: Goal) -> None:
        """A better plan by exchanging drawers."""
        tries = min(TRIES_A_BOX * len(best.spots), int(self._budget.left * EXCHANGE_SHARE * TRIES_A_UNIT))
        spots = Exchange(self._task, held, goal, best.spots).improve(tries, best.bounds[goal], self._budget.check)
        self._budget.spend(tries / TRIES_A_UNIT)
        self._take(best, spots)

    def _solve(self, best: Reached, held: list[Held], goal: Goal) -> None:
        """Any goal, with every bay told apart."""
        before = {h.goal for h in held}
        is_loose = Goal.MOVES not in before and goal is not Goal.MOVES
        if self._task.arcs > (MOST_LOOSE_ARCS if is_loose else MOST_ARCS) or self._budget.left < LEAST_EFFORT:
            return
        self._budget.check()
        if goal is Goal.FREE_PIECE:
            self._lengthen(best, held)
            return
        model = GoalModel(self._task, held, goal)
        value = best.figures[goal]
        model.ask_under(value, best.bounds[goal])
        outcome = self._budget.minimise(
            model.model, SHARE, is_probed=Goal.MOVES in before and goal is not Goal.RESCREWS
        )
        bound = value if outcome.verdict is Verdict.NONE else min(value, model.bound(outcome.bound))
        self._raise(best, goal, bound)
        if outcome.value is not None:
            self._take(best, model.spots(outcome.value))

    def _lengthen(self, best: Reached, held: list[Held]) -> None:
        """The free piece one row longer, and once that is found by halving what is open."""
        length = best.figures[Goal.FREE_PIECE] + 1
        while not self.is_settled(best, Goal.FREE_PIECE):
            model = GoalModel(self._task, held, Goal.FREE_PIECE)
            model.ask_free(length)
            outcome = self._budget.minimise(model.model, SHARE, is_probed=True)
            if outcome.value is not None:
                self._take(best, model.spots(outcome.value))
            elif outcome.verdict is Verdict.NONE:
                self._raise(best, Goal.FREE_PIECE, length - 1)
            else:
                return
            length = (best.figures[Goal.FREE_PIECE] + best.bounds[Goal.FREE_PIECE] + 1) // 2

    def _raise(self, best: Reached, goal: Goal, bound: int) -> None:
        better = min if goal in MORE_IS_BETTER else max
        best.bounds[goal] = better(best.bounds[goal], bound)

    def _take(self, best: Reached, spots: Spots) -> None:
        """Take a plan where it is better by the goals in their order."""
        figures = self._task.figures(spots)
        if rank(figures) < rank(best.figures):
            if not self._task.is_legal(spots):
                raise RuntimeError("The search made a plan that breaks a limit.")  # a defect must never pass for a plan
            best.spots, best.figures = spots, figures
