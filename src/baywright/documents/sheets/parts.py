"""The parts list: every piece to cut, with its finished size, material, grain and edging."""

from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.sheets.column import Column, with_inches
from baywright.documents.sheets.page import Page
from baywright.documents.sheets.style import Style
from baywright.model.caution import Topic, cautions_about
from baywright.model.making import Manufacture, Part
from baywright.model.project import Project

TITLE = "Parts"
LEAD = (
    "Finished sizes have the edging on, cut sizes do not: the saw cuts to these. Length runs with the grain where "
    "there is one. Start and end are the lower or left and the upper or right end; mirrored pieces have their holes "
    "and grooves on the other hand. Measure the boards before cutting: a board sold as 18 mm is often thinner, and the "
    "plan follows the thickness entered."
)
UNKNOWN = "not known"


def write_parts(sheet: Worksheet, project: Project, manufacture: Manufacture) -> None:
    """Write the sheet."""
    page = Page(sheet)
    columns: list[Column[Part]] = [
        Column("Number", lambda part: part.number, Style.NAME),
        Column("Part", lambda part: part.name, Style.NAME, 30.0),
        Column("Quantity", lambda part: part.quantity, Style.COUNT),
        Column("Length", lambda part: part.length_mm, Style.LENGTH),
        Column("Width", lambda part: part.width_mm, Style.LENGTH),
        Column("Thickness", lambda part: part.thickness_mm, Style.LENGTH),
        Column("Cut length", lambda part: part.cut_length_mm, Style.LENGTH),
        Column("Cut width", lambda part: part.cut_width_mm, Style.LENGTH),
        Column("Material", lambda part: part.material),
        Column("Grain", lambda part: part.grain.value, Style.TEXT, 18.0),
        Column("Edged", lambda part: ", ".join(side.value for side in part.banded), Style.TEXT, 18.0),
        Column("Mirrored", lambda part: part.mirrored or None, Style.COUNT),
        Column("Mass a piece, kg", lambda part: UNKNOWN if part.mass_kg is None else part.mass_kg, Style.MASS),
        Column("Note", lambda part: part.note, Style.TEXT, 60.0),
    ]
    header = page.table(with_inches(columns, project.unit), manufacture.parts)
    page.freeze(header, len(manufacture.parts), first_columns=2)
    page.cautions(cautions_about(Topic.CUTTING, Topic.STRENGTH))
    page.heading(TITLE, LEAD, project.name)
