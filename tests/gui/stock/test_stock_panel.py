"""The tab “Stock”: materials, measured batches, sheets, bars, rules and prices as a person enters them."""

from decimal import Decimal

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest
from PySide6.QtWidgets import QComboBox, QLineEdit

from baywright.app.commands import SetField
from baywright.gui.fields.choice import ChoiceField
from baywright.gui.fields.typed import TypedField
from baywright.gui.stock.panel import StockPanel
from baywright.gui.tables.block import Block
from baywright.model.length import LengthUnit
from baywright.model.stock import BoardRole
from tests.gui.desk import Desk


@pytest.fixture
def stock(desk: Desk) -> StockPanel:
    """The tab in front."""
    panel = desk.panels.stock
    desk.panels.entries.setCurrentWidget(panel)
    for block in (panel.materials, panel.roles, panel.batches, panel.sheets, panel.bars):
        QAbstractItemModelTester(block.table, QAbstractItemModelTester.FailureReportingMode.Fatal, block.table)
    return panel


def enter(block: Block, identifier: str, field: str, text: str) -> None:
    """Type a text into a cell and confirm it."""
    if block.view.state() != block.view.State.EditingState:
        block.begin_editing(identifier, field)
    edit = block.view.indexWidget(block.view.currentIndex())
    assert isinstance(edit, QLineEdit)
    edit.selectAll()
    QTest.keyClick(edit, Qt.Key.Key_Delete)
    QTest.keyClicks(edit, text)
    QTest.keyClick(edit, Qt.Key.Key_Return)


def give_up(block: Block) -> None:
    edit = block.view.indexWidget(block.view.currentIndex())
    assert isinstance(edit, QLineEdit)
    QTest.keyClick(edit, Qt.Key.Key_Escape)


def shown(block: Block, identifier: str, field: str) -> str:
    rows = block.view.rows
    return str(rows.index(rows.row_of(identifier), rows.column_of(field)).data())


def test_an_empty_stock_explains_itself_and_takes_what_the_run_needs_in_one_step(stock: StockPanel, desk: Desk) -> None:
    desk.actions.plan.trigger()
    before = desk.session.project
    assert "No materials yet" in stock.materials.view._empty
    QTest.mouseClick(stock.materials.needed, Qt.MouseButton.LeftButton)
    made = desk.session.manufacture
    assert made is not None
    after = desk.session.project.stock
    roles = {role for material in after.materials for role in material.roles}
    assert {part.role for part in made.parts} <= roles
    assert {sheet.material_id for sheet in after.sheets} == {material.id for material in after.materials}
    assert not stock.materials.needed.isEnabled()
    assert desk.session.undo_title == "Add the materials that the run needs"
    desk.session.undo()
    assert desk.session.project == before


def test_a_material_is_added_named_priced_and_removed(stock: StockPanel, desk: Desk) -> None:
    QTest.mouseClick(stock.materials.add, Qt.MouseButton.LeftButton)
    enter(stock.materials, "material-1", "name", "birch ply 18")
    enter(stock.materials, "material-1", "nominal_mm", "1.8 cm")
    (material,) = desk.session.project.stock.materials
    assert (material.name, material.nominal_mm) == ("birch ply 18", 18.0)
    assert shown(stock.materials, "material-1", "density_kg_m3") == "680 kg/m³ (usual)"
    enter(stock.materials, "material-1", "density_kg_m3", "650")
    assert shown(stock.materials, "material-1", "density_kg_m3") == "650 kg/m³"
    QTest.mouseClick(stock.sheets.add, Qt.MouseButton.LeftButton)
    enter(stock.sheets, "sheet-1", "length_mm", "2440")
    enter(stock.sheets, "sheet-1", "price", "64,90 EUR")
    assert desk.session.project.stock.sheets[0].price == Decimal("64.9")
    assert shown(stock.sheets, "sheet-1", "price").replace("\u00a0", " ") == "64.90 EUR"
    stock.materials.view.select_ids(("material-1",))
    stock.materials.remove_selected()
    assert "Remove them or give them another material" in stock.materials.messages.message
    stock.sheets.view.select_ids(("sheet-1",))
    stock.sheets.view.setFocus()
    QTest.keyClick(stock.sheets.view, Qt.Key.Key_Delete)
    stock.materials.remove_selected()
    assert desk.session.project.stock.materials == ()


def test_a_wrong_price_stays_in_its_editor_with_the_reason(stock: StockPanel, desk: Desk) -> None:
    stock.materials.add_needed()
    sheet = desk.session.project.stock.sheets[0]
    enter(stock.sheets, sheet.id, "price", "cheap")
    assert "not a price" in stock.sheets.messages.message
    give_up(stock.sheets)
    enter(stock.sheets, sheet.id, "price", "12 USD")
    assert "reckons in EUR" in stock.sheets.messages.message
    give_up(stock.sheets)
    enter(stock.sheets, sheet.id, "quantity", "-2")
    assert "whole number" in stock.sheets.messages.message
    give_up(stock.sheets)
    assert desk.session.project.stock.sheets[0] == sheet


def test_readings_make_a_batch_whose_mean_is_in_force(stock: StockPanel, desk: Desk) -> None:
    assert not stock.batches.readings.isEnabled()
    stock.materials.add_needed()
    upright = desk.session.project.stock.material_of(BoardRole.UPRIGHT)
    assert upright is not None
    stock.materials.view.setFocus()
    QTest.keyClick(stock.materials.view, Qt.Key.Key_Home)
    stock.materials.view.selectRow(stock.materials.table.row_of(upright.id))
    QTest.keyClicks(stock.batches.readings, "17.4; 17.6; 17.4")
    assert stock.batches.figures.text() == "Mean 17.47 mm, least 17.4 mm, most 17.6 mm."
    QTest.keyClick(stock.batches.readings, Qt.Key.Key_Return)
    assert stock.batches.readings.text() == ""
    assert desk.session.project.boards.upright_mm == 17.47
    (key,) = stock.batches.table.ids
    assert shown(stock.batches, key, "is_used") == "in use"
    remark = desk.panels.form.field("construction.boards.upright_mm").remark
    assert remark.text().startswith("In force: 17.47 mm, measured (“Batch 1” of ")
    line = stock.roles.table.record(BoardRole.UPRIGHT.value)
    assert (line.form_mm, line.in_force_mm) == (18.0, 17.47)
    enter(stock.batches, key, "readings_mm", "17; 17; 17.3")
    assert desk.session.project.boards.upright_mm == 17.1
    view = stock.batches.view
    view.setCurrentIndex(view.rows.index(0, view.rows.column_of("is_used")))
    view.edit(view.currentIndex())
    combo = view.indexWidget(view.currentIndex())
    assert isinstance(combo, QComboBox)
    combo.setCurrentIndex(1)
    combo.activated.emit(1)
    assert desk.session.project.boards.upright_mm == 18.0
    assert remark.text() == ""


def test_readings_that_cannot_be_are_refused_with_the_reason(stock: StockPanel, desk: Desk) -> None:
    stock.materials.add_needed()
    before = desk.session.project
    for text, words in (("", "Takes one or several"), ("thick", "not a length"), ("400", "1 to 100 mm")):
        stock.batches.readings.setText(text)
        QTest.mouseClick(stock.batches.add, Qt.MouseButton.LeftButton)
        assert words in stock.batches.messages.message
        assert stock.batches.figures.isHidden()
    assert desk.session.project is before
    stock.batches.readings.setText("18; 12")
    QTest.mouseClick(stock.batches.add, Qt.MouseButton.LeftButton)
    assert "differ by 6 mm: is one of them mistyped?" in stock.batches.messages.message
    assert desk.session.project is not before, "it is taken, and one undo takes it back"


def test_a_board_is_given_another_material_and_left_to_a_usual_one(stock: StockPanel, desk: Desk) -> None:
    stock.materials.add_material()
    give_up(stock.materials)
    view = stock.roles.view
    row, column = view.rows.row_of("top"), view.rows.column_of("material_id")
    assert view.rows.index(row, column).data() == "a usual one"
    for wanted, material_id in (("New material", "material-1"), ("a usual one", None)):
        view.setCurrentIndex(view.rows.index(row, column))
        view.edit(view.currentIndex())
        combo = view.indexWidget(view.currentIndex())
        assert isinstance(combo, QComboBox)
        place = combo.findText(wanted)
        assert combo.currentIndex() == 1 - place
        combo.setCurrentIndex(place)
        combo.activated.emit(place)
        material = desk.session.project.stock.material_of(BoardRole.TOP)
        assert (material.id if material else None) == material_id


def test_offcuts_and_bars_are_added_copied_and_removed_with_one_undo_each(stock: StockPanel, desk: Desk) -> None:
    stock.sheets.add_sheet(True)
    assert "add the material first" in stock.sheets.messages.message
    stock.materials.add_needed()
    count = len(desk.session.project.stock.sheets)
    QTest.mouseClick(stock.sheets.add_owned, Qt.MouseButton.LeftButton)
    give_up(stock.sheets)
    offcut = desk.session.project.stock.sheets[-1]
    assert (offcut.is_owned, offcut.is_trimmed, offcut.quantity) == (True, False, 1)
    stock.sheets.view.selectAll()
    QTest.mouseClick(stock.sheets.duplicate, Qt.MouseButton.LeftButton)
    assert len(desk.session.project.stock.sheets) == 2 * (count + 1)
    desk.session.undo()
    assert len(desk.session.project.stock.sheets) == count + 1
    QTest.mouseClick(stock.bars.add, Qt.MouseButton.LeftButton)
    enter(stock.bars, "bar-1", "length_mm", "50 m")
    assert desk.session.project.stock.bars[0].length_mm == 50_000
    assert shown(stock.bars, "bar-1", "width_mm") == "serves every board"
    enter(stock.bars, "bar-1", "width_mm", "23")
    assert desk.session.project.stock.bars[0].width_mm == 23
    enter(stock.bars, "bar-1", "width_mm", "")
    assert desk.session.project.stock.bars[0].width_mm is None
    assert shown(stock.bars, "bar-1", "width_mm") == "serves every board"
    enter(stock.bars, "bar-1", "width_mm", "23 mm")
    assert desk.session.project.stock.bars[0].width_mm == 23
    enter(stock.bars, "bar-1", "width_mm", "")
    assert desk.session.project.stock.bars[0].width_mm is None
    stock.bars.view.selectAll()
    stock.bars.duplicate_selected()
    assert [bar.id for bar in desk.session.project.stock.bars] == ["bar-1", "bar-2"]
    stock.bars.view.selectAll()
    stock.bars.remove_selected()
    assert desk.session.project.stock.bars == ()
    desk.session.undo()
    assert len(desk.session.project.stock.bars) == 2


def test_rules_and_prices_are_fields_with_their_reasons_beside_them(stock: StockPanel, desk: Desk) -> None:
    kerf = stock.rules.field("stock.rules.kerf_mm")
    assert isinstance(kerf, TypedField)
    kerf.edit.setFocus()
    kerf.edit.selectAll()
    QTest.keyClicks(kerf.edit, "2.8")
    QTest.keyClick(kerf.edit, Qt.Key.Key_Return)
    assert desk.session.project.stock.rules.kerf_mm == 2.8
    kerf.edit.selectAll()
    QTest.keyClicks(kerf.edit, "50")
    QTest.keyClick(kerf.edit, Qt.Key.Key_Return)
    assert "at most 20" in kerf.refusal.text()
    assert "Still 2.8 mm" in kerf.refusal.text()
    stages = stock.rules.field("stock.rules.stages")
    assert isinstance(stages, ChoiceField)
    assert stages.combo.currentText() == "as often as it serves"
    stages.combo.activated.emit(1)
    assert desk.session.project.stock.rules.stages == 2
    desk.session.undo()
    assert stages.combo.currentText() == "as often as it serves"
    vat = stock.prices.field("pricing.vat_percent")
    assert isinstance(vat, TypedField)
    vat.edit.setFocus()
    vat.edit.selectAll()
    QTest.keyClicks(vat.edit, "19 %")
    QTest.keyClick(vat.edit, Qt.Key.Key_Return)
    assert desk.session.project.pricing.vat_percent == Decimal(19)


def test_prices_follow_the_currency_and_lengths_the_unit(stock: StockPanel, desk: Desk) -> None:
    stock.materials.add_needed()
    sheet = desk.session.project.stock.sheets[0]
    enter(stock.sheets, sheet.id, "price", "70")
    desk.session.do(SetField("pricing.currency", "CHF"))
    assert shown(stock.sheets, sheet.id, "price").endswith("CHF")
    desk.session.do(SetField("unit", LengthUnit.INCH))
    assert "mm" not in shown(stock.sheets, sheet.id, "length_mm").partition("(")[0]


def test_a_tab_that_nobody_sees_is_brought_up_to_date_when_it_is_opened(desk: Desk) -> None:
    stock = desk.panels.stock
    stock.materials.add_needed()
    assert stock.materials.table.ids == ()
    desk.panels.entries.setCurrentWidget(stock)
    assert len(stock.materials.table.ids) == len(desk.session.project.stock.materials) > 0
