"""The cutting sheet: what to buy, then every sheet drawn to scale with its cuts in their order, then the bars.

Laws: a page for each sheet; where there are very many, the drawings end and the cuts go on, and the sheet says so.
"""

from collections.abc import Sequence

from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.cutting.bar import bar_drawings
from baywright.documents.cutting.sheet import Words, sheet_drawing
from baywright.documents.cutting.text import CutRun, cut_runs
from baywright.documents.sheets.column import Column, with_inches
from baywright.documents.sheets.hardware import NO_PRICE, as_number
from baywright.documents.sheets.page import Page
from baywright.documents.sheets.style import Style
from baywright.model.caution import Topic, cautions_about
from baywright.model.cutting import BarCutting, CuttingPlan, SheetCutting, SheetLayout, Unplaced, missing_words
from baywright.model.making import Manufacture
from baywright.model.project import Project

TITLE = "Cutting"
LEAD = (
    "Sheet by sheet: first the drawing, then the cuts in the order of sawing. Measures of a cut are what the fence is "
    "set to; the blade's kerf is reckoned with and lies beside it."
)
MOST_PICTURES = 40
_PICTURE_WIDTH, _PICTURE_HEIGHT = 600.0, 341.0
"""So that some cuts stand under the picture on its page, under a square one too."""


def write_cutting(sheet: Worksheet, project: Project, manufacture: Manufacture, plan: CuttingPlan) -> None:
    """Write the sheet with its pictures."""
    page = Page(sheet)
    names = {part.number: part.name for part in manufacture.parts}
    _summary(page, project, plan)
    _left_out(page, plan.unplaced)
    for remark in plan.remarks:
        page.paragraph(remark)
    page.cautions(cautions_about(Topic.CUTTING))
    pictures = 0
    for cutting in plan.sheets:
        words = Words(cutting.material, project.unit, names, cutting.has_grain)
        for layout in cutting.layouts:
            page.break_page()
            if pictures < MOST_PICTURES:
                page.picture(sheet_drawing(layout, words).to_bytes("png", 110), _PICTURE_WIDTH, _PICTURE_HEIGHT)
            else:
                page.paragraph(f"{layout.number} of {cutting.material}: no drawing here, see the book of cuts.")
            pictures += 1
            _cuts(page, project, layout)
    for bars in plan.bars:
        page.break_page()
        for drawing in bar_drawings(bars, Words(bars.name, project.unit, names)):
            page.picture(drawing.to_bytes("png", 110), _PICTURE_WIDTH)
    page.heading(TITLE, LEAD, project.name)


def _summary(page: Page, project: Project, plan: CuttingPlan) -> None:
    columns: list[Column[SheetCutting | BarCutting]] = [
        Column("Material", lambda each: each.material if isinstance(each, SheetCutting) else each.name, Style.NAME),
        Column("Sheets or bars", lambda each: len(each.layouts), Style.COUNT),
        Column("To buy", lambda each: each.bought, Style.COUNT),
        Column("Owned", lambda each: len(each.layouts) - each.bought, Style.COUNT),
        Column(
            f"Cost, {project.pricing.currency}",
            lambda each: NO_PRICE if each.cost is None else as_number(each.cost),
            Style.MONEY,
        ),
        Column("How good", _quality, Style.TEXT, 44.0),
    ]
    each: list[SheetCutting | BarCutting] = [*plan.sheets, *plan.bars]
    page.table(columns, each)


def _quality(cutting: SheetCutting | BarCutting) -> str:
    if cutting.unplaced:
        return missing_words(cutting.unplaced)
    if cutting.is_proved:
        return "proved: no cutting costs less"
    return "not proved best" if cutting.gap is None else f"at most {cutting.gap:.1%} better is possible"


def _left_out(page: Page, unplaced: Sequence[Unplaced]) -> None:
    if not unplaced:
        return
    columns: list[Column[Unplaced]] = [
        Column("Not cut", lambda left: left.part_number, Style.NAME),
        Column("Pieces", lambda left: left.pieces, Style.COUNT),
        Column("Why", lambda left: left.reason, Style.TEXT, 60.0),
    ]
    page.table(columns, unplaced)


def _cuts(page: Page, project: Project, layout: SheetLayout) -> None:
    columns: list[Column[CutRun]] = [
        Column(f"Cuts of {layout.number}", lambda run: run.numbers, Style.NAME),
        Column("Panel", lambda run: run.panel, Style.TEXT, 24.0),
        Column("Way", lambda run: run.way),
        Column("Times", lambda run: len(run.cuts), Style.COUNT),
        Column("Fence", lambda run: run.measure_mm, Style.LENGTH),
        Column("Gives", lambda run: run.gives, Style.TEXT, 60.0),
    ]
    page.table(with_inches(columns, project.unit), cut_runs(layout.cuts))
