"""The offcuts: rest pieces that are worth keeping, and which owned pieces are used up."""

from dataclasses import dataclass

from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.sheets.column import Column, with_inches
from baywright.documents.sheets.page import Page
from baywright.documents.sheets.style import Style
from baywright.model.cutting import CuttingPlan
from baywright.model.project import Project

TITLE = "Offcuts"
LEAD = (
    "Write the number on a rest piece as soon as it is cut. What counts as worth keeping is set among the cutting "
    "rules; the program puts these pieces into stock on request."
)


@dataclass(frozen=True)
class _Piece:
    what: str
    material: str
    source: str
    length_mm: float
    width_mm: float | None


def write_offcuts(sheet: Worksheet, project: Project, plan: CuttingPlan) -> None:
    """Write the sheet."""
    page = Page(sheet)
    pieces = [*_kept(plan), *_used(plan)]
    columns: list[Column[_Piece]] = [
        Column("What", lambda piece: piece.what, Style.NAME),
        Column("Material", lambda piece: piece.material),
        Column("Sheet or bar", lambda piece: piece.source, Style.TEXT, 30.0),
        Column("Length", lambda piece: piece.length_mm, Style.LENGTH),
        Column("Width", lambda piece: piece.width_mm, Style.LENGTH),
    ]
    header = page.table(with_inches(columns, project.unit), pieces)
    page.freeze(header, len(pieces))
    if not pieces:
        page.paragraph("Nothing that is worth keeping is left, and no owned piece is used.")
    page.heading(TITLE, LEAD, project.name)


def _kept(plan: CuttingPlan) -> list[_Piece]:
    return [
        _Piece("keep", cutting.material, layout.number, rest.length_mm, rest.width_mm)
        for cutting in plan.sheets
        for layout in cutting.layouts
        for rest in layout.rests
        if rest.is_reusable
    ] + [
        _Piece("keep", cutting.name, layout.number, layout.rest_mm, layout.width_mm or cutting.width_mm)
        for cutting in plan.bars
        for layout in cutting.layouts
        if layout.is_rest_reusable
    ]


def _used(plan: CuttingPlan) -> list[_Piece]:
    return [
        _Piece(
            "used up", cutting.material, f"{layout.number}: {layout.sheet_name}".rstrip(": "), layout.length_mm,
            layout.width_mm,
        )
        for cutting in plan.sheets
        for layout in cutting.layouts
        if layout.is_owned
    ] + [
        _Piece(
            "used up", cutting.name, f"{layout.number}: {layout.bar_name}".rstrip(": "), layout.length_mm,
            layout.width_mm,
        )
        for cutting in plan.bars
        for layout in cutting.layouts
        if layout.is_owned
    ]  # fmt: skip
