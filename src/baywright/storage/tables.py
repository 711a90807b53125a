"""Reading a table from a CSV file, a workbook or a pasted text, whichever it turns out to be.

Laws: the kind is told by the content, not by the name; nothing hostile is opened in this process; whatever is wrong is
one `TableError` that names the file.
"""

import os
from pathlib import Path

from baywright.storage.columns import find_headings
from baywright.storage.delimited import decode_text, read_delimited, read_pasted
from baywright.storage.isolation import run_apart
from baywright.storage.source import read_source
from baywright.storage.spreadsheet import read_sheet
from baywright.storage.table import MOST_BYTES, Row, Table, filled
from baywright.storage.trouble import TableError, named

_ZIP_SIGN = b"PK\x03\x04"
_OLD_OFFICE_SIGN = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"


def read_table(path: Path, sheet: str = "") -> Table:
    """The table in a CSV or XLSX file; `sheet` chooses one of a workbook, else the first that holds something.

    Raises `TableError`.
    """
    data = read_source(path, MOST_BYTES, TableError)
    try:
        if data.startswith(_OLD_OFFICE_SIGN):
            raise TableError("is protected by a password or of the old format XLS; save it as XLSX without a password.")
        table = _workbook_table(path, sheet) if data.startswith(_ZIP_SIGN) else _text_table(path, data)
        if not table.filled_rows:
            raise TableError("holds no table: all of it is empty.")
    except TableError as trouble:
        raise TableError(f"{named(path)} {trouble}") from None
    return table


def table_from_text(text: str) -> Table:
    """The table in a text pasted from a spreadsheet or typed. Raises `TableError`."""
    try:
        if len(text) > MOST_BYTES:
            raise TableError("is too long to be read.")
        rows = read_pasted(text)
        if not rows:
            raise TableError("is empty.")
    except TableError as trouble:
        raise TableError(f"The pasted text {trouble}") from None
    return Table(source="the pasted text", filled_rows=rows, heading_index=find_headings(rows))


def _text_table(path: Path, data: bytes) -> Table:
    text, remarks = decode_text(data)
    rows = read_delimited(text)
    return Table(source=path.name, filled_rows=rows, heading_index=find_headings(rows), remarks=remarks)


def _workbook_table(path: Path, sheet: str) -> Table:
    cells = run_apart(read_sheet, os.path.abspath(path), sheet)
    rows: tuple[Row, ...] = tuple(row for number, texts in cells.rows if (row := filled(number, texts)))
    remarks: tuple[str, ...] = ()
    if cells.formulas_without_value:
        remarks = (
            f"{cells.formulas_without_value} cells (the first is {cells.first_of_them}) hold formulas whose results "
            "are not stored in the file, and are read as empty. Open it in a spreadsheet program, save it, and import "
            "it again.",
        )
    return Table(
        source=path.name,
        filled_rows=rows,
        heading_index=find_headings(rows),
        sheet=cells.sheet,
        sheets=cells.sheets,
        remarks=remarks,
    )
