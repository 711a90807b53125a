"""The tab “Hardware”: what is set by hand for a line, lines of one's own, the catalogue, its import, missing prices."""

from decimal import Decimal
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest
from PySide6.QtWidgets import QComboBox, QLineEdit

from baywright.app.commands import SetField
from baywright.app.edits.hardware import AddCatalogueItems
from baywright.gui.hardware.line import order_lines, total_words
from baywright.gui.hardware.order import OrderView
from baywright.gui.hardware.panel import HardwarePanel
from baywright.gui.importing.dialog import ImportDialog
from baywright.gui.tables.editing import EditTableView
from baywright.model.catalogue import CatalogueItem, HardwareKind
from baywright.model.making import HardwareItem, Manufacture
from baywright.model.project import Project
from tests.gui.desk import Desk, answer_dialog


@pytest.fixture
def hardware(desk: Desk) -> HardwarePanel:
    """The panel of a planned workshop, in front."""
    panel = desk.panels.hardware
    for table in (panel.order.table, panel.catalogue.table):
        QAbstractItemModelTester(table, QAbstractItemModelTester.FailureReportingMode.Fatal, table)
    desk.actions.plan.trigger()
    desk.panels.lists.setCurrentWidget(panel)
    return panel


def line_of(panel: HardwarePanel, kind: HardwareKind) -> str:
    table = panel.order.table
    return next(key for key in table.ids if table.record(key).item.kind is kind)


def open_cell(view: EditTableView, identifier: str, field: str) -> QLineEdit | QComboBox:
    view.setCurrentIndex(view.rows.index(view.rows.row_of(identifier), view.rows.column_of(field)))
    view.edit(view.currentIndex())
    editor = view.indexWidget(view.currentIndex())
    assert isinstance(editor, QLineEdit | QComboBox)
    return editor


def enter(view: EditTableView, identifier: str, field: str, text: str) -> None:
    editor = open_cell(view, identifier, field)
    assert isinstance(editor, QLineEdit)
    editor.selectAll()
    QTest.keyClick(editor, Qt.Key.Key_Delete)
    QTest.keyClicks(editor, text)
    QTest.keyClick(editor, Qt.Key.Key_Return)


def choose(view: EditTableView, identifier: str, field: str, words: str) -> list[str]:
    """Choose from a list; what was on it is returned."""
    editor = open_cell(view, identifier, field)
    assert isinstance(editor, QComboBox)
    listed = [editor.itemText(number) for number in range(editor.count())]
    editor.setCurrentIndex(listed.index(words))
    editor.activated.emit(editor.currentIndex())
    return listed


def item(order: OrderView, key: str) -> HardwareItem:
    return order.table.record(key).item


def test_the_order_is_listed_and_missing_prices_are_told(hardware: HardwarePanel, desk: Desk) -> None:
    made = desk.session.manufacture
    assert made is not None
    assert hardware.total == len(made.hardware)
    assert f"{len(made.hardware)} prices missing, not in the sum" in hardware.order.total.text()
    assert desk.panels.lists.tabText(desk.panels.lists.indexOf(hardware)) == f"Hardware ({len(made.hardware)})"


def test_spare_price_and_supplier_are_set_by_hand_and_worked_out_again(hardware: HardwarePanel, desk: Desk) -> None:
    order, key = hardware.order, line_of(hardware, HardwareKind.RUNNER)
    before = item(order, key)
    enter(order.view, key, "spare", "2")
    enter(order.view, key, "price", "8,50")
    enter(order.view, key, "supplier", "Ironmonger")
    after = item(order, key)
    assert (after.allowance, after.price, after.supplier) == (2, Decimal("8.5"), "Ironmonger")
    assert after.cost == after.packs * Decimal("8.5")
    assert order.table.record(key).by_hand == ("spare", "price", "supplier")
    assert "spare, price, supplier" in str(order.table.index(order.table.row_of(key), 15).data())
    order.view.select_ids((key,))
    order._enable()
    QTest.mouseClick(order.again, Qt.MouseButton.LeftButton)
    assert item(order, key) == before
    assert not order.again.isEnabled()
    desk.session.undo()
    assert item(order, key).supplier == "Ironmonger"


def test_emptying_a_cell_leaves_it_to_the_program_again(hardware: HardwarePanel, desk: Desk) -> None:
    order, key = hardware.order, line_of(hardware, HardwareKind.RUNNER)
    before = item(order, key)
    enter(order.view, key, "pack_size", "10")
    assert item(order, key).pack_size == 10
    enter(order.view, key, "pack_size", "")
    assert item(order, key) == before
    assert desk.session.project.hardware.adjustments == ()


def test_a_wrong_number_stays_in_its_editor_with_the_reason(hardware: HardwarePanel, desk: Desk) -> None:
    order, key = hardware.order, line_of(hardware, HardwareKind.RUNNER)
    before = desk.session.project
    enter(order.view, key, "pack_size", "0")
    assert "must be over 0" in order.messages.message
    editor = order.view.indexWidget(order.view.currentIndex())
    assert isinstance(editor, QLineEdit)
    QTest.keyClick(editor, Qt.Key.Key_Escape)
    assert order.messages.isHidden()
    assert desk.session.project is before


def test_what_is_at_hand_is_not_bought_and_can_be_put_back(hardware: HardwarePanel) -> None:
    order, key = hardware.order, line_of(hardware, HardwareKind.RUNNER)
    assert choose(order.view, key, "is_left_out", "at hand") == ["buy", "at hand"]
    assert item(order, key).packs == 0
    cost = order.table.index(order.table.row_of(key), 9)
    assert cost.data() == "at hand"
    choose(order.view, key, "is_left_out", "buy")
    assert item(order, key).packs > 0


def test_lines_of_ones_own_are_added_changed_and_removed(hardware: HardwarePanel, desk: Desk) -> None:
    order = hardware.order
    QTest.mouseClick(order.add, Qt.MouseButton.LeftButton)
    editor = order.view.indexWidget(order.view.currentIndex())
    assert isinstance(editor, QLineEdit)
    editor.selectAll()
    QTest.keyClicks(editor, "Handles")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    key = next(key for key in order.table.ids if item(order, key).is_extra)
    enter(order.view, key, "needed", "25")
    enter(order.view, key, "price", "3")
    assert (item(order, key).name, item(order, key).needed, item(order, key).cost) == ("Handles", 25, Decimal(75))
    spare = order.table.index(order.table.row_of(key), order.table.column_of("spare"))
    name = order.table.index(0, order.table.column_of("name"))
    assert not spare.flags() & Qt.ItemFlag.ItemIsEditable
    assert not name.flags() & Qt.ItemFlag.ItemIsEditable
    order.view.select_ids((order.table.id_at(0),))
    QTest.keyClick(order.view, Qt.Key.Key_Delete)
    assert "at hand" in order.messages.message
    order.view.select_ids((key,))
    QTest.keyClick(order.view, Qt.Key.Key_Delete)
    assert desk.session.project.hardware.extras == ()


def test_articles_are_entered_and_one_is_chosen_for_a_line(hardware: HardwarePanel, desk: Desk) -> None:
    catalogue, order = hardware.catalogue, hardware.order
    hardware.tabs.setCurrentIndex(1)
    QTest.mouseClick(catalogue.add, Qt.MouseButton.LeftButton)
    editor = catalogue.view.indexWidget(catalogue.view.currentIndex())
    assert isinstance(editor, QLineEdit)
    editor.selectAll()
    QTest.keyClicks(editor, "Runner of steel")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    choose(catalogue.view, "article-1", "kind", "runner")
    enter(catalogue.view, "article-1", "price", "9.90")
    enter(catalogue.view, "article-1", "load_class_kg", "35 kg")
    catalogue.view.select_ids(("article-1",))
    catalogue.duplicate_selected()
    assert [each.id for each in desk.session.project.hardware.catalogue] == ["article-1", "article-2"]
    assert desk.session.project.hardware.catalogue[0].load_class_kg == 35
    catalogue.view.select_ids(("article-2",))
    catalogue.remove_selected()
    assert hardware.tabs.tabText(1) == "Catalo&gue (1)"
    hardware.tabs.setCurrentIndex(0)
    key = line_of(hardware, HardwareKind.RUNNER)
    listed = choose(order.view, key, "item_id", "Runner of steel")
    assert listed == ["the one that serves best", "Runner of steel"]
    assert item(order, key).item_id == "article-1"
    choose(order.view, key, "item_id", "the one that serves best")
    assert desk.session.project.hardware.adjustments == ()


def test_a_remark_says_why_no_article_serves(hardware: HardwarePanel, desk: Desk) -> None:
    short = CatalogueItem(
        id="short", kind=HardwareKind.RUNNER, name="Short runner", length_mm=100, thickness_mm=12.7, load_class_kg=35
    )
    desk.session.do(AddCatalogueItems((short,)))
    number = item(hardware.order, line_of(hardware, HardwareKind.RUNNER)).number
    assert hardware.order.remarks.message.startswith(f"{number}: ")
    hardware.order.remarks.clear()
    desk.session.do(SetField("name", "Another name"))
    assert hardware.order.remarks.isHidden(), "what was closed is not told again while it is the same"


def test_a_catalogue_is_imported_after_a_preview_and_taken_back_by_one_undo(
    hardware: HardwarePanel, desk: Desk, tmp_path: Path
) -> None:
    path = tmp_path / "shop.csv"
    path.write_text(
        "Kind;Name;Length;Pack;Price\nwood screw;Screw 4 x 40;40;200;7,90\nhammer;Hammer;;1;12\n", encoding="utf-8"
    )
    desk.answers.files_to_open = [path]

    def take(dialog: ImportDialog) -> None:
        assert dialog.windowTitle() == "Import hardware catalogue"
        assert dialog.tabs.tabText(0) == "1 item to take over"
        assert "no kind of hardware" in str(dialog.refused.index(0, 4).data())
        dialog.take.click()

    answer_dialog(ImportDialog, take)
    hardware.import_wanted.emit()
    (screw,) = desk.session.project.hardware.catalogue
    assert (screw.kind, screw.pack_size, screw.price) == (HardwareKind.WOOD_SCREW, 200, Decimal("7.9"))
    assert desk.message.startswith("1 item taken over. Undo takes them out again. 1 row of the table was left out.")
    desk.session.undo()
    assert desk.session.project.hardware.catalogue == ()


def test_two_packs_for_one_need_are_two_lines_and_sums_say_what_they_lack() -> None:
    runner = HardwareItem(
        number="H1", name="Runner", specification="", needed=2, allowance=0, unit="pairs", pack_size=1, packs=2,
        price=Decimal(5),
    )  # fmt: skip
    made = Manufacture(parts=(), hardware=(runner, runner.replace(price=None)), schedule=())
    assert [key for key, _ in order_lines(made, Project())] == ["H1", "H1#2"]
    words = total_words(made, Project()).replace("\u00a0", " ")
    assert words == "Hardware: 10.00 EUR. ⚠ 1 price missing, not in the sum: Runner."
    assert total_words(None, Project()) == ""
