"""Depth with plugs and handles, the floor before the run: each with a mend that, applied, clears the finding."""

from baywright.checks import inspect
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.change import changed
from baywright.model.finding import CheckKind, Finding, Severity
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project
from baywright.model.safety import Safety
from baywright.model.space import Space


def shop(safety: Safety, depth_mm: float = 400.0) -> Project:
    size = BoxSize(id="full", name="Full", width_mm=400, depth_mm=300, height_mm=220)
    return Project(
        space=Space(length_mm=1_200.0, height_limit_mm=1_500.0, depth_mm=depth_mm),
        safety=safety,
        box_sizes=(size,),
        boxes=(Box(id="box", label="Box", size_id="full", loaded_mass_kg=5.0),),
        arrangement=Arrangement(bay_count=1, upright_rows=30, placements=(Placement(box_id="box", bay=0, row=1),)),
    )


def about(project: Project, subject: str) -> Finding:
    return next(f for f in inspect(project) if f.kind is CheckKind.ACCESS and f.subject == subject)


def cleared(project: Project, subject: str) -> Finding:
    mend = next(mend for mend in about(project, subject).mends if mend.changes)
    return about(changed(project, mend.changes), subject)


def test_plugs_that_stand_out_need_depth_beside_the_box() -> None:
    """350 mm of runner less two rails of 15 leave 20 mm beside 300."""
    assert about(shop(Safety(connector_mm=20.0)), "Depth of the drawers").severity is Severity.KEPT
    project = shop(Safety(connector_mm=45.0))
    found = about(project, "Depth of the drawers")
    assert (found.severity, found.value, found.limit) == (Severity.BROKEN, 45.0, 20.0)
    assert "stand out 45 mm do not go in" in found.message
    assert cleared(project, "Depth of the drawers").severity is Severity.KEPT


def test_nothing_entered_is_said_to_be_nothing_entered() -> None:
    found = about(shop(Safety()), "Depth of the drawers")
    assert found.severity is Severity.KEPT
    assert any(given.value == "nothing entered" for given in found.given)
    assert "that stand out more do not go in" in found.message


def test_shorter_runners_leave_room_to_stand() -> None:
    deep = shop(Safety(walkway_mm=1_000.0), depth_mm=600.0)
    assert about(deep, "Floor before the run").severity is Severity.BROKEN
    assert cleared(deep, "Floor before the run").severity is Severity.KEPT


def test_where_no_shorter_runner_holds_the_box_none_is_offered() -> None:
    found = about(shop(Safety(walkway_mm=700.0)), "Floor before the run")
    assert found.severity is Severity.BROKEN
    assert not any(mend.changes for mend in found.mends)
    assert found.mends
