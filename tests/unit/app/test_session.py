"""A session: edits, undo, what is derived, planning, its file."""

from collections.abc import Callable
from pathlib import Path

import pytest

from baywright.app.commands import EditRefused, SetField
from baywright.app.edits.inventory import AddBoxes
from baywright.app.files import FileTrouble, RecentFiles
from baywright.app.notices import DocumentChanged, DocumentReplaced, Notice, PlanningEnded
from baywright.app.session import Session
from baywright.model.inventory import Box, BoxSize
from baywright.model.length import LengthUnit
from baywright.model.plan import PlanStatus
from baywright.model.project import Project

SIZE = BoxSize(id="euro-120", name="Euro 120", width_mm=396, depth_mm=297, height_mm=120)


def shop(boxes: int) -> Project:
    return Project(
        box_sizes=(SIZE,),
        boxes=tuple(
            Box(id=f"box-{n}", label=f"Box {n}", size_id=SIZE.id, loaded_mass_kg=n) for n in range(1, boxes + 1)
        ),
    )


def told(session: Session) -> list[Notice]:
    notices: list[Notice] = []
    session.subscribe(notices.append)
    return notices


def test_an_edit_can_be_undone_and_made_again() -> None:
    session = Session(shop(2))
    before = session.project
    notices = told(session)
    session.do(SetField("space.length_mm", 3000))
    after = session.project
    assert (session.undo_title, session.redo_title) == ("Change length of the space", "")
    session.undo()
    assert session.project is before
    assert not session.is_modified
    session.redo()
    assert session.project is after
    assert [n.title for n in notices if isinstance(n, DocumentChanged)] == [
        "Change length of the space",
        "Undo Change length of the space",
        "Redo Change length of the space",
    ]


def test_a_refused_edit_leaves_everything() -> None:
    session = Session(shop(2))
    before, notices = session.project, told(session)
    with pytest.raises(EditRefused):
        session.do(SetField("space.length_mm", 0))
    assert session.project is before
    assert not session.can_undo
    assert notices == []


def test_an_edit_that_changes_nothing_is_not_recorded() -> None:
    session = Session(shop(2))
    session.do(SetField("space.length_mm", session.project.space.length_mm))
    assert not session.can_undo


def test_what_is_derived_follows_the_document() -> None:
    session = Session(shop(2))
    narrow = session.workings.value("bays_that_fit")
    session.do(SetField("space.length_mm", 4800))
    assert session.workings.value("bays_that_fit") > narrow


def test_a_plan_is_one_edit_and_belongs_to_its_document() -> None:
    session = Session(shop(6), synchronous=True)
    notices = told(session)
    session.request_plan()
    assert session.plan is not None
    assert session.plan.status is PlanStatus.PROVED_BEST
    assert session.report.unplaced == ()
    assert session.manufacture is not None
    assert session.undo_title == "Plan"
    assert [n.stale for n in notices if isinstance(n, PlanningEnded)] == [False]
    session.undo()
    assert session.project.arrangement.placements == ()
    assert session.plan is None
    session.redo()
    assert session.plan is not None


def test_an_impossible_plan_changes_nothing_and_says_why() -> None:
    session = Session(shop(6), synchronous=True)
    session.do(SetField("limits.bay_count", 1))
    session.do(SetField("limits.drawers_per_bay", 2))
    before = session.project
    session.request_plan()
    assert session.project is before
    assert session.plan is not None
    assert session.plan.status is PlanStatus.IMPOSSIBLE
    assert session.plan.conflicts


def test_a_document_that_was_planned_before_gets_its_proof_back_and_another_does_not() -> None:
    session = Session(shop(6), synchronous=True)
    session.request_plan()
    planned = session.project
    again = Session(planned, synchronous=True)
    assert again.plan is None
    again.request_proof()
    assert again.plan is not None
    assert again.plan.status is PlanStatus.PROVED_BEST
    assert again.project is planned
    assert not again.can_undo
    worse = planned.arrangement.replace(bay_count=2, upright_rows=33)
    other = Session(planned.replace(arrangement=worse), synchronous=True)
    other.request_proof()
    assert other.plan is None
    assert not other.can_undo


def test_an_answer_to_a_document_that_was_edited_meanwhile_is_dropped() -> None:
    calls: list[Callable[[], None]] = []
    session = Session(shop(4), deliver=calls.append)
    notices = told(session)
    session.request_plan()
    session.do(SetField("space.length_mm", 1800))
    session._desk.close()
    for call in calls:
        call()
    ended = [n for n in notices if isinstance(n, PlanningEnded)]
    assert [n.stale for n in ended] == [True]
    assert session.plan is None
    assert session.project.arrangement.placements == ()


def test_save_open_and_recent_files(tmp_path: Path) -> None:
    session = Session(shop(3), recent=RecentFiles(tmp_path / "state"))
    file = tmp_path / "shop.baywright"
    session.do(SetField("name", "Corner shop"))
    with pytest.raises(FileTrouble, match="Save as"):
        session.save()
    assert session.is_modified
    session.save_as(file)
    assert not session.is_modified
    assert session.recent_files == (file,)
    other = Session()
    other.open(file)
    assert other.project == session.project
    assert not other.can_undo


def test_a_file_that_cannot_be_read_leaves_the_document(tmp_path: Path) -> None:
    session = Session(shop(3))
    before, notices = session.project, told(session)
    (tmp_path / "bad.baywright").write_text("{")
    with pytest.raises(FileTrouble, match=r"bad\.baywright"):
        session.open(tmp_path / "bad.baywright")
    assert session.project is before
    assert notices == []


def test_a_recent_file_that_is_gone_is_dropped_and_a_broken_one_stays(tmp_path: Path) -> None:
    session = Session(shop(3), recent=RecentFiles(tmp_path / "state"))
    gone, broken = tmp_path / "gone.baywright", tmp_path / "broken.baywright"
    for file in (gone, broken):
        session.save_as(file)
    gone.unlink()
    broken.write_text("{")
    for file in (gone, broken):
        with pytest.raises(FileTrouble):
            session.open(file)
    assert session.recent_files == (broken,)


def test_bounds_are_told_in_the_projects_unit() -> None:
    session = Session(shop(3))
    with pytest.raises(EditRefused, match="at most 100,000 mm"):
        session.do(SetField("space.length_mm", 200_000.0))
    session.do(SetField("unit", LengthUnit.INCH))
    with pytest.raises(EditRefused, match="Length must be at most 3937") as refused:
        session.do(SetField("space.length_mm", 200_000.0))
    assert " mm" not in refused.value.message.partition("(")[0]
    assert refused.value.field == "space.length_mm"


def test_a_new_project_forgets_the_old_one() -> None:
    session = Session(shop(3))
    session.do(AddBoxes((Box(id="box-9", label="Late", size_id=SIZE.id),)))
    notices = told(session)
    session.new_project()
    assert session.project == Project()
    assert not session.can_undo
    assert isinstance(notices[0], DocumentReplaced)


def test_no_workbook_before_there_is_a_plan(tmp_path: Path) -> None:
    with pytest.raises(FileTrouble, match="plan the bays first"):
        Session(shop(2)).export_workbook(tmp_path / "order.xlsx")
    assert not (tmp_path / "order.xlsx").exists()
