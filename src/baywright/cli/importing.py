"""Importing an inventory without the window: match the columns, show what would come of it, take it over if accepted.

Law: nothing is taken over without `--accept`, and of what is refused nothing ever.
"""

import argparse

from baywright.app.files import FileTrouble
from baywright.app.importing import (
    Column,
    ImportPreview,
    Matching,
    propose_matching,
    read_inventory,
    read_table,
    take_over,
)
from baywright.app.session import Session
from baywright.cli.matching import MatchTrouble, field_reader, refused_lines, settled, table_lines
from baywright.model.count import count_words
from baywright.model.inventory import Box, BoxStatus

field_and_column = field_reader(Column)


def import_inventory(session: Session, options: argparse.Namespace) -> tuple[ImportPreview, str]:
    """The preview of the import that the options ask for, and its text; makes the edit if it is accepted.

    Raises `FileTrouble` where the table cannot be read and `MatchTrouble` where its columns are not settled.
    """
    table = read_table(options.table, options.sheet or "")
    if options.headings is not None:
        table = table.with_headings(options.headings)
    matching = Matching(settled(table, propose_matching(table, session.project), options.match).columns)
    lines = table_lines(table, matching, Column)
    try:
        preview = read_inventory(table, matching, session.project)
    except FileTrouble as trouble:
        raise MatchTrouble("\n".join([*lines, f"{trouble} Use --match, for example --match size=2."])) from None
    if options.accept and preview.boxes:
        session.do(take_over(preview))
    return preview, "\n".join([*lines, *_preview_lines(preview)])


def _preview_lines(preview: ImportPreview) -> list[str]:
    sizes = {size.id: size.name for size in (*preview.project.box_sizes, *preview.new_sizes)}
    lines = [
        f"Accepted: {count_words(len(preview.accepted), 'row')}, {count_words(len(preview.boxes), 'box', 'boxes')}"
    ]
    for row in preview.accepted:
        lines += [f"  row {row.number}: {_box_words(box, sizes[box.size_id])}" for box in row.boxes]
    if preview.new_sizes:
        lines.append("New box sizes (width × depth × height):")
        lines += [
            f"  {size.name}: {size.width_mm:g} × {size.depth_mm:g} × {size.height_mm:g} mm"
            for size in preview.new_sizes
        ]
    return [*lines, *refused_lines(preview.refused), *preview.remarks]


def _box_words(box: Box, size_name: str) -> str:
    mass = "not weighed" if box.loaded_mass_kg is None else f"{box.loaded_mass_kg:.6g} kg"
    others = () if box.status is BoxStatus.OWNED else (box.status,)
    return ", ".join((box.label, size_name, mass, box.use, *others))
