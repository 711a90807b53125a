"""The box table on the session's document: edits become commands, refused ones leave everything as it was."""

import pytest
from PySide6.QtCore import QModelIndex, Qt
from PySide6.QtTest import QAbstractItemModelTester
from pytestqt.qtbot import QtBot

from baywright.app.edits.arrangement import PlaceBox
from baywright.app.edits.inventory import DuplicateBoxes, RemoveBoxes
from baywright.app.session import Session
from baywright.gui.inventory.model import BoxTable
from baywright.model.inventory import Use


@pytest.fixture
def table(qtbot: QtBot, session: Session) -> BoxTable:
    made = BoxTable(session)
    QAbstractItemModelTester(made, QAbstractItemModelTester.FailureReportingMode.Fatal, made)
    session.subscribe(lambda _notice: made.update_from_document())
    return made


def cell(table: BoxTable, box_id: str, title: str) -> QModelIndex:
    titles = [column.title for column in table.columns]
    return table.index(table.row_of(box_id), titles.index(title))


def text(table: BoxTable, box_id: str, title: str) -> object:
    return cell(table, box_id, title).data()


def test_it_shows_what_the_document_holds(table: BoxTable) -> None:
    assert table.rowCount() == 6
    assert [text(table, "box-1", title) for title in ("Box", "Size", "Mass, kg", "Place", "Contents", "Group")] == [
        "Brake blocks",
        "Low",
        "3.5",
        "no place",
        "40 pairs",
        "Brakes",
    ]
    assert text(table, "box-4", "Mass, kg") == ""


def test_an_edit_is_one_step_that_can_be_undone(table: BoxTable, session: Session) -> None:
    assert table.setData(cell(table, "box-1", "Mass, kg"), 5.25)
    assert session.project.box("box-1").loaded_mass_kg == 5.25
    assert text(table, "box-1", "Mass, kg") == "5.25"
    session.undo()
    assert text(table, "box-1", "Mass, kg") == "3.5"
    assert not session.can_undo


def test_the_same_value_again_is_no_edit(table: BoxTable, session: Session) -> None:
    assert table.setData(cell(table, "box-1", "Box"), "Brake blocks")
    assert not session.can_undo


@pytest.mark.parametrize(
    ("title", "value", "words"),
    [("Box", "", "must not be empty"), ("Mass, kg", -1.0, "at least 0"), ("Mass, kg", 1e6, "at most 1,000")],
)
def test_a_refused_edit_tells_why_and_keeps_the_old_value(
    table: BoxTable, session: Session, title: str, value: object, words: str
) -> None:
    before, refusals = session.project, list[str]()
    table.refused.connect(lambda _box, _field, message: refusals.append(message))
    assert not table.setData(cell(table, "box-1", title), value)
    assert words in refusals[0]
    assert session.project is before


def test_size_and_use_are_edited_by_their_values(table: BoxTable, session: Session) -> None:
    assert table.setData(cell(table, "box-1", "Size"), "high")
    assert table.setData(cell(table, "box-1", "Taken out"), Use.DAILY)
    assert text(table, "box-1", "Size") == "High"
    assert text(table, "box-1", "Taken out") == "daily"


def test_places_are_shown_as_people_count_and_cannot_be_typed(table: BoxTable, session: Session) -> None:
    session.do(PlaceBox("box-3", 1, 4))
    assert text(table, "box-3", "Place") == "bay 2, row 5"
    assert not cell(table, "box-3", "Place").flags() & Qt.ItemFlag.ItemIsEditable
    assert not table.setData(cell(table, "box-3", "Place"), "bay 1")


def test_masses_sort_as_numbers_uses_by_how_often(table: BoxTable) -> None:
    titles = [column.title for column in table.columns]
    table.sort(titles.index("Mass, kg"), Qt.SortOrder.AscendingOrder)
    assert list(table.ids) == ["box-1", "box-5", "box-6", "box-3", "box-2", "box-4"]
    table.sort(titles.index("Taken out"), Qt.SortOrder.AscendingOrder)
    assert table.ids[0] == "box-2"
    assert table.ids[-1] == "box-5"


def test_rows_come_and_go_with_the_document(table: BoxTable, session: Session) -> None:
    session.do(RemoveBoxes(("box-2", "box-5")))
    assert list(table.ids) == ["box-1", "box-3", "box-4", "box-6"]
    session.undo()
    assert list(table.ids) == [f"box-{n}" for n in range(1, 7)]
    session.do(DuplicateBoxes(("box-1",), 2))
    assert table.rowCount() == 8
    assert list(table.ids)[:4] == ["box-1", "box-7", "box-8", "box-2"]
