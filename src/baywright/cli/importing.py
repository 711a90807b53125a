"""Importing an inventory without the window: match the columns, show what would come of it, take it over if accepted.

Law: nothing is taken over without `--accept`, and of what is refused nothing ever.
"""

import argparse
from collections.abc import Sequence

from baywright.app.files import FileTrouble
from baywright.app.importing import (
    Column,
    ImportPreview,
    Matching,
    Table,
    column_letters,
    propose_matching,
    read_inventory,
    read_table,
    take_over,
)
from baywright.app.session import Session
from baywright.model.inventory import Box, BoxStatus

NOT_USED = "-"
"""What stands for “no column” in `--match note=-`."""


class MatchTrouble(Exception):
    """The columns cannot be matched as asked for; the message says why and what to write."""


def field_and_column(text: str) -> tuple[Column, str]:
    """`label=Name` cut in two, for the parser; raises argparse's error where it is not of this form."""
    field, equals, column = text.partition("=")
    try:
        meaning = Column(field.strip().lower())
    except ValueError:
        fields = ", ".join(Column)
        raise argparse.ArgumentTypeError(f"there is no field “{field}”; the fields are {fields}") from None
    if not equals or not column.strip():
        raise argparse.ArgumentTypeError(f"“{text}” names no column; write for example {meaning}=Name or {meaning}=3")
    return meaning, column.strip()


def import_inventory(session: Session, options: argparse.Namespace) -> tuple[ImportPreview, str]:
    """The preview of the import that the options ask for, and its text; makes the edit if it is accepted.

    Raises `FileTrouble` where the table cannot be read and `MatchTrouble` where its columns are not settled.
    """
    table = read_table(options.table, options.sheet or "")
    if options.headings is not None:
        table = table.with_headings(options.headings)
    matching = _matching(table, propose_matching(table, session.project), options.match)
    lines = _table_lines(table, matching)
    try:
        preview = read_inventory(table, matching, session.project)
    except FileTrouble as trouble:
        raise MatchTrouble("\n".join([*lines, f"{trouble} Use --match, for example --match size=2."])) from None
    if options.accept and preview.boxes:
        session.do(take_over(preview))
    return preview, "\n".join([*lines, *_preview_lines(preview)])


def _matching(table: Table, proposed: Matching, wanted: Sequence[tuple[Column, str]]) -> Matching:
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


def _table_lines(table: Table, matching: Matching) -> list[str]:
    where = f", sheet “{table.sheet}”" if table.sheet else ""
    lines = [f"{table.source}{where}: {_counted(len(table.rows), 'row')}", "Columns:"]
    used: set[int] = set()
    for meaning in Column:
        place = matching.place(meaning)
        if place is not None:
            used.add(place)
            lines.append(f"  {meaning:<8} from {_column_words(table, place)}")
    unused = [_column_words(table, place) for place in range(table.column_count) if place not in used]
    return [*lines, f"  not used: {', '.join(unused)}"] if unused else lines


def _column_words(table: Table, place: int) -> str:
    heading = table.headings[place].strip() if place < len(table.headings) else ""
    return f"{column_letters(place)} (“{heading}”)" if heading else column_letters(place)


def _preview_lines(preview: ImportPreview) -> list[str]:
    sizes = {size.id: size.name for size in (*preview.project.box_sizes, *preview.new_sizes)}
    lines = [f"Accepted: {_counted(len(preview.accepted), 'row')}, {_counted(len(preview.boxes), 'box', 'boxes')}"]
    for row in preview.accepted:
        lines += [f"  row {row.number}: {_box_words(box, sizes[box.size_id])}" for box in row.boxes]
    if preview.new_sizes:
        lines.append("New box sizes (width × depth × height):")
        lines += [
            f"  {size.name}: {size.width_mm:g} × {size.depth_mm:g} × {size.height_mm:g} mm"
            for size in preview.new_sizes
        ]
    if preview.refused:
        lines.append(f"Refused: {_counted(len(preview.refused), 'row')}")
    for refused in preview.refused:
        for fault in refused.faults:
            place = f", {fault.cell} (“{fault.heading}”)" if fault.cell else ""
            lines.append(f"  row {refused.number}{place}: {fault.why}. {fault.mend}".rstrip())
    return [*lines, *preview.remarks]


def _box_words(box: Box, size_name: str) -> str:
    mass = "not weighed" if box.loaded_mass_kg is None else f"{box.loaded_mass_kg:.6g} kg"
    others = () if box.status is BoxStatus.OWNED else (box.status,)
    return ", ".join((box.label, size_name, mass, box.use, *others))


def _counted(count: int, one: str, many: str = "") -> str:
    return f"{count:,} {one if count == 1 else many or one + 's'}"
