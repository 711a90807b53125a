"""Rows, column letters and cleaned cells."""

from baywright.storage.table import Row, Table, clean_cell, column_letters, filled


def test_column_letters() -> None:
    assert [column_letters(number) for number in (0, 25, 26, 701, 702, 16_383)] == ["A", "Z", "AA", "ZZ", "AAA", "XFD"]


def test_cells_hold_no_control_signs() -> None:
    assert clean_cell("  a\x00b\x7f\tc ") == "a b  c"
    assert clean_cell("a\r\nb\rc\n") == "a\nb\nc"


def test_empty_cells_at_the_end_are_left_out() -> None:
    assert filled(7, ["", "a", " ", ""]) == Row(7, ("", "a"))
    assert filled(7, ["", " "]) is None


def test_headings_can_be_switched_off_and_on() -> None:
    table = Table("x.csv", (Row(1, ("label", "size")), Row(2, ("a", "b", "c"))), heading_index=0)
    assert table.headings == ("label", "size")
    assert [row.number for row in table.rows] == [2]
    assert table.column_name(1) == "size"
    assert table.column_name(2) == "column C"
    bare = table.with_headings(False)
    assert bare.headings == ()
    assert [row.number for row in bare.rows] == [1, 2]
    assert bare.with_headings(True) == table
    assert bare.column_count == 3
    assert Row(1, ("a",)).cell(5) == ""
