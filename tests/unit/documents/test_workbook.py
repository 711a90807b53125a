"""The ordering workbook read back: sheets, texts, print set-up, named cells."""

import io
import re
import zipfile
from collections.abc import Callable

import openpyxl
import pytest

from baywright.checks import inspect
from baywright.documents.sheets.measure import height_for, line_count
from baywright.making import manufacture
from baywright.model.arrangement import Arrangement
from baywright.model.catalogue import Adjustment
from baywright.model.caution import CAUTIONS
from baywright.model.finding import Severity
from baywright.model.length import LengthUnit
from baywright.model.plan import PlanResult
from baywright.model.project import Project
from baywright.workings import derive

SHEETS = ["Summary", "Inventory", "Drawer schedule", "Parts", "Hardware order", "Checks", "Dimensions"]
HEADER_ROW = 4
Opened = Callable[..., openpyxl.Workbook]
Written = Callable[..., bytes]


def _table(book: openpyxl.Workbook, title: str) -> list[dict[str, object]]:
    """The rows of a sheet's table as dictionaries by column title, down to the first empty row."""
    rows = book[title].iter_rows(min_row=HEADER_ROW, values_only=True)
    header = [str(name) for name in next(rows)]
    found: list[dict[str, object]] = []
    for row in rows:
        if all(value is None for value in row):
            break
        found.append(dict(zip(header, row, strict=True)))
    return found


def _words(book: openpyxl.Workbook, title: str) -> str:
    rows = book[title].iter_rows(values_only=True)
    return "\n".join(str(value) for row in rows for value in row if value is not None)


def test_the_sheets_in_their_order(small: Project, opened: Opened) -> None:
    assert opened(small).sheetnames == SHEETS


def test_labels_that_look_like_formulas_arrive_as_text(small: Project, opened: Opened, labels: tuple[str, ...]) -> None:
    sheet = opened(small)["Inventory"]
    expected = [label.replace("\x07", " ") for label in labels]
    cells = [sheet.cell(row=HEADER_ROW + 1 + index, column=1) for index in range(len(labels))]
    assert [cell.value for cell in cells] == expected
    assert {cell.data_type for cell in cells} == {"s"}
    assert [cell.quotePrefix for cell in cells[:5]] == [True, True, True, True, False]


def test_formulas_stand_only_where_the_workbook_calculates(small: Project, opened: Opened) -> None:
    book = opened(small)
    formulas = {
        (sheet.title, str(cell.coordinate).rstrip("0123456789"))
        for sheet in book
        for row in sheet
        for cell in row
        if cell.data_type == "f"
    }
    assert formulas == {("Hardware order", "H"), ("Hardware order", "J"), ("Dimensions", "C")}


def test_parts_and_hardware_are_those_of_the_engine(small: Project, opened: Opened) -> None:
    book, made = opened(small), manufacture(small)
    parts = _table(book, "Parts")
    assert [(p["Number"], p["Quantity"], p["Length, mm"], p["Width, mm"], p["Thickness, mm"]) for p in parts] == [
        (p.number, p.quantity, p.length_mm, p.width_mm, p.thickness_mm) for p in made.parts
    ]
    hardware = _table(book, "Hardware order")
    assert [h["Number"] for h in hardware] == [h.number for h in made.hardware]
    for line, item in zip(hardware, made.hardware, strict=True):
        numbers = [line["Needed"], line["Allowance"], line["Pack size"]]
        assert numbers == pytest.approx([item.needed, item.allowance, item.pack_size])


def test_what_is_at_hand_is_listed_and_not_bought(small: Project, opened: Opened) -> None:
    number = manufacture(small).hardware[0].number
    stock = small.hardware.replace(adjustments=(Adjustment(number=number, is_left_out=True),))
    book = opened(small.replace(hardware=stock))
    (line,) = [row for row in _table(book, "Hardware order") if row["Number"] == number]
    assert (line["Packs to buy"], line["Cost, EUR"]) == (0, 0)
    assert str(line["Note"]).startswith("at hand already, not bought")


def test_the_schedule_is_that_of_the_engine(small: Project, opened: Opened) -> None:
    lines = _table(opened(small), "Drawer schedule")
    assert [(x["Bay"], x["Runner row"], x["Drill at, mm"], x["Drawer's lower edge, mm"]) for x in lines] == [
        (x.bay, x.runner_row, x.runner_line_mm, x.lower_edge_mm) for x in manufacture(small).schedule
    ]
    assert [line["Locked"] for line in lines].count("locked") == 1


def test_where_there_are_box_stops_the_schedule_tells_where(small: Project, opened: Opened) -> None:
    stop = "Box stop behind the front rail, mm"
    assert stop not in _table(opened(small), "Drawer schedule")[0]
    drawers = small.construction.drawers.replace(has_box_stop=True)
    stopped = small.replace(construction=small.construction.replace(drawers=drawers))
    told = [line[stop] for line in _table(opened(stopped), "Drawer schedule")]
    assert told == [line.box_stop_mm for line in manufacture(stopped).schedule]
    assert any(told)


def test_every_dimension_has_a_name_of_its_own(small: Project, opened: Opened) -> None:
    book, workings = opened(small), derive(small)
    assert set(book.defined_names) == {entry.cell for entry in workings.entries}
    sheet = book["Dimensions"]
    for entry in workings.entries:
        (title, place), *_ = book.defined_names[entry.cell].destinations
        cell = sheet[place.replace("$", "")]
        assert title == "Dimensions"
        assert cell.value == (entry.value if entry.is_input else f"={entry.excel}")


def test_formulas_read_names_that_exist(small: Project, opened: Opened) -> None:
    book = opened(small)
    functions = {"IF", "MAX", "MIN", "INT", "ROUND", "ROUNDUP"}
    for row in book["Dimensions"]:
        for cell in row:
            if cell.data_type == "f":
                words = set(re.findall(r"[A-Za-z_][A-Za-z_0-9]*", str(cell.value)))
                words = {word for word in words if not re.fullmatch(r"e\d*", word)}
                assert words - functions <= set(book.defined_names), cell.value


def test_values_stand_beside_the_formulas_for_readers_that_do_not_calculate(small: Project, written: Written) -> None:
    book = openpyxl.load_workbook(io.BytesIO(written(small)), data_only=True)
    workings = derive(small)
    for entry in workings.entries:
        (_, place), *_ = book.defined_names[entry.cell].destinations
        assert book["Dimensions"][place.replace("$", "")].value == pytest.approx(entry.value, rel=1e-12, abs=1e-12)
    packs = [row["Packs to buy"] for row in _table(book, "Hardware order")]
    assert packs == [item.packs for item in manufacture(small).hardware]


@pytest.mark.parametrize("title", SHEETS)
def test_sheets_print_on_a4_landscape_one_page_wide(small: Project, opened: Opened, title: str) -> None:
    sheet = opened(small)[title]
    assert (sheet.page_setup.orientation, str(sheet.page_setup.paperSize)) == ("landscape", "9")
    properties, footer = sheet.sheet_properties.pageSetUpPr, sheet.oddFooter
    assert properties is not None
    assert footer is not None
    assert properties.fitToPage
    assert (sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight) == (1, 0)
    assert footer.right.text == "page &P of &N"
    assert footer.left.text == "Sums && =more"
    assert sheet.freeze_panes is not None
    assert sheet.print_title_rows == ("$1:$1" if title == "Summary" else f"${HEADER_ROW}:${HEADER_ROW}")


def test_names_that_no_file_can_hold_are_mended_everywhere(small: Project, opened: Opened) -> None:
    book = opened(small.replace(name="a\x00b\ufffec", note="\x01"))
    assert str(book["Parts"]["A1"].value).endswith("a b c")


def test_cautions_stand_where_they_are_needed(small: Project, opened: Opened) -> None:
    book = opened(small)
    summary = _words(book, "Summary")
    assert all(caution.text in summary for caution in CAUTIONS)
    assert "Several open, loaded drawers" in _words(book, "Hardware order")
    assert "hidden cables" in _words(book, "Hardware order")
    assert "maker's rating" in _words(book, "Drawer schedule")
    assert "Wood dust" in _words(book, "Parts")
    assert "knee and shoulder" in _words(book, "Inventory")


def test_the_summary_shows_the_elevation_and_what_is_open(small: Project, opened: Opened) -> None:
    fewer = small.arrangement.replace(placements=small.arrangement.placements[:-1])
    book = opened(small.replace(arrangement=fewer))
    assert len(book["Summary"]._images) == 1  # type: ignore[attr-defined]
    words = _words(book, "Summary")
    assert "nothing is proved" in words
    assert "工具 keys" in words, "the box without a drawer is named"
    assert "has no loaded mass" in words


def test_a_proof_is_told(demo_plan: tuple[Project, PlanResult], opened: Opened) -> None:
    project, result = demo_plan
    words = _words(opened(project, result), "Summary")
    assert "Proved best" in words
    assert f"{project.arrangement.bay_count} bays (proved: none is lower)" in words


def test_inch_projects_get_inches_beside_the_millimetres(small: Project, opened: Opened) -> None:
    book = opened(small.replace(unit=LengthUnit.INCH))
    first = _table(book, "Parts")[0]
    assert (first["Length, mm"], first["Length, inches"]) == (1024, '40 5/16"')
    dimensions = _table(book, "Dimensions")
    assert str(dimensions[0]["Inches, to 1/32"]).startswith("=ROUND(drawer_inside_width/25.4*32,0)/32")


def test_no_text_is_cut(long: Project, opened: Opened) -> None:
    """Every row is at least as high as the lines that its texts need at their column's width."""
    book = opened(long.replace(unit=LengthUnit.INCH))
    for title in SHEETS[1:]:
        sheet = book[title]
        merged = {str(area).split(":")[0] for area in sheet.merged_cells.ranges}
        for row in sheet.iter_rows(min_row=HEADER_ROW):
            for cell in row:
                if isinstance(cell.value, str) and cell.data_type == "s" and cell.coordinate not in merged:
                    lines = line_count(cell.value, sheet.column_dimensions[cell.column_letter].width)
                    assert sheet.row_dimensions[cell.row].height >= height_for(lines), cell.coordinate


def test_the_same_document_gives_the_same_bytes(small: Project, written: Written) -> None:
    assert written(small) == written(small)


def test_nothing_points_outside_the_file(small: Project, written: Written) -> None:
    with zipfile.ZipFile(io.BytesIO(written(small))) as archive:
        assert archive.testzip() is None
        assert not [name for name in archive.namelist() if "external" in name.lower()]
        for name in archive.namelist():
            assert b'TargetMode="External"' not in archive.read(name)


def test_before_anything_is_arranged_the_workbook_says_so(small: Project, opened: Opened) -> None:
    book = opened(small.replace(arrangement=Arrangement()))
    assert "Nothing is arranged yet" in _words(book, "Summary")
    assert _table(book, "Parts") == []


def test_a_project_without_boxes_can_be_written(opened: Opened) -> None:
    book = opened(Project(arrangement=Arrangement(bay_count=2, upright_rows=20)))
    assert _table(book, "Inventory") == []
    assert _table(book, "Drawer schedule") == []
    assert len(_table(book, "Parts")) > 5


def test_every_finding_of_the_checks_is_a_row(small: Project, opened: Opened) -> None:
    words = _words(opened(small), "Checks")
    findings = inspect(small)
    assert {finding.severity for finding in findings} >= {Severity.UNCHECKED, Severity.KEPT}
    for finding in findings:
        assert finding.message in words
        assert finding.source in words
    assert "? not checked" in words
