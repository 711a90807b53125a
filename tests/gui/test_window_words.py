"""What the window tells stays true: a message goes when the document it was about is no longer the present one."""

from PySide6.QtCore import Qt

from baywright.app.commands import SetField
from baywright.app.edits.arrangement import PlaceBox, SetLock, UnplaceBoxes
from baywright.gui.dimensions.tree import VALUE
from baywright.model.arrangement import Lock
from baywright.model.length import LengthUnit
from tests.gui.desk import Desk


def test_the_words_about_a_plan_go_with_the_next_edit(desk: Desk) -> None:
    # “Undo takes it back” would be wrong now: undo takes the lock back.
    desk.actions.plan.trigger()
    assert "Undo takes it back" in desk.message
    desk.session.do(SetLock(("box-1",), Lock.DRAWER))
    assert desk.message == ""


def test_what_an_edit_itself_tells_stays(desk: Desk) -> None:
    desk.panels.boxes.view.selectRow(0)
    desk.actions.delete.trigger()
    assert "Undo brings them back" in desk.message


def test_lengths_of_another_unit_are_never_cut_off(desk: Desk) -> None:
    desk.actions.plan.trigger()
    desk.session.do(SetField("unit", LengthUnit.INCH))
    desk.panels.entries.setCurrentWidget(desk.panels.sizes)
    view = desk.panels.sizes.view
    for column in range(1, 4):
        words = view.model().index(0, column).data(Qt.ItemDataRole.DisplayRole)
        assert view.columnWidth(column) > view.fontMetrics().horizontalAdvance(words), words
    tree = desk.panels.workings.view
    index = tree.model().index(0, VALUE, tree.model().index(0, 0))
    assert tree.columnWidth(VALUE) > tree.fontMetrics().horizontalAdvance(index.data())


def test_a_workbook_of_an_arrangement_with_faults_is_not_to_order_from(desk: Desk) -> None:
    desk.actions.plan.trigger()
    at = desk.session.project.arrangement.placement_of("box-1")
    assert at is not None
    desk.session.do(PlaceBox("box-2", at.bay, at.row))
    desk.session.do(UnplaceBoxes(("box-6",)))
    desk.answers.files_to_write = [desk.folder / "order.xlsx"]
    desk.actions.export_workbook.trigger()
    assert (desk.folder / "order.xlsx").exists()
    assert "Do not order from it yet" in desk.message
    assert "1 box has no drawer" in desk.message


def test_a_workbook_of_a_sound_arrangement_is_just_written(desk: Desk) -> None:
    desk.actions.plan.trigger()
    desk.answers.files_to_write = [desk.folder / "order.xlsx"]
    desk.actions.export_workbook.trigger()
    assert desk.message == f"Workbook written: {desk.folder / 'order.xlsx'}"
