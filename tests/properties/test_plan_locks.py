"""Planning again: what is locked stays, what need not move stays, and a lock that fits the best plan costs nothing."""

import random

import pytest

from baywright.model.arrangement import Lock
from baywright.model.inventory import Box
from baywright.model.plan import PlanStatus
from baywright.model.project import Project
from baywright.planner import plan, report
from tests.oracle.measure import faults
from tests.properties.test_plan_goals import small_project


def _planned(seed: int) -> Project | None:
    project = small_project(seed)
    arrangement = plan(project).arrangement
    return None if arrangement is None else project.replace(arrangement=arrangement)


def _locked(project: Project, chance: random.Random) -> Project:
    placements = tuple(p.replace(lock=chance.choice(list(Lock))) for p in project.arrangement.placements)
    return project.replace(arrangement=project.arrangement.replace(placements=placements))


@pytest.mark.parametrize("block", range(4))
def test_locks_on_the_best_plan_change_nothing(block: int) -> None:
    settled = 0
    for seed in range(block * 25, block * 25 + 25):
        project = _planned(seed)
        if project is None:
            continue
        locked = _locked(project, random.Random(seed))
        again = plan(locked)
        assert again.status is PlanStatus.PROVED_BEST, seed
        assert again.arrangement == locked.arrangement, seed
        assert again.goals == plan(project).goals, seed
        settled += 1
    assert settled > 5


@pytest.mark.parametrize("block", range(4))
def test_a_box_more_or_a_row_moved_leaves_locked_boxes_where_they_are(block: int) -> None:
    settled = 0
    for seed in range(block * 25, block * 25 + 25):
        project = _planned(seed)
        if project is None:
            continue
        chance = random.Random(seed)
        moved = tuple(
            p.replace(row=max(0, p.row + chance.choice([-2, 0, 0, 1, 3]))) for p in project.arrangement.placements
        )
        new = Box(id="new", label="New", size_id=project.boxes[0].size_id, loaded_mass_kg=5)
        project = project.replace(
            boxes=(*project.boxes, new), arrangement=project.arrangement.replace(placements=moved)
        )
        locked = _locked(project, chance)
        again = plan(locked)
        if again.arrangement is None:
            assert again.status is PlanStatus.IMPOSSIBLE, seed
            assert all(conflict.message and conflict.mend for conflict in again.conflicts), (seed, again.conflicts)
            continue
        done = locked.replace(arrangement=again.arrangement)
        assert faults(done) == [], seed
        assert report(done).conflicts == (), seed
        after = {p.box_id: p for p in again.arrangement.placements}
        for p in locked.arrangement.placements:
            assert after[p.box_id].lock is p.lock, seed
            assert p.lock is Lock.NONE or after[p.box_id].bay == p.bay, seed
            assert p.lock is not Lock.DRAWER or after[p.box_id].row == p.row, seed
        settled += 1
    assert settled > 2
