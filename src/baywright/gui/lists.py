"""The read-only table of the hardware to buy."""

from baywright.gui.tables.column import Column
from baywright.model.making import HardwareItem, Manufacture


def _number(value: float) -> str:
    return f"{value:,.2f}".rstrip("0").rstrip(".")


def hardware_columns() -> tuple[Column[HardwareItem], ...]:
    """The columns of the hardware order."""
    return (
        Column("Item", lambda x: x.number, lambda x: x.number),
        Column("Name", lambda x: x.name, lambda x: x.name),
        Column("What exactly", lambda x: x.specification, lambda x: x.specification),
        Column("Needed", lambda x: f"{_number(x.needed)} {x.unit}", lambda x: x.needed, is_number=True),
        Column(
            "Spare",
            lambda x: f"{_number(x.allowance)} {x.unit}" if x.allowance else "",
            lambda x: x.allowance,
            "Extra for loss and waste",
            is_number=True,
        ),
        Column("In a pack", lambda x: _number(x.pack_size), lambda x: x.pack_size, is_number=True),
        Column("Packs", lambda x: str(x.packs), lambda x: x.packs, "Packs to buy", is_number=True),
        Column("Note", lambda x: x.note, lambda x: x.note),
    )


def hardware_records(made: Manufacture | None) -> list[tuple[str, HardwareItem]]:
    """The hardware items by an id for the table."""
    return [] if made is None else [(f"{place}-{item.number}", item) for place, item in enumerate(made.hardware)]
