"""The ordering workbook: what was planned, what to cut, what to buy, and every dimension as a live formula.

Laws: results in, bytes out; the same document gives the same bytes; no links to anything outside the file.
"""

import io
from collections.abc import Sequence

from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.package import finished
from baywright.documents.sheets import (
    checks,
    cost,
    cutting,
    dimensions,
    hardware,
    inventory,
    offcuts,
    options,
    parts,
    schedule,
    summary,
)
from baywright.documents.sheets.cell import FormulaCells, safe_text
from baywright.documents.sheets.style import add_styles
from baywright.model.cost import Cost
from baywright.model.cutting import CuttingPlan
from baywright.model.finding import Finding
from baywright.model.making import Manufacture
from baywright.model.option import Option
from baywright.model.plan import ArrangementReport, PlanResult
from baywright.model.project import Project
from baywright.workings import Workings


def write_workbook(
    project: Project,
    workings: Workings,
    report: ArrangementReport,
    plan: PlanResult | None,
    manufacture: Manufacture,
    findings: Sequence[Finding] = (),
    choice: Sequence[Option] = (),
    saw: CuttingPlan | None = None,
    costs: Cost | None = None,
) -> bytes:
    """The workbook as the content of an XLSX file.

    `report`, `manufacture` and `findings` are those of the project's present arrangement; `plan` is the planner's
    answer if that arrangement is still as planned, else None. `choice` are the options known for the project; they get
    a sheet where there are any. `saw` is how its parts are cut and `costs` what all of it costs, where they are known.
    """
    book = Workbook()
    add_styles(book)
    book.properties.creator = "Baywright"
    book.properties.title = safe_text(project.name)
    formulas = FormulaCells()
    first = book.active
    assert isinstance(first, Worksheet)
    first.title = summary.TITLE
    summary.write_summary(first, project, workings, report, plan, manufacture)
    inventory.write_inventory(book.create_sheet(inventory.TITLE), project)
    schedule.write_schedule(book.create_sheet(schedule.TITLE), project, manufacture)
    parts.write_parts(book.create_sheet(parts.TITLE), project, manufacture)
    hardware.write_hardware(book.create_sheet(hardware.TITLE), project, manufacture, formulas)
    if saw is not None:
        cutting.write_cutting(book.create_sheet(cutting.TITLE), project, manufacture, saw)
        offcuts.write_offcuts(book.create_sheet(offcuts.TITLE), project, saw)
    if costs is not None:
        cost.write_cost(book.create_sheet(cost.TITLE), project, costs)
    checks.write_checks(book.create_sheet(checks.TITLE), project, findings)
    if choice:
        options.write_options(book.create_sheet(options.TITLE), project, choice)
    dimensions.write_dimensions(book, book.create_sheet(dimensions.TITLE), project, workings, formulas)
    target = io.BytesIO()
    book.save(target)
    members = {f"xl/worksheets/sheet{number}.xml": title for number, title in enumerate(book.sheetnames, 1)}
    values = {name: formulas.values[title] for name, title in members.items() if title in formulas.values}
    return finished(target.getvalue(), values)
