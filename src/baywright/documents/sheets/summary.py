"""The summary sheet: the front elevation, what was planned and how well, what is open, and the cautions."""

from collections.abc import Sequence

from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.elevation import elevation
from baywright.documents.facts import Fact, facts
from baywright.documents.sheets.column import Column
from baywright.documents.sheets.page import Page
from baywright.documents.sheets.style import Style
from baywright.model.caution import CAUTIONS
from baywright.model.making import Manufacture
from baywright.model.plan import ArrangementReport, PlanResult
from baywright.model.project import Project
from baywright.workings import Workings

TITLE = "Summary"
LEAD = "Read the cautions before anything is cut, drilled, lifted or fixed."
_WIDTHS = (34.0, 108.0)
_PICTURE_WIDTH, _PICTURE_HEIGHT = 740.0, 420.0


def write_summary(
    sheet: Worksheet,
    project: Project,
    workings: Workings,
    report: ArrangementReport,
    plan: PlanResult | None,
    manufacture: Manufacture,
) -> None:
    """Write the sheet with its picture."""
    page = Page(sheet, _WIDTHS)
    drawn = elevation(project, workings, manufacture.schedule, "png", fronts=manufacture.fronts)
    page.picture(drawn, _PICTURE_WIDTH, _PICTURE_HEIGHT)
    page.break_page()
    for title, lines in facts(project, workings, report, plan, manufacture):
        _section(page, title, lines)
    _section(page, "Cautions", [Fact(caution.title, caution.text) for caution in CAUTIONS])
    sheet.freeze_panes = "A4"
    sheet.print_title_rows = "1:1"
    page.heading(TITLE, LEAD, project.name)


def _section(page: Page, title: str, lines: Sequence[Fact]) -> None:
    if not lines:
        return
    columns: list[Column[Fact]] = [
        Column(title, lambda fact: fact.what, Style.NAME, _WIDTHS[0]),
        Column("", lambda fact: fact.words, Style.TEXT, _WIDTHS[1]),
    ]
    page.table(columns, lines)
