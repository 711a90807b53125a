"""Whether everything fits a shape of the run, and the smallest shape that it fits.

A question is first put to arithmetic, then to a quick first try, and only then to the solver. What cannot be settled
within the effort is left open and said so: the answer keeps its proved bound.
"""

from collections.abc import Callable
from dataclasses import dataclass

from baywright.planner.distribution import paths
from baywright.planner.distribution.bounds import shortage
from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.filling import fill
from baywright.planner.distribution.flow import FlowModel, size
from baywright.planner.distribution.greedy import greedy
from baywright.planner.distribution.packed import packed_starts
from baywright.planner.distribution.problem import Place, Problem, is_kept
from baywright.planner.distribution.solving import Verdict
from baywright.planner.distribution.teaming import folded
from baywright.planner.framing.frame import Frame

MOST_VARIABLES = 150_000
"""A model larger than this is not given to the solver: it would be built and read for too long."""
CLOSER_SHARE = 0.1
"""Share of the effort left for one try to come closer to a number that could not be settled."""


@dataclass(frozen=True)
class Answer:
    """Whether a frame holds everything: True with places, False as proved, None where it stays open."""

    holds: bool | None
    places: tuple[Place, ...] = ()


def holds(problem: Problem, budget: Budget, share: float = 0.4) -> Answer:
    """Whether everything fits into the bays of a problem; open where it does not, but other bays are to be had."""
    answer = _asked(problem, budget, share)
    return Answer(None) if answer.holds is False and problem.is_one_of_many else answer


def settle(frame: Frame, budget: Budget, share: float = 0.4) -> tuple[Frame, Answer]:
    """Whether everything fits into a frame or one of its `others`, and into which."""
    answer = _asked(frame.problem, budget, share)
    answers = [answer.holds]
    for other in frame.others if not answer.holds else ():
        further = _asked(other.problem, budget, share)
        if further.holds:
            return other, further
        answers.append(further.holds)
    if answer.holds:
        return frame, answer
    return frame, Answer(None if None in answers or not frame.is_complete else False)


def _asked(problem: Problem, budget: Budget, share: float) -> Answer:
    budget.check()
    if shortage(problem) is not None:
        return Answer(False)
    if (first := _first_try(problem, budget)) is not None:
        return Answer(True, first)
    points = packed_starts(problem)
    if size(problem, points) > MOST_VARIABLES:
        return Answer(None)
    flow = FlowModel(problem, points)
    outcome = budget.fit(flow.model, share)
    if outcome.value is not None:
        starts = flow.starts(outcome.value)
        return Answer(True, paths.split(problem, flow.family_of, starts, flow.rows(starts), {}))
    return Answer(False if outcome.verdict is Verdict.NONE else None)


def _first_try(problem: Problem, budget: Budget) -> tuple[Place, ...] | None:
    """A plan by the simple ways, every item in a drawer of its own, else as many in shared ones as can be."""
    for first_try in (greedy, fill):
        first = first_try(problem, budget.check)
        if first is not None and is_kept(problem, first):
            return first
    if problem.teams and (fewer := folded(problem)) is not None:
        for first_try in (greedy, fill):
            first = first_try(fewer.problem, budget.check)
            if first is not None and is_kept(problem, shared := fewer.unfold(first)):
                return shared
    return None


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
    for number in range(start, numbers.stop):
        frame, answer = settle(frame_of(number), budget)
        if answer.holds:
            return frame, answer.places, bound
        if answer.holds is None:
            return *_closer(range(number + 1, numbers.stop), frame_of, known, budget), bound
        bound = number + 1
    return *known, bound


def _closer(
    numbers: range, frame_of: Callable[[int], Frame], known: tuple[Frame, tuple[Place, ...]], budget: Budget
) -> tuple[Frame, tuple[Place, ...]]:
    """By halving, a smaller frame that holds everything, where the least could not be settled."""
    low, high = numbers.start, numbers.stop
    while low < high:
        middle = (low + high) // 2
        frame, answer = settle(frame_of(middle), budget, CLOSER_SHARE)
        if answer.holds:
            known, high = (frame, answer.places), middle
        else:
            low = middle + 1
    return known
