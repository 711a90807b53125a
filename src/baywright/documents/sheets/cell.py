"""Writing single cells: text that stays text, numbers, and formulas with the value that the engine found.

Laws: whatever a person typed arrives as text, also where it begins like a formula; a formula cell always carries the
engine's value beside it, for readers that do not calculate.
"""

import re

from openpyxl.cell import Cell
from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.sheets.style import Style

Value = str | float | int | None

_LIKE_A_FORMULA = ("=", "+", "-", "@")
_NOT_IN_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_ESCAPE = re.compile(r"_(?=x[0-9A-Fa-f]{4}_)")
MOST_CHARACTERS = 32_000
"""A cell holds 32,767 characters; a longer text is cut with “…”."""


class FormulaCells:
    """The formula cells of a workbook and the values that belong beside them, by sheet title and cell."""

    def __init__(self) -> None:
        self.values: dict[str, dict[str, float | str]] = {}

    def write(self, sheet: Worksheet, row: int, column: int, formula: str, value: float | str, style: Style) -> Cell:
        """Write a formula, given without its leading `=`, whose value is `value`."""
        cell = _cell(sheet, row, column)
        cell.value = f"={formula}"
        cell.style = style.value
        self.values.setdefault(sheet.title, {})[cell.coordinate] = value
        return cell


def write(sheet: Worksheet, row: int, column: int, value: Value, style: Style) -> Cell:
    """Write a text or number into a cell; None leaves it empty."""
    cell = _cell(sheet, row, column)
    if isinstance(value, str):
        cell.value = safe_text(value)
        cell.data_type = "s"
    else:
        cell.value = value
    cell.style = style.value
    if isinstance(value, str) and value.lstrip().startswith(_LIKE_A_FORMULA):
        cell.quotePrefix = True
    return cell


def safe_text(text: str) -> str:
    """The text without what a workbook cannot hold: control characters, escapes of other programs, too much."""
    even = _NOT_IN_XML.sub(" ", text.replace("\r\n", "\n").replace("\r", "\n"))
    if len(even) > MOST_CHARACTERS:
        even = even[:MOST_CHARACTERS] + "…"
    return _ESCAPE.sub("_x005F_", even)


def _cell(sheet: Worksheet, row: int, column: int) -> Cell:
    cell = sheet.cell(row=row, column=column)
    assert isinstance(cell, Cell), "cells that are merged away are never written"
    return cell
