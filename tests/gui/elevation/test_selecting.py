"""Selecting, showing and redrawing: signals, what they tell, and that none of it edits or leaks."""

from PySide6.QtCore import QCoreApplication, QEvent, QPoint, QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from baywright.app.commands import SetField
from baywright.app.edits.arrangement import ClearArrangement, PlaceBox, UnplaceBoxes
from baywright.app.edits.inventory import EditBox, RemoveBoxes
from baywright.app.notices import Notice
from baywright.app.session import Session
from baywright.gui.elevation.item import DrawerItem
from baywright.gui.elevation.view import ElevationView
from baywright.gui.theme import Theme, apply_theme
from baywright.model.construction import Uprights

LEFT = Qt.MouseButton.LeftButton


def _click(view: ElevationView, box_id: str, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
    viewport = view.canvas.viewport()
    QTest.mouseClick(viewport, LEFT, modifier, viewport.mapFromGlobal(view.canvas.middle_of(box_id)))


def _items(view: ElevationView) -> list[DrawerItem]:
    return [item for item in view.canvas.scene().items() if isinstance(item, DrawerItem)]


def test_a_click_tells_one_box_and_control_click_a_list(qtbot: QtBot, view: ElevationView) -> None:
    told: list[object] = []
    view.box_selected.connect(told.append)
    _click(view, "a")
    _click(view, "c", Qt.KeyboardModifier.ControlModifier)
    _click(view, "a", Qt.KeyboardModifier.ControlModifier)
    assert told == ["a", ["a", "c"], "c"]
    QTest.mouseClick(view.canvas.viewport(), LEFT, Qt.KeyboardModifier.NoModifier, QPoint(3, 3))
    assert told[-1] == []
    assert "Chains" not in view.foot.text()


def test_a_rubber_band_takes_all_that_it_touches(view: ElevationView, session: Session) -> None:
    told: list[object] = []
    view.box_selected.connect(told.append)
    viewport = view.canvas.viewport()
    start = QPoint(3, 3)
    end = viewport.mapFromGlobal(view.canvas.middle_of("c"))
    QTest.mousePress(viewport, LEFT, Qt.KeyboardModifier.NoModifier, start)
    QTest.mouseMove(viewport, (start + end) / 2)
    QTest.mouseMove(viewport, end)
    QTest.mouseRelease(viewport, LEFT, Qt.KeyboardModifier.NoModifier, end)
    assert view.selected_ids == ("a", "b", "c", "d")
    assert told[-1] == ["a", "b", "c", "d"]
    assert not session.can_undo


def test_selecting_from_outside_tells_nothing_back(view: ElevationView) -> None:
    told: list[object] = []
    view.box_selected.connect(told.append)
    view.select_boxes(["a", "f"])
    assert view.selected_ids == ("a", "f")
    assert view.canvas.selected_ids == ("a",)
    assert view.tray.list.selected_ids == ("f",)
    view.select_boxes(["nobody"])
    assert not view.selected_ids
    assert told == []


def test_selecting_on_the_tray_lets_the_drawing_go_and_back(view: ElevationView) -> None:
    _click(view, "a")
    chips = view.tray.list
    QTest.mouseClick(chips.viewport(), LEFT, pos=chips.visualItemRect(chips.item(0)).center())
    assert view.selected_ids == ("f",)
    assert "has no drawer yet" in view.foot.text()
    _click(view, "b")
    assert view.selected_ids == ("b",)
    assert chips.selected_ids == ()


def test_selecting_and_refreshing_never_edit(view: ElevationView, session: Session) -> None:
    notices: list[Notice] = []
    before = session.project
    session.subscribe(notices.append)
    _click(view, "a")
    view.select_boxes(["c"])
    view.refresh()
    view.zoom_in()
    view.zoom_to_fit()
    assert session.project is before
    assert notices == []


def test_only_changed_drawers_are_touched(view: ElevationView, session: Session) -> None:
    before = {item.box_id: item for item in _items(view)}
    drawer = before["a"].drawer
    session.do(PlaceBox("e", 2, 9))
    after = {item.box_id: item for item in _items(view)}
    assert after == before, "the same items"
    assert after["a"].drawer is drawer
    assert after["e"].drawer.row == 9


def test_items_come_and_go_with_their_boxes(view: ElevationView, session: Session) -> None:
    assert sorted(item.box_id for item in _items(view)) == ["a", "b", "c", "d", "e"]
    session.do(UnplaceBoxes(("a",)))
    session.do(RemoveBoxes(("b",)))
    assert sorted(item.box_id for item in _items(view)) == ["c", "d", "e"]
    for _ in range(20):
        session.undo()
        session.redo()
    assert len(view.canvas.scene().items()) == 3
    session.do(ClearArrangement())
    assert view.canvas.scene().items() == []
    session.new_project()
    assert view.canvas.scene().items() == []
    assert view.selected_ids == ()


def test_a_changed_dimension_is_redrawn_in_place(view: ElevationView, session: Session) -> None:
    before = view.shown.frame
    assert before is not None
    session.do(SetField("construction.boards.upright_mm", 25.0))
    after = view.shown.frame
    assert after is not None
    assert after.uprights[0].width == 25.0
    assert after.bays[1].left > before.bays[1].left
    session.do(SetField("construction.uprights", Uprights.OWN))
    assert view.shown.frame is not None
    assert len(view.shown.frame.uprights) == 8, "two for each of three bays and the shelf bay"
    session.undo()
    session.undo()
    assert view.shown.frame == before


def test_the_picture_itself_changes_and_comes_back(view: ElevationView, session: Session) -> None:
    view.canvas.clearFocus()
    before = view.canvas.grab().toImage()
    session.do(EditBox("a", "label", "Something else"))
    assert view.canvas.grab().toImage() != before
    session.undo()
    assert view.canvas.grab().toImage() == before
    session.do(SetField("construction.hole_rows.pitch_mm", 25.0))
    assert view.canvas.grab().toImage() != before
    session.undo()
    assert view.canvas.grab().toImage() == before


def test_the_selection_lives_through_an_edit(view: ElevationView, session: Session) -> None:
    view.select_boxes(["a"])
    told: list[object] = []
    view.box_selected.connect(told.append)
    session.do(PlaceBox("a", 2, 12))
    assert view.selected_ids == ("a",)
    assert "bay 3, row 13" in view.foot.text()
    assert told == []


def test_the_selected_drawer_tells_its_opening(view: ElevationView) -> None:
    view.select_boxes(["a"])
    assert "5 rows = 160 mm" in view.foot.text()
    view.select_boxes(["b"])
    assert "top drawer" in view.foot.text()
    assert "5 rows" not in view.foot.text()


def test_tool_tips_tell_contents_and_mass_and_take_text_as_text(view: ElevationView, session: Session) -> None:
    item = view.canvas.drawer_item("a")
    assert item is not None
    assert "40 pairs" in item.toolTip()
    assert "3.5 kg" in item.toolTip()
    session.do(EditBox("a", "contents", "<b>3 < 4</b>"))
    assert "&lt;b&gt;3 &lt; 4&lt;/b&gt;" in item.toolTip()
    unknown = view.canvas.drawer_item("d")
    assert unknown is not None
    assert "Not weighed" in unknown.toolTip()


def test_what_is_wrong_is_told_at_the_drawer(view: ElevationView, session: Session) -> None:
    session.do(PlaceBox("e", 1, 2))
    drawer = view.shown.drawer("e")
    assert drawer is not None
    assert any("Chains" in trouble for trouble in drawer.troubles)
    fine = view.shown.drawer("a")
    assert fine is not None
    assert fine.troubles == ()


def test_a_box_that_meets_the_top_is_told_at_its_drawer(view: ElevationView, session: Session) -> None:
    session.do(PlaceBox("e", 2, 19))
    drawer = view.shown.drawer("e")
    assert drawer is not None
    assert any("would meet the top" in trouble for trouble in drawer.troubles)
    item = view.canvas.drawer_item("e")
    assert item is not None
    assert "would meet the top" in item.toolTip()


def test_another_theme_paints_other_colours(view: ElevationView, qapp: QApplication) -> None:
    light = view.canvas.grab().toImage()
    apply_theme(qapp, Theme.DARK)
    qapp.processEvents()
    dark = view.canvas.grab().toImage()
    apply_theme(qapp, Theme.LIGHT)
    qapp.processEvents()
    assert light.pixelColor(3, 3).lightness() > 200
    assert dark.pixelColor(3, 3).lightness() < 60
    assert view.canvas.grab().toImage().pixelColor(3, 3) == light.pixelColor(3, 3)


def test_a_view_that_is_gone_listens_no_longer(qapp: QApplication, session: Session) -> None:
    view = ElevationView(session)
    view.deleteLater()
    QCoreApplication.sendPostedEvents(view, QEvent.Type.DeferredDelete)
    session.do(SetField("name", "Other"))  # a view that still listened would raise here: its canvas is gone
    assert session.project.name == "Other"


def test_another_document_starts_afresh(view: ElevationView, session: Session) -> None:
    view.select_boxes(["a"])
    QTest.keyClick(view.canvas, Qt.Key.Key_Down, Qt.KeyboardModifier.AltModifier)
    assert view.foot.is_refusal
    view.zoom_in()
    session.new_project(session.project.replace(name="Other"))
    assert view.selected_ids == ()
    assert view.foot.message == ""
    assert view.canvas.is_fitting


def test_an_empty_project_says_what_to_do(qtbot: QtBot) -> None:
    session = Session(synchronous=True)
    view = ElevationView(session)
    qtbot.addWidget(view)
    view.resize(600, 400)
    assert "inventory" in " ".join(view.canvas.hint)
    session.do(SetField("space.length_mm", 100.0))
    assert view.shown.frame is None
    assert not view.grab().isNull()
    assert view.canvas.at_pixel(QPointF(1, 1)) is not None
