"""The table twin tells the same as the drawing and is selected in step with it."""

import pytest
from PySide6.QtCore import QItemSelectionModel, Qt
from PySide6.QtTest import QAbstractItemModelTester
from pytestqt.qtbot import QtBot

from baywright.app.commands import SetField
from baywright.app.edits.arrangement import ClearArrangement, PlaceBox, SetLock
from baywright.app.edits.built import MarkBuilt
from baywright.app.edits.inventory import EditBox, EditBoxSize
from baywright.app.session import Session
from baywright.gui.elevation.twin import HEADINGS, DrawerTableView, couple
from baywright.gui.elevation.view import ElevationView
from baywright.model.arrangement import Lock
from baywright.model.inventory import BoxStatus


@pytest.fixture
def table(qtbot: QtBot, session: Session) -> DrawerTableView:
    table = DrawerTableView(session)
    qtbot.addWidget(table)
    return table


def _row(table: DrawerTableView, row: int) -> list[str]:
    return [str(table.table.index(row, column).data()) for column in range(len(HEADINGS))]


def test_it_tells_every_drawer_bay_by_bay_from_below(session: Session, table: DrawerTableView) -> None:
    assert table.table.rowCount() == 5
    assert [table.table.headerData(i, Qt.Orientation.Horizontal) for i in range(9)] == list(HEADINGS)
    assert _row(table, 0) == ["1", "1", "Brake blocks", "1", "100 mm", "5 rows = 160 mm", "3.5 kg", "", ""]
    assert _row(table, 3)[:4] == ["2", "2", "Pedals", "9"]
    assert _row(table, 3)[6] == "not weighed"


def test_it_tells_how_boxes_stand_that_share_a_drawer_or_are_wished(session: Session, table: DrawerTableView) -> None:
    session.do(EditBoxSize("low", "most_behind", 2))
    session.do(SetField("space.depth_mm", 900.0))
    session.do(PlaceBox("b", 0, 0))
    session.do(EditBox("b", "status", BoxStatus.WISHED))
    session.do(MarkBuilt((0,)))
    told = _row(table, 1)[8]
    assert "Place 2 of 2 from the front" in told
    assert "Only wished for" in told
    assert "stands as built" in told
    assert [_row(table, row)[1] for row in (0, 1)] == ["1", "1"], "one drawer"


def test_its_heights_are_those_of_the_schedule(session: Session, table: DrawerTableView) -> None:
    manufacture = session.manufacture
    assert manufacture is not None
    shown = {table.table.box_id(row): _row(table, row)[4] for row in range(5)}
    assert shown == {line.box_id: f"{line.lower_edge_mm:g} mm" for line in manufacture.schedule}


def test_it_follows_the_document(session: Session, table: DrawerTableView) -> None:
    session.do(PlaceBox("a", 2, 12))
    session.do(SetLock(("a",), Lock.BAY))
    row = table.table.row_of("a")
    assert row == 4
    assert _row(table, row)[3] == "13"
    assert _row(table, row)[7] == "locked in bay"
    session.do(SetField("unit", "in"))
    assert _row(table, row)[4].startswith('19 1/16"'), "484 mm over the floor"
    session.do(ClearArrangement())
    assert table.table.row_of("b") is None
    assert table.table.rowCount() == 1


def test_selection_goes_both_ways_once(view: ElevationView, table: DrawerTableView, session: Session) -> None:
    couple(view, table)
    told: list[object] = []
    view.box_selected.connect(told.append)
    table.box_selected.connect(told.append)
    table.selectRow(2)
    assert view.selected_ids == ("c",)
    assert told == ["c"]
    index = table.table.index(0, 0)
    flags = QItemSelectionModel.SelectionFlag.Select | QItemSelectionModel.SelectionFlag.Rows
    table.selectionModel().select(index, flags)
    assert list(view.selected_ids) == ["a", "c"]
    view.canvas.select(["e"])
    assert table.selected_ids == ("e",)
    assert told == ["c", ["a", "c"], "e"]
    assert not session.can_undo


def test_selecting_from_outside_tells_nothing_back(table: DrawerTableView) -> None:
    told: list[object] = []
    table.box_selected.connect(told.append)
    table.select_boxes(["f", "b", "a"])
    assert table.selected_ids == ("a", "b"), "f has no drawer"
    assert told == []


def test_the_selection_lives_through_an_edit(table: DrawerTableView, session: Session) -> None:
    table.selectRow(0)
    session.do(PlaceBox("a", 2, 12))
    assert table.selected_ids == ("a",)


def test_qts_own_tester_finds_no_fault(session: Session, table: DrawerTableView) -> None:
    tester = QAbstractItemModelTester(table.table, QAbstractItemModelTester.FailureReportingMode.Fatal)
    session.do(PlaceBox("a", 2, 12))
    session.undo()
    assert tester.model() is table.table
