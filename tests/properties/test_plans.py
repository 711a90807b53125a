"""Plans of invented workshops, measured by a witness; small problems against trying everything."""

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.model.goals import Goal
from baywright.model.plan import PlanStatus
from baywright.model.project import Project
from baywright.planner import plan, report
from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.cheapest import improved
from baywright.planner.distribution.problem import Item, Kind, Problem, Shape, Span, is_kept
from baywright.planner.distribution.search import holds
from tests.oracle.exhaustive import least_cost
from tests.oracle.measure import broken_locks, faults
from tests.properties.invented import dragged, locked, projects, thrown
from tests.properties.small import small_workshop


@settings(max_examples=25)
@given(projects())
def test_every_plan_fits_when_it_is_measured(project: Project) -> None:
    result = plan(project)
    if result.arrangement is not None:
        done = project.replace(arrangement=result.arrangement)
        assert faults(done) == []
        assert report(done).conflicts == ()
        assert report(done).unplaced == ()
    else:
        assert result.status is PlanStatus.IMPOSSIBLE
        assert result.conflicts
        assert all(conflict.message for conflict in result.conflicts)


@settings(max_examples=15)
@given(projects(most_boxes=8), st.randoms(use_true_random=False))
def test_every_plan_made_again_fits_and_leaves_what_is_locked(project: Project, chance: random.Random) -> None:
    arrangement = plan(project).arrangement
    if arrangement is not None:
        later = locked(project.replace(arrangement=arrangement), chance)
        again = plan(later, keep=True)
        assert again.arrangement is not None
        done = later.replace(arrangement=again.arrangement)
        assert faults(done) == []
        assert broken_locks(later, done) == []
        moved = next(goal for goal in again.goals if goal.goal is Goal.MOVES)
        assert moved.value == 0, "nothing was changed, and locks on a plan that is best cost nothing"


@settings(max_examples=60)
@given(projects(), st.randoms(use_true_random=False))
def test_the_report_finds_a_fault_exactly_where_the_witness_does(project: Project, chance: random.Random) -> None:
    """Boxes thrown anywhere: the program's report and the witness agree whether anything is wrong."""
    there = thrown(project, chance)
    assert bool(report(there).conflicts) == bool(faults(there)), (report(there).conflicts, faults(there))


@pytest.mark.parametrize("block", range(4))
def test_a_box_dragged_somewhere_near_is_judged_as_the_witness_judges_it(block: int) -> None:
    right = wrong = 0
    for seed in range(block * 12, block * 12 + 12):
        project = small_workshop(seed)
        arrangement = plan(project).arrangement
        for trial in range(10 if arrangement is not None else 0):
            there = dragged(project.replace(arrangement=arrangement), random.Random(1000 * seed + trial))
            is_wrong = bool(faults(there))
            assert bool(report(there).conflicts) == is_wrong, (seed, trial, report(there).conflicts, faults(there))
            right, wrong = right + (not is_wrong), wrong + is_wrong
    assert right > 5
    assert wrong > 20


def small_problem(seed: int) -> Problem:
    chance = random.Random(seed)
    rows = chance.randint(6, 14)
    lowest = chance.choice([0, 0, 1])
    shapes = []
    for _ in range(chance.randint(1, 3)):
        tall = chance.randint(2, 5)
        # A top drawer may reach beyond the last whole row by what its opening was rounded up.
        highest = rows - tall + chance.choice([0, 0, 1])
        shapes.append(
            Shape(
                (Span(tall, lowest, highest),),
                tuple(abs(row - rows // 2) * chance.choice([1, 3]) for row in range(rows)),
            )
        )
    items = tuple(
        Item(f"item-{n}", chance.randrange(len(shapes)), chance.randint(0, 9)) for n in range(chance.randint(1, 6))
    )
    kind = Kind(chance.randint(1, 3), rows, chance.choice([None, 2, 3]))
    return Problem((kind,), tuple(shapes), items)


@pytest.mark.parametrize("block", range(10))
def test_the_flow_finds_the_optimum_that_trying_everything_finds(block: int) -> None:
    settled = 0
    for seed in range(block * 30, block * 30 + 30):
        problem = small_problem(seed)
        expected = least_cost(problem)
        answer = holds(problem, Budget(20.0))
        if expected is None:
            assert answer.holds is False, seed
            continue
        assert answer.holds is True, seed
        best = improved(problem, answer.places, {}, Budget(20.0))
        assert is_kept(problem, best.places), seed
        assert (problem.cost(best.places), best.bound) == (expected, expected), seed
        settled += 1
    assert settled > 5
