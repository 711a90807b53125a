"""The table of parts and the table of the work on one: lengths in the project's unit, empty where there is nothing."""

from collections.abc import Callable

from baywright.gui.elevation.captions import short_length
from baywright.gui.tables.column import Column
from baywright.gui.wording import mass_words
from baywright.model.length import LengthUnit, format_length
from baywright.model.machining import Side
from baywright.model.making import Manufacture, Part

Unit = Callable[[], LengthUnit]
SIDES = {
    Side.FACE: "face",
    Side.REVERSE: "reverse",
    Side.START: "start",
    Side.END: "end",
    Side.FRONT: "front",
    Side.REAR: "rear",
}
"""The sides of a part in a word each."""


def part_columns(unit: Unit) -> tuple[Column[Part], ...]:
    """The columns of the parts list; lengths in the project's unit."""

    def length(title: str, of: Callable[[Part], float], hint: str) -> Column[Part]:
        return Column(
            title,
            lambda x: short_length(of(x), unit()) if of(x) else "",
            of,
            hint,
            is_number=True,
            tip=lambda x: format_length(of(x), unit()) if of(x) else "",
        )

    return (
        Column("Part", lambda x: x.number, lambda x: x.number, "Part number, the same on every list and drawing"),
        Column("Name", lambda x: x.name, lambda x: x.name, tip=lambda x: f"{x.name}. {x.note}" if x.note else x.name),
        Column("Pieces", lambda x: str(x.quantity), lambda x: x.quantity, "How many, mirrored ones among them",
               is_number=True, tip=pieces_words),
        length("Length", lambda x: x.length_mm, "Finished, along the grain where there is one"),
        length("Width", lambda x: x.width_mm, "Finished"),
        length("Thick", lambda x: x.thickness_mm, "Thickness in force: as measured where a batch is in use"),
        Column(
            "Cut size",
            lambda x: cut_words(x, unit()),
            lambda x: x.cut_length_mm * x.cut_width_mm,
            "Size to cut: the finished size less the edging",
        ),
        Column("Material", lambda x: x.material, lambda x: x.material),
        Column("Grain", lambda x: x.grain.value, lambda x: x.grain.value, "Which way the grain of the face must run"),
        Column("Edges", banded_words, lambda x: len(x.banded), "Which edges are covered with edging"),
        Column("Mirrored", lambda x: str(x.mirrored) if x.mirrored else "", lambda x: x.mirrored,
               "How many pieces are mirror images of the others", is_number=True),
        Column("Mass, kg", mass_text, lambda x: x.mass_kg, "Of one piece; empty where it is not known", is_number=True),
        Column("Note", lambda x: x.note, lambda x: x.note),
    )  # fmt: skip


def pieces_words(part: Part) -> str:
    """How many pieces, and how many of them are mirrored."""
    return f"{part.quantity} ({part.mirrored} mirrored)" if part.mirrored else str(part.quantity)


def cut_words(part: Part, unit: LengthUnit) -> str:
    """Length and width to cut; empty where that is not known."""
    if not part.cut_length_mm:
        return ""
    return f"{short_length(part.cut_length_mm, unit)} × {short_length(part.cut_width_mm, unit)}"


def banded_words(part: Part) -> str:
    """Which edges are banded."""
    return ", ".join(SIDES[side] for side in part.banded)


def mass_text(part: Part) -> str:
    """The mass of a piece in kg, without the unit; empty where it is not known."""
    return mass_words(part.mass_kg)


def part_records(made: Manufacture | None) -> list[tuple[str, Part]]:
    """The parts by their numbers, which stand on every list; one that stood there twice would be told apart."""
    seen: dict[str, int] = {}
    records = []
    for part in made.parts if made is not None else ():
        seen[part.number] = count = seen.get(part.number, 0) + 1
        records.append((part.number if count == 1 else f"{part.number}#{count}", part))
    return records
