"""Any two states of invented workshops, also such as break limits, have a difference with sensible steps."""

import random

from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.app.proposal import work_between
from baywright.model.difference import StepKind
from baywright.model.project import Built, Project
from tests.oracle.joiner import placed
from tests.properties.invented import FEATURES, projects, thrown


@settings(max_examples=60)
@given(projects(FEATURES), st.randoms(use_true_random=False), st.booleans())
def test_every_box_ends_where_it_is_planned_whatever_was_wrong_before(
    invented: Project, chance: random.Random, is_built: bool
) -> None:
    before = thrown(invented, chance)
    after = thrown(invented, chance, bays=chance.randint(1, 3))
    if is_built:
        after = after.replace(built=Built(bays=(0,), project=before))
    work = work_between(before, after)
    there = placed(before) if not is_built else {i: spot for i, spot in placed(before).items() if spot[0] == 0}
    where: dict[str, tuple[int, int] | None] = {**there}
    for step in work.steps:
        if step.kind is StepKind.SET_ASIDE:
            where[step.box_id] = None
        elif step.kind is StepKind.TAKE_OUT:
            del where[step.box_id]
        elif step.kind is StepKind.PUT:
            assert step.after is not None
            where[step.box_id] = step.after.bay, step.after.row
    if work.steps or not work.remarks:
        assert where == placed(after)
    assert {move.box_id for move in work.moves} <= placed(before).keys() & placed(after).keys()
