"""The cutting plan as a book for the saw: a page for each sheet with its cuts in order, then the bars.

Laws: A4 landscape; every cut of the plan stands on its sheet's pages, none is shortened away; the caution comes first.
"""

from collections.abc import Sequence

from baywright.documents.book import book
from baywright.documents.cutting.bar import bar_drawings
from baywright.documents.cutting.sheet import MARGIN, Words, draw_sheet, picture_height
from baywright.documents.cutting.text import cut_runs, run_words
from baywright.documents.lettering import wrapped
from baywright.documents.sketch import Sketch
from baywright.model.caution import Topic, cautions_about
from baywright.model.count import count_words
from baywright.model.cutting import BarCutting, CuttingPlan, SheetCutting, SheetLayout, missing_words
from baywright.model.making import Manufacture
from baywright.model.project import Project

_WIDTH, _HEIGHT = 842.0, 595.0
"""A4 landscape in points."""
_SIZE, _PITCH, _COLUMNS, _GUTTER = 7.2, 10.5, 2, 18.0
_LOWEST = 24.0


def cutting_pages(project: Project, manufacture: Manufacture, plan: CuttingPlan) -> bytes:
    """The whole cutting plan as the content of a PDF file."""
    names = {part.number: part.name for part in manufacture.parts}
    sheets = [_first(project, plan)]
    for cutting in plan.sheets:
        words = Words(cutting.material, project.unit, names, cutting.has_grain)
        for layout in cutting.layouts:
            sheets += _pages(layout, words)
    for bars in plan.bars:
        sheets += bar_drawings(bars, Words(bars.name, project.unit, names), (_WIDTH, _HEIGHT))
    return book(sheets, f"{project.name}: cutting plan")


def _first(project: Project, plan: CuttingPlan) -> Sketch:
    sheet = Sketch(_WIDTH, _HEIGHT)
    room, y = _WIDTH - 2 * MARGIN, _HEIGHT - 40.0
    sheet.text(MARGIN, y, f"{project.name}: cutting plan", 15.0, room=room, bold=True)
    y -= 30.0
    paragraphs = [
        *(_summary(cutting) for cutting in plan.sheets),
        *(
            f"{bars.name}: {count_words(len(bars.layouts), 'bar')}, {bars.bought} to buy{_missing(bars)}."
            for bars in plan.bars
        ),
        *(f"Not cut: {left.pieces} × {left.part_number}: {left.reason}" for left in plan.unplaced),
        *plan.remarks,
        *(f"{caution.title}: {caution.text}" for caution in cautions_about(Topic.CUTTING)),
        "Measure the first board and the first piece of every size before the rest is cut.",
    ]
    for paragraph in paragraphs:
        for line in wrapped(paragraph, room, 9.0):
            if y < _LOWEST:
                sheet.text(MARGIN, y, "… and more, told in the program and in the workbook.", 9.0)
                return sheet
            sheet.text(MARGIN, y, line, 9.0)
            y -= 13.0
        y -= 5.0
    return sheet


def _summary(cutting: SheetCutting) -> str:
    from_stock = len(cutting.layouts) - cutting.bought
    owned = f", {from_stock} from your own stock" if from_stock else ""
    sheets = count_words(len(cutting.layouts), "sheet")
    return f"{cutting.material}: {sheets}, {cutting.bought} to buy{owned}{_missing(cutting)}."


def _missing(cutting: SheetCutting | BarCutting) -> str:
    return f"; {missing_words(cutting.unplaced)}" if cutting.unplaced else ""


def _pages(layout: SheetLayout, words: Words) -> list[Sketch]:
    """The drawing with the cuts beneath it in two columns; as many further pages as the cuts need."""
    first = Sketch(_WIDTH, _HEIGHT)
    drawing = picture_height(layout)
    draw_sheet(first, layout, words, upper=_HEIGHT - 10.0)
    lines = _lines(layout, words)
    pages, y = [first], _HEIGHT - 10.0 - drawing - 4.0
    while lines:
        a_column = max(0, int((y - _LOWEST) // _PITCH))
        here, lines = lines[: a_column * _COLUMNS], lines[a_column * _COLUMNS :]
        _columns(pages[-1], here, y, a_column)
        if lines:
            pages.append(Sketch(_WIDTH, _HEIGHT))
            pages[-1].text(MARGIN, _HEIGHT - 22.0, f"{layout.number}: cuts, continued", 10.5, bold=True)
            y = _HEIGHT - 44.0
    return pages


def _column_room() -> float:
    return (_WIDTH - 2 * MARGIN - _GUTTER * (_COLUMNS - 1)) / _COLUMNS


def _lines(layout: SheetLayout, words: Words) -> list[str]:
    return [
        line
        for run in cut_runs(layout.cuts)
        for line in wrapped(f"{run.numbers}. {run_words(run, words.unit)}", _column_room(), _SIZE)
    ]


def _columns(sheet: Sketch, lines: Sequence[str], upper: float, a_column: int) -> None:
    for index, line in enumerate(lines):
        column, row = divmod(index, a_column)
        sheet.text(MARGIN + column * (_column_room() + _GUTTER), upper - row * _PITCH, line, _SIZE)
