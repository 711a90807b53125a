"""The table of options: one line for each shape, lengths in the project's unit, what is not known yet said so."""

from collections.abc import Callable
from dataclasses import dataclass

from baywright.gui.elevation.captions import short_length
from baywright.gui.tables.column import Column
from baywright.model.construction import Uprights
from baywright.model.length import LengthUnit, format_length
from baywright.model.option import Option

UNKNOWN = "not known yet"
WEIGHED = (
    "Weighed are: fewer bays, a worktop nearer to the wished range and then lower, more left-over width, longer "
    "runners, fewer sheets and less cost where they are known, the overhang that is set, and uprights of its own for "
    "each bay. A shape is left out where another one is at least as good in all of these and better in one. Free rows "
    "and handling are told for comparison."
)


@dataclass(frozen=True)
class OptionLine:
    """One option as it is listed; `is_present` is how things stand now, not when it was found."""

    option: Option
    is_present: bool

    @property
    def standing(self) -> str:
        """Whether the run has this shape, and whether another one beats it, in a word or two."""
        return ", ".join(filter(None, ("✓ now" if self.is_present else "", "beaten" if self.option.is_beaten else "")))

    @property
    def standing_tip(self) -> str:
        """The same in a sentence."""
        now = "The run has this shape now." if self.is_present else "“Use this shape” puts the run in it."
        beaten = " Another option is at least as good in everything and better in something."
        return now + (beaten if self.option.is_beaten else "")

    @property
    def shape(self) -> str:
        """Bays and rows in words."""
        option = self.option
        return f"{option.bays} {'bay' if option.bays == 1 else 'bays'} × {option.rows} rows"


def option_columns(unit: Callable[[], LengthUnit]) -> tuple[Column[OptionLine], ...]:
    """The columns, the ones that a choice turns on first."""

    def length(title: str, of: Callable[[Option], float], hint: str) -> Column[OptionLine]:
        return Column(
            title,
            lambda x: short_length(of(x.option), unit()),
            lambda x: of(x.option),
            hint,
            is_number=True,
            tip=lambda x: format_length(of(x.option), unit()),
        )

    def number(title: str, of: Callable[[Option], float], hint: str, digits: int = 0) -> Column[OptionLine]:
        return Column(title, lambda x: f"{of(x.option):,.{digits}f}", lambda x: of(x.option), hint, is_number=True)

    return (
        Column("Now", lambda x: x.standing, lambda x: not x.is_present, "Which shape the run has now",
               tip=lambda x: x.standing_tip),
        number("Bays", lambda x: x.bays, "Drawer bays side by side"),
        Column("Rows", lambda x: str(x.option.rows), lambda x: x.option.rows, "Hole rows in the uprights",
               is_number=True, tip=lambda x: _rows_tip(x.option)),
        length("Worktop", lambda x: x.unit_height_mm, "Height of the top's upper side over the floor"),
        length("Run", lambda x: x.run_length_mm, "Length of the run, a shelf bay in the rest of the wall included"),
        length("Left over", lambda x: x.left_over_mm, "Clear width beside the drawer bays: the shelf bay, or free"),
        Column("Overhang", lambda x: _overhang(x.option, unit()), lambda x: _overhang_sum(x.option),
               "How far the top stands out in front / at each side", is_number=True),
        Column("Uprights", lambda x: _UPRIGHTS[x.option.uprights], lambda x: _UPRIGHTS[x.option.uprights],
               "Shared: one between two bays. Own: each bay is a carcass with two of its own"),
        length("Runner", lambda x: x.runner_length_mm, "Length of the runners, and so depth of the drawers"),
        number("Free rows", lambda x: x.free_rows, "Hole rows that no drawer takes, all bays together"),
        number("Handling", lambda x: x.handling, "Lifting under the knee or over the shoulder, index points a month; "
               "less is easier. A longer search may find an easier plan in the same shape", digits=1),
        Column("Sheets", lambda x: _known(x.option.sheets, "{:,d}"), lambda x: x.option.sheets,
               "Sheets to buy, of a quick layout: the tab Cutting may find that fewer do", is_number=True),
        Column("Cost", lambda x: _known(x.option.cost, "{:,.2f}"), lambda x: x.option.cost,
               "What there is to buy, sheets of a quick layout; not known while prices are missing", is_number=True),
    )  # fmt: skip


_UPRIGHTS = {Uprights.SHARED: "shared", Uprights.OWN: "own"}


def _known(value: float | None, words: str) -> str:
    """A value, or that it is not known: never nothing, which could be read as none."""
    return UNKNOWN if value is None else words.format(value)


def _rows_tip(option: Option) -> str:
    if option.is_lowest:
        return f"Proved: no run of {option.bays} bays that holds every box is lower."
    return "A lower run of so many bays may hold every box."


def _overhang(option: Option, unit: LengthUnit) -> str:
    front, side = option.overhang_front_mm, option.overhang_side_mm
    return f"{short_length(front, unit)} / {short_length(side, unit)}"


def _overhang_sum(option: Option) -> float:
    return option.overhang_front_mm + 2 * option.overhang_side_mm
