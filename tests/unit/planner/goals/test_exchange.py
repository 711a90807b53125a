"""Exchanging drawers: never illegal, never worse in what is held, the same every time."""

import pytest

from baywright.model.goals import Goal
from baywright.planner import plan
from baywright.planner.distribution.budget import StoppedError
from baywright.planner.goals.exchange import Exchange
from baywright.planner.goals.task import Held, Spots, Task
from tests.benchmarks.workshops import workshop
from tests.unit.planner.goals.given import task


def mixed() -> tuple[Task, Spots]:
    """Thirty boxes of five groups in a plan that knows nothing of groups."""
    project = workshop(30, drawers_per_bay=6)
    result = plan(project)
    assert result.arrangement is not None
    grouped = tuple(box.replace(group=f"group {n % 5}") for n, box in enumerate(project.boxes))
    given = task(project.replace(boxes=grouped, arrangement=result.arrangement))
    return given, tuple(spot for spot in given.present if spot is not None)


def test_groups_come_together_while_handling_is_held() -> None:
    given, spots = mixed()
    before = given.figures(spots)
    held = [Held(Goal.HANDLING, before[Goal.HANDLING])]
    better = Exchange(given, held, Goal.GROUPS, spots).improve(4_000, 0, lambda: None)
    after = given.figures(better)
    assert given.is_legal(better)
    assert after[Goal.HANDLING] <= before[Goal.HANDLING]
    assert after[Goal.GROUPS] < before[Goal.GROUPS] - 3


def test_the_same_start_gives_the_same_end() -> None:
    given, spots = mixed()
    held = [Held(Goal.HANDLING, given.figures(spots)[Goal.HANDLING])]
    first, second = (Exchange(given, held, Goal.GROUPS, spots).improve(500, 0, lambda: None) for _ in range(2))
    assert first == second


def test_free_rows_come_together() -> None:
    given, spots = mixed()
    held = [Held(Goal.GROUPS, given.figures(spots)[Goal.GROUPS])]
    better = Exchange(given, held, Goal.FREE_PIECE, spots).improve(2_000, 99, lambda: None)
    assert given.is_legal(better)
    assert given.figures(better)[Goal.FREE_PIECE] >= given.figures(spots)[Goal.FREE_PIECE]
    assert given.figures(better)[Goal.GROUPS] <= held[0].value


def test_it_can_be_stopped() -> None:
    given, spots = mixed()

    def stop() -> None:
        raise StoppedError

    with pytest.raises(StoppedError):
        Exchange(given, [], Goal.GROUPS, spots).improve(100, 0, stop)
