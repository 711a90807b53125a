"""Workbooks: what is read out of them, and what is refused before or while it is opened."""

import datetime
import zipfile
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import ClassVar

import pytest

from baywright.storage import spreadsheet
from baywright.storage.spreadsheet import cell_text, look_over, read_sheet
from baywright.storage.trouble import TableError

Pack = Callable[..., Path]
SaveSheets = Callable[[Path, Mapping[str, Sequence[Sequence[object]]]], Path]


PADDING = "".join(map(str, range(1_000_000)))[:999_995]


def data(rows: str) -> str:
    """The XML of the rows of a sheet."""
    return f"<sheetData>{rows}</sheetData>"


def text_cell(address: str, text: str) -> str:
    """The XML of one cell with a text in it."""
    return f'<c r="{address}" t="inlineStr"><is><t>{text}</t></is></c>'


def test_values_as_text(tmp_path: Path, save_sheets: SaveSheets) -> None:
    path = save_sheets(
        tmp_path / "boxes.xlsx",
        {"Boxes": [["Label", "mm"], ["Spokes", 157.5], [None, None], ["=Chains?", 105], [True, 0.1 + 0.2]]},
    )
    cells = read_sheet(str(path), "")
    assert cells.sheets == ("Boxes",)
    assert cells.rows[:2] == ((1, ["Label", "mm"]), (2, ["Spokes", "157.5"]))
    assert cells.rows[-1] == (5, ["TRUE", "0.3"])


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (None, ""),
        (400, "400"),
        (400.0, "400"),
        (1e-7, "0.0000001"),
        (1e16, "10000000000000000"),
        (datetime.datetime(2024, 5, 31), "2024-05-31"),
        (datetime.datetime(2024, 5, 31, 12, 30), "2024-05-31 12:30:00"),
        (datetime.time(12, 30), "12:30:00"),
        ("#REF!", "#REF!"),
    ],
)
def test_text_of_a_value(value: object, text: str) -> None:
    assert cell_text(value) == text


def test_first_sheet_that_holds_something_or_the_one_asked_for(tmp_path: Path, save_sheets: SaveSheets) -> None:
    path = save_sheets(tmp_path / "boxes.xlsx", {"Cover": [], "A": [["a"]], "B": [["b"]]})
    assert read_sheet(str(path), "").sheet == "A"
    assert read_sheet(str(path), "B").rows == ((1, ["b"]),)
    assert read_sheet(str(path), "Cover").rows == ()
    with pytest.raises(TableError, match="has no sheet “C”; it has “Cover”, “A”, “B”"):
        read_sheet(str(path), "C")


def test_formulas_without_a_stored_value_are_counted(tmp_path: Path, pack: Pack, save_sheets: SaveSheets) -> None:
    path = save_sheets(tmp_path / "boxes.xlsx", {"A": [["Label", "mm"], ["Spokes", "=1+2"], ["Rims", "=3+4"]]})
    cells = read_sheet(str(path), "")
    assert (cells.formulas_without_value, cells.first_of_them) == (2, "B2")
    stored = pack(tmp_path / "stored.xlsx", data('<row r="1"><c r="A1"><f>1+2</f><v>3</v></c></row>'))
    assert read_sheet(str(stored), "").formulas_without_value == 0
    assert read_sheet(str(stored), "").rows == ((1, ["3"]),)


def test_a_stated_size_that_is_a_lie_is_not_believed(tmp_path: Path, pack: Pack) -> None:
    rows = f'<row r="1">{text_cell("A1", "a")}{text_cell("C1", "c")}</row><row r="3">{text_cell("A3", "z")}</row>'
    path = pack(tmp_path / "lie.xlsx", f'<dimension ref="A1:XFD1048576"/>{data(rows)}')
    assert read_sheet(str(path), "").rows == ((1, ["a", "", "c"]), (3, ["z"]))


def test_a_cell_at_the_far_corner(tmp_path: Path, pack: Pack) -> None:
    far = pack(tmp_path / "far.xlsx", data(f'<row r="1048576">{text_cell("XFD1048576", "far")}</row>'))
    with pytest.raises(TableError, match="something in cell XFD1048576; at most 200 columns"):
        read_sheet(str(far), "")
    low = pack(tmp_path / "low.xlsx", data(f'<row r="1048576">{text_cell("A1048576", "low")}</row>'))
    assert read_sheet(str(low), "").rows == ((1_048_576, ["low"]),)


def test_too_many_rows(tmp_path: Path, pack: Pack) -> None:
    rows = "".join(f'<row r="{number}"><c r="A{number}"><v>1</v></c></row>' for number in range(1, 20_002))
    with pytest.raises(TableError, match="more than 20,000 rows on sheet “One”"):
        read_sheet(str(pack(tmp_path / "long.xlsx", data(rows))), "")


def test_a_text_longer_than_a_cell_can_hold(tmp_path: Path, pack: Pack) -> None:
    path = pack(tmp_path / "text.xlsx", data(f'<row r="1">{text_cell("A1", "x" * 40_001)}</row>'))
    with pytest.raises(TableError, match="a text of over 40,000 characters in row 1"):
        read_sheet(str(path), "")


def test_wide_empty_rows_use_up_the_cells(tmp_path: Path, pack: Pack, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(spreadsheet, "MOST_CELLS", 100_000)
    rows = "".join(f'<row r="{number}"><c r="XFD{number}"/></row>' for number in range(1, 11))
    with pytest.raises(TableError, match="too many cells"):
        read_sheet(str(pack(tmp_path / "wide.xlsx", data(rows))), "")


class TestLookedOverBeforeOpening:
    BOMB: ClassVar[bytes] = b"0" * 90_000_000

    def test_packed_beyond_reason(self, tmp_path: Path, pack: Pack) -> None:
        path = pack(tmp_path / "bomb.xlsx", extra={"xl/sharedStrings.xml": self.BOMB})
        assert path.stat().st_size < 200_000
        with pytest.raises(TableError, match="grow more than 200 times"):
            look_over(str(path))

    def test_one_part_too_large(self, tmp_path: Path, pack: Pack, monkeypatch: pytest.MonkeyPatch) -> None:
        monkeypatch.setattr(spreadsheet, "MOST_MEMBER_BYTES", 1_000)
        with pytest.raises(TableError, match="too large"):
            look_over(str(pack(tmp_path / "big.xlsx", extra={"xl/media/picture.png": bytes(range(256)) * 4})))

    def test_all_parts_too_large(self, tmp_path: Path, pack: Pack, monkeypatch: pytest.MonkeyPatch) -> None:
        monkeypatch.setattr(spreadsheet, "MOST_UNPACKED_BYTES", 1_000)
        with pytest.raises(TableError, match="too large"):
            look_over(str(pack(tmp_path / "big.xlsx")))

    def test_too_many_parts(self, tmp_path: Path, pack: Pack) -> None:
        path = pack(tmp_path / "parts.xlsx", extra={f"xl/x{number}.xml": b"" for number in range(2_000)})
        with pytest.raises(TableError, match="far more parts"):
            look_over(str(path))

    @pytest.mark.parametrize("encoding", ["utf-8", "utf-16-le", "utf-16-be"])
    @pytest.mark.parametrize(
        "declaration", ["<!DOCTYPE x [<!ENTITY a 'aaaa'>]>", PADDING + "<!DOCTYPE x>", "<!ENTITY a 'b'>"]
    )
    def test_document_type_or_entities(self, tmp_path: Path, pack: Pack, encoding: str, declaration: str) -> None:
        path = pack(tmp_path / "entities.xlsx", extra={"xl/styles.xml": f"{declaration}<x/>".encode(encoding)})
        with pytest.raises(TableError, match="declares a document type or entities"):
            look_over(str(path))

    def test_password(self, tmp_path: Path, pack: Pack) -> None:
        path = pack(tmp_path / "secret.xlsx")
        packed = bytearray(path.read_bytes())
        packed[packed.index(b"PK\x01\x02") + 8] |= 1
        path.write_bytes(packed)
        with pytest.raises(TableError, match="protected by a password"):
            look_over(str(path))

    def test_another_kind_of_archive(self, tmp_path: Path) -> None:
        path = tmp_path / "table.ods"
        with zipfile.ZipFile(path, "w") as archive:
            archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        with pytest.raises(TableError, match="not a workbook"):
            look_over(str(path))

    def test_damaged(self, tmp_path: Path, pack: Pack) -> None:
        path = pack(tmp_path / "half.xlsx")
        path.write_bytes(path.read_bytes()[:500])
        with pytest.raises(TableError, match="is damaged"):
            look_over(str(path))
