"""One sheet as a page: heading, table, notes beneath, and how it prints.

Laws: every sheet prints on A4 landscape, one page wide, its header row repeated, pages numbered; the header stays in
sight while scrolling; columns are as wide as their texts up to a limit and rows as high as the wrapped text.
"""

import io
from collections.abc import Sequence
from itertools import zip_longest
from typing import TypeVar

from openpyxl.drawing.image import Image
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.header_footer import _HeaderFooterPart
from openpyxl.worksheet.pagebreak import Break
from openpyxl.worksheet.properties import PageSetupProperties
from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.sheets.cell import Value, safe_text, write
from baywright.documents.sheets.column import Column
from baywright.documents.sheets.measure import characters, height_for, line_count
from baywright.documents.sheets.style import Style
from baywright.model.caution import Caution

Row = TypeVar("Row")

_BOLD = (Style.HEADER, Style.NUMBER_HEADER, Style.NAME)
_LEAST_WIDTH = 5.0
_MARGIN_INCHES = 0.4
_TITLE_HEIGHT = 24.0
HEADING_ROWS = 3
_ROW_POINTS = 15.0
_PIXELS_PER_POINT = 96.0 / 72.0


class Page:
    """A sheet in the making; `next_row` is the first row that is still free."""

    def __init__(self, sheet: Worksheet, widths: Sequence[float] = ()) -> None:
        self.sheet = sheet
        self.next_row = HEADING_ROWS + 1
        self.widths = list(widths)

    def heading(self, title: str, lead: str, project_name: str) -> None:
        """Title in the first row, what the sheet is for in the second; call when the widths are known."""
        self._apply_widths()
        write(self.sheet, 1, 1, f"{title}: {project_name}", Style.TITLE)
        self.sheet.row_dimensions[1].height = _TITLE_HEIGHT
        self._spread(2, lead, Style.LEAD)
        self._print_as(title, project_name)

    def table(self, columns: Sequence[Column[Row]], rows: Sequence[Row]) -> int:
        """Write header and rows at `next_row`; answers the row of the header and moves on beneath the table."""
        header = self.next_row
        texts = [[column.read(row) for column in columns] for row in rows]
        table_widths = [
            _width(column, [values[index] for values in texts]) for index, column in enumerate(columns)
        ]  # fmt: skip
        self.widths = [max(pair) for pair in zip_longest(self.widths, table_widths, fillvalue=0.0)]
        styles = [column.style for column in columns]
        self._write_line(header, [column.title for column in columns], [_header_style(style) for style in styles])
        for number, values in enumerate(texts, header + 1):
            self._write_line(number, values, styles)
        self.next_row = header + len(rows) + 2
        return header

    def freeze(self, header: int, rows: int, first_columns: int = 0, *, repeats: bool = True) -> None:
        """Keep the header (and so many columns) in sight, and let the reader filter.

        `repeats` prints it on every page; not where other tables follow, over which it would be wrong.
        """
        sheet, last = self.sheet, get_column_letter(len(self.widths))
        sheet.freeze_panes = f"{get_column_letter(first_columns + 1)}{header + 1}"
        if repeats:
            sheet.print_title_rows = f"{header}:{header}"
        if rows:
            sheet.auto_filter.ref = f"A{header}:{last}{header + rows}"

    def paragraph(self, text: str, style: Style = Style.NOTE) -> None:
        """A text over the whole width, as high as it needs."""
        self._spread(self.next_row, text, style)
        self.next_row += 1

    def cautions(self, cautions: Sequence[Caution]) -> None:
        """The cautions that belong to this sheet, each a paragraph."""
        for caution in cautions:
            self.paragraph(f"{caution.title}: {caution.text}")

    def picture(self, png: bytes, most_width: float, most_height: float = float("inf")) -> None:
        """A picture at `next_row`, as large as fits into so many points; moves on beneath it."""
        image = Image(io.BytesIO(png))
        scale = min(most_width / image.width, most_height / image.height)
        width, height = image.width * scale, image.height * scale
        image.width, image.height = round(width * _PIXELS_PER_POINT), round(height * _PIXELS_PER_POINT)
        self.sheet.add_image(image, f"A{self.next_row}")
        end = self.next_row + int(height // _ROW_POINTS) + 2
        for row in range(self.next_row, end):  # programs differ in how high a row is that nothing is said of
            self.sheet.row_dimensions[row].height = _ROW_POINTS
        self.next_row = end

    def break_page(self) -> None:
        """What follows prints on a new page."""
        self.sheet.row_breaks.append(Break(id=self.next_row - 1))

    def _write_line(self, row: int, values: Sequence[Value], styles: Sequence[Style]) -> None:
        lines = 1
        for column, (value, style) in enumerate(zip(values, styles, strict=True), 1):
            write(self.sheet, row, column, value, style)
            if isinstance(value, str):
                lines = max(lines, line_count(value, self.widths[column - 1], style in _BOLD))
        self.sheet.row_dimensions[row].height = height_for(lines)

    def _spread(self, row: int, text: str, style: Style) -> None:
        width = max(1, len(self.widths))
        write(self.sheet, row, 1, text, style)
        if width > 1:
            self.sheet.merge_cells(start_row=row, start_column=1, end_row=row, end_column=width)
        self.sheet.row_dimensions[row].height = height_for(line_count(text, sum(self.widths), style is Style.NAME))

    def _apply_widths(self) -> None:
        for index, width in enumerate(self.widths, 1):
            self.sheet.column_dimensions[get_column_letter(index)].width = round(width, 1)

    def _print_as(self, title: str, project_name: str) -> None:
        sheet = self.sheet
        sheet.page_setup.orientation = "landscape"
        sheet.page_setup.paperSize = 9  # A4
        sheet.page_setup.fitToWidth = 1
        sheet.page_setup.fitToHeight = 0
        sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
        margins = sheet.page_margins
        margins.left = margins.right = _MARGIN_INCHES
        margins.top, margins.bottom = _MARGIN_INCHES, 0.7
        margins.header = margins.footer = 0.3
        footer = sheet.oddFooter
        assert footer is not None, "every sheet that openpyxl makes has a footer"
        footer.left, footer.center, footer.right = (
            _HeaderFooterPart(text=text)
            for text in (_plain_in_footer(project_name), _plain_in_footer(title), "page &P of &N")
        )


def _plain_in_footer(text: str) -> str:
    """Footers read `&` as a command; two of them print one. Long names are cut, a footer holds 255 characters."""
    even = " ".join(safe_text(text).split())
    return (even[:79] + "…" if len(even) > 80 else even).replace("&", "&&")


def _header_style(style: Style) -> Style:
    return Style.HEADER if style in (Style.TEXT, Style.NAME) else Style.NUMBER_HEADER


def _width(column: Column[Row], values: Sequence[Value]) -> float:
    """As wide as the longest value, at most the column's limit; the title may wrap, but not within a word."""
    words = max((characters(word, bold=True) for word in column.title.split()), default=0.0)
    longest = max((characters(_as_shown(value)) for value in values if value is not None), default=0.0)
    return max(_LEAST_WIDTH, words, min(longest, column.most_width))


def _as_shown(value: Value) -> str:
    return value if isinstance(value, str) else f"{value:.2f}"
