"""Everything that a drag does, done by keys and menus."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu

from baywright.app.session import Session
from baywright.gui.elevation.chooser import PlaceChooser
from baywright.gui.elevation.view import ElevationView
from baywright.model.arrangement import Lock

PlaceOf = Callable[[str], tuple[int, int] | None]
ALT = Qt.KeyboardModifier.AltModifier


@pytest.mark.parametrize(
    ("box_id", "key", "place"),
    [
        ("e", Qt.Key.Key_Up, (2, 4)),
        ("e", Qt.Key.Key_Down, (2, 2)),
        ("a", Qt.Key.Key_Up, (0, 10)),  # over the box above it, the next free row
        ("b", Qt.Key.Key_Right, (1, 13)),  # the free row of the next bay nearest to its own
        ("d", Qt.Key.Key_Left, (0, 10)),
    ],
)
def test_alt_and_arrows_go_to_the_next_free_place(
    view: ElevationView, session: Session, place_of: PlaceOf, box_id: str, key: Qt.Key, place: tuple[int, int]
) -> None:
    before = place_of(box_id)
    view.select_boxes([box_id])
    QTest.keyClick(view.canvas, key, ALT)
    assert place_of(box_id) == place
    assert view.foot.message == f"Moved to bay {place[0] + 1}, row {place[1] + 1}."
    assert view.selected_ids == (box_id,)
    session.undo()
    assert place_of(box_id) == before
    assert not session.can_undo


def test_where_there_is_no_further_place_it_says_so(view: ElevationView, session: Session) -> None:
    view.select_boxes(["a"])
    QTest.keyClick(view.canvas, Qt.Key.Key_Down, ALT)
    assert view.foot.is_refusal
    assert view.foot.message == "No free place lower."
    QTest.keyClick(view.canvas, Qt.Key.Key_Left, ALT)
    assert view.foot.message == "No free place further left."
    assert not session.can_undo


def test_a_box_from_the_tray_goes_to_the_first_free_place(view: ElevationView, place_of: PlaceOf) -> None:
    view.select_boxes(["f"])
    QTest.keyClick(view.canvas, Qt.Key.Key_Up, ALT)
    assert place_of("f") == (0, 10)


def test_arrows_go_from_drawer_to_drawer_and_edit_nothing(view: ElevationView, session: Session) -> None:
    seen = []
    for key in (Qt.Key.Key_Up, Qt.Key.Key_Up, Qt.Key.Key_Right, Qt.Key.Key_Right, Qt.Key.Key_Right, Qt.Key.Key_Left):
        QTest.keyClick(view.canvas, key)
        seen.append(view.selected_ids)
    assert seen == [("a",), ("b",), ("d",), ("e",), ("e",), ("c",)]
    QTest.keyClick(view.canvas, Qt.Key.Key_Up, Qt.KeyboardModifier.ShiftModifier)
    assert view.selected_ids == ("c", "d")
    assert not session.can_undo


def test_l_locks_and_unlocks(view: ElevationView, session: Session) -> None:
    def locks() -> set[Lock]:
        return {p.lock for p in session.project.arrangement.placements if p.box_id in ("a", "b")}

    view.select_boxes(["a", "b"])
    QTest.keyClick(view.canvas, Qt.Key.Key_L)
    assert locks() == {Lock.DRAWER}
    QTest.keyClick(view.canvas, Qt.Key.Key_L)
    assert locks() == {Lock.NONE}
    view.menu_actions.lock_bay.trigger()
    assert locks() == {Lock.BAY}
    assert "locked in bay" in (view.canvas.drawer_item("a") or pytest.fail("no drawer")).toolTip().lower()


def test_delete_takes_out_of_the_drawer(view: ElevationView, session: Session, place_of: PlaceOf) -> None:
    view.select_boxes(["a", "c"])
    QTest.keyClick(view.canvas, Qt.Key.Key_Delete)
    assert (place_of("a"), place_of("c")) == (None, None)
    assert view.selected_ids == ("a", "c"), "they are still selected, on the tray"
    session.undo()
    assert (place_of("a"), place_of("c")) == ((0, 0), (1, 0))


def test_actions_are_offered_only_where_they_can_be_done(view: ElevationView) -> None:
    actions = view.menu_actions
    assert not actions.move_to.isEnabled()
    assert not actions.take_out.isEnabled()
    view.select_boxes(["a"])
    assert actions.move_to.isEnabled()
    assert actions.lock_drawer.isEnabled()
    assert not actions.unlock.isEnabled()
    view.select_boxes(["f"])
    assert actions.move_to.isEnabled()
    assert not actions.take_out.isEnabled()
    view.select_boxes(["a", "b"])
    assert not actions.move_to.isEnabled()
    assert actions.take_out.isEnabled()


def test_the_menu_holds_everything(view: ElevationView) -> None:
    names = [action.text().replace("&", "") for action in view.actions_for_menu() if not action.isSeparator()]
    assert names == [
        *("Move to…", "Where could it go?", "Move up", "Move down", "Move left", "Move right"),
        *(
            "Lock or unlock",
            "Lock in drawer",
            "Lock in bay",
            "Unlock",
            "Take out of its drawer",
            "Next board",
            "Previous board",
            "Zoom in",
            "Zoom out",
            "Fit",
        ),
    ]


def test_the_context_menu_is_about_the_box_under_the_pointer(view: ElevationView, session: Session) -> None:
    def choose() -> None:
        menu = QApplication.activePopupWidget()
        assert isinstance(menu, QMenu)
        names.extend(action.text() for action in menu.actions())
        menu.setActiveAction(view.menu_actions.lock_bay)
        QTest.keyClick(menu, Qt.Key.Key_Return)

    names: list[str] = []
    QTimer.singleShot(50, choose)
    view.select_boxes(["d"])
    view.canvas.menu_wanted.emit(view.canvas.middle_of("d"))
    assert "&Move to…" in names
    placement = session.project.arrangement.placement_of("d")
    assert placement is not None
    assert placement.lock is Lock.BAY


def test_move_to_lists_the_legal_places_and_moves(view: ElevationView, session: Session, place_of: PlaceOf) -> None:
    def choose() -> None:
        chooser = QApplication.activeModalWidget()
        assert isinstance(chooser, PlaceChooser)
        assert chooser.bays.count() == 3
        assert chooser.bays.currentRow() == 0
        assert [chooser.rows.item(i).text().split(":")[0] for i in range(chooser.rows.count())][-1] == "Row 11"
        chooser.bays.setCurrentRow(1)
        chooser.rows.setCurrentRow(0)
        assert chooser.place == (1, 15)
        chooser.move_button.click()

    view.select_boxes(["a"])
    QTimer.singleShot(50, choose)
    view.menu_actions.move_to.trigger()
    assert place_of("a") == (1, 15)
    session.undo()
    assert not session.can_undo


def test_move_to_can_be_left_and_says_where_nothing_is_free(
    view: ElevationView, session: Session, place_of: PlaceOf
) -> None:
    chooser = PlaceChooser(session, "f", view)
    chooser.bays.setCurrentRow(2)
    free = [int(chooser.rows.item(i).text().split(":")[0].removeprefix("Row ")) for i in range(chooser.rows.count())]
    assert sorted(free) == [9, 10, 11, 12, 13], (
        "over the box at rows 4 to 8, up to the last row that a high box can use"
    )
    chooser.bays.setCurrentRow(1)
    assert chooser.place is None
    assert chooser.rows.item(0).text() == "No free place in this bay"
    assert not chooser.move_button.isEnabled()
    chooser.reject()
    chooser.deleteLater()
    assert place_of("f") is None
