"""One plan measured: the processor's seconds to the first plan and to the answer, and what was proved.

Times are the processor's, one is used: what else the machine does meanwhile is no part of them. Nothing is asserted.
"""

import resource
import time
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from statistics import median

from baywright.model.goals import Goal
from baywright.model.plan import GoalValue, PlanResult, PlanStatus
from baywright.model.project import Project
from baywright.planner import DEFAULT_EFFORT, plan


@dataclass(frozen=True)
class Measure:
    """How long a plan took and how good it is shown to be."""

    first_s: float | None
    all_s: float
    result: PlanResult
    proved_s: Mapping[Goal, float]
    """When each goal and all before it were proved first, as far as they were."""

    @property
    def is_proved(self) -> bool:
        """Whether every goal is proved."""
        return self.result.status is PlanStatus.PROVED_BEST

    def proved_to(self, last: Goal) -> bool:
        """Whether a goal and all that count before it are proved."""
        goals = [goal.goal for goal in self.result.goals]
        return last in goals and all(g.is_proved for g in self.result.goals[: goals.index(last) + 1])

    @property
    def gaps(self) -> str:
        """The goals that are not proved, each with the share by which it could be beaten at most."""
        return ", ".join(f"{g.goal.value} {_gap(g)}" for g in self.result.goals if not g.is_proved) or "–"

    @property
    def largest_gap(self) -> float:
        """The largest share in percent by which a goal could be beaten at most; 0 where all are proved."""
        return max((share(g) for g in self.result.goals), default=0.0)


def share(goal: GoalValue) -> float:
    """By how many percent of its figure, or of its bound where more is better, a goal could be beaten at most."""
    whole = max(abs(goal.value), abs(goal.bound))
    return 100 * goal.gap / whole if whole else 0.0


def _gap(goal: GoalValue) -> str:
    if goal.goal is Goal.HANDLING:
        return f"{share(goal):.2f} %"
    return f"{goal.value:g} (bound {goal.bound:g})"


def measured(project: Project, *, keep: bool = False, effort: float = DEFAULT_EFFORT) -> Measure:
    """A plan of a project with its times."""
    firsts: list[float] = []
    proved: dict[Goal, float] = {}

    def look(better: PlanResult) -> None:
        now = time.process_time() - began
        firsts.append(now)
        for goal in better.goals:
            if not goal.is_proved:
                break
            proved.setdefault(goal.goal, now)

    began = time.process_time()
    result = plan(project, keep=keep, effort=effort, progress=look)
    return Measure(firsts[0] if firsts else None, time.process_time() - began, result, proved)


def row(*cells: object) -> str:
    """A row of a Markdown table."""
    return "| " + " | ".join(str(cell) for cell in cells) + " |"


def heading(*cells: str) -> str:
    """The head of a Markdown table."""
    return row(*cells) + "\n" + row(*("---" for _ in cells))


def seconds(value: float | None) -> str:
    """A time with two digits that mean something."""
    if value is None:
        return "–"
    return f"{value:.2f}" if value < 10 else f"{value:.0f}"


def middle_and_most(values: Sequence[float]) -> str:
    """Median, 95th percentile and most of some times."""
    ordered = sorted(values)
    return " / ".join(seconds(v) for v in (median(ordered), percentile(ordered, 0.95), ordered[-1]))


def percentile(values: Iterable[float], part: float) -> float:
    """The value that so large a part of the values does not exceed."""
    ordered = sorted(values)
    return ordered[min(len(ordered) - 1, round(part * (len(ordered) - 1)))]


def peak_mib() -> float:
    """The most memory that this process had so far, in MiB."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
