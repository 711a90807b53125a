"""Parts of a re-plan, accepted box by box in any order; and holes that as-built bays do not have."""

import random

from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.app.commands import EditRefused
from baywright.app.edits.proposal import AcceptMoves
from baywright.model.difference import StepKind
from baywright.model.project import Built, Project
from baywright.planner import report
from baywright.planner.replanning.difference import difference
from tests.properties.test_steps import changes


def faults(project: Project) -> set[tuple[str, tuple[str, ...]]]:
    return {(conflict.message, conflict.box_ids) for conflict in report(project).conflicts}


@settings(max_examples=60)
@given(changes(most_boxes=8), st.randoms(use_true_random=False))
def test_box_by_box_in_any_order_never_breaks_what_was_kept_and_ends_in_the_whole(
    change: tuple[Project, Project], chance: random.Random
) -> None:
    before, after = change
    target = after.arrangement.replace(box_widths_mm=before.arrangement.box_widths_mm)
    present, known = before, faults(before)
    boxes = [box.id for box in before.boxes]
    chance.shuffle(boxes)
    for box_id in boxes:
        try:
            present = AcceptMoves(target, (box_id,)).apply(present)
        except EditRefused:
            continue
        assert faults(present) <= known
        known = faults(present)
    places = {p.box_id: (p.bay, p.row) for p in present.arrangement.placements}
    wanted = {p.box_id: (p.bay, p.row) for p in target.placements}
    if not faults(before.replace(arrangement=target)) - faults(before):
        assert places == wanted
        assert present.arrangement.upright_rows == target.upright_rows


@settings(max_examples=60)
@given(
    changes(most_boxes=8),
    st.sampled_from([32.0, 32.0, 32.0, 25.0]),
    st.sampled_from([24, 24, 24, 26, 20]),
    st.sampled_from([37.0, 37.0, 37.0, 40.0]),
)
def test_no_step_asks_for_a_hole_that_a_bay_as_built_does_not_have(
    change: tuple[Project, Project], pitch_mm: float, rows: int, setback_mm: float
) -> None:
    before, after = change
    if not before.arrangement.bay_count:
        return
    holes = after.construction.hole_rows.replace(pitch_mm=pitch_mm, front_setback_mm=setback_mm)
    later = after.replace(
        arrangement=after.arrangement.replace(upright_rows=rows),
        construction=after.construction.replace(hole_rows=holes),
        built=Built(bays=(0,), project=before),
    )
    found = difference(before, later)
    asked = [step.after for step in found.steps if step.kind in (StepKind.SCREW, StepKind.HANG) and step.after]
    in_built = [place for place in asked if place.bay == 0]
    assert all(place.row < before.arrangement.upright_rows for place in in_built)
    if (pitch_mm, rows, setback_mm) != (32.0, 24, 37.0):
        assert in_built == []
        assert found.remarks
