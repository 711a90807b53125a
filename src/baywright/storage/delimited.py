"""Tables as text: CSV files of any usual separator and encoding, and what a spreadsheet puts on the clipboard.

Laws: the separator is the one that cuts the rows most evenly, ties going to tab, semicolon, comma, bar in this order,
so that a comma in `4,5` never beats a semicolon; a quotation mark that is not closed is an error, for it would swallow
the rest of the file in one cell.
"""

import contextlib
import csv
import io
import itertools
from collections import Counter
from collections.abc import Iterator

from baywright.storage.table import MOST_COLUMNS, MOST_ROWS, Row, filled
from baywright.storage.trouble import TableError

_SEPARATORS = ("\t", ";", ",", "|")
_NO_SEPARATOR = "\x1f"
_LOOKED_AT_ROWS = 100
_MOST_RAW_CELLS = 20_000
"""More cells in a row, even empty ones, than any spreadsheet writes."""


def decode_text(data: bytes) -> tuple[str, tuple[str, ...]]:
    """The text in a file's bytes, and remarks about its encoding. Raises `TableError` where it is no text."""
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        try:
            return data.decode("utf-16"), ()
        except UnicodeDecodeError:
            raise TableError("is damaged: it begins as a text in UTF-16 but does not go on as one.") from None
    if b"\0" in data:
        raise TableError("is not a table: it is neither a text (CSV) nor a workbook (XLSX).")
    try:
        return data.decode("utf-8-sig"), ()
    except UnicodeDecodeError:
        text = data.decode("cp1252", errors="replace")
        return text, ("The text is not UTF-8 and was read as Windows-1252; look at letters with accents.",)


def read_delimited(text: str) -> tuple[Row, ...]:
    """The rows of a text table. Raises `TableError` (its message goes on after the file's name)."""
    if text.startswith("sep=") and text[5:6] in ("\n", "\r"):
        separator, text = text[4], text[5:].lstrip("\r\n")
    else:
        separator = _best_separator(text)
    return _filled_rows(_records(text, separator))


def read_pasted(text: str) -> tuple[Row, ...]:
    """The rows of a pasted text: cut at tabs where there are any. Raises `TableError`."""
    if "\t" not in text:
        return read_delimited(text)
    try:
        return _filled_rows(_records(text, "\t"))
    except TableError:
        # Some programs quote cells on the clipboard and some do not: 15 19/32" may begin a cell with a quotation mark.
        lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
        return _filled_rows(enumerate((line.split("\t") for line in lines), start=1))


def _records(text: str, separator: str) -> Iterator[tuple[int, list[str]]]:
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    number = 0
    try:
        for number, cells in enumerate(reader, start=1):
            yield number, cells
    except csv.Error as trouble:
        if "field larger" in str(trouble):
            why = "a cell is longer than any text could be; a quotation mark may be missing"
        elif "unexpected end" in str(trouble):
            why = "a quotation mark is opened and never closed"
        else:
            why = "a quotation mark stands inside a quoted cell; write it twice"
        raise TableError(f"has a fault in row {number + 1}: {why}.") from None


def _filled_rows(records: Iterator[tuple[int, list[str]]] | enumerate[list[str]]) -> tuple[Row, ...]:
    rows: list[Row] = []
    for number, cells in records:
        if len(cells) > _MOST_RAW_CELLS:
            raise TableError(f"has {len(cells):,} columns in row {number}; at most {MOST_COLUMNS} are read.")
        row = filled(number, cells)
        if row is None:
            continue
        if len(row.cells) > MOST_COLUMNS:
            raise TableError(f"has {len(row.cells)} columns in row {number}; at most {MOST_COLUMNS} are read.")
        rows.append(row)
        if len(rows) > MOST_ROWS:
            raise TableError(f"has more than {MOST_ROWS:,} rows; split it into several.")
    return tuple(rows)


def _best_separator(text: str) -> str:
    evenness = {separator: _evenness(text, separator) for separator in _SEPARATORS}
    best = max(_SEPARATORS, key=lambda separator: evenness[separator])  # the first of equals
    if evenness[best] > 0:
        return best
    # A fault in the very first row leaves nothing to compare: cut where it shows, so that it is told.
    return next((each for each in _SEPARATORS if each in text and _is_faulty(text, each)), _NO_SEPARATOR)


def _is_faulty(text: str, separator: str) -> bool:
    try:
        next(_records(text, separator), None)
    except TableError:
        return True
    return False


def _evenness(text: str, separator: str) -> float:
    """The share of rows with the most usual number of cells; 0 where that is one cell, so that nothing is cut."""
    widths: list[int] = []
    # What was cut before a fault still counts: the fault is told once the separator is known.
    with contextlib.suppress(TableError):
        widths += (len(cells) for _, cells in itertools.islice(_records(text, separator), _LOOKED_AT_ROWS) if cells)
    if not widths:
        return 0.0
    width, count = Counter(widths).most_common(1)[0]
    return count / len(widths) if width > 1 else 0.0
