"""A table as read from a file or pasted: text cells in numbered rows, with or without a row of headings.

Laws: row numbers and column letters are those that a spreadsheet shows; blank rows are left out but counted; cells hold
no control signs; nothing is interpreted here.
"""

from dataclasses import dataclass, replace

MOST_ROWS = 20_000
MOST_COLUMNS = 200
MOST_BYTES = 20_000_000


@dataclass(frozen=True, slots=True)
class Row:
    """The cells of one row; `number` counts from 1 as in a spreadsheet."""

    number: int
    cells: tuple[str, ...]

    def cell(self, column: int) -> str:
        """The text in a column (0 is the first); empty where the row ends before it."""
        return self.cells[column] if column < len(self.cells) else ""


@dataclass(frozen=True)
class Table:
    """Rows that hold something. `heading_index` is the place of the row of headings among them, if there is one."""

    source: str
    """Where it came from, for messages: a file's name, or “the pasted text”."""
    filled_rows: tuple[Row, ...]
    heading_index: int | None = None
    sheet: str = ""
    """Name of the sheet read, for a workbook."""
    sheets: tuple[str, ...] = ()
    """Names of all sheets of the workbook."""
    remarks: tuple[str, ...] = ()
    """What a person should know about how the table was read."""

    @property
    def rows(self) -> tuple[Row, ...]:
        """The rows below the headings, or all."""
        return self.filled_rows if self.heading_index is None else self.filled_rows[self.heading_index + 1 :]

    @property
    def headings(self) -> tuple[str, ...]:
        """The texts over the columns; empty where there is no row of headings."""
        return () if self.heading_index is None else self.filled_rows[self.heading_index].cells

    @property
    def column_count(self) -> int:
        """How many columns the widest row has."""
        return max((len(row.cells) for row in self.filled_rows), default=0)

    def column_name(self, column: int) -> str:
        """What a person calls a column: its heading, or its letter where it has none."""
        heading = self.headings[column].strip() if column < len(self.headings) else ""
        return heading or f"column {column_letters(column)}"

    def with_headings(self, present: bool) -> "Table":
        """The same table with its first row taken as headings, or with none."""
        return replace(self, heading_index=0 if present and self.filled_rows else None)


def column_letters(column: int) -> str:
    """A, B, … Z, AA, … for column 0, 1, …"""
    letters = ""
    number = column + 1
    while number:
        number, rest = divmod(number - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters


def clean_cell(text: str) -> str:
    """The text without control signs (line breaks are kept, of one kind) and without blanks at the ends."""
    if text.isprintable():
        return text.strip()
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return "\n".join(
        "".join(" " if ord(sign) < 32 or ord(sign) == 127 else sign for sign in line) for line in lines
    ).strip()


def filled(number: int, cells: list[str]) -> Row | None:
    """The row without empty cells at its end; None where nothing is left."""
    cleaned = [clean_cell(cell) for cell in cells]
    while cleaned and not cleaned[-1]:
        cleaned.pop()
    return Row(number, tuple(cleaned)) if cleaned else None
