"""The parts list: every piece to cut, and how much of each material that is."""

from dataclasses import dataclass

from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.cautions import Topic, cautions_about
from baywright.documents.sheets.column import Column, with_inches
from baywright.documents.sheets.page import Page
from baywright.documents.sheets.style import Style
from baywright.making.material import mass_kg
from baywright.model.making import Manufacture, Part
from baywright.model.project import Project

TITLE = "Parts"
LEAD = (
    "Finished sizes, edging included where an edge is edged. Length runs with the grain where there is one. Measure "
    "the boards before cutting: a board sold as 18 mm is often thinner, and the plan follows the thickness entered."
)


@dataclass(frozen=True)
class _Sum:
    """How much of one material the parts are, without waste."""

    material: str
    pieces: int
    area_m2: float
    mass_kg: float


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
        Column("Material", lambda part: part.material),
        Column("Grain", lambda part: part.grain.value, Style.TEXT, 18.0),
        Column("Edging a piece", lambda part: part.edged_length_mm or None, Style.LENGTH),
        Column("Note", lambda part: part.note, Style.TEXT, 60.0),
    ]
    header = page.table(with_inches(columns, project.unit), manufacture.parts)
    page.freeze(header, len(manufacture.parts), first_columns=2)
    _write_sums(page, manufacture)
    page.cautions(cautions_about(Topic.CUTTING, Topic.STRENGTH))
    page.heading(TITLE, LEAD, project.name)


def _write_sums(page: Page, manufacture: Manufacture) -> None:
    page.paragraph("Material, without waste (add 10 to 20 % for cuts: common practice)", Style.NAME)
    columns: list[Column[_Sum | None]] = [
        Column("", lambda row: "", Style.TEXT),
        Column("Material", lambda row: row.material if row else "", Style.NAME),
        Column("Pieces", lambda row: row.pieces if row else None, Style.COUNT),
        Column("Area, m²", lambda row: row.area_m2 if row else None, Style.METRES),
        Column("Mass, about kg", lambda row: row.mass_kg if row else None, Style.COUNT),
    ]
    page.table(columns, _sums(manufacture))


def _sums(manufacture: Manufacture) -> list[_Sum]:
    sums = []
    for thickness, material in sorted({(part.thickness_mm, part.material) for part in manufacture.parts}):
        parts = [part for part in manufacture.parts if (part.thickness_mm, part.material) == (thickness, material)]
        area = sum(part.quantity * part.length_mm * part.width_mm for part in parts) / 1e6
        sums.append(_Sum(material, sum(part.quantity for part in parts), area, mass_kg(parts)))
    return sums
