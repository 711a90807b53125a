"""Re-planning in the window: shown before it is taken in, accepted whole or box by box, rejected with Esc."""

import pytest
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu

from baywright.app.edits.arrangement import PlaceBox
from baywright.app.edits.inventory import AddBoxes, EditBox
from baywright.app.live import LiveMode
from baywright.gui.elevation.changes import Side
from baywright.gui.replan.panel import ReplanPanel
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.inventory import Box
from baywright.model.limits import Limits
from baywright.model.project import Project
from tests.gui.desk import Desk, OpenDesk, workshop

LABEL = "<b>Pumps</b> & hoses"


def full_wall() -> Project:
    """Three bays in which a further high box finds room only when others move."""
    project = workshop()
    places = (("box-1", 0, 4), ("box-2", 0, 12), ("box-3", 1, 2), ("box-4", 1, 13), ("box-5", 2, 4), ("box-6", 2, 10))
    placements = tuple(Placement(box_id=box_id, bay=bay, row=row) for box_id, bay, row in places)
    return project.replace(
        limits=Limits(bay_count=3, upright_rows=18, drawers_per_bay=3),
        arrangement=Arrangement(bay_count=3, upright_rows=18, placements=placements),
    )


@pytest.fixture
def desk(open_desk: OpenDesk) -> Desk:
    """A window on a wall into which a new box has come that has no drawer yet."""
    desk = open_desk(full_wall())
    desk.window.live.choose(LiveMode.CHECK)
    desk.session.do(AddBoxes((Box(id="new", label=LABEL, size_id="high", loaded_mass_kg=5),)))
    return desk


@pytest.fixture
def offer(desk: Desk) -> ReplanPanel:
    desk.actions.replan.trigger()
    return desk.panels.replan


def test_a_replan_is_shown_and_changes_nothing(desk: Desk) -> None:
    before = desk.session.project
    desk.actions.replan.trigger()
    proposal = desk.session.proposal
    assert proposal is not None
    assert desk.session.project is before
    assert not desk.session.can_redo
    panel = desk.panels.replan
    assert desk.panels.lists.currentWidget() is panel
    assert panel.moves.ids == tuple(move.box_id for move in proposal.moves)
    assert panel.moves.ticked_ids == panel.moves.ids
    assert "new drawer" in panel.words.text()
    assert LABEL in panel.work.toPlainText(), "typed text is shown as typed"
    assert "Steps, in this order" in panel.work.toPlainText()


def test_accepted_whole_it_is_one_edit(desk: Desk, offer: ReplanPanel) -> None:
    proposal = desk.session.proposal
    assert proposal is not None
    offer.accept.click()
    assert desk.session.project.arrangement == proposal.after.arrangement
    assert desk.session.proposal is None
    desk.session.undo()
    assert desk.session.project.arrangement == proposal.before.arrangement


@pytest.mark.parametrize("where", ["panel", "picture"])
def test_escape_rejects(desk: Desk, offer: ReplanPanel, where: str) -> None:
    before = desk.session.project
    widget = offer.moves if where == "panel" else desk.panels.elevation.canvas
    widget.setFocus()
    QTest.keyClick(widget, Qt.Key.Key_Escape)
    assert desk.session.proposal is None
    assert desk.session.project is before
    assert not offer.accept.isVisible()


def test_the_picture_shows_both_sides_with_marks(desk: Desk, offer: ReplanPanel) -> None:
    elevation = desk.panels.elevation
    elevation.canvas.clearFocus()
    assert elevation.review.side is Side.AFTER
    proposal = desk.session.proposal
    assert proposal is not None
    there = proposal.after.arrangement.placement_of("new")
    item = elevation.canvas.drawer_item("new")
    assert item is not None
    assert there is not None
    assert (item.drawer.bay, item.drawer.row) == (there.bay, there.row)
    after = elevation.canvas.grab().toImage()
    offer.side_buttons[Side.BEFORE].click()
    assert elevation.canvas.drawer_item("new") is None
    before = elevation.canvas.grab().toImage()
    assert before != after
    offer.reject.click()
    assert elevation.canvas.grab().toImage() != before, "the marks are gone"
    assert "Re-plan on offer" not in elevation.foot.text()


def test_no_box_is_moved_by_hand_while_a_replan_is_on_offer(desk: Desk, offer: ReplanPanel) -> None:
    elevation = desk.panels.elevation
    elevation.select_boxes(["box-1"])
    assert not elevation.menu_actions.move_to.isEnabled()
    before = desk.session.project
    viewport = elevation.canvas.viewport()
    start = viewport.mapFromGlobal(elevation.canvas.middle_of("box-1"))
    QTest.mousePress(viewport, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start)
    QTest.mouseMove(viewport, start + QPoint(0, 90))
    QTest.mouseRelease(viewport, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start + QPoint(0, 90))
    assert desk.session.project is before
    offer.reject.click()
    elevation.select_boxes(["box-1"])
    assert elevation.menu_actions.move_to.isEnabled()


def test_box_by_box_what_stands_in_the_way_moves_too(desk: Desk, offer: ReplanPanel) -> None:
    proposal = desk.session.proposal
    assert proposal is not None
    assert len(proposal.moves) > 1
    for box_id in offer.moves.ids:
        offer.moves.tick(box_id, is_ticked=box_id == "new")
    assert offer.accept_some.text().endswith("(1)")
    offer.accept_some.click()
    moved = desk.session.project.arrangement
    assert moved.placement_of("new") == proposal.after.arrangement.placement_of("new")
    assert desk.session.undo_title
    assert not desk.session.report.conflicts
    assert "had to make way" in offer.messages.message or desk.session.proposal is not None
    desk.session.undo()
    assert desk.session.project.arrangement == proposal.before.arrangement


def test_nothing_ticked_cannot_be_accepted(offer: ReplanPanel) -> None:
    for box_id in offer.moves.ids:
        offer.moves.tick(box_id, is_ticked=False)
    assert not offer.accept_some.isEnabled()


def test_an_edit_that_matters_ends_the_offer(desk: Desk, offer: ReplanPanel) -> None:
    desk.session.do(EditBox("box-1", "size_id", "high"))
    assert desk.session.proposal is None
    assert not offer.accept.isVisible()
    assert desk.panels.elevation.canvas._changes is None


def test_choosing_a_line_selects_the_box_everywhere(desk: Desk, offer: ReplanPanel) -> None:
    item = offer.moves.topLevelItem(0)
    assert item is not None
    item.setSelected(True)
    chosen = offer.moves.ids[0]
    assert desk.panels.boxes.selected_ids() == (chosen,)
    assert chosen in desk.panels.elevation.selected_ids


def test_nothing_to_move_is_told_and_nothing_offered(desk: Desk) -> None:
    desk.session.undo()
    desk.session.request_plan()
    desk.actions.replan.trigger()
    assert desk.session.proposal is None
    assert "nothing was changed" in desk.message


# ---- as built


def test_bays_are_marked_as_built_and_forgotten(desk: Desk) -> None:
    desk.panels.boxes.select_ids(["box-3"])
    desk.panels.boxes.boxes_selected.emit(("box-3",))
    desk.actions.mark_built.trigger()
    assert desk.session.project.built is not None
    assert desk.session.project.built.bays == (1,)
    assert "Bay 2 stands as built" in desk.message
    desk.actions.forget_built.trigger()
    assert desk.session.project.built is None
    assert not desk.actions.forget_built.isEnabled()


def test_the_menu_of_a_bay_marks_it_as_built(desk: Desk) -> None:
    elevation = desk.panels.elevation
    elevation.select_boxes([])
    frame = elevation.shown.frame
    assert frame is not None
    pixel = elevation.canvas.mapFromScene(frame.bays[2].centre)
    titles: list[str] = []

    def choose() -> None:
        menu = QApplication.activePopupWidget()
        assert isinstance(menu, QMenu)
        titles.append(menu.actions()[-1].text())
        menu.actions()[-1].trigger()
        menu.close()

    def open_menu() -> None:
        QTimer.singleShot(50, choose)
        elevation._on_menu_wanted(elevation.canvas.viewport().mapToGlobal(pixel))

    open_menu()
    assert desk.session.project.built is not None
    assert desk.session.project.built.bays == (2,)
    open_menu()
    assert desk.session.project.built is None
    assert titles == ["Mark bay 3 as &built", "&Forget what is built"]


def test_work_from_what_is_built_is_listed_until_it_is_done(desk: Desk) -> None:
    desk.session.undo()
    desk.actions.mark_built.trigger()
    assert desk.session.project.built is not None
    assert desk.session.project.built.bays == (0, 1, 2)
    desk.session.do(PlaceBox("box-4", 0, 11))
    panel = desk.panels.replan
    desk.panels.lists.setCurrentWidget(panel)
    assert "From what stands as built" in panel.words.text()
    assert panel.moves.ids == ("box-4",)
    assert panel.moves.topLevelItem(0).text(3) == "bay 1, row 12"  # type: ignore[union-attr]
    assert panel.body.isVisible()
    desk.actions.work_done.trigger()
    assert not panel.body.isVisible()


def test_a_label_typed_while_a_replan_is_on_offer_is_shown_and_keeps_the_cursor(desk: Desk, offer: ReplanPanel) -> None:
    offer.moves.tick("new", is_ticked=False)
    desk.panels.boxes.filter.setFocus()
    desk.session.do(EditBox("new", "label", "Track pump"))
    assert desk.session.proposal is not None
    item = desk.panels.elevation.canvas.drawer_item("new")
    assert item is not None
    assert item.drawer.box.label == "Track pump"
    assert "new" not in offer.moves.ticked_ids
    assert desk.panels.boxes.filter.hasFocus()
