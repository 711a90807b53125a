"""Importing an inventory on the command line: the preview, the matching, the taking over, the exit codes."""

from pathlib import Path

import openpyxl
import pytest

from baywright.app.files import open_project, save_project
from baywright.cli.main import Surroundings, run
from baywright.model.inventory import BoxSize
from baywright.model.project import Project


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "shop.baywright"
    size = BoxSize(id="euro-120", name="Euro 120", width_mm=400, depth_mm=300, height_mm=120)
    save_project(path, Project(name="Shop", box_sizes=(size,)))
    return path


def table(folder: Path, text: str) -> Path:
    path = folder / "boxes.csv"
    path.write_text(text, encoding="utf-8")
    return path


def import_(*arguments: object) -> int:
    return run(["import", *map(str, arguments)], Surroundings(lambda _, __: 0, Path))


GOOD = "Label;Size;Mass;Qty;Colour\nSpokes;Euro 120;4,5;2;red\nRims;euro 120;;;\n"
BAD = "Label;Width;Depth;Height (cm)\nSpokes;400;300;12\nRims;400;300;tall\n;300;200;10\n"


def test_the_preview_takes_nothing_over(file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = file.read_bytes()
    assert import_(file, table(tmp_path, GOOD)) == 0
    streams = capsys.readouterr()
    assert streams.out.splitlines() == [
        "boxes.csv: 2 rows",
        "Columns:",
        "  label    from A (“Label”)",
        "  size     from B (“Size”)",
        "  mass     from C (“Mass”)",
        "  quantity from D (“Qty”)",
        "  not used: E (“Colour”)",
        "Accepted: 2 rows, 3 boxes",
        "  row 2: Spokes 1, Euro 120, 4.5 kg, weekly",
        "  row 2: Spokes 2, Euro 120, 4.5 kg, weekly",
        "  row 3: Rims, Euro 120, not weighed, weekly",
    ]
    assert streams.err == "Nothing is taken over; with --accept the accepted rows are.\n"
    assert file.read_bytes() == before


def test_accepted_rows_are_taken_over_and_refused_ones_told(
    file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert import_(file, table(tmp_path, BAD), "--accept") == 1
    streams = capsys.readouterr()
    assert "Refused: 2 rows" in streams.out
    assert "row 3, D3 (“Height (cm)”): “tall” is not a length. Write for example" in streams.out
    assert "row 4, A4 (“Label”): the box has no label. Write what the box is called." in streams.out
    assert "Taken over and saved in" in streams.err
    project = open_project(file)
    assert [(box.label, box.size_id) for box in project.boxes] == [("Spokes", "euro-120")]


def test_new_sizes_are_shown_and_saved(file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert import_(file, table(tmp_path, "Label,Size,W,D,H\nSpokes,Half,200,300,75\n"), "--accept") == 0
    assert "  Half: 200 × 300 × 75 mm" in capsys.readouterr().out
    assert [size.name for size in open_project(file).box_sizes] == ["Euro 120", "Half"]


@pytest.mark.parametrize("label", ["label=Was ist drin", "label=was ist drin", "LABEL=2", "label=b"])
def test_columns_are_named_by_heading_number_or_letter(
    file: Path, tmp_path: Path, label: str, capsys: pytest.CaptureFixture[str]
) -> None:
    path = table(tmp_path, "Was;Was ist drin;Was noch\nEuro 120;Spokes;x\n")
    assert import_(file, path, "--headings", "--match", label, "--match", "size=A", "--match", "note=-") == 0
    assert "row 2: Spokes, Euro 120" in capsys.readouterr().out


def test_a_table_without_headings(file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = table(tmp_path, "Label;Euro 120\nRims;Euro 120\n")
    assert import_(file, path, "--no-headings", "--match", "label=1") == 0
    assert "row 1: Label, Euro 120" in capsys.readouterr().out
    assert import_(file, path, "--no-headings", "--match", "label=Name") == 2
    assert "It has A, B. With --headings the first row is taken as headings." in capsys.readouterr().err


def test_a_sheet_of_a_workbook(file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    workbook = openpyxl.Workbook()
    workbook.create_sheet("Boxes").append(["Label", "Size"])
    workbook["Boxes"].append(["Spokes", "Euro 120"])
    workbook.save(tmp_path / "boxes.xlsx")
    assert import_(file, tmp_path / "boxes.xlsx", "--sheet", "Boxes") == 0
    assert "boxes.xlsx, sheet “Boxes”: 1 row" in capsys.readouterr().out
    assert import_(file, tmp_path / "boxes.xlsx", "--sheet", "Bins") == 3
    assert "has no sheet “Bins”; it has “Sheet”, “Boxes”" in capsys.readouterr().err


def test_columns_that_are_not_settled(file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = table(tmp_path, "Label;Weight\nSpokes;4\n")
    assert import_(file, path) == 2
    err = capsys.readouterr().err
    assert "No column gives the size" in err
    assert "--match size=2" in err
    assert import_(file, path, "--match", "size=Grösse") == 2
    assert "boxes.csv has no column “Grösse”. It has A (“Label”), B (“Weight”)." in capsys.readouterr().err


@pytest.mark.parametrize(
    ("match", "words"),
    [("colour=1", "there is no field “colour”"), ("label", "names no column"), ("label=", "names no")],
)
def test_a_match_that_says_nothing(
    file: Path, tmp_path: Path, match: str, words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as ended:
        import_(file, table(tmp_path, GOOD), "--match", match)
    assert ended.value.code == 2
    assert words in capsys.readouterr().err


def test_tables_and_files_that_cannot_be_read(file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert import_(file, tmp_path / "gone.csv") == 3
    assert "“gone.csv” cannot be opened" in capsys.readouterr().err
    assert import_(tmp_path / "gone.baywright", table(tmp_path, GOOD)) == 3
    assert import_(file, table(tmp_path, 'a,"b')) == 3


def test_nothing_to_take_over_saves_nothing(file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = file.stat().st_mtime_ns
    assert import_(file, table(tmp_path, "Label;Size\nSpokes;Huge\n"), "--accept") == 1
    assert "There is nothing to take over." in capsys.readouterr().err
    assert file.stat().st_mtime_ns == before
