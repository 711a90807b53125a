"""The search for a plan, goal after goal: everything placed; fewest bays; lowest uprights; easiest handling.

Each goal is settled before the next one counts, and what was reached becomes a limit for those after it. A question
is first put to arithmetic, then to a quick first try, and only then to the solver. What cannot be settled within the
effort is left open and said so: the goal keeps its proved bound.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field

from baywright.planner import paths
from baywright.planner.bounds import shortage
from baywright.planner.flow import FlowModel, size
from baywright.planner.frame import Frame, Framer
from baywright.planner.greedy import greedy
from baywright.planner.problem import Place, Problem, is_kept
from baywright.planner.solving import Outcome, Stop, Verdict, solve

MOST_VARIABLES = 60_000
"""A model larger than this is not given to the solver: it would be built and read for too long."""


class StoppedError(Exception):
    """The caller asked to stop."""


@dataclass
class Budget:
    """The effort left, in deterministic units of the solver, and the caller's wish to stop."""

    left: float
    stop: Stop | None = None
    spent: float = 0.0

    def check(self) -> None:
        """Raise `StoppedError` where the caller wants to stop."""
        if self.stop is not None and self.stop():
            raise StoppedError

    def solve(self, flow: FlowModel, share: float = 1.0) -> Outcome:
        """Solve a model with a share of what is left."""
        outcome = solve(flow, self.left * share, self.stop)
        self.left = max(0.0, self.left - outcome.effort)
        self.spent += outcome.effort
        if not outcome.has_solution:
            self.check()
        return outcome


@dataclass(frozen=True)
class Answer:
    """Whether a frame holds everything: True with places, False as proved, None where it stays open."""

    holds: bool | None
    places: tuple[Place, ...] = ()


@dataclass
class Found:
    """The best plan so far and what is proved of it."""

    frame: Frame
    places: tuple[Place, ...]
    bays_bound: int
    rows_bound: int = 1
    cost_bound: int = 0
    cost: int = field(init=False)

    def __post_init__(self) -> None:
        self.cost = self.frame.problem.cost(self.places) + self.frame.pinned_cost


def holds(problem: Problem, budget: Budget, share: float = 0.4) -> Answer:
    """Whether everything fits into the bays of a problem."""
    budget.check()
    if shortage(problem) is not None:
        return Answer(False)
    first = greedy(problem)
    if first is not None and is_kept(problem, first):
        return Answer(True, first)
    if size(problem) > MOST_VARIABLES:
        return Answer(None)
    flow = FlowModel(problem, priced=False)
    outcome = budget.solve(flow, share)
    if outcome.has_solution:
        return Answer(True, paths.split(problem, flow.family_of, outcome.starts, outcome.rows, {}))
    return Answer(False if outcome.verdict is Verdict.NONE else None)


def first_open(numbers: range, is_short: Callable[[int], bool]) -> int:
    """The first number for which arithmetic shows no shortage; more of anything never makes a shortage."""
    low, high = numbers.start, numbers.stop
    while low < high:
        middle = (low + high) // 2
        if is_short(middle):
            low = middle + 1
        else:
            high = middle
    return low


def fewest(
    numbers: range, frame_of: Callable[[int], Frame], known: tuple[Frame, tuple[Place, ...]], budget: Budget
) -> tuple[Frame, tuple[Place, ...], int]:
    """The least of `numbers` whose frame holds everything, with its places, and a proved lower bound.

    `known` is a frame that holds everything, for the number one past the last.
    """
    bound = start = first_open(numbers, lambda n: shortage(frame_of(n).problem) is not None)
    is_proved = True
    for number in range(start, numbers.stop):
        frame = frame_of(number)
        answer = holds(frame.problem, budget)
        if answer.holds:
            return frame, answer.places, bound
        is_proved = is_proved and answer.holds is False
        if is_proved:
            bound = number + 1
    return *known, bound


def cheapest(framer: Framer, found: Found, budget: Budget) -> Found:
    """The plan of least handling cost in the frame of `found`; keeps the present arrangement where it is as good."""
    frame = found.frame
    problem = frame.problem
    present = framer.present(frame)
    standing = tuple(Place(i, *where) for i, where in sorted(present.items()))
    best = found.places
    if is_kept(problem, standing) and problem.cost(standing) <= problem.cost(best):
        best = standing
    bound = least_cost(problem)
    if problem.cost(best) > bound and size(problem) <= MOST_VARIABLES and budget.left > 0:
        flow = FlowModel(problem, priced=True)
        flow.hint(best)
        outcome = budget.solve(flow)
        bound = max(bound, outcome.bound)
        if outcome.has_solution:
            places = paths.split(problem, flow.family_of, outcome.starts, outcome.rows, present)
            best = _better(problem, best, places)
            if outcome.verdict is Verdict.BEST:
                bound = problem.cost(places)
    return Found(frame, best, found.bays_bound, found.rows_bound, bound + frame.pinned_cost)


def least_cost(problem: Problem) -> int:
    """A bound that needs no search: every item at its own cheapest row."""
    least = [
        min(
            (shape.penalty(row) for kind, span in zip(problem.kinds, shape.spans, strict=True)
             for row in kind.starts(span)), default=0,
        )
        for shape in problem.shapes
    ]  # fmt: skip
    return sum(item.weight * least[item.shape] for item in problem.items)


def _better(problem: Problem, first: Iterable[Place], second: Iterable[Place]) -> tuple[Place, ...]:
    """The cheaper of two plans; the first where they cost the same."""
    one, other = tuple(first), tuple(second)
    return other if problem.cost(other) < problem.cost(one) else one
