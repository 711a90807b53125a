"""A catalogue table read against a project: which rows bring new items, which change items, and why others do not.

Laws: a row is taken whole or refused whole; an item is the same as one of the catalogue where kind, name, pack size and
supplier are, and then what the row says replaces what was there, and nothing else; nothing is taken over by looking.
"""

from dataclasses import dataclass

from pydantic import ValidationError

from baywright.model.catalogue import CatalogueItem, HardwareKind
from baywright.model.count import count_words
from baywright.model.identity import id_from_name
from baywright.model.number import even_blanks
from baywright.model.project import Project
from baywright.storage.catalogue.cells import ItemReader, Values
from baywright.storage.catalogue.columns import MEASURES, CatalogueColumn, CatalogueMatching
from baywright.storage.faults import first_fault
from baywright.storage.preview import CellFault, RefusedRow
from baywright.storage.table import Row, Table
from baywright.storage.trouble import TableError

MOST_ITEMS = 5_000
_COLUMN_OF = {field: column for column, field in MEASURES.items()} | {
    "name": CatalogueColumn.NAME,
    "load_class_kg": CatalogueColumn.LOAD,
    "mass_kg": CatalogueColumn.MASS,
    "pack_size": CatalogueColumn.PACK,
    "price": CatalogueColumn.PRICE,
    "supplier": CatalogueColumn.SUPPLIER,
    "order_number": CatalogueColumn.ORDER_NUMBER,
    "note": CatalogueColumn.NOTE,
}
_WANTED = {
    HardwareKind.RUNNER: ("length_mm", "thickness_mm", "load_class_kg"),
    HardwareKind.SYSTEM_SCREW: ("length_mm", "diameter_mm"),
    HardwareKind.WOOD_SCREW: ("length_mm", "diameter_mm"),
    HardwareKind.POCKET_SCREW: ("length_mm",),
    HardwareKind.TENON: ("length_mm", "thickness_mm"),
    HardwareKind.DOWEL: ("length_mm", "diameter_mm"),
    HardwareKind.PIN: ("diameter_mm",),
    HardwareKind.EDGING: ("width_mm",),
}
"""Measures without which the order cannot choose an item of a kind."""

_Key = tuple[HardwareKind, str, float, str]


@dataclass(frozen=True, slots=True)
class TakenRow:
    """A row that would be taken over: the item as it would be, and as it was (None: it is new)."""

    number: int
    item: CatalogueItem
    before: CatalogueItem | None = None


@dataclass(frozen=True)
class CataloguePreview:
    """The outcome of reading a catalogue table against a project, before anything is taken over."""

    project: Project
    added: tuple[TakenRow, ...]
    changed: tuple[TakenRow, ...]
    refused: tuple[RefusedRow, ...]
    unchanged: int = 0
    """Rows that say nothing new."""
    remarks: tuple[str, ...] = ()

    @property
    def count(self) -> int:
        """How many items would be added or changed."""
        return len(self.added) + len(self.changed)


def read_catalogue(table: Table, matching: CatalogueMatching, project: Project) -> CataloguePreview:
    """What the table would bring to the project's catalogue, nothing taken over yet.

    Raises `TableError` where the matching gives no name or no kind, or points to no column.
    """
    _refuse_useless_matching(table, matching)
    reading = _Reading(table, matching, project)
    for row in table.rows:
        reading.take(row)
    return reading.preview()


def _refuse_useless_matching(table: Table, matching: CatalogueMatching) -> None:
    for column, place in matching.columns.items():
        if not 0 <= place < table.column_count:
            raise TableError(
                f"There is no column number {place + 1} for “{column}”; {table.source} has {table.column_count}."
            )
    for column, what in ((CatalogueColumn.NAME, "name"), (CatalogueColumn.KIND, "kind")):
        if matching.place(column) is None:
            raise TableError(f"No column gives the {what} of the items. Say which column holds it.")


def _key(item: CatalogueItem) -> _Key:
    return item.kind, even_blanks(item.name).casefold(), item.pack_size, even_blanks(item.supplier).casefold()


class _Reading:
    """One run through the rows; collects what is added, changed and refused."""

    def __init__(self, table: Table, matching: CatalogueMatching, project: Project) -> None:
        self._project, self._table = project, table
        self._cells = ItemReader(table, matching, project.unit, project.pricing.currency)
        self._known = {_key(item): item for item in reversed(project.hardware.catalogue)}
        self._row_of: dict[_Key, int] = {}
        self._ids = {item.id for item in project.hardware.catalogue}
        self._added: list[TakenRow] = []
        self._changed: list[TakenRow] = []
        self._refused: list[RefusedRow] = []
        self._unchanged = 0

    def take(self, row: Row) -> None:
        """Read one row and put it on the right pile."""
        values, faults = self._cells.read(row)
        item = None if faults else self._item(row, values, faults)
        if item is None:
            self._refused.append(RefusedRow(row.number, tuple(faults)))
            return
        key = _key(item)
        if key in self._row_of:
            faults.append(self._cells.fault(
                row, CatalogueColumn.NAME, f"the same item stands in row {self._row_of[key]} already",
                "Leave one of them out, or give them different names or packs.",
            ))  # fmt: skip
            self._refused.append(RefusedRow(row.number, tuple(faults)))
            return
        self._row_of[key] = row.number
        self._keep(row, item, self._known.get(key), values)

    def _item(self, row: Row, values: Values, faults: list[CellFault]) -> CatalogueItem | None:
        """The item that the row describes, with an id that is free; None and a fault where the model refuses it."""
        try:
            item = CatalogueItem.model_validate({"id": "item", **values})
        except ValidationError as error:
            field, why = first_fault(error)
            faults.append(self._cells.fault(row, _COLUMN_OF.get(field, CatalogueColumn.NAME), why, "Correct the cell."))
            return None
        if _key(item) not in self._known and len(self._ids) >= MOST_ITEMS:
            why = f"a catalogue holds at most {MOST_ITEMS:,} items"
            faults.append(self._cells.fault(row, CatalogueColumn.NAME, why, "Leave out what is never bought."))
            return None
        return item

    def _keep(self, row: Row, item: CatalogueItem, before: CatalogueItem | None, values: Values) -> None:
        if before is None:
            item = item.replace(id=id_from_name(item.name, "item", self._ids))
            self._ids.add(item.id)
            self._added.append(TakenRow(row.number, item))
            return
        after = before.replace(**values)
        if after == before:
            self._unchanged += 1
        else:
            self._changed.append(TakenRow(row.number, after, before))

    def preview(self) -> CataloguePreview:
        """What came of it."""
        return CataloguePreview(
            project=self._project, added=tuple(self._added), changed=tuple(self._changed),
            refused=tuple(self._refused), unchanged=self._unchanged,
            remarks=(*self._table.remarks, *self._never_chosen(), *self._without_price()),
        )  # fmt: skip

    def _never_chosen(self) -> list[str]:
        """Which items the order can never choose, for a measure is missing."""
        remarks = []
        for kind, wanted in _WANTED.items():
            rows = [
                taken.number for taken in (*self._added, *self._changed)
                if taken.item.kind is kind and any(getattr(taken.item, field) is None for field in wanted)
            ]  # fmt: skip
            if rows:
                measures = " and ".join(str(_COLUMN_OF[field]) for field in wanted)
                items = count_words(len(rows), "item")
                remarks.append(
                    f"{items} of the kind “{kind}” (the first in row {rows[0]}) can be chosen only by hand: a {kind} "
                    f"needs its {measures}."
                )
        return remarks

    def _without_price(self) -> list[str]:
        count = sum(taken.item.price is None for taken in (*self._added, *self._changed))
        return [f"{count_words(count, 'item')} without a price."] if count else []
