"""Importing a hardware catalogue on the command line: the preview, the taking over, the exit codes."""

from decimal import Decimal
from pathlib import Path

import openpyxl
import pytest

from baywright.app.files import open_project, save_project
from baywright.cli.main import Surroundings, run
from baywright.model.catalogue import CatalogueItem, HardwareKind, HardwareStock
from baywright.model.project import Project


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "shop.baywright"
    glue = CatalogueItem(id="glue", kind=HardwareKind.GLUE, name="Glue", price=Decimal(5), pack_size=0.5)
    save_project(path, Project(name="Shop", hardware=HardwareStock(catalogue=(glue,))))
    return path


def table(folder: Path, text: str) -> Path:
    path = folder / "shop.csv"
    path.write_text(text, encoding="utf-8")
    return path


def catalogue(*arguments: object) -> int:
    return run(["catalogue", *map(str, arguments)], Surroundings(lambda _, __: 0, Path))


GOOD = "Kind;Name;Pack;Price;Colour\nglue;Glue;0.5 l;5,50;\nshelf pin;Pin 5 mm;20;3.45;brass\n"
BAD = "Kind;Name;Price\nhammer;Hammer;12\noil;Oil;12\n"


def test_the_preview_takes_nothing_over(file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = file.read_bytes()
    assert catalogue(file, table(tmp_path, GOOD)) == 0
    streams = capsys.readouterr()
    assert streams.out.replace("\u00a0", " ").splitlines() == [
        "shop.csv: 2 rows",
        "Columns:",
        "  kind         from A (“Kind”)",
        "  name         from B (“Name”)",
        "  pack         from C (“Pack”)",
        "  price        from D (“Price”)",
        "  not used: E (“Colour”)",
        "New: 1 item",
        "  row 3: shelf pin, Pin 5 mm, pack of 20, 3.45 EUR",
        "Changed: 1 item",
        "  row 2: glue, Glue, pack of 0.5, 5.50 EUR (before: 5.00 EUR)",
        "1 item of the kind “shelf pin” (the first in row 3) can be chosen only by hand: a shelf pin needs its "
        "diameter.",
    ]
    assert streams.err == "Nothing is taken over; with --accept the accepted rows are.\n"
    assert file.read_bytes() == before


def test_accepted_rows_are_saved_and_refused_ones_told(
    file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert catalogue(file, table(tmp_path, BAD), "--accept") == 1
    assert "row 2, A2 (“Kind”): “hammer” is no kind of hardware" in capsys.readouterr().out
    assert [item.name for item in open_project(file).hardware.catalogue] == ["Glue", "Oil"]


def test_a_workbook_is_read_as_well(file: Path, tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    for row in (("Kind", "Name", "Price"), ("oil", "Oil", 12.5), ("glue", "Bone glue", 13 / 1.19)):
        sheet.append(row)
    book.save(tmp_path / "shop.xlsx")
    assert catalogue(file, tmp_path / "shop.xlsx", "--accept") == 0
    prices = [item.price for item in open_project(file).hardware.catalogue]
    assert prices == [Decimal(5), Decimal("12.5"), Decimal("10.9244")]


def test_columns_that_are_not_matched_are_asked_for(
    file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = table(tmp_path, "Thing;What it is\nOil;oil\n")
    assert catalogue(file, path) == 2
    assert "Use --match, for example --match kind=2." in capsys.readouterr().err
    assert catalogue(file, path, "--headings", "--match", "kind=2", "--match", "name=Thing", "--accept") == 0
    assert open_project(file).hardware.catalogue[-1].kind is HardwareKind.FINISH


def test_a_file_that_is_no_table_is_told(file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "shop.csv").write_bytes(b"\0\1\2")
    assert catalogue(file, tmp_path / "shop.csv") == 3
    assert "is not a table" in capsys.readouterr().err
