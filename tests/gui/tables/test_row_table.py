"""The table over records with ids: sorting and filtering on raw values, and changes that keep what is selected."""

import random
from dataclasses import dataclass

import pytest
from PySide6.QtCore import QPersistentModelIndex, Qt
from PySide6.QtTest import QAbstractItemModelTester
from pytestqt.qtbot import QtBot

from baywright.gui.tables.column import Column
from baywright.gui.tables.model import RowTable
from baywright.gui.tables.view import TableView

FATAL = QAbstractItemModelTester.FailureReportingMode.Fatal


@dataclass(frozen=True)
class Tin:
    name: str
    mass: float | None


def make_table() -> RowTable[Tin]:
    return RowTable(
        (
            Column("Name", lambda tin: tin.name, lambda tin: tin.name, field="name"),
            Column(
                "Mass", lambda tin: "" if tin.mass is None else f"{tin.mass:g}", lambda tin: tin.mass, is_number=True
            ),
        )
    )


TINS = [("a", Tin("nails", 9.0)), ("b", Tin("Screws", 10.0)), ("c", Tin("glue", None)), ("d", Tin("bolts", 2.5))]


@pytest.fixture
def table(qtbot: QtBot) -> RowTable[Tin]:
    made = make_table()
    QAbstractItemModelTester(made, FATAL, made)
    made.show_records(TINS)
    return made


def test_numbers_sort_as_numbers_and_unknown_ones_come_last(table: RowTable[Tin]) -> None:
    table.sort(1, Qt.SortOrder.AscendingOrder)
    assert list(table.ids) == ["d", "a", "b", "c"]
    table.sort(1, Qt.SortOrder.DescendingOrder)
    assert list(table.ids) == ["b", "a", "d", "c"]


def test_text_sorts_without_regard_to_case_and_back_to_the_document_order(table: RowTable[Tin]) -> None:
    table.sort(0, Qt.SortOrder.AscendingOrder)
    assert list(table.ids) == ["d", "c", "a", "b"]
    table.sort(-1)
    assert list(table.ids) == ["a", "b", "c", "d"]


def test_filter_wants_every_word_in_some_column(table: RowTable[Tin]) -> None:
    table.set_filter("s 1")
    assert list(table.ids) == ["b"]
    table.set_filter("BOLT")
    assert list(table.ids) == ["d"]
    table.set_filter("")
    assert list(table.ids) == ["a", "b", "c", "d"]


def test_editing_a_value_moves_no_row_until_the_header_is_clicked(table: RowTable[Tin]) -> None:
    table.sort(1, Qt.SortOrder.AscendingOrder)
    table.show_records([("a", Tin("nails", 99.0)), *TINS[1:]])
    assert list(table.ids) == ["d", "a", "b", "c"]
    table.sort(1, Qt.SortOrder.AscendingOrder)
    assert list(table.ids) == ["d", "b", "a", "c"]


def test_what_is_added_is_seen_whatever_the_filter(table: RowTable[Tin]) -> None:
    table.set_filter("nails")
    table.show_records([*TINS, ("e", Tin("washers", 1.0))])
    assert list(table.ids) == ["a", "e"]
    table.set_filter("nails")
    assert list(table.ids) == ["a"]


def test_an_edited_record_is_not_lost_from_sight_and_is_found_by_its_new_words(table: RowTable[Tin]) -> None:
    table.set_filter("nails")
    table.show_records([("a", Tin("tacks", 9.0)), *TINS[1:]])
    assert list(table.ids) == ["a"]
    table.set_filter("tacks")
    assert list(table.ids) == ["a"]


def test_any_change_keeps_persistent_indexes_at_their_records(table: RowTable[Tin]) -> None:
    chance = random.Random(7)
    tins = dict(TINS)
    for step in range(200):
        kept = {key: QPersistentModelIndex(table.index(table.row_of(key), 0)) for key in table.ids}
        keys = list(tins)
        for key in chance.sample(keys, min(len(keys), chance.randrange(3))):
            del tins[key]
        for number in range(chance.randrange(3)):
            tins[f"t{step}-{number}"] = Tin(chance.choice("abcdef"), chance.choice([None, 1.0, 2.0, 3.0]))
        shuffled = list(tins.items())
        if chance.random() < 0.3:
            chance.shuffle(shuffled)
        tins = dict(shuffled)
        table.show_records(shuffled)
        if chance.random() < 0.3:
            table.sort(chance.choice([-1, 0, 1]))
        if chance.random() < 0.2:
            table.set_filter(chance.choice(["", "", "a", "b"]))
        for key, index in kept.items():
            assert not index.isValid() or table.id_at(index.row()) == key
        for key in table.ids:
            assert table.record(key) == tins[key]
        if not table._words:
            assert set(table.ids) == set(tins)


def test_only_rows_that_differ_are_announced(table: RowTable[Tin], qtbot: QtBot) -> None:
    rows: list[tuple[int, int]] = []
    table.dataChanged.connect(lambda first, last: rows.append((first.row(), last.row())))
    table.show_records([TINS[0], ("b", Tin("Screws", 11.0)), *TINS[2:]])
    assert rows == [(1, 1)]


def test_ten_thousand_records_sort_by_raw_values(qtbot: QtBot) -> None:
    table = make_table()
    chance = random.Random(1)
    table.show_records([(f"k{n}", Tin(str(n), float(chance.randrange(1_000_000)))) for n in range(10_000)])
    table.sort(1, Qt.SortOrder.AscendingOrder)
    masses = [table.record(key).mass for key in table.ids]
    assert masses == sorted(masses, key=lambda mass: mass or 0.0)


def test_a_selection_by_ids_is_what_is_read_back_and_is_not_told(qtbot: QtBot, table: RowTable[Tin]) -> None:
    view = TableView(table, "Tins", "No tins.")
    qtbot.addWidget(view)
    told: list[tuple[str, ...]] = []
    view.ids_selected.connect(told.append)
    view.select_ids(("d", "a", "b", "nobody"))
    assert view.selected_ids() == ("a", "b", "d")
    assert told == []
    view.selectRow(2)
    assert told == [("c",)]


def test_rows_that_go_change_the_selection_once(qtbot: QtBot, table: RowTable[Tin]) -> None:
    view = TableView(table, "Tins", "No tins.")
    qtbot.addWidget(view)
    view.selectAll()
    told: list[tuple[str, ...]] = []
    view.ids_selected.connect(told.append)
    view.change_rows(lambda: table.show_records([TINS[1], TINS[3]]))
    assert told == [("b", "d")]


def test_marked_lines_stand_out_by_sign_and_weight_and_say_so(table: RowTable[Tin]) -> None:
    changed: list[tuple[int, int]] = []
    table.dataChanged.connect(lambda first, last: changed.append((first.row(), last.row())))
    table.mark(("b", "gone"))
    assert changed == [(1, 1)]
    name = table.index(1, 0)
    assert name.data() == "▸ Screws"
    assert name.data(Qt.ItemDataRole.EditRole) == "Screws"
    assert name.data(Qt.ItemDataRole.FontRole).bold()
    assert name.data(Qt.ItemDataRole.AccessibleTextRole) == "Name: Screws, has the selected part"
    assert table.index(1, 1).data() == "10"
    assert table.index(0, 0).data(Qt.ItemDataRole.FontRole) is None
    table.mark(())
    assert changed == [(1, 1), (1, 1)]
    assert name.data() == "Screws"
