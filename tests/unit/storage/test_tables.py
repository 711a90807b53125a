"""Tables from files of every kind: told by content, one clear message for the rest."""

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

import pytest

from baywright.storage.tables import read_table, table_from_text
from baywright.storage.trouble import TableError

Pack = Callable[..., Path]
SaveSheets = Callable[[Path, Mapping[str, Sequence[Sequence[object]]]], Path]


def test_text_file(tmp_path: Path) -> None:
    path = tmp_path / "boxes.csv"
    path.write_text("Our boxes\n\nLabel;Mass\nSpokes;4,5\n", encoding="cp1252")
    table = read_table(path)
    assert table.source == "boxes.csv"
    assert table.headings == ("Label", "Mass")
    assert [(row.number, row.cells) for row in table.rows] == [(4, ("Spokes", "4,5"))]


def test_workbook_whatever_its_name(tmp_path: Path, save_sheets: SaveSheets) -> None:
    path = save_sheets(tmp_path / "boxes.csv", {"A": [["Label", "Mass"], ["Spokes", 4.5]], "B": [["x"]]})
    table = read_table(path)
    assert (table.sheet, table.sheets) == ("A", ("A", "B"))
    assert table.headings == ("Label", "Mass")
    assert table.rows[0].cells == ("Spokes", "4.5")
    assert read_table(path, "B").filled_rows[0].cells == ("x",)


def test_formulas_without_values_are_remarked(tmp_path: Path, save_sheets: SaveSheets) -> None:
    path = save_sheets(tmp_path / "boxes.xlsx", {"A": [["Label", "Mass"], ["Spokes", "=2*3"]]})
    assert "the first is B2" in read_table(path).remarks[0]


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "“t.csv” holds no table"),
        (b"\n;;\n", "“t.csv” holds no table"),
        (b"a\0b", "“t.csv” is not a table"),
        (b"PK\x03\x04 and no more", "“t.csv” is damaged, or not a workbook"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1 old", "“t.csv” is protected by a password or of the old format XLS"),
        (b'a,"b', "“t.csv” has a fault in row 1"),
    ],
)
def test_refused(tmp_path: Path, data: bytes, words: str) -> None:
    path = tmp_path / "t.csv"
    path.write_bytes(data)
    with pytest.raises(TableError) as refusal:
        read_table(path)
    assert words in str(refusal.value)
    assert path.read_bytes() == data


def test_hostile_workbooks_are_refused(tmp_path: Path, pack: Pack) -> None:
    entities = '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]>'
    path = pack(
        tmp_path / "laughs.xlsx",
        '<sheetData><row r="1"><c r="A1" t="str"><v>&b;</v></c></row></sheetData>',
        before=entities,
    )
    with pytest.raises(TableError, match="declares a document type"):
        read_table(path)
    deep = pack(tmp_path / "deep.xlsx", "<sheetData>" + "<row>" * 300_000)
    with pytest.raises(TableError, match=r"refused|damaged"):
        read_table(deep)


def test_missing_and_too_large(tmp_path: Path) -> None:
    with pytest.raises(TableError, match="does not exist"):
        read_table(tmp_path / "gone.csv")
    with (tmp_path / "huge.csv").open("wb") as file:
        file.truncate(30_000_000)
    with pytest.raises(TableError, match="too large"):
        read_table(tmp_path / "huge.csv")


def test_pasted_text() -> None:
    table = table_from_text('Label\tHeight\r\nSpokes\t15 19/32"\r\n')
    assert table.source == "the pasted text"
    assert table.headings == ("Label", "Height")
    assert table.rows[0].cells == ("Spokes", '15 19/32"')


@pytest.mark.parametrize(("text", "words"), [("", "is empty"), (" \n", "is empty"), ("x" * 20_000_001, "is too long")])
def test_pasted_text_that_is_no_table(text: str, words: str) -> None:
    with pytest.raises(TableError, match=f"The pasted text {words}"):
        table_from_text(text)
