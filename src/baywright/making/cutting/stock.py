"""The boards that the pieces of a material may be cut from, as the packing sees them, and what they cost there.

Laws: an owned sheet costs nothing that is told, but so little in the search that it is left in the rack where it saves
nothing, and a small one is taken before a large one; where the price of a sheet that can be bought is missing, area is
reckoned instead of money, for all of them; of a material without any sheet one usual size is assumed, which has no
price. Measures are what is left after trimming.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import gcd

from baywright.making.cutting.packing import Board
from baywright.making.cutting.units import A_MM, units
from baywright.model.project import Project
from baywright.model.stock import CuttingRules, Material, Sheet

USUAL_LENGTH_MM, USUAL_WIDTH_MM = 2500.0, 1250.0
"""A sheet as it is sold in many places; common practice."""
_PRICE_UNITS = 10_000
"""Prices have up to four decimals."""
_LITTLE = 20
"""What the largest owned sheet counts in the search, but for one."""
_AREA_UNITS = (1000 * A_MM) ** 2
"""Square hundredths of a mm in a square metre."""


@dataclass(frozen=True)
class Kind:
    """Sheets of one size; what is usable of them, in hundredths of a mm, the kerf not yet added."""

    sheet: Sheet
    trim: int
    length: int
    width: int
    is_assumed: bool = False

    @property
    def available(self) -> int | None:
        """How many there are; None: as many as one wants to buy. What is owned is there once, if no number is given."""
        return 1 if self.sheet.is_owned and self.sheet.quantity is None else self.sheet.quantity


@dataclass(frozen=True)
class Costs:
    """What the search reckons with: whole numbers in which the least that can be paid outweighs all owned sheets."""

    each: tuple[int, ...]
    """Of one sheet of each kind."""
    weight: int
    """What the least sum that can be paid counts; all owned sheets together count less."""
    unit: float
    """What that sum is worth: money, or m²."""
    counts_area: bool

    def value(self, cost: int) -> float:
        """The money or area in a cost of the search."""
        return cost // self.weight * self.unit

    def bound(self, cost: int, bound: int) -> float:
        """The money or area that nothing goes below, from the search's cost and bound."""
        least = -(-(bound - (self.weight - 1)) // self.weight)
        return max(0, min(cost // self.weight, least)) * self.unit


@dataclass(frozen=True)
class Offer:
    """The kinds of sheets of one material, and what their cost is counted in."""

    kinds: tuple[Kind, ...]
    too_small: tuple[Sheet, ...]
    """Sheets of which nothing is left after trimming."""
    costs: Costs

    def boards(self, kerf: int, step: int) -> list[Board]:
        """The kinds as boards of the packing in steps of its grid, each under its place in `kinds`."""
        boards = [
            Board(number, (kind.length + kerf) // step, (kind.width + kerf) // step, cost, kind.available)
            for number, (kind, cost) in enumerate(zip(self.kinds, self.costs.each, strict=True))
        ]
        return [board for board in boards if board.length and board.width]


def offer_of(project: Project, material: Material, longest_mm: float) -> Offer:
    """What there is to cut a material from; `longest_mm` is the length of the longest piece."""
    rules = project.stock.rules
    sheets = [sheet for sheet in project.stock.sheets if sheet.material_id == material.id]
    if sheets:
        kinds = [_kind(sheet, rules) for sheet in sheets]
    else:
        usual = _usual(material, rules, longest_mm, project.boards.longest_mm)
        kinds = [_kind(usual, rules, is_assumed=True)]
    usable = tuple(kind for kind in kinds if kind.length > 0 and kind.width > 0)
    too_small = tuple(kind.sheet for kind in kinds if kind not in usable)
    return Offer(usable, too_small, _costs(usable))


def _kind(sheet: Sheet, rules: CuttingRules, *, is_assumed: bool = False) -> Kind:
    trim = units(rules.trim_mm) if sheet.is_trimmed else 0
    length, width = units(sheet.length_mm) - 2 * trim, units(sheet.width_mm) - 2 * trim
    return Kind(sheet, trim, length, width, is_assumed)


def _usual(material: Material, rules: CuttingRules, longest_mm: float, longest_board_mm: float) -> Sheet:
    """A usual sheet, longer where the longest board that is to be had in one piece asks for it."""
    length = USUAL_LENGTH_MM
    if longest_mm + 2 * rules.trim_mm > length:
        length = max(length, longest_board_mm + 2 * rules.trim_mm)
    return Sheet(id="assumed", material_id=material.id, length_mm=length, width_mm=USUAL_WIDTH_MM)


def _costs(kinds: Sequence[Kind]) -> Costs:
    bought = [kind for kind in kinds if not kind.sheet.is_owned]
    counts_area = any(not kind.sheet.price for kind in bought)
    full = [0 if kind.sheet.is_owned else _area(kind) if counts_area else _price(kind.sheet) for kind in kinds]
    largest = max((_area(kind) for kind in kinds if kind.sheet.is_owned), default=1)
    little = [1 + _LITTLE * _area(kind) // largest if kind.sheet.is_owned else 0 for kind in kinds]
    most = sum(each * (kind.available or 0) for each, kind in zip(little, kinds, strict=True))
    shared = gcd(*full) or 1
    return Costs(
        each=tuple(cost // shared * (most + 1) + extra for cost, extra in zip(full, little, strict=True)),
        weight=most + 1,
        unit=shared / (_AREA_UNITS if counts_area else _PRICE_UNITS),
        counts_area=counts_area,
    )


def _area(kind: Kind) -> int:
    return units(kind.sheet.length_mm) * units(kind.sheet.width_mm)


def _price(sheet: Sheet) -> int:
    return round((sheet.price or 0) * _PRICE_UNITS)
