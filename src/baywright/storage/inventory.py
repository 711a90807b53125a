"""An inventory table read against a project: which rows would become boxes, and why the others would not.

Laws: a row is taken whole or refused whole; every reason names its cell and what to do; a box size is created only from
a width, a depth and a height that a row gives and only where no equal one exists; nothing is guessed.
"""

from baywright.model.identity import next_id
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import MOST_BOXES, Project
from baywright.storage.cells import BoxFields, RowReader
from baywright.storage.columns import LENGTH_COLUMNS, Column
from baywright.storage.matching import Matching
from baywright.storage.preview import AcceptedRow, ImportPreview, RefusedRow
from baywright.storage.sizes import SizeList
from baywright.storage.table import Row, Table
from baywright.storage.trouble import TableError


def read_inventory(table: Table, matching: Matching, project: Project) -> ImportPreview:
    """What the table would bring to the project's inventory, nothing taken over yet.

    Raises `TableError` where the matching gives no box size at all or points to no column.
    """
    _refuse_useless_matching(table, matching)
    reading = _Reading(table, matching, project)
    for row in table.rows:
        reading.take(row)
    return reading.preview()


def _refuse_useless_matching(table: Table, matching: Matching) -> None:
    for column, place in matching.columns.items():
        if not 0 <= place < table.column_count:
            raise TableError(
                f"There is no column number {place + 1} for “{column}”; {table.source} has {table.column_count}."
            )
    if matching.place(Column.SIZE) is None and any(matching.place(column) is None for column in LENGTH_COLUMNS):
        raise TableError(
            "No column gives the size of the boxes. Say which column holds the name of the box size, or which ones "
            "hold width, depth and height."
        )


class _Reading:
    """One run through the rows; collects what is accepted and refused."""

    def __init__(self, table: Table, matching: Matching, project: Project) -> None:
        self._project = project
        self._table = table
        self._cells = RowReader(table, matching, project.unit)
        self._sizes = SizeList(project.box_sizes)
        self._accepted: list[AcceptedRow] = []
        self._refused: list[RefusedRow] = []
        self._next_number = int(next_id("box", [box.id for box in project.boxes]).rpartition("-")[2])
        self._room = MOST_BOXES - len(project.boxes)

    def take(self, row: Row) -> None:
        """Read one row and put it on the right pile."""
        fields, faults = self._cells.read(row)
        size, size_faults = self._sizes.find(fields, self._cells, row)
        faults += size_faults
        if not faults and fields.quantity > self._room:
            faults.append(
                self._cells.fault(
                    row,
                    Column.QUANTITY,
                    f"a project holds at most {MOST_BOXES:,} boxes",
                    "Leave boxes out, or split them.",
                )
            )
        boxes = self._boxes(row, fields, size) if size is not None and not faults else ()
        if faults or size is None:
            self._refused.append(RefusedRow(row.number, tuple(faults)))
            return
        self._sizes.keep(size, row.number)
        self._next_number += len(boxes)
        self._room -= len(boxes)
        self._accepted.append(AcceptedRow(row.number, boxes))

    def _boxes(self, row: Row, fields: BoxFields, size: BoxSize) -> tuple[Box, ...]:
        label = fields.label or f"Box {self._next_number}"
        values = fields.values()
        return tuple(
            Box.model_validate(
                {
                    **values,
                    "id": f"box-{self._next_number + count}",
                    "label": label if fields.quantity == 1 else f"{label} {count + 1}",
                    "size_id": size.id,
                }
            )
            for count in range(fields.quantity)
        )

    def preview(self) -> ImportPreview:
        """What came of it."""
        return ImportPreview(
            project=self._project,
            accepted=tuple(self._accepted),
            refused=tuple(self._refused),
            new_sizes=self._sizes.new_sizes,
            remarks=(*self._table.remarks, *self._doubles()),
        )

    def _doubles(self) -> tuple[str, ...]:
        """A word of warning where the same table seems to be imported twice."""
        known = {(box.label, box.size_id) for box in self._project.boxes}
        count = sum((box.label, box.size_id) in known for row in self._accepted for box in row.boxes)
        if not count:
            return ()
        return (f"{count} of these boxes have a label and size that are in the inventory already.",)
