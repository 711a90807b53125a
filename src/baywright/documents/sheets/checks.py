"""The checks sheet: every finding with its inputs, formula, value, limit and source, gravest first."""

from collections.abc import Sequence

from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.sheets.column import Column
from baywright.documents.sheets.page import Page
from baywright.documents.sheets.style import Style
from baywright.model.caution import Topic, cautions_about
from baywright.model.finding import Finding
from baywright.model.project import Project

TITLE = "Checks"
LEAD = (
    "What was computed about strength, stability and people, gravest first; values and limits in the unit beside them. "
    "Each is a computation with stated assumptions, not a permission: data sheets, local codes and licensed practice "
    "come first."
)


def write_checks(sheet: Worksheet, project: Project, findings: Sequence[Finding]) -> None:
    """Write the sheet."""
    page = Page(sheet)
    columns: list[Column[Finding]] = [
        Column("Judgement", lambda finding: finding.severity.words, Style.NAME),
        Column("Check", lambda finding: finding.kind.words),
        Column("What", lambda finding: finding.subject, Style.NAME, 30.0),
        Column("Finding", lambda finding: finding.message, Style.TEXT, 46.0),
        Column("Value", lambda finding: finding.value, Style.LENGTH),
        Column("Limit", lambda finding: finding.limit, Style.LENGTH),
        Column("Unit", lambda finding: finding.unit),
        Column("Inputs", lambda finding: "; ".join(f"{g.name}: {g.value}" for g in finding.given), Style.TEXT, 40.0),
        Column("Formula", lambda finding: finding.formula, Style.TEXT, 30.0),
        Column("What would mend it", lambda finding: " ".join(m.text for m in finding.mends), Style.TEXT, 40.0),
        Column("Source", lambda finding: finding.source, Style.TEXT, 36.0),
    ]
    header = page.table(columns, findings)
    page.freeze(header, len(findings), first_columns=3)
    page.cautions(cautions_about(Topic.WALL, Topic.LIFTING, Topic.STRENGTH))
    page.heading(TITLE, LEAD, project.name)
