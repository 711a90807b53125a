"""What an import would bring, as two tables: what would be added or changed, and the cells that stand in the way."""

from collections.abc import Iterable
from dataclasses import dataclass

from baywright.app.importing import CellFault, ImportPreview, RefusedRow, TakenRow
from baywright.gui.tables.column import Column
from baywright.gui.wording import STATUSES, USES, mass_words, size_words, words_for
from baywright.model.inventory import Box, BoxSize
from baywright.model.length import LengthUnit, format_length
from baywright.model.money import format_money


@dataclass(frozen=True)
class ComingBox:
    """A box that would be added, from which row, with its size; `is_new_size` where the size is not there yet."""

    row: int
    box: Box
    size: BoxSize
    is_new_size: bool


@dataclass(frozen=True)
class RefusedCell:
    """A cell that stands in the way of its row."""

    row: int
    fault: CellFault


def coming_boxes(preview: ImportPreview) -> list[tuple[str, ComingBox]]:
    """All boxes that would be added, by id."""
    fresh = {size.id for size in preview.new_sizes}
    sizes = {size.id: size for size in (*preview.project.box_sizes, *preview.new_sizes)}
    return [
        (box.id, ComingBox(row.number, box, sizes[box.size_id], box.size_id in fresh))
        for row in preview.accepted
        for box in row.boxes
    ]


def refused_cells(refused: Iterable[RefusedRow]) -> list[tuple[str, RefusedCell]]:
    """All cells for which rows are refused."""
    return [
        (f"{row.number}-{number}", RefusedCell(row.number, fault))
        for row in refused
        for number, fault in enumerate(row.faults)
    ]


def coming_columns(unit: LengthUnit) -> tuple[Column[ComingBox], ...]:
    """The columns of the table of boxes that would be added."""
    return (
        Column("Row", lambda x: str(x.row), lambda x: x.row, "Row of the table it comes from", is_number=True),
        Column("Box", lambda x: x.box.label, lambda x: x.box.label),
        Column(
            "Size",
            lambda x: f"{x.size.name} (new)" if x.is_new_size else x.size.name,
            lambda x: (x.size.height_mm, x.size.name),
            "Its box size; “new” is added to the list of sizes",
            tip=lambda x: f"{x.size.name}: {size_words(x.size, unit)} (width × depth × height)",
        ),
        Column(
            "Mass, kg",
            lambda x: mass_words(x.box.loaded_mass_kg),
            lambda x: x.box.loaded_mass_kg,
            is_number=True,
        ),
        Column("Contents", lambda x: x.box.contents, lambda x: x.box.contents),
        Column("Group", lambda x: x.box.group, lambda x: x.box.group),
        Column("Taken out", lambda x: words_for(x.box.use, USES), lambda x: words_for(x.box.use, USES)),
        Column("Note", lambda x: x.box.note, lambda x: x.box.note),
        Column("Status", lambda x: words_for(x.box.status, STATUSES), lambda x: words_for(x.box.status, STATUSES)),
    )


def coming_item_columns(currency: str, unit: LengthUnit) -> tuple[Column[TakenRow], ...]:
    """The columns of the table of catalogue items that would be added or changed."""

    def length(title: str, field: str) -> Column[TakenRow]:
        def value(taken: TakenRow) -> float | None:
            found: float | None = getattr(taken.item, field)
            return found

        def words(taken: TakenRow) -> str:
            found = value(taken)
            return "" if found is None else format_length(found, unit)

        return Column(title, words, value, is_number=True)

    return (
        Column("Row", lambda x: str(x.number), lambda x: x.number, "Row of the table it comes from", is_number=True),
        Column("New or changed", lambda x: "changed" if x.before else "new", lambda x: x.before is None),
        Column("Kind", lambda x: x.item.kind.value, lambda x: x.item.kind.value),
        Column("Name", lambda x: x.item.name, lambda x: x.item.name),
        length("Length", "length_mm"),
        length("Diameter", "diameter_mm"),
        length("Thickness", "thickness_mm"),
        Column("In a pack", lambda x: f"{x.item.pack_size:g}", lambda x: x.item.pack_size, is_number=True),
        Column("Price", lambda x: format_money(x.item.price, currency), lambda x: x.item.price, is_number=True),
        Column("Supplier", lambda x: x.item.supplier, lambda x: x.item.supplier),
        Column("Order number", lambda x: x.item.order_number, lambda x: x.item.order_number),
    )


def refused_columns() -> tuple[Column[RefusedCell], ...]:
    """The columns of the table of cells that stand in the way."""
    return (
        Column("Row", lambda x: str(x.row), lambda x: x.row, "Row of the table that is refused", is_number=True),
        Column("Cell", lambda x: x.fault.cell, lambda x: (len(x.fault.cell), x.fault.cell)),
        Column("Under", lambda x: x.fault.heading, lambda x: x.fault.heading, "Heading of the column"),
        Column("Holds", lambda x: x.fault.text or "nothing", lambda x: x.fault.text),
        Column("Why it is refused", lambda x: x.fault.why, lambda x: x.fault.why),
        Column("What to do", lambda x: x.fault.mend, lambda x: x.fault.mend),
    )
