"""The tab “Boxes” as a person uses it: typing into cells, mistakes included, adding, copying, pasting, deleting."""

import pytest
from PySide6.QtCore import QModelIndex, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QComboBox, QLineEdit, QToolTip
from pytestqt.qtbot import QtBot

from baywright.app.edits.inventory import EditBox
from baywright.gui.inventory.view import NEW_SIZE
from baywright.gui.sizes.dialog import SizeDialog
from baywright.model.inventory import BoxStatus
from baywright.model.project import Project
from tests.gui.desk import Desk, OpenDesk, answer_dialog


def cell(desk: Desk, box_id: str, field: str) -> QModelIndex:
    table = desk.panels.boxes.table
    return table.index(table.row_of(box_id), table.column_of(field))


def open_editor(desk: Desk, box_id: str, field: str) -> QLineEdit:
    view = desk.panels.boxes.view
    view.setCurrentIndex(cell(desk, box_id, field))
    view.edit(view.currentIndex())
    editor = view.indexWidget(view.currentIndex())
    assert isinstance(editor, QLineEdit)
    return editor


def type_into(desk: Desk, box_id: str, field: str, text: str) -> QLineEdit:
    editor = open_editor(desk, box_id, field)
    editor.selectAll()
    QTest.keyClicks(editor, text)
    return editor


def is_editing(desk: Desk) -> bool:
    view = desk.panels.boxes.view
    return view.state() == view.State.EditingState


def test_enter_takes_a_cell_in(desk: Desk) -> None:
    editor = type_into(desk, "box-1", "loaded_mass_kg", "4,25 kg")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert desk.session.project.box("box-1").loaded_mass_kg == 4.25
    assert not is_editing(desk)


def test_tab_takes_a_cell_in_and_goes_on(desk: Desk) -> None:
    editor = type_into(desk, "box-1", "contents", "pads")
    QTest.keyClick(editor, Qt.Key.Key_Tab)
    assert desk.session.project.box("box-1").contents == "pads"
    assert desk.panels.boxes.view.currentIndex() == cell(desk, "box-1", "group")


def test_a_wrong_mass_keeps_the_editor_open_with_the_reason(desk: Desk) -> None:
    editor = type_into(desk, "box-1", "loaded_mass_kg", "heavy")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert is_editing(desk)
    assert editor.text() == "heavy"
    assert "“heavy” is not a mass" in desk.panels.boxes.messages.message
    assert "“heavy” is not a mass" in QToolTip.text()
    assert desk.session.project.box("box-1").loaded_mass_kg == 3.5
    editor.selectAll()
    QTest.keyClicks(editor, "8 lb")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert desk.session.project.box("box-1").loaded_mass_kg == pytest.approx(8 * 0.45359237)
    assert desk.panels.boxes.messages.message == ""


def test_what_the_document_refuses_keeps_the_editor_open_too(desk: Desk) -> None:
    editor = type_into(desk, "box-1", "label", " ")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert is_editing(desk)
    assert "empty" in desk.panels.boxes.messages.message
    QTest.keyClick(editor, Qt.Key.Key_Escape)
    assert not is_editing(desk)
    assert desk.panels.boxes.messages.message == ""
    assert desk.session.project.box("box-1").label == "Brake blocks"


def test_leaving_a_cell_with_a_wrong_text_gives_the_old_value_back_and_tells_why(desk: Desk) -> None:
    type_into(desk, "box-1", "loaded_mass_kg", "heavy")
    desk.panels.boxes.filter.setFocus()
    assert not is_editing(desk)
    assert cell(desk, "box-1", "loaded_mass_kg").data() == "3.5"
    assert "“heavy” is not a mass" in desk.panels.boxes.messages.message


def test_a_size_is_chosen_from_the_list(desk: Desk) -> None:
    view = desk.panels.boxes.view
    view.setCurrentIndex(cell(desk, "box-1", "size_id"))
    view.edit(view.currentIndex())
    combo = view.indexWidget(view.currentIndex())
    assert isinstance(combo, QComboBox)
    assert [combo.itemText(n).split("  ")[0] for n in range(combo.count())] == ["Low", "High", "New size…"]
    combo.setCurrentIndex(1)
    combo.activated.emit(1)
    assert desk.session.project.box("box-1").size_id == "high"
    assert not is_editing(desk)


def test_a_new_size_for_a_box_is_one_step(desk: Desk, qtbot: QtBot) -> None:
    view = desk.panels.boxes.view
    view.setCurrentIndex(cell(desk, "box-1", "size_id"))
    view.edit(view.currentIndex())
    combo = view.indexWidget(view.currentIndex())
    assert isinstance(combo, QComboBox)

    def answer(dialog: SizeDialog) -> None:
        for name, text in (("width_mm", "400"), ("depth_mm", "30 cm"), ("height_mm", "170")):
            dialog.fields[name].edit.setFocus()
            QTest.keyClicks(dialog.fields[name].edit, text)
        dialog.accept()

    answer_dialog(SizeDialog, answer)
    combo.setCurrentIndex(combo.findData(NEW_SIZE))
    combo.activated.emit(combo.currentIndex())
    size = desk.session.project.size_of(desk.session.project.box("box-1"))
    assert (size.name, size.width_mm, size.depth_mm, size.height_mm) == ("400 × 300 × 170", 400, 300, 170)
    desk.session.undo()
    assert len(desk.session.project.box_sizes) == 2
    assert not desk.session.can_undo


def test_adding_a_box_opens_its_label(desk: Desk) -> None:
    desk.actions.add_box.trigger()
    assert desk.session.project.boxes[-1].label == "Box 7"
    assert is_editing(desk)
    editor = desk.panels.boxes.view.indexWidget(desk.panels.boxes.view.currentIndex())
    assert isinstance(editor, QLineEdit)
    assert editor.selectedText() == "Box 7"
    QTest.keyClicks(editor, "Wheels")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert desk.session.project.boxes[-1].label == "Wheels"


def test_a_box_added_while_a_filter_hides_others_is_seen(desk: Desk) -> None:
    desk.panels.boxes.filter.setText("chains")
    desk.actions.add_box.trigger()
    assert is_editing(desk)


def test_the_first_box_asks_for_its_size(open_desk: OpenDesk) -> None:
    desk = open_desk(Project())

    def answer(dialog: SizeDialog) -> None:
        dialog.accept()
        assert dialog.isVisible()
        assert "Width is missing" in dialog.fields["width_mm"].refusal.text()
        for name, text in (("width_mm", "396"), ("depth_mm", "297"), ("height_mm", "nine")):
            dialog.fields[name].edit.setFocus()
            QTest.keyClicks(dialog.fields[name].edit, text)
        dialog.accept()
        assert dialog.isVisible()
        assert "“nine” is not a length" in dialog.fields["height_mm"].refusal.text()
        dialog.fields["height_mm"].edit.selectAll()
        QTest.keyClicks(dialog.fields["height_mm"].edit, "0")
        dialog.accept()
        assert dialog.isVisible()
        assert "at least 10" in dialog.fields["height_mm"].refusal.text()
        dialog.fields["height_mm"].edit.selectAll()
        QTest.keyClicks(dialog.fields["height_mm"].edit, "75")
        dialog.accept()

    answer_dialog(SizeDialog, answer)
    desk.actions.add_box.trigger()
    assert len(desk.session.project.boxes) == 1
    assert desk.session.project.box_sizes[0].height_mm == 75
    desk.session.undo()
    assert desk.session.project == Project()


def test_giving_up_the_first_size_adds_nothing(open_desk: OpenDesk) -> None:
    desk = open_desk(Project())

    def answer(dialog: SizeDialog) -> None:
        QTest.keyClick(dialog, Qt.Key.Key_Escape)

    answer_dialog(SizeDialog, answer)
    desk.actions.add_box.trigger()
    assert desk.session.project == Project()


def test_duplicating_and_deleting_what_is_selected(desk: Desk) -> None:
    desk.panels.boxes.view.selectRow(1)
    assert desk.actions.duplicate.isEnabled()
    desk.answers.numbers = [3]
    desk.actions.duplicate.trigger()
    assert [box.label for box in desk.session.project.boxes].count("Cables") == 4
    assert "3 copies made" in desk.message
    desk.panels.boxes.view.setFocus()
    QTest.keyClick(desk.panels.boxes.view, Qt.Key.Key_Delete)
    assert [box.label for box in desk.session.project.boxes].count("Cables") == 3
    assert "1 box deleted" in desk.message
    desk.actions.undo.trigger()
    desk.actions.undo.trigger()
    assert len(desk.session.project.boxes) == 6


def test_giving_up_the_number_of_copies_makes_none(desk: Desk) -> None:
    desk.panels.boxes.view.selectRow(1)
    desk.answers.numbers = [None]
    desk.actions.duplicate.trigger()
    assert not desk.session.can_undo


def test_rows_are_copied_as_spreadsheets_exchange_them(desk: Desk) -> None:
    view = desk.panels.boxes.view
    view.selectRow(0)
    view.setFocus()
    QTest.keyClick(view, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    lines = QGuiApplication.clipboard().text().splitlines()
    assert lines[0].split("\t")[:3] == ["Box", "Size", "Mass, kg"]
    assert lines[1].split("\t")[:3] == ["Brake blocks", "Low", "3.5"]


def test_a_single_text_is_pasted_into_the_cell(desk: Desk) -> None:
    view = desk.panels.boxes.view
    QGuiApplication.clipboard().setText("Brake shoes")
    view.setCurrentIndex(cell(desk, "box-1", "label"))
    view.setFocus()
    QTest.keyClick(view, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert desk.session.project.box("box-1").label == "Brake shoes"
    view.setCurrentIndex(cell(desk, "box-1", "loaded_mass_kg"))
    QTest.keyClick(view, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert "“Brake shoes” is not a mass" in desk.panels.boxes.messages.message


def test_the_filter_counts_what_it_shows(desk: Desk) -> None:
    desk.panels.boxes.filter.setText("low")
    assert desk.panels.boxes.count.text() == "4 of 6 boxes"
    desk.panels.boxes.filter.clear()
    assert desk.panels.boxes.count.text() == "6 boxes"


def test_selecting_in_the_table_selects_in_the_picture_and_back(desk: Desk) -> None:
    desk.actions.plan.trigger()
    desk.panels.boxes.view.selectRow(2)
    assert desk.panels.elevation.selected_ids == ("box-3",)
    assert desk.panels.drawers.selected_ids == ("box-3",)
    desk.panels.elevation.box_selected.emit("box-5")
    assert desk.panels.boxes.selected_ids() == ("box-5",)


def test_a_box_kept_elsewhere_leaves_its_drawer_and_comes_back_with_one_undo(desk: Desk, qtbot: QtBot) -> None:
    desk.session.request_plan()
    assert desk.session.project.arrangement.placement_of("box-2") is not None
    view = desk.panels.boxes.view
    view.setCurrentIndex(cell(desk, "box-2", "status"))
    view.edit(view.currentIndex())
    combo = view.indexWidget(view.currentIndex())
    assert isinstance(combo, QComboBox)
    assert [combo.itemText(i) for i in range(combo.count())] == ["owned", "wished", "kept elsewhere"]
    combo.setCurrentIndex(2)
    combo.activated.emit(2)
    assert desk.session.project.box("box-2").status == "elsewhere"
    assert desk.session.project.arrangement.placement_of("box-2") is None
    assert desk.panels.elevation.shown.unplaced == ()
    assert "5 of 5 placed" in desk.window.status.placed.text()
    assert desk.session.undo_title == "Change status of “Cables”"
    desk.session.undo()
    assert desk.session.project.arrangement.placement_of("box-2") is not None


def test_the_filter_finds_boxes_by_their_status(desk: Desk) -> None:
    desk.session.do(EditBox("box-3", "status", BoxStatus.WISHED))
    desk.panels.boxes.filter.setText("wished")
    assert desk.panels.boxes.table.ids == ("box-3",)
