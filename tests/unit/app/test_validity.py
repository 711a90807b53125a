"""Edits that mean nothing to the planner keep its answer; every other one ends it."""

import pytest

from baywright.app.commands import Command, SetField
from baywright.app.edits.arrangement import PlaceBox, SetLock, UnplaceBoxes
from baywright.app.edits.inventory import DuplicateBoxes, EditBox, EditBoxSize
from baywright.app.session import Session
from baywright.model.arrangement import Lock
from baywright.model.construction import Drilling, EdgingKind, FrontEdge, Fronts, Jointing
from baywright.model.goals import USUAL_ORDER
from baywright.model.inventory import Box, BoxSize, BoxStatus, Use
from baywright.model.length import LengthUnit
from baywright.model.plan import PlanStatus
from baywright.model.project import Project
from baywright.model.safety import BoardMaterial


def planned(mass_kg: float | None = 4.0) -> Session:
    """A session on three boxes that the planner has just placed."""
    session = Session(
        Project(
            box_sizes=(BoxSize(id="low", name="Low", width_mm=396, depth_mm=297, height_mm=120),),
            boxes=tuple(
                Box(id=f"box-{number}", label=f"Box {number}", size_id="low", loaded_mass_kg=mass_kg)
                for number in range(3)
            ),
        ),
        synchronous=True,
    )
    session.request_plan()
    assert session.plan is not None
    assert session.plan.status is PlanStatus.PROVED_BEST
    return session


@pytest.mark.parametrize(
    "edit",
    [
        SetLock(("box-1",), Lock.DRAWER),
        SetLock(("box-1", "box-2"), Lock.BAY),
        EditBox("box-1", "label", "Pumps"),
        EditBox("box-1", "contents", "12 pumps"),
        EditBox("box-1", "note", "blue"),
        SetField("note", "the rear wall"),
        SetField("name", "Shop"),
        SetField("unit", LengthUnit.INCH),
        SetField("safety.span_ratio", 300.0),
        SetField("safety.connector_mm", 10.0),
        SetField("construction.edging.kind", EdgingKind.LIPPING),
        SetField("construction.edging.thickness_mm", 8.0),
        SetField("construction.jointing", Jointing.DOWEL),
        SetField("construction.hole_rows.drilling", Drilling.USED_ONLY),
        SetField("construction.hole_rows.hole_diameter_mm", 6.0),
        SetField("construction.hole_rows.hole_depth_mm", 10.0),
        SetField("construction.top.front_edge", FrontEdge.ROUNDED),
        SetField("construction.top.front_edge_size_mm", 5.0),
        SetField("stock.rules.kerf_mm", 2.8),
    ],
)
def test_kept(edit: Command) -> None:
    session = planned()
    before = session.plan
    session.do(edit)
    assert session.plan is before
    places = session.project.arrangement.placements
    session.request_plan()  # and the planner says the same of the edited project
    assert session.plan is not None
    assert before is not None
    assert session.plan.status is PlanStatus.PROVED_BEST
    assert session.plan.goals == before.goals
    assert session.project.arrangement.placements == places


@pytest.mark.parametrize(
    "edit",
    [
        EditBox("box-1", "loaded_mass_kg", 9.0),
        EditBox("box-1", "use", Use.DAILY),
        EditBox("box-1", "group", "brakes"),
        EditBox("box-1", "status", BoxStatus.WISHED),
        SetField("goals", tuple(reversed(USUAL_ORDER))),
        EditBoxSize("low", "height_mm", 150.0),
        DuplicateBoxes(("box-1",), 1),
        PlaceBox("box-1", 0, 25),
        UnplaceBoxes(("box-1",)),
        SetField("space.length_mm", 3000.0),
        SetField("limits.drawers_per_bay", 8),
        SetField("construction.drawers.clearance_mm", 9.0),
        SetField("construction.drawers.fronts", Fronts.INSET),
        SetField("construction.boards.front_mm", 16.0),
        SetField("construction.end_panels.left", True),
        SetField("construction.top.overhang_front_mm", 25.0),
        SetField("construction.hole_rows.pitch_mm", 30.0),
        SetField("safety.board_material", BoardMaterial.FIBREBOARD),
        SetField("safety.set_down_height_mm", 400.0),
        SetField("safety.grip", "poor"),
        SetField("safety.twist_degrees", 90.0),
        SetField("safety.lifts_a_minute", 2.0),
    ],
)
def test_ended(edit: Command) -> None:
    session = planned()
    session.do(edit)
    assert session.plan is None
    session.undo()
    assert session.plan is not None


def test_a_refusal_is_kept_while_nothing_that_it_tells_of_changes() -> None:
    session = planned()
    session.do(SetField("limits.bay_count", 1))
    session.do(SetField("limits.drawers_per_bay", 2))
    session.request_plan()
    refusal = session.plan
    assert refusal is not None
    assert refusal.status is PlanStatus.IMPOSSIBLE
    session.do(EditBox("box-1", "note", "blue"))
    assert session.plan is refusal
    for edit in (EditBox("box-1", "label", "Pumps"), SetField("unit", LengthUnit.INCH), UnplaceBoxes(("box-1",))):
        session.do(edit)
        assert session.plan is None
        session.undo()
        assert session.plan is refusal
    session.do(SetField("limits.drawers_per_bay", 3))
    assert session.plan is None


def test_a_lock_undone_after_planning_ends_the_answer() -> None:
    first = planned()
    first.do(SetLock(("box-1",), Lock.DRAWER))
    session = Session(first.project, synchronous=True)
    session.request_plan()
    assert session.plan is not None
    session.do(SetLock(("box-1",), Lock.BAY))
    assert session.plan is None
    first.do(SetLock(("box-1",), Lock.BAY))
    assert first.plan is not None, "the answer from before there was any lock holds still"


def test_a_new_label_ends_an_answer_whose_remarks_name_boxes() -> None:
    session = planned(mass_kg=None)
    assert session.plan is not None
    assert session.plan.remarks
    session.do(EditBox("box-1", "label", "Pumps"))
    assert session.plan is None
