"""Taking boxes over from a table, in three steps: read the table, match its columns, look at what would come of it.

Laws: nothing is taken over by looking; what is accepted is one command, so one undo takes it back. Whatever is wrong
with a file is one FileTrouble.
"""

from baywright.app.edits.inventory import AddBoxes
from baywright.storage.columns import Column
from baywright.storage.inventory import read_inventory
from baywright.storage.matching import Matching, propose_matching
from baywright.storage.preview import CellFault, ImportPreview, RefusedRow
from baywright.storage.table import Table, column_letters
from baywright.storage.tables import read_table, table_from_text

__all__ = [
    "CellFault",
    "Column",
    "ImportPreview",
    "Matching",
    "RefusedRow",
    "Table",
    "column_letters",
    "propose_matching",
    "read_inventory",
    "read_table",
    "table_from_text",
    "take_over",
]


def take_over(preview: ImportPreview) -> AddBoxes:
    """The command that adds everything accepted in the preview; it refuses itself where the inventory has changed."""
    return AddBoxes(preview.boxes, preview.new_sizes)
