"""The tab “Box sizes”: lengths typed in any unit, refusals at the cell, and sizes in use that cannot be deleted."""

import pytest
from PySide6.QtCore import QModelIndex, Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest
from PySide6.QtWidgets import QComboBox, QLineEdit

from baywright.app.commands import SetField
from baywright.gui.sizes.dialog import SizeDialog
from baywright.model.length import LengthUnit
from tests.gui.desk import Desk, answer_dialog


@pytest.fixture
def sizes(desk: Desk) -> Desk:
    desk.panels.entries.setCurrentWidget(desk.panels.sizes)
    table = desk.panels.sizes.table
    QAbstractItemModelTester(table, QAbstractItemModelTester.FailureReportingMode.Fatal, table)
    return desk


def cell(desk: Desk, size_id: str, title: str) -> QModelIndex:
    table = desk.panels.sizes.table
    titles = [column.title for column in table.columns]
    return table.index(table.row_of(size_id), titles.index(title))


def type_into(desk: Desk, size_id: str, title: str, text: str) -> QLineEdit:
    view = desk.panels.sizes.view
    view.setCurrentIndex(cell(desk, size_id, title))
    view.edit(view.currentIndex())
    editor = view.indexWidget(view.currentIndex())
    assert isinstance(editor, QLineEdit)
    editor.selectAll()
    QTest.keyClicks(editor, text)
    QTest.keyClick(editor, Qt.Key.Key_Return)
    return editor


def test_it_shows_each_size_with_its_opening(sizes: Desk) -> None:
    # Low: seat 17 + 120 + clearance 12 = 149 mm, 5 rows of 32 mm. High: 249 mm, 8 rows.
    shown = [str(cell(sizes, "low", title).data()) for title in ("Size", "Width", "Height", "Opening", "Rows", "Boxes")]
    assert shown == ["Low", "300 mm", "120 mm", "160 mm", "5", "4"]
    assert cell(sizes, "high", "Opening").data() == "256 mm"


def test_a_length_is_taken_in_any_unit_and_the_opening_follows(sizes: Desk) -> None:
    type_into(sizes, "low", "Height", "17 cm")
    assert sizes.session.project.size("low").height_mm == 170
    assert cell(sizes, "low", "Opening").data() == "224 mm"
    sizes.session.undo()
    assert cell(sizes, "low", "Height").data() == "120 mm"


@pytest.mark.parametrize(("text", "words"), [("tall", "not a length"), ("0", "at least 10"), ("9 m", "at most 3,000")])
def test_a_refused_length_keeps_its_editor_and_the_document(sizes: Desk, text: str, words: str) -> None:
    before = sizes.session.project
    editor = type_into(sizes, "low", "Height", text)
    assert editor.text() == text
    assert words in sizes.panels.sizes.messages.message
    assert sizes.session.project is before


def test_inches_are_shown_with_their_rounding(sizes: Desk) -> None:
    sizes.session.do(SetField("unit", LengthUnit.INCH))
    assert str(cell(sizes, "low", "Width").data()).startswith('11 13/16"')
    type_into(sizes, "low", "Width", "12")
    assert sizes.session.project.size("low").width_mm == pytest.approx(304.8)


def test_a_size_in_use_stays_and_the_reason_is_told(sizes: Desk) -> None:
    sizes.panels.sizes.view.selectRow(0)
    sizes.panels.sizes.delete.click()
    assert "boxes have the size “Low”" in sizes.panels.sizes.messages.message
    assert len(sizes.session.project.box_sizes) == 2


def test_a_new_size_is_added_and_can_go_again(sizes: Desk) -> None:
    def answer(dialog: SizeDialog) -> None:
        for name, text in (("width_mm", "400"), ("depth_mm", "300"), ("height_mm", "75"), ("name", "low")):
            dialog.fields[name].edit.setFocus()
            QTest.keyClicks(dialog.fields[name].edit, text)
        dialog.accept()
        assert dialog.isVisible()
        assert "There is a size called “low” already" in dialog.fields["name"].refusal.text()
        dialog.fields["name"].edit.selectAll()
        QTest.keyClicks(dialog.fields["name"].edit, "Flat")
        dialog.accept()

    answer_dialog(SizeDialog, answer)
    sizes.panels.sizes.add.click()
    assert [size.name for size in sizes.session.project.box_sizes] == ["Low", "High", "Flat"]
    assert sizes.panels.sizes.view.selected_ids() == ("flat",)
    QTest.keyClick(sizes.panels.sizes.view, Qt.Key.Key_Delete)
    assert len(sizes.session.project.box_sizes) == 2


@pytest.mark.parametrize(
    ("title", "choice", "field", "value"),
    [
        ("May turn", "yes", "may_turn", True),
        ("Abreast", "up to 3", "most_abreast", 3),
        ("Behind", "up to 2", "most_behind", 2),
    ],
)
def test_sharing_and_turning_are_chosen_from_lists(
    sizes: Desk, title: str, choice: str, field: str, value: object
) -> None:
    view = sizes.panels.sizes.view
    view.setCurrentIndex(cell(sizes, "low", title))
    view.edit(view.currentIndex())
    combo = view.indexWidget(view.currentIndex())
    assert isinstance(combo, QComboBox)
    place = combo.findText(choice)
    combo.setCurrentIndex(place)
    combo.activated.emit(place)
    assert getattr(sizes.session.project.size("low"), field) == value
    assert cell(sizes, "low", title).data() == choice
    sizes.session.undo()
    assert getattr(sizes.session.project.size("low"), field) != value
