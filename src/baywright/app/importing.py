"""Taking boxes or a hardware catalogue over from a table, in three steps: read the table, match its columns, look at
what would come of it.

Laws: nothing is taken over by looking; what is accepted is one command, so one undo takes it back. Whatever is wrong
with a file is one FileTrouble.
"""

from pathlib import Path

from baywright.app.edits.hardware import ImportCatalogue
from baywright.app.edits.inventory import AddBoxes
from baywright.storage.catalogue.columns import (
    CatalogueColumn,
    CatalogueMatching,
    propose_catalogue_matching,
    with_catalogue_headings,
)
from baywright.storage.catalogue.reading import CataloguePreview, TakenRow, read_catalogue
from baywright.storage.columns import Column
from baywright.storage.inventory import read_inventory
from baywright.storage.matching import ColumnChoice, Matching, propose_matching
from baywright.storage.preview import CellFault, ImportPreview, RefusedRow
from baywright.storage.table import Table, column_letters
from baywright.storage.tables import read_table, table_from_text

__all__ = [
    "CatalogueColumn",
    "CatalogueMatching",
    "CataloguePreview",
    "CellFault",
    "Column",
    "ColumnChoice",
    "ImportPreview",
    "Matching",
    "RefusedRow",
    "Table",
    "TakenRow",
    "column_letters",
    "propose_catalogue_matching",
    "propose_matching",
    "read_catalogue",
    "read_catalogue_table",
    "read_inventory",
    "read_table",
    "table_from_text",
    "take_over",
    "take_over_catalogue",
    "with_catalogue_headings",
]


def take_over(preview: ImportPreview) -> AddBoxes:
    """The command that adds everything accepted in the preview; it refuses itself where the inventory has changed."""
    return AddBoxes(preview.boxes, preview.new_sizes)


def read_catalogue_table(path: Path, sheet: str = "") -> Table:
    """The table of a catalogue in a CSV or XLSX file; FileTrouble where it cannot be read."""
    return with_catalogue_headings(read_table(path, sheet))


def take_over_catalogue(preview: CataloguePreview) -> ImportCatalogue:
    """The command that adds and changes everything accepted in the preview; it refuses itself where an item is gone."""
    return ImportCatalogue(tuple(taken.item for taken in preview.added), tuple(taken.item for taken in preview.changed))
