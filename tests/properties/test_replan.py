"""Invented workshops planned, changed and planned again: the difference is what the goals counted, and can be done."""

import random

from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.model.arrangement import Lock
from baywright.model.goals import Goal
from baywright.model.inventory import Box
from baywright.model.project import Built, Project
from baywright.planner import difference, disagreements, plan
from baywright.workings import derive
from tests.oracle.joiner import members, placed
from tests.properties.invented import FEATURES, projects

EFFORT = 1.0


def planned(project: Project, *, keep: bool = False) -> tuple[Project, dict[Goal, float]] | None:
    result = plan(project, keep=keep, effort=EFFORT)
    if result.arrangement is None:
        return None
    return project.replace(arrangement=result.arrangement), {goal.goal: goal.value for goal in result.goals}


def changed(project: Project, chance: random.Random) -> Project:
    """One box is sold, and one bought of a size that is there; some box is locked."""
    gone = chance.choice(project.boxes).id
    boxes = [box for box in project.boxes if box.id != gone]
    boxes.append(Box(id="bought", label="Bought", size_id=chance.choice(project.boxes).size_id, loaded_mass_kg=2))
    placements = [p for p in project.arrangement.placements if p.box_id != gone]
    if placements:
        placements[0] = placements[0].replace(lock=Lock.DRAWER)
    arrangement = project.arrangement.replace(placements=tuple(placements))
    return project.replace(boxes=tuple(boxes), arrangement=arrangement)


def drawers_are_alike(before: Project, after: Project) -> bool:
    """Whether a drawer of one run can stand for any of the other: bays of one width, nothing behind them."""
    wide = {width for project in (before, after) for width in project.arrangement.box_widths_mm}
    usual = {derive(project).value("bay_box_width") for project in (before, after)}
    wishes = {wish.box_width_mm for wish in after.limits.bays} - {None}
    return len(wide | usual | wishes) == 1 and not after.space.zones


@settings(max_examples=15)
@given(projects(FEATURES, most_boxes=6), st.randoms(use_true_random=False), st.booleans())
def test_what_planning_again_counts_is_what_the_difference_asks_for(
    invented: Project, chance: random.Random, is_built: bool
) -> None:
    first = planned(invented)
    if first is None:
        return
    before = first[0]
    later = changed(before, chance)
    if is_built:
        later = later.replace(built=Built(bays=tuple(range(before.arrangement.bay_count)), project=before))
    again = planned(later, keep=True)
    if again is None:
        return
    after, goals = again
    standing = before if is_built else later
    found = difference(standing, after)
    assert len(found.moves) == goals[Goal.MOVES]
    if is_built:
        assert not [each for each in disagreements(after) if each.about_panels]
        assert found.steps or members(placed(standing)) == members(placed(after))
    if drawers_are_alike(before, after):
        assert len(found.runners) == goals[Goal.RESCREWS]
    held = {p.box_id: (p.bay, p.row) for p in later.arrangement.placements if p.lock is Lock.DRAWER}
    assert held.items() <= {p.box_id: (p.bay, p.row) for p in after.arrangement.placements}.items()
