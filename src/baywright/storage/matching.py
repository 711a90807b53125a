"""Which column of a table means what, proposed by headings and contents and settled by a person.

Law: every meaning has at most one column; a meaning without a column is not used.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Generic, Self

from baywright.model.number import even_blanks
from baywright.model.project import Project
from baywright.storage.columns import Column, column_meant, is_length_heading
from baywright.storage.headings import Meaning
from baywright.storage.table import Table

_LOOKED_AT_ROWS = 200


@dataclass(frozen=True)
class ColumnChoice(Generic[Meaning]):
    """For each meaning the number of its column (0 is the first)."""

    columns: Mapping[Meaning, int] = field(default_factory=dict)

    def place(self, column: Meaning) -> int | None:
        """The number of the column with that meaning; None where there is none."""
        return self.columns.get(column)

    def using(self, column: Meaning, place: int | None) -> Self:
        """The same matching with one meaning moved to another column, or to none."""
        others = {each: number for each, number in self.columns.items() if each is not column}
        return type(self)(others if place is None else {**others, column: place})


@dataclass(frozen=True)
class Matching(ColumnChoice[Column]):
    """Which column of an inventory table means what."""


def propose_matching(table: Table, project: Project) -> Matching:
    """What the columns most likely mean."""
    if not table.headings:
        return _by_contents(table, project)
    columns: dict[Column, int] = {}
    lengths: list[int] = []
    for place, heading in enumerate(table.headings):
        meaning = column_meant(heading)
        if meaning is not None:
            columns.setdefault(meaning, place)
        elif is_length_heading(heading):
            lengths.append(place)
    if lengths and Column.WIDTH in columns:
        columns.setdefault(Column.DEPTH, lengths[0])
    elif lengths and Column.DEPTH in columns:
        columns.setdefault(Column.WIDTH, lengths[0])
    return Matching(columns)


def _by_contents(table: Table, project: Project) -> Matching:
    """Without headings: the column of known size names is the size, the first other one of words the label."""
    columns: dict[Column, int] = {}
    known = {size_key(size.name) for size in project.box_sizes}
    for place in range(table.column_count):
        cells = [cell for row in table.rows[:_LOOKED_AT_ROWS] if (cell := row.cell(place))]
        if not cells:
            continue
        if sum(size_key(cell) in known for cell in cells) * 2 > len(cells):
            columns.setdefault(Column.SIZE, place)
        elif sum(any(sign.isalpha() for sign in cell) for cell in cells) * 2 > len(cells):
            columns.setdefault(Column.LABEL, place)
    return Matching(columns)


def size_key(name: str) -> str:
    """By which two names of box sizes are the same: whatever their capitals and blanks."""
    return even_blanks(name).casefold()
