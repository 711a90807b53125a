"""Importing a hardware catalogue without the window: match the columns, show what would come of it, take it over.

Law: nothing is taken over without `--accept`, and of what is refused nothing ever.
"""

import argparse

from baywright.app.files import FileTrouble
from baywright.app.importing import (
    CatalogueColumn,
    CatalogueMatching,
    CataloguePreview,
    TakenRow,
    propose_catalogue_matching,
    read_catalogue,
    read_catalogue_table,
    take_over_catalogue,
)
from baywright.app.session import Session
from baywright.cli.matching import MatchTrouble, refused_lines, settled, table_lines
from baywright.model.count import count_words
from baywright.model.money import format_money


def import_catalogue(session: Session, options: argparse.Namespace) -> tuple[CataloguePreview, str]:
    """The preview of the import that the options ask for, and its text; makes the edit if it is accepted.

    Raises `FileTrouble` where the table cannot be read and `MatchTrouble` where its columns are not settled.
    """
    table = read_catalogue_table(options.table, options.sheet or "")
    if options.headings is not None:
        table = table.with_headings(options.headings)
    matching = CatalogueMatching(settled(table, propose_catalogue_matching(table), options.match).columns)
    lines = table_lines(table, matching, CatalogueColumn)
    try:
        preview = read_catalogue(table, matching, session.project)
    except FileTrouble as trouble:
        raise MatchTrouble("\n".join([*lines, f"{trouble} Use --match, for example --match kind=2."])) from None
    if options.accept and preview.count:
        session.do(take_over_catalogue(preview))
    return preview, "\n".join([*lines, *_preview_lines(preview, session.project.pricing.currency)])


def _preview_lines(preview: CataloguePreview, currency: str) -> list[str]:
    lines = [f"New: {count_words(len(preview.added), 'item')}"]
    lines += [f"  row {taken.number}: {_item_words(taken, currency)}" for taken in preview.added]
    if preview.changed:
        lines.append(f"Changed: {count_words(len(preview.changed), 'item')}")
    for taken in preview.changed:
        before = format_money(taken.before.price, currency) if taken.before else ""
        lines.append(f"  row {taken.number}: {_item_words(taken, currency)} (before: {before})")
    if preview.unchanged:
        lines.append(f"As it is already: {count_words(preview.unchanged, 'item')}")
    return [*lines, *refused_lines(preview.refused), *preview.remarks]


def _item_words(taken: TakenRow, currency: str) -> str:
    item = taken.item
    pack = f"pack of {item.pack_size:g}"
    return ", ".join(filter(None, (item.kind, item.name, pack, format_money(item.price, currency), item.supplier)))
