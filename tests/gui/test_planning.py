"""Planning from the window: the status line, what is wrong and how to mend it, undo, and no answer that is void."""

from PySide6.QtWidgets import QListWidgetItem
from pytestqt.qtbot import QtBot

from baywright.app.commands import SetField
from baywright.app.edits.arrangement import PlaceBox
from baywright.app.edits.inventory import EditBox
from baywright.gui.whynot.reasons import AGAINST_PLAN
from baywright.model.plan import PlanStatus
from baywright.model.project import Project
from tests.gui.desk import Desk, OpenDesk


def listed(desk: Desk) -> list[str]:
    problems = desk.panels.problems.list
    return [problems.item(row).text() for row in range(problems.count())]


def test_a_plan_fills_picture_lists_and_status_line(desk: Desk) -> None:
    status = desk.window.status
    assert status.placed.text() == "0 of 6 placed"
    assert status.proof.text() == "– not planned yet"
    assert desk.panels.stack.currentWidget() is desk.panels.start
    desk.actions.plan.trigger()
    assert status.placed.text() == "6 of 6 placed"
    assert status.rows.text().endswith("rows free")
    assert status.proof.text() == "✓ proved best"
    assert "bays" in status.proof.toolTip()
    assert status.problems.text() == "✓ nothing wrong"
    assert desk.panels.stack.currentWidget() is desk.panels.elevation
    assert desk.panels.parts.table.total > 0
    assert desk.panels.hardware.total > 0
    assert "proved" in desk.message
    desk.actions.undo.trigger()
    assert status.placed.text() == "0 of 6 placed"
    assert desk.panels.stack.currentWidget() is desk.panels.start
    assert desk.panels.parts.table.total == 0


def test_a_change_that_the_planner_weighs_takes_the_proof_away_and_undo_gives_it_back(desk: Desk) -> None:
    desk.actions.plan.trigger()
    desk.session.do(SetField("note", "a new thought"))
    assert desk.window.status.proof.text() == "✓ proved best"
    desk.session.do(EditBox("box-1", "loaded_mass_kg", 12.5))
    assert desk.window.status.proof.text() == "? not known to be best"
    desk.actions.undo.trigger()
    assert desk.window.status.proof.text() == "✓ proved best"


def test_an_impossible_plan_says_which_limit_binds_and_changes_nothing(desk: Desk) -> None:
    desk.session.do(SetField("space.height_limit_mm", 250.0))
    before = desk.session.project
    desk.actions.plan.trigger()
    assert desk.session.plan is not None
    assert desk.session.plan.status is PlanStatus.IMPOSSIBLE
    assert desk.session.project is before
    assert desk.window.status.proof.text() == "✗ no plan keeps every limit"
    assert desk.panels.lists.isVisible()
    assert desk.panels.lists.currentWidget() is desk.panels.problems
    assert not desk.panels.strip.isVisible()
    assert listed(desk)[0] == AGAINST_PLAN
    assert listed(desk)[1].startswith("⚠ ")
    assert "→" in listed(desk)[1]
    assert "No plan keeps every limit" in desk.message
    desk.panels.lists.setCurrentWidget(desk.panels.parts)
    assert desk.panels.strip.isVisible()
    desk.actions.show_lists.trigger()
    assert not desk.panels.lists.isVisible()
    assert desk.panels.strip.isVisible()
    desk.panels.strip.all_wanted.emit()
    assert desk.panels.lists.isVisible()
    assert desk.actions.show_lists.isChecked()
    assert not desk.panels.strip.isVisible()


def test_choosing_a_trouble_selects_its_boxes_everywhere(desk: Desk) -> None:
    desk.actions.plan.trigger()
    place = desk.session.project.arrangement.placement_of("box-1")
    other = next(p for p in desk.session.project.arrangement.placements if p.box_id != "box-1")
    assert place is not None
    desk.session.do(PlaceBox("box-1", other.bay, other.row))
    problems = desk.panels.problems.list
    assert problems.has_problems
    assert "to mend" in desk.window.status.problems.text()
    row = next(r for r in range(problems.count()) if desk.session.report.conflicts[r].box_ids)
    problems.setCurrentRow(row)
    ids = set(desk.session.report.conflicts[row].box_ids)
    assert ids
    assert set(desk.panels.boxes.selected_ids()) == ids
    assert set(desk.panels.elevation.selected_ids) == ids
    desk.actions.undo.trigger()
    assert listed(desk) == ["✓ Nothing is wrong: every box in a drawer fits and keeps every limit."]
    assert isinstance(problems.item(0), QListWidgetItem)


def test_locks_are_set_from_the_edit_menu(desk: Desk) -> None:
    assert not desk.actions.lock_drawer.isEnabled()
    desk.actions.plan.trigger()
    desk.panels.boxes.view.selectRow(0)
    desk.actions.lock_drawer.trigger()
    placement = desk.session.project.arrangement.placement_of("box-1")
    assert placement is not None
    assert placement.lock == "drawer"
    desk.actions.clear.trigger()
    assert desk.window.status.placed.text() == "1 of 6 placed"
    desk.actions.unlock.trigger()
    desk.actions.unplace.trigger()
    assert desk.window.status.placed.text() == "0 of 6 placed"


def test_an_empty_project_cannot_be_planned_and_tells_what_to_do(open_desk: OpenDesk) -> None:
    desk = open_desk(Project())
    assert not desk.actions.plan.isEnabled()
    assert desk.window.status.placed.text() == "no boxes"
    assert not desk.panels.lists.isVisible()


def test_planning_beside_the_window_shows_progress_and_can_be_stopped(open_desk: OpenDesk, qtbot: QtBot) -> None:
    desk = open_desk(synchronous=False)
    desk.actions.plan.trigger()
    assert desk.window.status.stop.isVisible()
    assert desk.actions.stop.isEnabled()
    assert not desk.actions.plan.isEnabled()
    desk.window.status.stop.click()
    qtbot.waitUntil(lambda: not desk.session.is_planning, timeout=20_000)
    assert not desk.window.status.stop.isVisible()
    assert desk.actions.plan.isEnabled()


def test_an_answer_to_an_older_document_is_dropped_and_told(open_desk: OpenDesk, qtbot: QtBot) -> None:
    desk = open_desk(synchronous=False)
    desk.actions.plan.trigger()
    desk.session.do(SetField("space.length_mm", 1400.0))
    qtbot.waitUntil(lambda: not desk.session.is_planning, timeout=20_000)
    assert not desk.session.project.arrangement.placements
    assert "changed while it was planned" in desk.message
