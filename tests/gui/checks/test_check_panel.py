"""The tab of checks in the real window: what was found, how, and a mend that is one edit."""

import threading

import pytest
from PySide6.QtTest import QAbstractItemModelTester
from pytestqt.qtbot import QtBot

from baywright.app import derived
from baywright.app.commands import SetField
from baywright.app.edits.inventory import EditBox
from baywright.checks import inspect
from baywright.gui.checks.detail import CHOOSE_ONE
from baywright.gui.checks.panel import MOST_AT_ONCE, CheckPanel
from baywright.gui.elevation.captions import box_tip, drawer_details
from baywright.model.caution import COMPUTED
from baywright.model.finding import CheckKind, Finding, Severity
from baywright.model.project import Project
from baywright.workings import Workings
from tests.gui.desk import Desk, OpenDesk
from tests.gui.test_heartbeat import many_boxes


@pytest.fixture
def panel(desk: Desk) -> CheckPanel:
    """The panel in front, on the planned workshop."""
    desk.actions.plan.trigger()
    desk.panels.lists.setCurrentWidget(desk.panels.checks)
    return desk.panels.checks


def chosen(panel: CheckPanel, kind: CheckKind, severity: Severity) -> str:
    """The id of the first finding of that kind and severity."""
    return next(i for i in panel.table.ids if (f := panel.table.record(i)).kind is kind and f.severity is severity)


def test_every_finding_is_listed_gravest_first(panel: CheckPanel, desk: Desk) -> None:
    found = desk.session.derived.findings
    assert panel.table.total == len(found) > 5
    shown = [panel.table.record(i).severity for i in panel.table.ids]
    assert shown == [finding.severity for finding in found]
    assert "weigh" in panel.detail.words.lower() or panel.detail.words.startswith(CHOOSE_ONE)
    QAbstractItemModelTester(panel.table, QAbstractItemModelTester.FailureReportingMode.Fatal)


def test_what_was_not_weighed_is_told_on_the_tab(panel: CheckPanel, desk: Desk) -> None:
    findings = desk.session.derived.findings
    assert not [f for f in findings if f.severity is Severity.BROKEN]
    unchecked = [f for f in findings if f.severity is Severity.UNCHECKED]
    tab = desk.panels.lists.indexOf(panel)
    assert desk.panels.lists.tabText(tab) == f"? Checks ({len(unchecked)})"
    assert f"0 over the limit, {len(unchecked)} not checked" in desk.panels.lists.tabToolTip(tab)
    assert any("Mass missing for 1 box (“Pedals”)" in f.message for f in unchecked)


def test_a_finding_tells_formula_inputs_and_source_and_selects_its_boxes(panel: CheckPanel, desk: Desk) -> None:
    panel.view.select_ids((chosen(panel, CheckKind.RUNNER_LOAD, Severity.KEPT),))
    panel.view.ids_selected.emit(panel.view.selected_ids())
    assert "Formula: boxes + drawer + allowance" in panel.detail.words
    assert "Source: Rated load" in panel.detail.words
    assert desk.panels.boxes.view.selected_ids() == ("box-2",)


def test_a_mend_is_one_edit_that_clears_the_finding(panel: CheckPanel, desk: Desk) -> None:
    desk.session.do(SetField("construction.runners.load_classes_kg", (10.0,)))
    key = chosen(panel, CheckKind.RUNNER_LOAD, Severity.BROKEN)
    assert desk.panels.lists.tabText(desk.panels.lists.indexOf(panel)).startswith("⚠ Checks (")
    panel.view.select_ids((key,))
    panel.view.ids_selected.emit(panel.view.selected_ids())
    before = desk.session.project
    panel.detail.buttons[0].click()
    assert key not in panel.table.ids
    while desk.session.project is not before and desk.session.can_undo:
        desk.session.undo()
    assert desk.session.project == before


def test_nobody_waits_for_checks_that_nobody_sees(desk: Desk, qtbot: QtBot) -> None:
    desk.actions.plan.trigger()
    panel = desk.panels.checks
    desk.panels.lists.setCurrentWidget(desk.panels.drawers)
    desk.session.do(SetField("safety.walkway_mm", 2_000.0))
    shown = panel.table.total
    qtbot.waitUntil(lambda: panel.table.total != shown or "Checks (" in desk.panels.lists.tabText(6), timeout=3_000)


def test_before_there_is_a_plan_it_says_so(desk: Desk) -> None:
    panel = desk.panels.checks
    panel.show_findings()
    assert panel.table.total == 0
    assert panel.detail.words.splitlines() == [CHOOSE_ONE, COMPUTED]


def test_how_hard_a_box_is_to_lift_stands_in_the_inventory_and_on_the_drawer(desk: Desk) -> None:
    desk.session.do(EditBox("box-2", "loaded_mass_kg", 22.0))
    desk.actions.plan.trigger()
    table = desk.panels.boxes.table
    column = [c.title for c in table.columns].index("Lifting")
    shown = {key: str(table.index(row, column).data()) for row, key in enumerate(table.ids)}
    assert shown["box-2"].startswith("✗ ")
    assert shown["box-4"] == ""  # not weighed
    drawer = desk.panels.elevation.shown.drawer("box-2")
    assert drawer is not None
    assert "✗" in box_tip(drawer.box, drawer.size, desk.session.project.unit, drawer)
    assert any("✗" in wording for line in drawer_details(drawer, desk.session.project.unit) for wording in line)


def test_a_finding_about_a_part_makes_it_stand_out_in_the_picture(panel: CheckPanel, desk: Desk) -> None:
    canvas = desk.panels.elevation.canvas
    plain = canvas.grab().toImage()
    top = next(i for i in panel.table.ids if panel.table.record(i).part_number == "T1")
    panel.view.select_ids((top,))
    panel.view.ids_selected.emit(panel.view.selected_ids())
    assert canvas.grab().toImage() != plain
    desk.panels.lists.setCurrentWidget(desk.panels.drawers)
    assert canvas.grab().toImage() == plain


def test_the_checks_of_many_boxes_are_made_beside_the_window(
    open_desk: OpenDesk, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    window, made_in = threading.get_ident(), set()
    real = inspect

    def inspected(project: Project, workings: Workings) -> tuple[Finding, ...]:
        made_in.add(threading.get_ident())
        return real(project, workings)

    monkeypatch.setattr(derived, "inspect", inspected)
    desk = open_desk(many_boxes(MOST_AT_ONCE + 10), synchronous=False)
    desk.actions.plan.trigger()
    qtbot.waitUntil(lambda: bool(desk.session.project.arrangement.placements), timeout=20_000)
    panel = desk.panels.checks
    desk.panels.lists.setCurrentWidget(panel)
    qtbot.waitUntil(lambda: panel.table.total > 5 and not desk.session.is_planning, timeout=20_000)
    qtbot.waitUntil(lambda: panel.table.total == len(desk.session.derived.findings), timeout=20_000)
    assert made_in
    assert window not in made_in
