"""What can be imported: boxes into the inventory, or items into the hardware catalogue; how each is read and shown."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from baywright.app.importing import (
    CataloguePreview,
    ImportPreview,
    Table,
    TakenRow,
    propose_catalogue_matching,
    propose_matching,
    read_catalogue,
    read_catalogue_table,
    read_inventory,
    read_table,
)
from baywright.gui.importing.matching import CATALOGUE_MEANINGS, MEANINGS
from baywright.gui.importing.preview import coming_boxes, coming_columns, coming_item_columns
from baywright.gui.tables.column import Column
from baywright.gui.wording import count_words
from baywright.model.project import Project

MOST_NAMED = 6


@dataclass(frozen=True)
class Subject:
    """How one kind of table is read and what is shown of it. Matching and preview are the subject's own."""

    title: str
    one: str
    many: str
    meanings: Sequence[tuple[Any, str, str]]
    read_table: Callable[[Path, str], Table]
    propose: Callable[[Table, Project], Any]
    read: Callable[[Table, Any, Project], Any]
    columns: Callable[[Project], Sequence[Column[Any]]]
    coming: Callable[[Any], list[tuple[str, Any]]]
    count: Callable[[Any], int]
    news: Callable[[Any], list[str]]


def _new_sizes(preview: ImportPreview) -> list[str]:
    sizes = [size.name for size in preview.new_sizes]
    more = f" and {len(sizes) - MOST_NAMED} more" if len(sizes) > MOST_NAMED else ""
    return [f"New box sizes: {', '.join(sizes[:MOST_NAMED])}{more}."] if sizes else []


def _unchanged(preview: CataloguePreview) -> list[str]:
    if not preview.unchanged:
        return []
    return [f"{count_words(preview.unchanged, 'row says', 'rows say')} nothing new."]


def _coming_items(preview: CataloguePreview) -> list[tuple[str, TakenRow]]:
    return [(str(taken.number), taken) for taken in sorted((*preview.added, *preview.changed), key=lambda x: x.number)]


INVENTORY = Subject(
    title="Import inventory",
    one="box",
    many="boxes",
    meanings=MEANINGS,
    read_table=read_table,
    propose=propose_matching,
    read=read_inventory,
    columns=lambda project: coming_columns(project.unit),
    coming=coming_boxes,
    count=lambda preview: len(preview.boxes),
    news=_new_sizes,
)
CATALOGUE = Subject(
    title="Import hardware catalogue",
    one="item",
    many="items",
    meanings=CATALOGUE_MEANINGS,
    read_table=read_catalogue_table,
    propose=lambda table, _project: propose_catalogue_matching(table),
    read=read_catalogue,
    columns=lambda project: coming_item_columns(project.pricing.currency, project.unit),
    coming=_coming_items,
    count=lambda preview: preview.count,
    news=_unchanged,
)
