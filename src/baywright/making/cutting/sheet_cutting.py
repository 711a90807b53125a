"""Cutting the pieces of one material from its sheets: asked of the packing, and told in the owner's words.

Laws: what no sheet can hold is left out before the search and told with its reason; a bound is told in the measure
that was minimised, money or m², and is never above the truth; what is owned counts nothing in either.
"""

from collections.abc import Callable
from decimal import Decimal

from baywright.making.cutting.grid import grid_of
from baywright.making.cutting.layouts import Drawing, saw_rules
from baywright.making.cutting.packing import Packing, Piece, pack
from baywright.making.cutting.pieces import Demand, Wanted, longest_mm
from baywright.making.cutting.reasons import gathered_reasons, no_sheet, no_size
from baywright.making.cutting.stock import offer_of
from baywright.making.cutting.units import units
from baywright.model.cutting import SheetCutting, SheetLayout, Unplaced
from baywright.model.length import format_length
from baywright.model.project import Project

Stop = Callable[[], bool]


class SheetJob:
    """All sheets of one material."""

    def __init__(self, project: Project, demand: Demand) -> None:
        self._project = project
        self._demand = demand
        rules = project.stock.rules
        self._kerf = units(rules.kerf_mm)
        wanted = demand.wanted()
        self._impossible = [
            (piece, reason) for piece in wanted if (reason := no_size(piece, self._kerf, project.unit)) is not None
        ]
        self._pieces = [piece for piece in wanted if no_size(piece, self._kerf, project.unit) is None]
        self._offer = offer_of(project, demand.material, longest_mm(self._pieces))
        self._step = grid_of(side + self._kerf for piece in self._pieces for side in (piece.length, piece.width))
        self._drawing = Drawing(self._pieces, self._offer, rules, self._step)

    @property
    def size(self) -> int:
        """How many pieces there are to pack."""
        return len(self._pieces)

    @property
    def is_possible(self) -> bool:
        """Whether every piece is large enough to be sawn."""
        return not self._impossible

    def bought(self, packing: Packing) -> int:
        """How many of the sheets in a packing have to be bought."""
        return sum(not self._offer.kinds[layout.board].sheet.is_owned for layout in packing.layouts)

    def pack(self, *, effort: int | None, stop: Stop, found: Callable[[Packing], None]) -> Packing:
        """The best packing found; each better one is handed to `found`, the first at once."""
        kerf, step = self._kerf, self._step
        pieces = [
            Piece(number, (piece.length + kerf) // step, (piece.width + kerf) // step, piece.may_turn)
            for number, piece in enumerate(self._pieces)
        ]
        rules = saw_rules(self._project.stock.rules, step)
        return pack(pieces, self._offer.boards(kerf, step), rules, effort=effort, stop=stop, found=found)

    def told(self, packing: Packing, first: int) -> SheetCutting:
        """The cutting in the owner's words; its sheets are numbered from `first`."""
        layouts = self._drawing.layouts(packing, first)
        bought = [layout for layout in layouts if not layout.is_owned]
        material, costs = self._demand.material, self._offer.costs
        value, bound = costs.value(packing.cost), costs.bound(packing.cost, packing.bound)
        return SheetCutting(
            material_id=material.id,
            material=material.name,
            thickness_mm=self._demand.thickness_mm,
            has_grain=material.has_grain,
            layouts=layouts,
            unplaced=self._unplaced(packing),
            bought=len(bought),
            cost=self._cost(bought),
            bound=bound,
            value=value,
            is_proved=bound == value and len(packing.unplaced) == len(packing.unplaceable),
            counts_area=costs.counts_area,
            is_assumed=any(kind.is_assumed for kind in self._offer.kinds),
        )

    def _unplaced(self, packing: Packing) -> tuple[Unplaced, ...]:
        name, kinds = self._demand.material.name, self._offer.kinds
        left: list[tuple[Wanted, str]] = list(self._impossible)
        left += [
            (piece, no_sheet(piece, kinds, f"“{name}”", self._project))
            for piece in (self._pieces[number] for number in sorted(packing.unplaced))
        ]
        return gathered_reasons((piece.part.number, reason) for piece, reason in left)

    def _cost(self, bought: list[SheetLayout]) -> Decimal | None:
        prices = {kind.sheet.id: kind.sheet.price for kind in self._offer.kinds if not kind.is_assumed}
        paid = [prices.get(layout.sheet_id) for layout in bought]
        known = [price for price in paid if price is not None]
        return sum(known, Decimal(0)) if len(known) == len(paid) else None

    @property
    def assumed(self) -> dict[str, str]:
        """The material with the sheet that was assumed for it, where none is in stock."""
        unit, kinds = self._project.unit, self._offer.kinds
        if not any(kind.is_assumed for kind in kinds):
            return {}
        sheet = kinds[0].sheet
        size = f"{format_length(sheet.length_mm, unit)} × {format_length(sheet.width_mm, unit)}"
        return {self._demand.material.name: f"a sheet of {size}"}

    @property
    def remarks(self) -> tuple[str, ...]:
        """What does not go together."""
        name, unit = self._demand.material.name, self._project.unit
        told = [
            f"Nothing is left of the sheet “{sheet.name or sheet.id}” of “{name}” after trimming; it is not used."
            for sheet in self._offer.too_small
        ]
        if len(self._demand.thicknesses_mm) > 1:
            sizes = " and ".join(format_length(each, unit) for each in self._demand.thicknesses_mm)
            told.append(
                f"Parts of “{name}” are reckoned {sizes} thick, though they are cut from the same boards: give the "
                "boards that they are for the same thickness, or a material of their own."
            )
        return tuple(told)
