"""Planning along with edits in the real window: the drawer is there, typing goes on, progress shows, modes are kept."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from baywright.app.commands import SetField
from baywright.app.edits.arrangement import PlaceBox
from baywright.app.edits.inventory import AddBoxes, EditBox
from baywright.app.live import LiveMode
from baywright.gui.live import PATIENCE_MS
from baywright.gui.preferences import Preferences
from baywright.model.inventory import Box
from tests.gui.desk import Desk, OpenDesk
from tests.gui.heart import GAPS_FORGIVEN, Heart
from tests.gui.test_heartbeat import many_boxes

NEW = AddBoxes((Box(id="box-7", label="Bells", size_id="low", loaded_mass_kg=2),))


def settled(desk: Desk, qtbot: QtBot) -> None:
    qtbot.waitUntil(lambda: not desk.session.live.is_busy and not desk.session.is_planning, timeout=20_000)


def test_a_new_box_is_drawn_in_its_drawer_and_one_undo_takes_back_both(desk: Desk, qtbot: QtBot) -> None:
    desk.actions.plan.trigger()
    desk.session.do(NEW)
    assert desk.window.status.placed.text() == "6 of 7 placed"
    settled(desk, qtbot)
    assert desk.window.status.placed.text() == "7 of 7 placed"
    assert desk.panels.elevation.canvas.drawer_item("box-7") is not None
    assert "“Bells” to bay" in desk.message
    desk.actions.undo.trigger()
    assert "box-7" not in desk.session.project.boxes_by_id
    assert desk.window.status.placed.text() == "6 of 6 placed"
    qtbot.wait(PATIENCE_MS)
    assert desk.window.status.placed.text() == "6 of 6 placed", "undo never plans"


def test_what_is_being_typed_elsewhere_lives_through_it(desk: Desk, qtbot: QtBot) -> None:
    desk.actions.plan.trigger()
    view = desk.panels.boxes.view
    view.edit_field("box-4", "label")
    editor = view.indexWidget(view.currentIndex())
    assert editor is not None
    QTest.keyClicks(editor, "Pedals and cr")
    desk.session.do(EditBox("box-1", "size_id", "high"))
    settled(desk, qtbot)
    assert desk.session.report.conflicts == ()
    QTest.keyClicks(editor, "anks")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert desk.session.project.box("box-4").label == "Pedals and cranks"


def test_a_drop_on_another_box_makes_that_one_move(desk: Desk, qtbot: QtBot) -> None:
    desk.actions.plan.trigger()
    other = next(p for p in desk.session.project.arrangement.placements if p.box_id != "box-1")
    desk.session.do(PlaceBox("box-1", other.bay, other.row))
    settled(desk, qtbot)
    placed = desk.session.project.arrangement.placements_by_box
    assert (placed["box-1"].bay, placed["box-1"].row) == (other.bay, other.row)
    assert desk.session.report.conflicts == ()
    assert desk.message.startswith("Made room: ")


def test_only_checking_is_chosen_in_menu_or_toolbar_and_remembered(desk: Desk, qtbot: QtBot) -> None:
    live = desk.window.menus.live
    assert live.button.text() == "Live: make room"
    assert live.actions[LiveMode.MEND].isChecked()
    live.actions[LiveMode.CHECK].trigger()
    assert live.button.text() == "Live: only check"
    assert Preferences(desk.folder / "state").live_mode is LiveMode.CHECK
    desk.actions.plan.trigger()
    desk.session.do(NEW)
    qtbot.wait(PATIENCE_MS)
    assert desk.window.status.placed.text() == "6 of 7 placed"
    live.actions[LiveMode.BEST].trigger()
    desk.session.do(EditBox("box-1", "loaded_mass_kg", 5.5))
    settled(desk, qtbot)
    assert desk.window.status.placed.text() == "7 of 7 placed"
    assert desk.window.status.proof.text() == "✓ proved best"


def test_a_search_that_takes_long_shows_and_can_be_stopped(desk: Desk, qtbot: QtBot) -> None:
    desk.actions.plan.trigger()
    asked: list[object] = []
    desk.session._desk.request = lambda *words, **_options: asked.append(words)  # type: ignore[method-assign]
    desk.session.do(NEW)
    assert not desk.window.status.stop.isVisible(), "what is over in a moment shows nothing"
    qtbot.waitUntil(desk.window.status.stop.isVisible, timeout=5_000)
    assert len(asked) == 1
    assert desk.window.status.planning.text() == "Making room …"
    assert desk.actions.stop.isEnabled()
    desk.session.undo()
    assert not desk.window.status.stop.isVisible()
    assert not desk.actions.stop.isEnabled()


def test_where_it_becomes_impossible_the_panel_says_why_and_takes_no_keys(desk: Desk, qtbot: QtBot) -> None:
    desk.actions.plan.trigger()
    desk.panels.lists.setCurrentWidget(desk.panels.parts)
    desk.panels.boxes.view.setFocus()
    arrangement = desk.session.project.arrangement
    desk.session.do(SetField("limits.drawers_per_bay", 1))
    settled(desk, qtbot)
    assert desk.session.project.arrangement == arrangement
    assert desk.panels.lists.currentWidget() is desk.panels.problems
    assert desk.panels.problems.shown.is_impossible
    assert desk.panels.boxes.view.hasFocus()


@pytest.mark.parametrize("count", [20, 100])
def test_the_window_answers_while_an_edit_is_planned(open_desk: OpenDesk, qtbot: QtBot, count: int) -> None:
    desk = open_desk(many_boxes(count), synchronous=False)
    desk.actions.plan.trigger()
    settled(desk, qtbot)
    heart = Heart()
    end = desk.session.subscribe(lambda _notice: None if desk.session.live.is_busy else heart.stop())
    desk.session.do(AddBoxes((Box(id="late", label="Late", size_id="h1", loaded_mass_kg=3),)))
    qtbot.wait(1)  # drawing the edit itself is not planning
    heart.start()
    settled(desk, qtbot)
    end()
    assert len(heart.gaps) <= GAPS_FORGIVEN, heart.gaps
    assert desk.window.status.placed.text() == f"{count + 1} of {count + 1} placed"
