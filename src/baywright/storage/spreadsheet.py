"""Workbooks (XLSX): looked over before they are opened, then read row by row, values only.

Laws: sizes, number and packing of the members are judged before anything is unpacked, and a document type declaration
anywhere is refused; the sheet is read within caps on rows, columns and cells. Runs in a process apart
(`baywright.storage.isolation`), which holds the caps on memory and time.
"""

import contextlib
import datetime
import zipfile
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Any

from baywright.storage.table import MOST_COLUMNS, MOST_ROWS, column_letters
from baywright.storage.trouble import TableError

MOST_MEMBERS = 2_000
MOST_MEMBER_BYTES = 100_000_000
MOST_UNPACKED_BYTES = 200_000_000
MOST_PACKING_RATIO = 200
_SMALL_MEMBER_BYTES = 1_000_000
"""Below this size any packing ratio is harmless (a table of equal cells packs well)."""

MOST_CELLS = 4_000_000
MOST_CELL_CHARACTERS = 40_000
"""A spreadsheet program writes at most 32,767 (its own limit, from memory)."""
_CHUNK_BYTES = 1_000_000
_DECLARATIONS = tuple(
    sign.encode(encoding)
    for sign in ("<!DOCTYPE", "<!doctype", "<!ENTITY")
    for encoding in ("ascii", "utf-16-le", "utf-16-be")
)
_LONGEST_DECLARATION = max(map(len, _DECLARATIONS))


@dataclass(frozen=True)
class SheetCells:
    """The filled rows of one sheet, as (row number, cell texts)."""

    sheet: str
    sheets: tuple[str, ...]
    rows: tuple[tuple[int, list[str]], ...]
    formulas_without_value: int = 0
    first_of_them: str = ""
    """Cell address, e.g. `C5`."""


def read_sheet(path: str, sheet: str) -> SheetCells:
    """The sheet of that name, or the first that holds something where `sheet` is empty.

    Raises `TableError` for what is hostile, too large or not there; any other exception means a damaged workbook.
    """
    look_over(path)
    with _opened(path, values=True) as workbook:
        cells = _read(workbook, sheet)
    if not _has_formulas(path):
        return cells
    with _opened(path, values=False) as workbook:
        count, first = _formulas_without_value(workbook[cells.sheet], dict(cells.rows))
    return replace(cells, formulas_without_value=count, first_of_them=first)


@contextlib.contextmanager
def _opened(path: str, values: bool) -> Iterator[Any]:
    """The workbook with the stored values of its formulas, or with the formulas themselves."""
    import openpyxl  # takes a while, and only the process apart needs it

    # A stream, for the library judges a path by its suffix.
    with open(path, "rb") as file:
        workbook = openpyxl.load_workbook(file, read_only=True, data_only=values, keep_links=False)
        yield workbook
        workbook.close()


def _read(workbook: Any, sheet: str) -> SheetCells:
    names = tuple(workbook.sheetnames)
    wanted = [each for each in workbook.worksheets if not sheet or each.title == sheet]
    if not wanted:
        raise TableError(f"has no sheet “{sheet}”; it has {', '.join(f'“{name}”' for name in names) or 'none'}.")
    for worksheet in wanted:
        rows = tuple(_filled(worksheet))
        if rows:
            break
    return SheetCells(worksheet.title, names, rows)


def look_over(path: str) -> None:
    """Judge a workbook by its table of contents. Raises `TableError` where it must not be opened."""
    try:
        archive = zipfile.ZipFile(path)
    except zipfile.BadZipFile:
        raise TableError("is damaged, or not a workbook.") from None
    with archive:
        members = archive.infolist()
        if len(members) > MOST_MEMBERS:
            raise TableError("is refused: it holds far more parts than any workbook does.")
        if any(member.flag_bits & 0x1 for member in members):
            raise TableError("is protected by a password; save it without one.")
        if "xl/workbook.xml" not in {member.filename.lower() for member in members}:
            raise TableError("is not a workbook (XLSX); save the table as XLSX or CSV.")
        for member in members:
            _judge_size(member)
        if sum(member.file_size for member in members) > MOST_UNPACKED_BYTES:
            raise TableError("is too large to be read once unpacked; save the table alone, as CSV.")
        for member in members:
            if member.filename.lower().endswith((".xml", ".rels")):
                _refuse_declarations(archive, member)


def _judge_size(member: zipfile.ZipInfo) -> None:
    if member.file_size > MOST_MEMBER_BYTES:
        raise TableError("is too large to be read once unpacked; save the table alone, as CSV.")
    is_small = member.file_size <= _SMALL_MEMBER_BYTES
    if not is_small and member.file_size > MOST_PACKING_RATIO * max(1, member.compress_size):
        raise TableError("is refused: it is packed as no workbook is (it would grow more than 200 times).")


def _refuse_declarations(archive: zipfile.ZipFile, member: zipfile.ZipInfo) -> None:
    """Refuse a document type or entity declaration, by which a small text can unpack to a huge one."""
    with archive.open(member) as file:
        tail = b""
        while chunk := file.read(_CHUNK_BYTES):
            if any(sign in tail + chunk for sign in _DECLARATIONS):
                raise TableError("is refused: it declares a document type or entities, which no workbook needs.")
            tail = chunk[-_LONGEST_DECLARATION:]


def _filled(worksheet: Any) -> Iterator[tuple[int, list[str]]]:
    """The rows that hold something, within the caps."""
    count = 0
    for number, cells in _numbered(worksheet):
        texts = [cell_text(value) for value in cells]
        while texts and not texts[-1].strip():
            texts.pop()
        if not texts:
            continue
        if max(map(len, texts)) > MOST_CELL_CHARACTERS:
            raise TableError(f"has a text of over {MOST_CELL_CHARACTERS:,} characters in row {number}.")
        if len(texts) > MOST_COLUMNS:
            place = f"{column_letters(len(texts) - 1)}{number}"
            raise TableError(f"has something in cell {place}; at most {MOST_COLUMNS} columns are read.")
        count += 1
        if count > MOST_ROWS:
            raise TableError(f"has more than {MOST_ROWS:,} rows on sheet “{worksheet.title}”; split it into several.")
        yield number, texts


def _numbered(worksheet: Any) -> Iterator[tuple[int, Iterable[object]]]:
    worksheet.reset_dimensions()  # the stated size may be a lie
    cells_seen = 0
    for number, cells in enumerate(worksheet.iter_rows(values_only=True), start=1):
        cells_seen += len(cells)
        if cells_seen > MOST_CELLS:
            raise TableError(
                f"has too many cells on sheet “{worksheet.title}” to be read; save the table alone, as CSV."
            )
        yield number, cells


def cell_text(value: object) -> str:
    """A cell's value as text that reads back to the same value: numbers plain, dates as 2024-05-31."""
    match value:
        case None:
            return ""
        case bool():
            return "TRUE" if value else "FALSE"
        case int():
            return str(value)
        case float():
            return f"{Decimal(f'{value:.15g}'):f}"  # fifteen digits are what spreadsheets keep
        case datetime.datetime() if value.time() == datetime.time():
            return value.date().isoformat()
        case datetime.datetime():
            return value.isoformat(sep=" ")
        case _:
            return str(value)


def _has_formulas(path: str) -> bool:
    with zipfile.ZipFile(path) as archive:
        for member in archive.infolist():
            if member.filename.lower().startswith("xl/worksheets/"):
                with archive.open(member) as file:
                    tail = b""
                    while chunk := file.read(_CHUNK_BYTES):
                        if b"<f>" in tail + chunk or b"<f " in tail + chunk:
                            return True
                        tail = chunk[-3:]
    return False


def _formulas_without_value(worksheet: Any, values: dict[int, list[str]]) -> tuple[int, str]:
    """How many formulas have no stored value, and where the first is: such cells read as empty."""
    count, first = 0, ""
    for number, cells in _numbered(worksheet):
        texts = values.get(number, [])
        for column, content in enumerate(cells):
            is_formula = (isinstance(content, str) and content.startswith("=")) or type(
                content
            ).__name__ == "ArrayFormula"
            if is_formula and not (texts[column] if column < len(texts) else ""):
                count += 1
                first = first or f"{column_letters(column)}{number}"
    return count, first
