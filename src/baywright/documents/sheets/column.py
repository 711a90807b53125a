"""The columns of a table: title, kind and how a value is read from a row; a twin in inches where a project wants it.

Laws: millimetres are always there, exact; the inch column beside them is text to the nearest 1/32, for reading.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from baywright.documents.lengths import plain_length
from baywright.documents.sheets.cell import Value
from baywright.documents.sheets.style import Style
from baywright.model.length import LengthUnit

Row = TypeVar("Row")


@dataclass(frozen=True)
class Column(Generic[Row]):
    """One column of a table. `most_width` is the width in characters at which its texts are wrapped."""

    title: str
    read: Callable[[Row], Value]
    style: Style = Style.TEXT
    most_width: float = 28.0


def with_inches(columns: Sequence[Column[Row]], unit: LengthUnit) -> list[Column[Row]]:
    """The columns, in projects in inches with a text column after each length."""
    wide: list[Column[Row]] = []
    for column in columns:
        is_length = column.style is Style.LENGTH
        wide.append(Column(f"{column.title}, mm", column.read, column.style) if is_length else column)
        if is_length and unit is LengthUnit.INCH:
            wide.append(Column(f"{column.title}, inches", _in_inches(column.read)))
    return wide


def _in_inches(read: Callable[[Row], Value]) -> Callable[[Row], Value]:
    def words(row: Row) -> Value:
        length = read(row)
        return plain_length(length, LengthUnit.INCH) if isinstance(length, float | int) else None

    return words
