"""The hardware order: what is needed, what is added, packs, prices and cost as live formulas.

Laws: pack size and price are the buyer's to change; packs to buy and cost follow them in the workbook by the engine's
own rule. A missing price is said, and is not in the sum.
"""

from collections.abc import Sequence
from decimal import Decimal

from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.sheets.cell import FormulaCells, write
from baywright.documents.sheets.column import Column
from baywright.documents.sheets.measure import height_for
from baywright.documents.sheets.page import Page
from baywright.documents.sheets.style import Style
from baywright.model.caution import Topic, cautions_about
from baywright.model.count import count_words
from baywright.model.making import HardwareItem, Manufacture
from baywright.model.project import Project

TITLE = "Hardware order"
LEAD = (
    "What is needed for this plan and what is added for loss. Where no pack size of your own is entered it is common "
    "practice: write your shop's sizes and prices into the framed cells, and packs and cost follow."
)
NO_PRICE = "no price"
_SPECIFICATION, _NEEDED, _ALLOWANCE, _PACK_SIZE, _PACKS, _COST = 3, 4, 5, 7, 8, 10


def write_hardware(sheet: Worksheet, project: Project, manufacture: Manufacture, formulas: FormulaCells) -> None:
    """Write the sheet."""
    page = Page(sheet)
    items, currency = manufacture.hardware, project.pricing.currency
    columns: list[Column[HardwareItem]] = [
        Column("Number", lambda item: item.number, Style.NAME),
        Column("Item", lambda item: item.name, Style.NAME),
        Column("Specification", lambda item: item.specification, Style.TEXT, 40.0),
        Column("Needed", lambda item: item.needed, Style.MASS),
        Column("Allowance", lambda item: item.allowance, Style.MASS),
        Column("Unit", lambda item: item.unit),
        Column("Pack size", lambda item: item.pack_size, Style.GIVEN),
        Column("Packs to buy", lambda item: item.packs, Style.COUNT),
        Column(f"Price a pack, {currency}", lambda item: as_number(item.price), Style.GIVEN_MONEY),
        Column(f"Cost, {currency}", lambda item: as_number(item.cost), Style.MONEY),
        Column("Supplier", lambda item: item.supplier, Style.TEXT, 24.0),
        Column("Order number", lambda item: item.order_number, Style.TEXT, 18.0),
        Column("Note", note, Style.TEXT, 60.0),
    ]
    header = page.table(columns, items)
    for row, item in enumerate(items, header + 1):
        whole = all(float(amount).is_integer() for amount in (item.needed, item.allowance, item.pack_size))
        for column, value in ((_NEEDED, item.needed), (_ALLOWANCE, item.allowance)):
            write(sheet, row, column, value, Style.COUNT if whole else Style.METRES)
        sheet.cell(row=row, column=_PACK_SIZE).number_format = "0.##" if not whole else "0"
        if item.is_left_out:
            write(sheet, row, _PACKS, item.packs, Style.COUNT)
            write(sheet, row, _COST, 0.0, Style.MONEY)
            continue
        formulas.write(sheet, row, _PACKS, _packs(row), item.packs, Style.COUNT)
        cost = NO_PRICE if item.cost is None else float(item.cost)
        formulas.write(sheet, row, _COST, f'IF(ISNUMBER(I{row}),H{row}*I{row},"{NO_PRICE}")', cost, Style.MONEY)
    if items:
        _total(page, formulas, header, items)
    page.freeze(header, len(items), first_columns=2)
    page.cautions(cautions_about(Topic.RUNNERS, Topic.WALL))
    page.heading(TITLE, LEAD, project.name)


def note(item: HardwareItem) -> str:
    """The note of a line, with what the catalogue calls the item that is bought, or that none is."""
    bought = "at hand already, not bought" if item.is_left_out else item.item_name
    return "; ".join(filter(None, (bought, item.note)))


def _total(page: Page, formulas: FormulaCells, header: int, items: Sequence[HardwareItem]) -> None:
    row, first, last = header + len(items) + 2, header + 1, header + len(items)
    write(page.sheet, row, _SPECIFICATION, "Together, of what has a price", Style.NAME)
    total = sum((item.cost for item in items if item.cost is not None), start=Decimal(0))
    formulas.write(page.sheet, row, _COST, f"SUM(J{first}:J{last})", float(total), Style.MONEY)
    page.sheet.row_dimensions[row].height = height_for(1)
    page.next_row = row + 2
    if missing := sum(item.cost is None for item in items):
        without = f"{count_words(missing, 'line has', 'lines have')} no price"
        page.paragraph(f"{without} and {'is' if missing == 1 else 'are'} not in the sum.")


def as_number(amount: Decimal | None) -> float | None:
    """An amount of money as the number of a cell; nothing where it is not known."""
    return None if amount is None else float(amount)


def _packs(row: int) -> str:
    """Packs that cover need and allowance; the tiny number keeps noise from costing a pack."""
    return f"ROUNDUP((D{row}+E{row})/G{row}-0.000000001,0)"
