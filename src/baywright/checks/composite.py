"""Several lifts that are done in turn: the composite index of the revised lifting equation.

Source: as `baywright.planner.lifting`, page 28 of the manual; read second-hand.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from baywright.planner.lifting import Lift, frequency, lifting_index, recommended_kg


@dataclass(frozen=True)
class Task:
    """One of several lifts that are done in turn: the load in kg, and the lift with its own frequency."""

    load_kg: float
    lift: Lift

    @property
    def once(self) -> float:
        """The index as if lifted only now and then (the manual's FILI)."""
        limit = recommended_kg(replace(self.lift, lifts_a_minute=0.0))
        return self.load_kg / limit if limit > 0 else float("inf")

    @property
    def alone(self) -> float:
        """The index of this task done alone at its frequency (STLI)."""
        return lifting_index(self.load_kg, self.lift)


def composite_index(tasks: Sequence[Task]) -> float:
    """The composite lifting index of tasks done in turn (manual, page 28): the hardest task, and what the frequency of
    each further one adds. 0 without tasks, infinite where any lift is not to be done.
    """
    hardest_first = sorted(tasks, key=lambda task: -task.alone)
    if not hardest_first:
        return 0.0
    if any(task.once == float("inf") for task in hardest_first):
        return float("inf")
    total, rate = hardest_first[0].alone, hardest_first[0].lift.lifts_a_minute
    for task in hardest_first[1:]:
        before, after = (_frequency_of(task, at) for at in (rate, rate + task.lift.lifts_a_minute))
        rate += task.lift.lifts_a_minute
        total += task.once * (1 / after - 1 / before) if after > 0 else float("inf")
    return total


def _frequency_of(task: Task, rate: float) -> float:
    lift = task.lift
    origin = lift.height_cm if lift.origin_height_cm is None else lift.origin_height_cm
    return frequency(rate, lift.duration, origin)
