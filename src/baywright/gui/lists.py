"""Read-only tables of what an arrangement needs: parts to cut and hardware to buy."""

from collections.abc import Callable

from baywright.gui.tables.column import Column
from baywright.model.length import LengthUnit, format_length
from baywright.model.making import HardwareItem, Manufacture, Part


def _number(value: float) -> str:
    return f"{value:,.2f}".rstrip("0").rstrip(".")


def part_columns(unit: Callable[[], LengthUnit]) -> tuple[Column[Part], ...]:
    """The columns of the parts list; lengths in the project's unit."""

    def length(title: str, of: Callable[[Part], float], hint: str) -> Column[Part]:
        return Column(title, lambda x: format_length(of(x), unit()) if of(x) else "", of, hint, is_number=True)

    return (
        Column("Part", lambda x: x.number, lambda x: x.number, "Part number, the same on every list"),
        Column("Name", lambda x: x.name, lambda x: x.name),
        Column("Pieces", lambda x: str(x.quantity), lambda x: x.quantity, is_number=True),
        length("Length", lambda x: x.length_mm, "Finished, along the grain where there is one"),
        length("Width", lambda x: x.width_mm, "Finished"),
        length("Thickness", lambda x: x.thickness_mm, "As measured"),
        Column("Material", lambda x: x.material, lambda x: x.material),
        Column("Grain", lambda x: x.grain.value, lambda x: x.grain.value, "Which way the grain of the face must run"),
        length("Edging", lambda x: x.edged_length_mm, "Length of edge a piece that is covered"),
        Column("Note", lambda x: x.note, lambda x: x.note),
    )


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


def part_records(made: Manufacture | None) -> list[tuple[str, Part]]:
    """The parts by an id for the table."""
    return [] if made is None else [(f"{place}-{part.number}", part) for place, part in enumerate(made.parts)]


def hardware_records(made: Manufacture | None) -> list[tuple[str, HardwareItem]]:
    """The hardware items by an id for the table."""
    return [] if made is None else [(f"{place}-{item.number}", item) for place, item in enumerate(made.hardware)]
