"""Every place for a box of invented workshops, weighed at once, against weighing each arrangement anew."""

import random

from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.app.edits.arrangement import PlaceBox
from baywright.model.plan import LimitKind
from baywright.model.project import Project
from baywright.planner import destinations, figures, report
from baywright.planner.replanning.standing import standing_of
from tests.properties.invented import FEATURES, projects, thrown


@settings(max_examples=30)
@given(projects(FEATURES), st.randoms(use_true_random=False))
def test_figures_of_a_place_are_those_of_the_arrangement_with_the_box_there(
    invented: Project, chance: random.Random
) -> None:
    project = thrown(invented, chance)
    box = chance.choice(project.boxes)
    standing = standing_of(project)
    before = figures(project, project.arrangement, standing)
    legal = [found for found in destinations(project, box.id) if not found.conflicts]
    for found in chance.sample(legal, min(4, len(legal))):
        moved = PlaceBox(box.id, found.place.bay, found.place.row).apply(project)
        after = figures(moved, moved.arrangement, standing)
        assert [(c.goal, c.before, c.after, c.unit) for c in found.changes] == [
            (b.goal, b.value, a.value, a.unit) for b, a in zip(before, after, strict=True)
        ]


@settings(max_examples=30)
@given(projects(FEATURES), st.randoms(use_true_random=False))
def test_a_box_can_go_exactly_where_nothing_is_wrong_with_it_then(invented: Project, chance: random.Random) -> None:
    project = thrown(invented, chance)
    box = chance.choice(project.boxes)
    for found in chance.sample(destinations(project, box.id), 8):
        moved = PlaceBox(box.id, found.place.bay, found.place.row).apply(project)
        wrong = [conflict for conflict in report(moved).conflicts if box.id in conflict.box_ids]
        if found.conflicts:
            # what is wrong with one of the boxes in a drawer wherever it stands, is told instead of the drawer
            together = {p.box_id for p in moved.arrangement.drawers[found.place.bay, found.place.row]}
            wrong += [conflict for conflict in report(moved).conflicts if together & set(conflict.box_ids)]
            assert wrong or found.conflicts[0].kind is LimitKind.SPARE_ROWS, found
        else:
            assert not wrong, (found, wrong)
            stands = moved.arrangement.placements_by_box[box.id]
            assert (found.abreast, found.behind, found.turned) == (stands.abreast, stands.behind, stands.turned)
