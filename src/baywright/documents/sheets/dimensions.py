"""The dimensions sheet: every input in a cell of its own, every derived dimension a live formula over named cells.

Laws: each entry of the workings is one row with one defined name; a formula uses names only, so it can be read; the
column of workings is text and tells how the value came about when the workbook was written.
"""

from openpyxl import Workbook
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.sheets.cell import FormulaCells, write
from baywright.documents.sheets.column import Column
from baywright.documents.sheets.page import Page
from baywright.documents.sheets.style import Style
from baywright.model.length import LengthUnit
from baywright.model.project import Project
from baywright.workings import Entry, Workings

TITLE = "Dimensions"
LEAD = (
    "Change a framed input and everything that rests on it is worked out anew; the other sheets stay as they were "
    "planned. The workings in words tell how the values came about when this workbook was written."
)
_VALUE = 3
_INCHES = 5
_WHOLE = frozenset({"rows", "bays", ""})


def write_dimensions(
    book: Workbook, sheet: Worksheet, project: Project, workings: Workings, formulas: FormulaCells
) -> None:
    """Write the sheet and define the names."""
    page = Page(sheet)
    entries = workings.entries
    header = page.table(_columns(project), entries)
    for row, entry in enumerate(entries, header + 1):
        if entry.is_input:
            write(sheet, row, _VALUE, entry.value, Style.GIVEN)
        else:
            formulas.write(sheet, row, _VALUE, entry.excel, entry.value, Style.LENGTH)
        if entry.unit in _WHOLE:
            sheet.cell(row=row, column=_VALUE).number_format = "0"
        book.defined_names[entry.cell] = DefinedName(entry.cell, attr_text=f"{TITLE}!$C${row}")
        if project.unit is LengthUnit.INCH and entry.unit == "mm":
            inches = round(entry.value / 25.4 * 32) / 32
            formulas.write(sheet, row, _INCHES, f"ROUND({entry.cell}/25.4*32,0)/32", inches, Style.INCHES)
    page.freeze(header, len(entries), first_columns=2)
    page.heading(TITLE, LEAD, project.name)


def _columns(project: Project) -> list[Column[Entry]]:
    columns: list[Column[Entry]] = [
        Column("Group", lambda entry: entry.group),
        Column("Dimension", lambda entry: _capital(entry.label), Style.NAME, 38.0),
        Column("Value", lambda entry: entry.value, Style.LENGTH),
        Column("Unit", lambda entry: entry.unit),
        Column("Working", lambda entry: "" if entry.is_input else entry.working, Style.TEXT, 62.0),
        Column("Name", lambda entry: entry.cell, Style.TEXT, 34.0),
        Column("Note", lambda entry: entry.note, Style.TEXT, 36.0),
    ]
    if project.unit is LengthUnit.INCH:
        columns.insert(_INCHES - 1, Column("Inches, to 1/32", lambda entry: None, Style.INCHES))
    return columns


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
