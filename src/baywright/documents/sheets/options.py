"""The options sheet: the shapes that the run could have, to talk over with those who will use it.

Law: what is not known yet says so; it is never nothing, which could be read as none.
"""

from collections.abc import Sequence

from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.sheets.cell import Value
from baywright.documents.sheets.column import Column, with_inches
from baywright.documents.sheets.page import Page
from baywright.documents.sheets.style import Style
from baywright.model.option import Option
from baywright.model.project import Project

TITLE = "Options"
LEAD = (
    "Shapes of the run that hold every box and that no other one beats. Weighed are fewer bays, a worktop nearer to "
    "the wished range and then lower, more left-over width, longer runners, fewer sheets and less cost where they are "
    "known, the overhang that is set, and uprights of its own for each bay. Free rows and handling are told for "
    "comparison; less handling is easier. Sheets and cost are of a quick layout; the sheet Cutting may need fewer."
)
UNKNOWN = "not known yet"


def write_options(sheet: Worksheet, project: Project, options: Sequence[Option]) -> None:
    """Write the sheet."""
    page = Page(sheet)
    columns: list[Column[Option]] = [
        Column("Now", _standing, Style.NAME),
        Column("Bays", lambda option: option.bays, Style.COUNT),
        Column("Rows", lambda option: option.rows, Style.COUNT),
        Column("Worktop height", lambda option: option.unit_height_mm, Style.LENGTH),
        Column("Run length", lambda option: option.run_length_mm, Style.LENGTH),
        Column("Left over", lambda option: option.left_over_mm, Style.LENGTH),
        Column("Overhang in front", lambda option: option.overhang_front_mm, Style.LENGTH),
        Column("Overhang at each side", lambda option: option.overhang_side_mm, Style.LENGTH),
        Column("Uprights", lambda option: option.uprights.value),
        Column("Runner length", lambda option: option.runner_length_mm, Style.LENGTH),
        Column("Free rows", lambda option: option.free_rows, Style.COUNT),
        Column("Handling, index points a month", lambda option: option.handling, Style.METRES),
        Column("Sheets", lambda option: _known(option.sheets)),
        Column("Cost", lambda option: _known(option.cost)),
    ]
    header = page.table(with_inches(columns, project.unit), options)
    page.freeze(header, len(options), first_columns=3)
    page.heading(TITLE, LEAD, project.name)


def _known(value: float | None) -> Value:
    return UNKNOWN if value is None else value


def _standing(option: Option) -> str:
    words = ("present shape" if option.is_present else "", "beaten by another" if option.is_beaten else "")
    return ", ".join(filter(None, words))
