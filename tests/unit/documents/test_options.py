"""The options sheet: there where options are known, with every figure, and “not known yet” for what is not."""

import io

import openpyxl

from baywright.documents.workbook import write_workbook
from baywright.making import manufacture
from baywright.model.length import LengthUnit
from baywright.model.option import Option
from baywright.model.project import Project
from baywright.planner import options, plan, report
from baywright.workings import derive

HEADER_ROW = 4


def planned(small: Project) -> Project:
    arrangement = plan(small).arrangement
    assert arrangement is not None
    return small.replace(arrangement=arrangement)


def opened(project: Project, choice: tuple[Option, ...]) -> openpyxl.Workbook:
    workings = derive(project)
    data = write_workbook(project, workings, report(project), None, manufacture(project, workings), choice=choice)
    return openpyxl.load_workbook(io.BytesIO(data))


def table(book: openpyxl.Workbook) -> list[dict[str, object]]:
    rows = book["Options"].iter_rows(min_row=HEADER_ROW, values_only=True)
    header = [str(name) for name in next(rows)]
    return [dict(zip(header, row, strict=True)) for row in rows if any(row)]


def test_every_option_stands_there_with_its_figures(small: Project) -> None:
    project = planned(small)
    found = options(project)
    assert len(found) > 1
    rows = table(opened(project, found))
    assert [(row["Bays"], row["Rows"], row["Uprights"]) for row in rows] == [
        (option.bays, option.rows, option.uprights.value) for option in found
    ]
    assert [row["Worktop height, mm"] for row in rows] == [option.unit_height_mm for option in found]
    assert {row["Sheets"] for row in rows} == {row["Cost"] for row in rows} == {"not known yet"}
    assert sum(str(row["Now"] or "").startswith("present shape") for row in rows) == 1


def test_sheets_and_cost_are_numbers_once_they_are_known(small: Project) -> None:
    project = planned(small)
    found = tuple(option.replace(sheets=7, cost=412.5) for option in options(project))
    assert {(row["Sheets"], row["Cost"]) for row in table(opened(project, found))} == {(7, 412.5)}


def test_projects_in_inches_have_both_and_without_options_there_is_no_sheet(small: Project) -> None:
    project = planned(small).replace(unit=LengthUnit.INCH)
    assert "Worktop height, inches" in table(opened(project, options(project)))[0]
    assert "Options" not in opened(project, ()).sheetnames
