"""The cost sheet: every thing to buy, then the sums by material and by bay, tax, and what has no price.

Law: a missing price is said and is in no sum.
"""

from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.sheets.column import Column
from baywright.documents.sheets.hardware import NO_PRICE, as_number
from baywright.documents.sheets.page import Page
from baywright.documents.sheets.style import Style
from baywright.model.cost import Cost, CostLine, CostShare
from baywright.model.count import count_words
from baywright.model.project import Project

TITLE = "Cost"
LEAD = "What the run costs and weighs. Offcuts that are owned cost nothing; work is not reckoned."


def write_cost(sheet: Worksheet, project: Project, cost: Cost) -> None:
    """Write the sheet."""
    page = Page(sheet)
    currency = cost.currency
    lines: list[Column[CostLine]] = [
        Column("For", lambda line: line.group.value),
        Column("Number", lambda line: line.number),
        Column("Item", lambda line: line.name, Style.NAME, 40.0),
        Column("Quantity", lambda line: line.quantity, _quantity_style(cost)),
        Column("Unit", lambda line: line.unit),
        Column(f"Price, {currency}", lambda line: _money(as_number(line.unit_price)), Style.MONEY),
        Column(f"Cost, {currency}", lambda line: _money(as_number(line.cost)), Style.MONEY),
        Column("Supplier", lambda line: line.supplier, Style.TEXT, 24.0),
        Column("Note", lambda line: line.note, Style.TEXT, 40.0),
    ]
    header = page.table(lines, cost.lines)
    page.break_page()
    for title, shares in (("Material", cost.by_material), ("Bay", cost.by_bay)):
        columns: list[Column[CostShare]] = [
            Column(title, lambda share: share.name, Style.NAME, 40.0),
            Column(f"Cost, {currency}", lambda share: as_number(share.cost), Style.MONEY),
            Column("Prices missing", lambda share: share.missing or None, Style.COUNT),
            Column("Mass, kg", lambda share: share.mass_kg, Style.MASS),
        ]
        page.table(columns, shares)
    sums = [
        ("Without tax", cost.net),
        (f"Value added tax, {project.pricing.vat_percent:g} %", cost.vat),
        ("With tax", cost.gross),
    ]
    page.table(
        [
            Column("Together, of what has a price", lambda pair: pair[0], Style.NAME, 40.0),
            Column(f"Sum, {currency}", lambda pair: as_number(pair[1]), Style.MONEY),
        ],
        sums,
    )
    if cost.missing:
        page.paragraph(
            f"{count_words(len(cost.missing), 'price is', 'prices are')} missing and in no sum: "
            f"{', '.join(cost.missing)}."
        )
    page.freeze(header, len(cost.lines), repeats=False)
    page.heading(TITLE, LEAD, project.name)


def _quantity_style(cost: Cost) -> Style:
    """Whole numbers where there are no others."""
    return Style.COUNT if all(line.quantity.is_integer() for line in cost.lines) else Style.MASS


def _money(amount: float | None) -> float | str:
    return NO_PRICE if amount is None else amount
