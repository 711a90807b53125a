"""“Where could this box go?”: every place best first, shown in the picture, moved to with one undo, and why not."""

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from baywright.app.edits.inventory import EditBox, EditBoxSize
from baywright.app.live import LiveMode
from baywright.gui.destination.line import PlaceLine, change_words, gain
from baywright.gui.destination.panel import LOOKING, DestinationPanel
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.destination import GoalChange
from baywright.model.goals import Goal
from baywright.model.inventory import BoxStatus
from baywright.model.project import Project
from tests.gui.desk import Desk, OpenDesk, workshop


def loose_wall() -> Project:
    """Three bays with room to spare; the heaviest box stands too high."""
    places = (("box-1", 0, 0), ("box-2", 0, 12), ("box-3", 1, 0), ("box-4", 1, 9), ("box-5", 2, 0))
    placements = tuple(Placement(box_id=box_id, bay=bay, row=row) for box_id, bay, row in places)
    return workshop().replace(arrangement=Arrangement(bay_count=3, upright_rows=20, placements=placements))


@pytest.fixture
def desk(open_desk: OpenDesk) -> Desk:
    desk = open_desk(loose_wall())
    desk.window.live.choose(LiveMode.CHECK)
    return desk


@pytest.fixture
def panel(desk: Desk) -> DestinationPanel:
    """The places of the box “Cables”, asked for by key in the picture."""
    table = desk.panels.destination.table
    QAbstractItemModelTester(table, QAbstractItemModelTester.FailureReportingMode.Fatal, table)
    select(desk, "box-2")
    desk.panels.elevation.canvas.setFocus()
    QTest.keyClick(desk.panels.elevation.canvas, Qt.Key.Key_W)
    return desk.panels.destination


def select(desk: Desk, box_id: str) -> None:
    desk.panels.elevation.canvas.select([box_id])


def lines(panel: DestinationPanel) -> list[PlaceLine]:
    return [panel.table.record(key) for key in panel.table.ids]


def test_every_legal_place_is_listed_best_first(desk: Desk, panel: DestinationPanel) -> None:
    assert desk.panels.lists.currentWidget() is panel
    found = lines(panel)
    legal = {(d.place.bay, d.place.row) for d in desk.session.destinations("box-2") if not d.conflicts}
    assert len(legal) > 5
    assert {(x.destination.place.bay, x.destination.place.row) for x in found} == legal
    gains = [tuple(-gain(change) for change in line.destination.changes) for line in found]
    assert gains == sorted(gains)
    assert [line.rank for line in found] == list(range(1, len(found) + 1))
    assert sum(line.is_here for line in found) == 1
    assert f"{len(legal)} places" in panel.words.text()


def test_choosing_shows_it_in_the_picture_and_moving_is_one_edit(desk: Desk, panel: DestinationPanel) -> None:
    before = desk.session.project
    best = lines(panel)[1]
    assert not best.is_here
    panel.view.selectRow(1)
    ghost = desk.panels.elevation.canvas._ghost
    assert ghost is not None
    assert ghost.is_legal
    assert desk.session.project is before, "looking edits nothing"
    assert panel.details.text().startswith(f"No. 2, {best.words}: ")
    panel.go.click()
    placement = desk.session.project.arrangement.placement_of("box-2")
    assert placement is not None
    assert (placement.bay, placement.row) == (best.destination.place.bay, best.destination.place.row)
    drawer = desk.panels.elevation.shown.drawer("box-2")
    assert drawer is not None
    assert drawer.areas.box == ghost.areas.box
    assert desk.panels.elevation.canvas._ghost is None, "it stands there now"
    desk.session.undo()
    assert desk.session.project.arrangement == before.arrangement


def test_the_pointer_over_a_line_shows_its_place_until_it_leaves(desk: Desk, panel: DestinationPanel) -> None:
    canvas = desk.panels.elevation.canvas
    panel.view.clearSelection()
    assert canvas._ghost is None
    rect = panel.view.visualRect(panel.table.index(1, 1))
    QTest.mouseMove(panel.view.viewport(), rect.center())
    QApplication.processEvents()
    assert canvas._ghost is not None
    QApplication.sendEvent(panel.view, QEvent(QEvent.Type.Leave))
    assert canvas._ghost is None
    desk.panels.lists.setCurrentWidget(desk.panels.drawers)
    assert canvas._ghost is None


def test_enter_moves_the_box(desk: Desk, panel: DestinationPanel) -> None:
    panel.view.setFocus()
    panel.view.selectRow(1)
    wanted = lines(panel)[1].destination.place
    QTest.keyClick(panel.view, Qt.Key.Key_Return)
    placement = desk.session.project.arrangement.placement_of("box-2")
    assert placement is not None
    assert (placement.bay, placement.row) == (wanted.bay, wanted.row)


def test_why_not_there_is_told_in_words(panel: DestinationPanel) -> None:
    panel.bay.setValue(2)
    panel.row.setValue(1)
    assert "⚠" in panel.reasons.toPlainText()
    assert "“Chains”" in panel.reasons.toPlainText()
    panel.row.setValue(20)
    assert "would meet the top" in panel.reasons.toPlainText()
    panel.bay.setValue(3)
    panel.row.setValue(8)
    assert panel.reasons.toPlainText() == "✓ It can stand there."


def test_a_place_in_a_drawer_that_may_be_shared_names_who_is_there(desk: Desk, panel: DestinationPanel) -> None:
    desk.session.do(EditBoxSize("low", "most_behind", 2))
    desk.session.do(EditBox("box-1", "loaded_mass_kg", 2.0))
    project = desk.session.project
    desk.session.do(EditBoxSize("low", "depth_mm", 140.0))
    assert desk.session.project is not project
    shared = [line for line in lines(panel) if line.company]
    assert any("“Brake blocks”" in line.company for line in shared)


def test_nothing_selected_nothing_arranged_or_kept_elsewhere_is_said(desk: Desk, panel: DestinationPanel) -> None:
    desk.session.do(EditBox("box-2", "status", BoxStatus.ELSEWHERE))
    assert "kept elsewhere" in panel.words.text()
    assert not panel.go.isVisible()
    desk.panels.boxes.view.clearSelection()
    assert panel.words.text().startswith("Select one box")
    desk.session.new_project()
    assert panel.table.ids == ()


def test_nothing_is_worked_out_while_the_tab_is_not_seen(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(_box_id: str) -> None:
        raise AssertionError("asked for unseen places")

    monkeypatch.setattr(desk.session, "destinations", fail)
    select(desk, "box-3")
    desk.session.do(EditBox("box-1", "label", "Other"))


@pytest.mark.parametrize(
    ("goal", "before", "after", "words"),
    [
        (Goal.HANDLING, 120.0, 107.6, "−12.4 ✓"),
        (Goal.HANDLING, 100.0, 101.0, "+1 ✗"),
        (Goal.FREE_PIECE, 8.0, 10.0, "+2 ✓"),
        (Goal.GROUPS, 1.0, 1.0, "="),
    ],
)
def test_changes_say_better_or_worse_by_sign(goal: Goal, before: float, after: float, words: str) -> None:
    assert change_words(GoalChange(goal=goal, before=before, after=after, unit="")) == words


def test_in_a_large_workshop_places_are_looked_at_beside_the_window(
    open_desk: OpenDesk, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("baywright.gui.destination.panel.MOST_AT_ONCE", 3)
    desk = open_desk(loose_wall(), synchronous=False)
    desk.window.live.choose(LiveMode.CHECK)
    select(desk, "box-2")
    desk.panels.show_destinations()
    panel = desk.panels.destination
    assert panel.words.text() == LOOKING
    qtbot.waitUntil(lambda: bool(panel.table.ids))
    assert "“Cables” could stand at" in panel.words.text()
    select(desk, "box-3")
    select(desk, "box-5")
    qtbot.waitUntil(lambda: "“saddles”" in panel.words.text())
