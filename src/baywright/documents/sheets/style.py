"""How cells look: a few named styles that the reader of the workbook can change in one place.

Laws: only black on white and light greys carry meaning, so that a black-and-white print shows all; one font whose
metrics exist on every system, so that nothing is cut.
"""

from enum import StrEnum

from openpyxl import Workbook
from openpyxl.styles import Alignment, Border, Font, NamedStyle, PatternFill, Side

FONT = "Arial"
FONT_SIZE = 10.0

_HAIR = Side(style="hair", color="FF9AA0A6")
_THIN = Side(style="thin", color="FF3C4043")


class Style(StrEnum):
    """The names of the styles, as they stand in the workbook."""

    TITLE = "Baywright title"
    LEAD = "Baywright lead"
    HEADER = "Baywright header"
    NUMBER_HEADER = "Baywright number header"
    TEXT = "Baywright text"
    COUNT = "Baywright count"
    LENGTH = "Baywright length"
    MASS = "Baywright mass"
    METRES = "Baywright metres"
    INCHES = "Baywright inches"
    GIVEN = "Baywright given"
    GIVEN_MONEY = "Baywright given price"
    MONEY = "Baywright money"
    NAME = "Baywright name"
    NOTE = "Baywright note"


_FORMATS = {
    Style.COUNT: "#,##0",
    Style.LENGTH: "0.0#",
    Style.MASS: "0.0##",
    Style.METRES: "0.00",
    Style.INCHES: '# ??/??"""',
    Style.GIVEN: "0.0###",
    Style.GIVEN_MONEY: "#,##0.00",
    Style.MONEY: "#,##0.00",
}
"""Number formats; lengths are mm and shown to 0.01, inches as fractions of values rounded to 1/32."""


def add_styles(book: Workbook) -> None:
    """Register the styles and make the workbook's usual font ours."""
    # openpyxl has no public way to its "Normal" style, from which a spreadsheet takes the unit of column widths.
    normal = book._named_styles["Normal"]  # type: ignore[attr-defined]
    normal.font = Font(name=FONT, size=FONT_SIZE)
    for style in Style:
        book.add_named_style(_named(style))


def _named(style: Style) -> NamedStyle:
    named = NamedStyle(name=style.value)
    named.font = Font(name=FONT, size=FONT_SIZE)
    named.alignment = Alignment(vertical="center", horizontal="left", indent=1, wrap_text=True)
    if style in (Style.TITLE, Style.LEAD, Style.NOTE):
        named.alignment = Alignment(vertical="top", horizontal="left", wrap_text=style is not Style.TITLE)
        named.font = Font(name=FONT, size=14.0 if style is Style.TITLE else FONT_SIZE, bold=style is Style.TITLE)
        return named
    named.border = Border(bottom=_HAIR)
    if style in _FORMATS:
        named.number_format = _FORMATS[style]
        named.alignment = Alignment(vertical="center", horizontal="right")
    if style in (Style.HEADER, Style.NUMBER_HEADER):
        named.font = Font(name=FONT, size=FONT_SIZE, bold=True)
        named.fill = PatternFill("solid", fgColor="FFE3E5E8")
        named.border = Border(bottom=_THIN, top=_THIN)
        side = "left" if style is Style.HEADER else "right"
        named.alignment = Alignment(vertical="center", horizontal=side, indent=int(side == "left"), wrap_text=True)
    if style in (Style.GIVEN, Style.GIVEN_MONEY):
        named.fill = PatternFill("solid", fgColor="FFF7F1DC")
        named.border = Border(bottom=_THIN, top=_THIN, left=_THIN, right=_THIN)
    if style is Style.NAME:
        named.font = Font(name=FONT, size=FONT_SIZE, bold=True)
    return named
