"""How many bays a group needs once handling is held: by hand, and never more than a plan has."""

from baywright.model.goals import Goal
from baywright.planner.distribution.budget import Budget
from baywright.planner.goals.alone import bays_with_handling
from baywright.planner.goals.bound import bays_of_groups
from baywright.planner.goals.task import Held, Task
from tests.unit.planner.goals.given import box, run, task


def _held(given: Task) -> list[Held]:
    standing = tuple(spot for spot in given.present if spot is not None)
    return [Held(Goal.HANDLING, given.figures(standing)[Goal.HANDLING])]


def test_two_heavy_boxes_that_must_both_stand_high_need_two_bays() -> None:
    # Each bay has one place at the top; the heavy boxes, a group, stand there in the easiest plan.
    boxes = (box("h0", group="g", mass=20), box("h1", group="g", mass=20), box("l0", mass=1), box("l1", mass=1))
    given = task(run(*boxes, h0=(0, 9), h1=(1, 9), l0=(0, 6), l1=(1, 6)))
    assert bays_of_groups(given) == {"g": 1}
    assert bays_with_handling(given, _held(given), Budget(4.0)) == {"g": 2}


def test_without_handling_held_it_is_counted_only() -> None:
    boxes = (box("h0", group="g", mass=20), box("h1", group="g", mass=20))
    given = task(run(*boxes, h0=(0, 9), h1=(1, 9)))
    assert bays_with_handling(given, [], Budget(4.0)) == {"g": 1}


def test_without_effort_nothing_is_raised() -> None:
    boxes = (box("h0", group="g", mass=20), box("h1", group="g", mass=20))
    given = task(run(*boxes, h0=(0, 9), h1=(1, 9)))
    assert bays_with_handling(given, _held(given), Budget(0.0)) == {"g": 1}
