"""From the plan to timber yard, hardware shop and saw in the real window: stock, measured boards, cuts, prices."""

from decimal import Decimal
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit

from baywright.app.files import open_project
from baywright.gui.tables.editing import EditTableView
from baywright.model.stock import BoardRole
from tests.gui.desk import Desk, OpenDesk


def enter(view: EditTableView, identifier: str, field: str, text: str) -> None:
    """Type a text into a cell and confirm it."""
    view.setFocus()
    view.setCurrentIndex(view.rows.index(view.rows.row_of(identifier), view.rows.column_of(field)))
    view.edit(view.currentIndex())
    editor = view.indexWidget(view.currentIndex())
    assert isinstance(editor, QLineEdit)
    editor.selectAll()
    QTest.keyClick(editor, Qt.Key.Key_Delete)
    QTest.keyClicks(editor, text)
    QTest.keyClick(editor, Qt.Key.Key_Return)


def fill_the_stock(desk: Desk) -> None:
    """Everything that the run needs, each sheet with a price."""
    stock = desk.panels.stock
    desk.panels.entries.setCurrentWidget(stock)
    QTest.mouseClick(stock.materials.needed, Qt.MouseButton.LeftButton)
    for key in stock.sheets.table.ids:
        enter(stock.sheets.view, key, "price", "80")
    assert all(sheet.price == 80 for sheet in desk.session.project.stock.sheets)


def measure_the_uprights(desk: Desk) -> None:
    """The boards came thinner than their name; every part follows."""
    stock, before = desk.panels.stock, desk.session.manufacture
    upright = desk.session.project.stock.material_of(BoardRole.UPRIGHT)
    assert upright is not None
    assert before is not None
    stock.batches.choose_material(upright.id)
    QTest.keyClicks(stock.batches.readings, "17.5; 17.7; 17.6")
    QTest.keyClick(stock.batches.readings, Qt.Key.Key_Return)
    after = desk.session.manufacture
    assert after is not None
    thick = {part.thickness_mm for part in after.parts if part.number.startswith("U")}
    assert thick == {17.6}
    assert sum(part.mass_kg or 0 for part in after.parts) < sum(part.mass_kg or 0 for part in before.parts)


def look_at_a_part(desk: Desk) -> None:
    """A drawer side in the list, in the picture, on its sheet."""
    desk.panels.lists.setCurrentWidget(desk.panels.parts)
    desk.panels.part_selection.select(("D1",))
    assert desk.panels.parts.drawing.bench is not None
    assert desk.panels.parts.work.total > 0
    assert [part.number for part in desk.panels.elevation.canvas.parts_shown] == ["D1"]


def cut_it(desk: Desk) -> Decimal:
    """Every cut of a sheet in turn, then the price of everything; the sheets' own is told."""
    cutting = desk.panels.cutting
    desk.panels.lists.setCurrentWidget(cutting)
    plan = desk.session.cutting.plan
    assert plan is not None
    assert plan.unplaced == ()
    assert cutting.drawing.line is not None
    assert "D1" in cutting.drawing.line.part_numbers
    gives: set[str] = set()
    for _ in range(cutting.cuts.total):
        QTest.mouseClick(cutting.steps.forth, Qt.MouseButton.LeftButton)
        assert cutting.drawing.cut is not None
        gives |= set(cutting.drawing.cut.gives)
    assert cutting.drawing.line.part_numbers <= {name.partition(" ")[0] for name in gives}
    cutting.tabs.setCurrentWidget(cutting.cost)
    assert "missing" in cutting.cost.words.text(), "no hardware has a price yet"
    return Decimal(80 * plan.sheets_bought)


def order_hardware(desk: Desk) -> None:
    """One price, one line of one's own."""
    order = desk.panels.hardware.order
    desk.panels.lists.setCurrentWidget(desk.panels.hardware)
    first = order.table.id_at(0)
    enter(order.view, first, "price", "12.50")
    item = order.table.record(first).item
    assert item.cost == Decimal("12.5") * item.packs
    QTest.mouseClick(order.add, Qt.MouseButton.LeftButton)
    editor = order.view.indexWidget(order.view.currentIndex())
    assert isinstance(editor, QLineEdit)
    editor.selectAll()
    QTest.keyClicks(editor, "Label holders")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert [extra.name for extra in desk.session.project.hardware.extras] == ["Label holders"]


def test_from_the_plan_to_the_saw(open_desk: OpenDesk, tmp_path: Path) -> None:
    desk = open_desk()
    desk.actions.plan.trigger()
    fill_the_stock(desk)
    measure_the_uprights(desk)
    look_at_a_part(desk)
    sheets = cut_it(desk)
    order_hardware(desk)
    cost = desk.session.cutting.cost
    assert cost is not None
    assert sum(line.cost for line in cost.lines if line.group.value == "sheets" and line.cost is not None) == sheets
    desk.panels.lists.setCurrentWidget(desk.panels.cutting)
    before = desk.session.project
    desk.panels.cutting.keep_all.trigger()
    owned = [sheet for sheet in desk.session.project.stock.sheets if sheet.is_owned]
    assert owned
    path = tmp_path / "shed.baywright"
    desk.answers.files_to_write = [path]
    desk.actions.save_as.trigger()
    assert open_project(path) == desk.session.project
    desk.session.undo()
    assert desk.session.project == before
