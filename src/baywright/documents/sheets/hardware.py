"""The hardware order: what is needed, what is added, how it is packed, and the packs to buy as a live formula.

Laws: the pack size is the buyer's to change; packs to buy follow it in the workbook by the engine's own rule.
"""

from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.cautions import Topic, cautions_about
from baywright.documents.sheets.cell import FormulaCells, write
from baywright.documents.sheets.column import Column
from baywright.documents.sheets.page import Page
from baywright.documents.sheets.style import Style
from baywright.model.making import HardwareItem, Manufacture
from baywright.model.project import Project

TITLE = "Hardware order"
LEAD = (
    "What is needed for this plan and what is added for loss. Pack sizes are common practice: write your shop's into "
    "the framed cells, and the packs to buy follow."
)
_NEEDED, _ALLOWANCE, _PACK_SIZE, _PACKS = 4, 5, 7, 8


def write_hardware(sheet: Worksheet, project: Project, manufacture: Manufacture, formulas: FormulaCells) -> None:
    """Write the sheet."""
    page = Page(sheet)
    items = manufacture.hardware
    columns: list[Column[HardwareItem]] = [
        Column("Number", lambda item: item.number, Style.NAME),
        Column("Item", lambda item: item.name, Style.NAME),
        Column("Specification", lambda item: item.specification, Style.TEXT, 40.0),
        Column("Needed", lambda item: item.needed, Style.MASS),
        Column("Allowance", lambda item: item.allowance, Style.MASS),
        Column("Unit", lambda item: item.unit),
        Column("Pack size", lambda item: item.pack_size, Style.GIVEN),
        Column("Packs to buy", lambda item: item.packs, Style.COUNT),
        Column("Note", lambda item: item.note, Style.TEXT, 60.0),
    ]
    header = page.table(columns, items)
    for row, item in enumerate(items, header + 1):
        whole = item.unit != "m"
        for column, value in ((_NEEDED, item.needed), (_ALLOWANCE, item.allowance)):
            write(sheet, row, column, value, Style.COUNT if whole else Style.METRES)
        sheet.cell(row=row, column=_PACK_SIZE).number_format = "0.##" if not whole else "0"
        formulas.write(sheet, row, _PACKS, _packs(row), item.packs, Style.COUNT)
    page.freeze(header, len(items), first_columns=2)
    page.cautions(cautions_about(Topic.RUNNERS, Topic.WALL))
    page.heading(TITLE, LEAD, project.name)


def _packs(row: int) -> str:
    """Packs that cover need and allowance; the tiny number keeps noise from costing a pack."""
    return f"ROUNDUP((D{row}+E{row})/G{row}-0.000000001,0)"
