"""Matching the columns of a table on the command line, and the words for tables and refused rows of any import."""

import argparse
from collections.abc import Callable, Iterable, Sequence
from enum import StrEnum
from typing import TypeVar

from baywright.app.importing import ColumnChoice, RefusedRow, Table, column_letters
from baywright.model.count import count_words

Meaning = TypeVar("Meaning", bound=StrEnum)

NOT_USED = "-"
"""What stands for “no column” in `--match note=-`."""


class MatchTrouble(Exception):
    """The columns cannot be matched as asked for; the message says why and what to write."""


def field_reader(meanings: type[Meaning]) -> Callable[[str], tuple[Meaning, str]]:
    """What cuts `label=Name` in two for the parser; it raises argparse's error where a text is not of this form."""

    def field_and_column(text: str) -> tuple[Meaning, str]:
        field, equals, column = text.partition("=")
        try:
            meaning = meanings(field.strip().lower())
        except ValueError:
            fields = ", ".join(meanings)
            raise argparse.ArgumentTypeError(f"there is no field “{field}”; the fields are {fields}") from None
        if not equals or not column.strip():
            raise argparse.ArgumentTypeError(
                f"“{text}” names no column; write for example {meaning}=Name or {meaning}=3"
            )
        return meaning, column.strip()

    return field_and_column


def settled(
    table: Table, proposed: ColumnChoice[Meaning], wanted: Sequence[tuple[Meaning, str]]
) -> ColumnChoice[Meaning]:
    """The proposed matching with what the person wants instead; `MatchTrouble` where a column is not there."""
    for meaning, column in wanted:
        proposed = proposed.using(meaning, None if column == NOT_USED else _place(table, column))
    return proposed


def _place(table: Table, column: str) -> int:
    """The column with that heading, letter or number (1 is the first)."""
    headings = [heading.casefold() for heading in table.headings]
    if column.casefold() in headings:
        return headings.index(column.casefold())
    places = range(table.column_count)
    for place in places:
        if column == str(place + 1) or column.upper() == column_letters(place):
            return place
    names = ", ".join(_column_words(table, place) for place in places)
    hint = "" if table.headings else " With --headings the first row is taken as headings."
    raise MatchTrouble(f"{table.source} has no column “{column}”. It has {names}.{hint}")


def table_lines(table: Table, matching: ColumnChoice[Meaning], meanings: type[Meaning]) -> list[str]:
    """What the table is, and which column means what."""
    where = f", sheet “{table.sheet}”" if table.sheet else ""
    lines = [f"{table.source}{where}: {count_words(len(table.rows), 'row')}", "Columns:"]
    widest = max(8, *(len(meaning) for meaning in meanings))
    used: set[int] = set()
    for meaning in meanings:
        place = matching.place(meaning)
        if place is not None:
            used.add(place)
            lines.append(f"  {meaning:<{widest}} from {_column_words(table, place)}")
    unused = [_column_words(table, place) for place in range(table.column_count) if place not in used]
    return [*lines, f"  not used: {', '.join(unused)}"] if unused else lines


def _column_words(table: Table, place: int) -> str:
    heading = table.headings[place].strip() if place < len(table.headings) else ""
    return f"{column_letters(place)} (“{heading}”)" if heading else column_letters(place)


def refused_lines(rows: Iterable[RefusedRow]) -> list[str]:
    """Every refused row with its cells and what to do; nothing where none is refused."""
    refused = list(rows)
    lines = [f"Refused: {count_words(len(refused), 'row')}"] if refused else []
    for row in refused:
        for fault in row.faults:
            place = f", {fault.cell} (“{fault.heading}”)" if fault.cell else ""
            lines.append(f"  row {row.number}{place}: {fault.why}. {fault.mend}".rstrip())
    return lines
