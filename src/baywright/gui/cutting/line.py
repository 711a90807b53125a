"""The tables of layouts and of cuts: sheets and bars alike, lengths in the project's unit."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from baywright.gui.elevation.captions import short_length
from baywright.gui.tables.column import Column
from baywright.gui.wording import count_words
from baywright.model.cutting import BarLayout, CuttingPlan, SawCut, SheetLayout
from baywright.model.length import LengthUnit, format_length

Unit = Callable[[], LengthUnit]


@dataclass(frozen=True)
class LayoutLine:
    """One sheet or bar as it is listed."""

    layout: SheetLayout | BarLayout
    material: str
    has_grain: bool = False
    """Whether the sheet's face has a grain."""

    @property
    def number(self) -> str:
        """E.g. `C3`, of a bar `L2`."""
        return self.layout.number

    @property
    def title(self) -> str:
        """Its number with what it is."""
        return f"{'Bar' if isinstance(self.layout, BarLayout) else 'Sheet'} {self.number}"

    @property
    def part_numbers(self) -> frozenset[str]:
        """The parts that are cut from it."""
        return frozenset(piece.part_number for piece in self.layout.pieces)

    @property
    def used(self) -> float:
        """What share of it becomes parts."""
        layout = self.layout
        if isinstance(layout, BarLayout):
            return sum(piece.length_mm for piece in layout.pieces) / layout.length_mm
        area = sum(piece.length_mm * piece.width_mm for piece in layout.pieces)
        return area / (layout.length_mm * layout.width_mm)

    @property
    def kept(self) -> int:
        """Rests of it that are worth keeping."""
        layout = self.layout
        if isinstance(layout, BarLayout):
            return int(layout.is_rest_reusable)
        return sum(rest.is_reusable for rest in layout.rests)


def layout_lines(plan: CuttingPlan | None) -> list[tuple[str, LayoutLine]]:
    """All layouts by their numbers."""
    if plan is None:
        return []
    sheets = [
        (layout.number, LayoutLine(layout, cutting.material, cutting.has_grain))
        for cutting in plan.sheets
        for layout in cutting.layouts
    ]
    bars = [(layout.number, LayoutLine(layout, cutting.name)) for cutting in plan.bars for layout in cutting.layouts]
    return [*sheets, *bars]


def size_words(layout: SheetLayout | BarLayout, unit: LengthUnit) -> str:
    """The size of a sheet or bar."""
    if isinstance(layout, BarLayout):
        sides = [layout.length_mm] if layout.width_mm is None else [layout.length_mm, layout.width_mm]
        return " × ".join(short_length(side, unit) for side in sides)
    return f"{short_length(layout.length_mm, unit)} × {short_length(layout.width_mm, unit)}"


def rest_words(line: LayoutLine, unit: LengthUnit) -> str:
    """The rests that are worth keeping."""
    layout = line.layout
    if isinstance(layout, BarLayout):
        return short_length(layout.rest_mm, unit) if layout.is_rest_reusable else "none"
    kept = [rest for rest in layout.rests if rest.is_reusable]
    sizes = (f"{short_length(rest.length_mm, unit)} × {short_length(rest.width_mm, unit)}" for rest in kept)
    return "; ".join(sizes) or "none"


def layout_columns(unit: Unit) -> tuple[Column[LayoutLine], ...]:
    """The columns of the list of layouts."""
    return (
        Column("No.", lambda x: x.number, lambda x: (x.number[:1], len(x.number), x.number), "Number of the layout"),
        Column("Material", lambda x: x.material, lambda x: x.material, "What it is of"),
        Column("Pieces", lambda x: str(len(x.layout.pieces)), lambda x: len(x.layout.pieces), "Pieces cut from it",
               is_number=True),
        Column("Used", lambda x: f"{x.used:.0%}", lambda x: x.used, "Share of it that becomes parts", is_number=True),
        Column("Size", lambda x: size_words(x.layout, unit()), lambda x: x.layout.length_mm, "Length × width"),
        Column("Where from", lambda x: "owned" if x.layout.is_owned else "to buy", lambda x: x.layout.is_owned,
               "Whether it lies in the rack already", tip=lambda x: _name(x.layout)),
        Column("Rests to keep", lambda x: rest_words(x, unit()), lambda x: x.kept, "Rests worth keeping"),
    )  # fmt: skip


def _name(layout: SheetLayout | BarLayout) -> str:
    name = layout.bar_name if isinstance(layout, BarLayout) else layout.sheet_name
    owned = "owned" if layout.is_owned else "to buy"
    return f"{name}, {owned}" if name else owned


@dataclass(frozen=True)
class CutLine:
    """One cut as it is listed. `saw` is None for a piece that is taken off a bar."""

    number: int
    panel: str
    is_across: bool
    measure_mm: float
    gives: tuple[str, ...]
    saw: SawCut | None = None
    from_mm: float = 0.0


def cut_lines(layout: SheetLayout | BarLayout | None) -> list[tuple[str, CutLine]]:
    """The cuts of a sheet in their order, or the pieces of a bar from its left end."""
    if layout is None:
        return []
    if isinstance(layout, BarLayout):
        return [
            (
                str(number),
                CutLine(
                    number, layout.number, True, piece.length_mm, (f"{piece.part_number} · {piece.piece}",),
                    from_mm=piece.from_mm,
                ),
            )
            for number, piece in enumerate(layout.pieces, 1)
        ]  # fmt: skip
    return [
        (str(cut.number), CutLine(cut.number, cut.panel, cut.is_across, cut.measure_mm, cut.gives, cut, cut.at_mm))
        for cut in layout.cuts
    ]


def direction_words(line: CutLine) -> str:
    """Which way the saw runs."""
    return "across the length" if line.is_across else "along the length"


def cut_columns(unit: Unit) -> tuple[Column[CutLine], ...]:
    """The columns of the list of cuts."""
    return (
        Column("Cut", lambda x: str(x.number), lambda x: x.number, "In the order of sawing", is_number=True),
        Column("Panel", lambda x: panel_words(x.panel), lambda x: x.panel, "What is cut"),
        Column("Direction", direction_words, direction_words, "Which way the saw runs"),
        Column("Fence", lambda x: short_length(x.measure_mm, unit()), lambda x: x.measure_mm,
               "What the fence is set to: width of the panel that the cut gives", is_number=True,
               tip=lambda x: format_length(x.measure_mm, unit())),
        Column("Gives", gives_words, gives_words, "What comes off, and what stays"),
    )  # fmt: skip


def panel_words(name: str) -> str:
    """A panel as people call it: those that a cut gave have a number."""
    return f"panel {name}" if name[:1].isdecimal() else name


def gives_words(line: CutLine) -> str:
    """What a cut gives."""
    return ", ".join(map(panel_words, line.gives))


def cut_words(line: CutLine, of: int, unit: LengthUnit) -> str:
    """One cut in a sentence."""
    measure, panel = short_length(line.measure_mm, unit), panel_words(line.panel)
    return f"Cut {line.number} of {of}: {panel}, {direction_words(line)}, {measure}; gives {gives_words(line)}."


def layout_words(line: LayoutLine, unit: LengthUnit) -> str:
    """The drawing of a layout in words, for whoever does not see it."""
    pieces = count_words(len(line.layout.pieces), "piece")
    parts = ", ".join(sorted(line.part_numbers))
    words = f"{line.title}, {line.material}, {size_words(line.layout, unit)}: {pieces} of {parts}. "
    return words + f"{line.used:.0%} used; rests to keep: {rest_words(line, unit)}."


def marked_layouts(lines: Iterable[LayoutLine], numbers: Iterable[str]) -> list[str]:
    """The numbers of the layouts that any of these parts are cut from."""
    wanted = set(numbers)
    return [line.number for line in lines if line.part_numbers & wanted]
