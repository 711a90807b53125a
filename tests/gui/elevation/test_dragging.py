"""Dragging with real mouse events: to a legal place, to an illegal one, onto the tray and from it, and Esc."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from baywright.app.commands import SetField
from baywright.app.edits.inventory import EditBoxSize
from baywright.app.session import Session
from baywright.gui.elevation.view import ElevationView
from tests.gui.elevation.hand import Hand

PlaceOf = Callable[[str], tuple[int, int] | None]


def test_a_box_dragged_to_a_free_place_stands_there_and_one_undo_brings_it_back(
    view: ElevationView, session: Session, hand: Hand, place_of: PlaceOf
) -> None:
    hand.press_box("a")
    hand.move_to(hand.at_place(2, 10))
    hand.release()
    assert place_of("a") == (2, 10)
    assert session.undo_title.startswith("Move “")
    session.undo()
    assert place_of("a") == (0, 0)
    assert not session.can_undo
    drawer = view.shown.drawer("a")
    assert drawer is not None
    assert (drawer.bay, drawer.row) == (0, 0)


@pytest.mark.parametrize(("off_mm", "row"), [(-21, 9), (-11, 10), (-6, 10), (6, 10), (11, 10), (21, 11)])
def test_the_box_snaps_to_the_nearest_row(
    view: ElevationView, hand: Hand, place_of: PlaceOf, off_mm: float, row: int
) -> None:
    hand.press_box("a")
    pixels = round(off_mm * view.canvas.pixels_per_mm)
    hand.move_to(hand.at_place(2, 10) + QPoint(0, -pixels))
    hand.release()
    assert place_of("a") == (2, row)


def test_the_ghost_follows_and_says_before_dropping_that_the_box_fits(
    view: ElevationView, session: Session, hand: Hand
) -> None:
    hand.press_box("a")
    hand.move_to(hand.at_place(2, 10))
    assert view.carrier.drag is not None
    ghost = view.carrier.drag.ghost
    assert ghost is not None
    assert ghost.is_legal
    assert view.foot.message == "Fits at bay 3, row 11."
    assert not view.foot.is_refusal
    assert not session.can_undo, "carrying edits nothing"
    item = view.canvas.drawer_item("a")
    assert item is not None
    assert item.opacity() < 1
    hand.release()
    assert item.opacity() == 1
    assert view.carrier.drag is None


def test_an_illegal_place_tells_its_reason_before_dropping_and_the_box_goes_back(
    view: ElevationView, session: Session, hand: Hand, place_of: PlaceOf
) -> None:
    hand.press_box("a")
    hand.move_to(hand.at_place(1, 4))
    assert view.carrier.drag is not None
    ghost = view.carrier.drag.ghost
    assert ghost is not None
    assert not ghost.is_legal
    assert "Chains" in ghost.message
    assert view.foot.is_refusal
    assert view.foot.text().startswith("✕ Cannot stand at bay 2, row 5: ")
    hand.release()
    assert place_of("a") == (0, 0)
    assert not session.can_undo
    assert view.foot.is_refusal, "the reason stays to be read"
    assert view.foot.message.endswith("The box went back.")


def test_the_reason_goes_once_something_else_happens(view: ElevationView, session: Session, hand: Hand) -> None:
    hand.press_box("a")
    hand.move_to(hand.at_place(1, 4))
    hand.release()
    session.do(SetField("name", "Another name"))
    assert view.foot.message == ""
    assert "Brake blocks" in view.foot.text(), "what is selected stands there again"


def test_escape_puts_the_box_back_and_the_rest_of_the_gesture_does_nothing(
    view: ElevationView, session: Session, hand: Hand, place_of: PlaceOf
) -> None:
    hand.press_box("a")
    hand.move_to(hand.at_place(2, 10))
    QTest.keyClick(view.canvas, Qt.Key.Key_Escape)
    assert view.carrier.drag is None
    assert view.foot.message == "Put back."
    hand.move_to(hand.at_place(2, 12))
    hand.release()
    assert place_of("a") == (0, 0)
    assert not session.can_undo
    assert view.selected_ids == ("a",)


def test_a_press_that_hardly_moves_is_a_click(view: ElevationView, session: Session, hand: Hand) -> None:
    hand.press_box("a")
    hand.move_to(hand.on_box("a") + QPoint(QApplication.startDragDistance() - 2, 0))
    assert view.carrier.drag is None
    hand.release()
    assert view.selected_ids == ("a",)
    assert not session.can_undo


def test_dropping_where_it_stands_is_no_edit(session: Session, hand: Hand, view: ElevationView) -> None:
    hand.press_box("b")
    hand.move_to(hand.at_place(2, 10))
    hand.move_to(hand.at_place(0, 5))
    assert view.foot.message == "Bay 1, row 6: where it stands now."
    hand.release()
    assert not session.can_undo
    assert not view.foot.is_refusal


def test_onto_the_tray_takes_the_box_out_and_from_the_tray_puts_it_in(
    view: ElevationView, session: Session, hand: Hand, place_of: PlaceOf
) -> None:
    hand.press_box("b")
    hand.move_to(hand.on_tray())
    assert view.foot.message == "Takes 1 box out of its drawer."
    hand.release()
    assert place_of("b") is None
    assert view.shown.unplaced == ("b", "f")
    assert view.canvas.drawer_item("b") is None
    assert view.selected_ids == ("b",)
    hand.press_chip(1)
    hand.move_to(hand.at_place(2, 8))
    hand.release()
    assert place_of("f") == (2, 8)
    assert list(view.shown.unplaced) == ["b"]
    session.undo()
    session.undo()
    assert place_of("b") == (0, 5)
    assert not session.can_undo


def test_several_selected_boxes_go_onto_the_tray_as_one_edit(
    view: ElevationView, session: Session, hand: Hand, place_of: PlaceOf
) -> None:
    view.select_boxes(["a", "b", "e"])
    hand.press_box("b")
    hand.move_to(hand.on_tray())
    assert view.foot.message == "Takes 3 boxes out of their drawers."
    hand.release()
    assert [place_of(box_id) for box_id in "abe"] == [None, None, None]
    session.undo()
    assert [place_of(box_id) for box_id in "abe"] == [(0, 0), (0, 5), (2, 3)]
    assert not session.can_undo


def test_beside_the_bays_the_box_goes_back(
    view: ElevationView, session: Session, hand: Hand, place_of: PlaceOf
) -> None:
    hand.press_box("a")
    hand.move_to(view.canvas.viewport().mapToGlobal(QPoint(2, 20)))
    assert view.foot.is_refusal
    assert "No bay here" in view.foot.message
    hand.move_to(view.foot.mapToGlobal(view.foot.rect().center()))
    assert "No drawer here" in view.foot.message
    hand.release()
    assert place_of("a") == (0, 0)
    assert not session.can_undo


def test_an_edit_from_elsewhere_ends_the_drag(view: ElevationView, session: Session, hand: Hand) -> None:
    hand.press_box("a")
    hand.move_to(hand.at_place(2, 10))
    session.do(SetField("construction.boards.upright_mm", 21.0))
    assert view.carrier.drag is None
    assert "changed meanwhile" in view.foot.message
    hand.release()
    assert session.undo_title == "Change upright of the boards"


def test_the_lock_goes_with_the_box(view: ElevationView, session: Session, hand: Hand) -> None:
    view.select_boxes(["a"])
    view.menu_actions.lock_drawer.trigger()
    hand.press_box("a")
    hand.move_to(hand.at_place(2, 10))
    hand.release()
    placement = session.project.arrangement.placement_of("a")
    assert placement is not None
    assert (placement.bay, placement.row, placement.lock.value) == (2, 10, "drawer")


def test_a_box_dropped_on_a_drawer_that_may_be_shared_stands_beside(
    view: ElevationView, session: Session, hand: Hand
) -> None:
    session.do(SetField("space.length_mm", 2900.0))
    session.do(SetField("limits.bay_box_width_mm", 650.0))
    session.do(EditBoxSize("low", "most_abreast", 2))
    hand.press_box("d")
    hand.move_to(hand.at_place(0, 6))  # a row over the drawer of b, over which the pointer is
    assert view.carrier.drag is not None
    assert view.carrier.drag.place == (0, 5)
    assert "beside “Cables”" in view.foot.text()
    ghost = view.carrier.drag.ghost
    assert ghost is not None
    assert ghost.is_legal
    hand.release()
    placements = session.project.arrangement.drawers[0, 5]
    assert [(p.box_id, p.abreast) for p in placements] == [("b", 0), ("d", 1)]
    drawer = view.shown.drawer("d")
    assert drawer is not None
    assert drawer.areas.box == ghost.areas.box
    assert not drawer.troubles
    session.undo()
    assert len(session.project.arrangement.drawers[0, 5]) == 1


def test_a_drawer_that_may_not_be_shared_says_why(view: ElevationView, session: Session, hand: Hand) -> None:
    hand.press_box("d")
    hand.move_to(hand.at_place(0, 5))
    assert view.foot.is_refusal
    assert "must have a drawer of its own" in view.foot.text()
    before = session.project
    hand.release()
    assert session.project is before
