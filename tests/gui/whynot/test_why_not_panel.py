"""The panel says what stands against a plan and what would help; one button makes the change and plans with it."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QPalette
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from baywright.app.commands import SetField
from baywright.app.edits.arrangement import PlaceBox
from baywright.app.live import LiveMode
from baywright.gui.contrast import LEAST_FOR_TEXT, contrast
from baywright.gui.theme import Theme
from baywright.gui.whynot.panel import WhyNotPanel
from baywright.gui.whynot.problem import Problem, WhyNot
from baywright.gui.whynot.reasons import AGAINST_PLAN, AS_IT_STANDS, MOST_LISTED
from baywright.gui.whynot.repairs import AS_IT_STANDS as PLAN_FIRST
from baywright.gui.whynot.repairs import HEADING, NONE_FOUND
from baywright.model.repair import FieldChange, Repair
from tests.gui.desk import Desk, OpenDesk, workshop

MORE_DRAWERS = Repair(
    text="Allow 5 drawers in each bay.", changes=(FieldChange(path="limits.drawers_per_bay", value=5),), weight=1
)
MORE_WALL = Repair(
    text="Take 100 mm more of the wall.", changes=(FieldChange(path="space.length_mm", value=1600.0),), weight=2
)
CLASH = Problem(
    message="6 drawers are needed, 3 bays hold 1 each: 3 drawers at most",
    mend="Allow more drawers in a bay.",
    box_ids=("box-1", "box-2"),
    fields=("limits.drawers_per_bay", "limits.bay_count"),
    stands_against_plan=True,
)
OVERLAP = Problem(message="“Cables” overlaps “Chains”", mend="", box_ids=("box-2", "box-3"))


@pytest.fixture
def panel(qtbot: QtBot) -> WhyNotPanel:
    made = WhyNotPanel()
    qtbot.addWidget(made)
    made.resize(640, 180)
    with qtbot.waitExposed(made):
        made.show()
    made.activateWindow()
    return made


def impossible(desk: Desk) -> None:
    """Ask for what cannot be: one bay with two drawers for six boxes."""
    desk.window.live.choose(LiveMode.CHECK)
    limits = desk.session.project.limits.replace(bay_count=1, drawers_per_bay=2)
    desk.session.do(SetField("limits", limits))
    desk.actions.plan.trigger()
    assert desk.panels.problems.shown.is_impossible


def test_while_nothing_is_wrong_it_says_so_and_offers_nothing(panel: WhyNotPanel) -> None:
    panel.show_why_not(WhyNot(nothing="✓ Nothing is wrong."))
    assert panel.list.texts == ["✓ Nothing is wrong."]
    assert not panel.list.has_problems
    assert not panel.repairs.isVisible()


def test_what_leaves_no_plan_stands_before_what_is_wrong_as_it_stands(panel: WhyNotPanel) -> None:
    panel.show_why_not(WhyNot((CLASH, OVERLAP), (MORE_DRAWERS, MORE_WALL), is_impossible=True))
    assert panel.list.texts == [AGAINST_PLAN, CLASH.text, AS_IT_STANDS, OVERLAP.text]
    assert panel.list.texts[1].startswith("⚠ "), "a sign, not only a colour"
    chosen: list[object] = []
    panel.problem_chosen.connect(chosen.append)
    panel.list.setCurrentRow(0)
    assert chosen == [], "a heading is no trouble"
    panel.list.setCurrentRow(panel.list.row_of(0))
    panel.list.setCurrentRow(panel.list.row_of(1))
    assert chosen == [("box-1", "box-2"), ("box-2", "box-3")]


def test_repairs_are_numbered_smallest_first_and_each_has_its_button(panel: WhyNotPanel) -> None:
    panel.show_why_not(WhyNot((CLASH,), (MORE_DRAWERS, MORE_WALL), is_impossible=True))
    assert panel.repairs.words == HEADING
    assert [row.words.text() for row in panel.repairs.rows] == [
        "1. Allow 5 drawers in each bay",
        "2. Take 100 mm more of the wall",
    ]
    assert panel.repairs.rows[1].button.accessibleName() == "Apply: Take 100 mm more of the wall"
    wanted: list[object] = []
    panel.repair_wanted.connect(wanted.append)
    panel.repairs.rows[1].button.click()
    assert wanted == [MORE_WALL]


def test_the_keyboard_goes_from_button_to_button_and_applies(panel: WhyNotPanel) -> None:
    panel.show_why_not(WhyNot((CLASH,), (MORE_DRAWERS, MORE_WALL), is_impossible=True))
    first, second = (row.button for row in panel.repairs.rows)
    wanted: list[object] = []
    panel.repair_wanted.connect(wanted.append)
    first.setFocus()
    QTest.keyClick(first, Qt.Key.Key_Down)
    assert second.hasFocus()
    QTest.keyClick(second, Qt.Key.Key_Down)
    assert second.hasFocus(), "the last one"
    QTest.keyClick(second, Qt.Key.Key_Space)
    QTest.keyClick(second, Qt.Key.Key_Up)
    QTest.keyClick(first, Qt.Key.Key_Space)
    assert wanted == [MORE_WALL, MORE_DRAWERS]


def test_without_repairs_it_says_why(panel: WhyNotPanel) -> None:
    panel.show_why_not(WhyNot((CLASH,), is_impossible=True, remarks=("Not every question could be settled.",)))
    assert panel.repairs.words == NONE_FOUND
    assert panel.repairs.rows == []
    panel.show_why_not(WhyNot((OVERLAP,)))
    assert panel.repairs.words == PLAN_FIRST
    assert panel.list.texts == [OVERLAP.text]


def test_very_many_are_counted(panel: WhyNotPanel) -> None:
    many = tuple(OVERLAP.__class__(f"Trouble {n}", "", ()) for n in range(MOST_LISTED + 7))
    panel.show_why_not(WhyNot(many))
    assert len(panel.list.texts) == MOST_LISTED + 1
    assert panel.list.texts[-1] == "… and 7 more of the kind."


def test_enter_goes_to_the_field_that_binds(desk: Desk) -> None:
    desk.panels.show_why_not(WhyNot((CLASH,), is_impossible=True))
    panel = desk.panels.problems
    panel.list.setCurrentRow(panel.list.row_of(0))
    QTest.keyClick(panel.list, Qt.Key.Key_Return)
    assert desk.panels.entries.currentWidget() is desk.panels.form
    line = desk.panels.form.field("limits.drawers_per_bay").focusProxy()
    assert line is not None
    assert line.hasFocus()


def test_a_repair_that_the_planner_offers_is_made_and_planned_in_one_step(desk: Desk, qtbot: QtBot) -> None:
    impossible(desk)
    panel = desk.panels.problems
    assert panel.list.texts[0] == AGAINST_PLAN
    before = desk.session.project
    assert panel.repairs.rows, panel.repairs.words
    text = panel.shown.repairs[0].text.rstrip(".")
    panel.repairs.rows[0].button.click()
    qtbot.waitUntil(lambda: not desk.session.live.is_busy)
    assert desk.session.report.unplaced == ()
    assert desk.session.report.conflicts == ()
    assert not panel.list.has_problems
    assert desk.session.undo_title == text
    desk.actions.undo.trigger()
    assert desk.session.project is before
    assert panel.shown.is_impossible, "and it is said again why it was not possible"


def test_a_repair_for_what_is_gone_changes_nothing_and_says_so(desk: Desk) -> None:
    stale = Repair(text="Take out the pumps", changes=(FieldChange(path="boxes[pumps].status", value="elsewhere"),))
    before = desk.session.project
    desk.panels.problems.repair_wanted.emit(stale)
    assert desk.session.project is before
    assert "pumps" in desk.message


def test_a_trouble_of_the_run_selects_its_boxes(desk: Desk) -> None:
    desk.window.live.choose(LiveMode.CHECK)
    desk.actions.plan.trigger()
    other = next(p for p in desk.session.project.arrangement.placements if p.box_id != "box-1")
    desk.session.do(PlaceBox("box-1", other.bay, other.row))
    panel = desk.panels.problems
    number = next(n for n, problem in enumerate(panel.shown.problems) if "box-1" in problem.box_ids)
    panel.list.setCurrentRow(panel.list.row_of(number))
    assert set(desk.panels.elevation.selected_ids) == set(panel.shown.problems[number].box_ids)
    assert set(desk.panels.boxes.selected_ids()) == set(panel.shown.problems[number].box_ids)


@pytest.mark.parametrize("theme", [Theme.LIGHT, Theme.DARK])
def test_its_words_stand_out_in_both_themes(open_desk: OpenDesk, theme: Theme) -> None:
    desk = open_desk(workshop())
    desk.window.choose_theme(theme)
    desk.panels.show_why_not(WhyNot((CLASH, OVERLAP), (MORE_DRAWERS,), is_impossible=True))
    row = desk.panels.problems.repairs.rows[0]
    for widget, text, ground in (
        (desk.panels.problems.list, QPalette.ColorRole.Text, QPalette.ColorRole.Base),
        (row.words, QPalette.ColorRole.WindowText, QPalette.ColorRole.Window),
        (row.button, QPalette.ColorRole.ButtonText, QPalette.ColorRole.Button),
    ):
        palette = widget.palette()
        assert contrast(palette.color(text), palette.color(ground)) >= LEAST_FOR_TEXT
    desk.window.choose_theme(Theme.LIGHT)
