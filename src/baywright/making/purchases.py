"""What is bought for the run, line by line: sheets, bars, hardware; with what each is of and how the bays share it.

Laws: a line costs what its packs, sheets or bars cost, rounded to the smallest coin; what is owned or at hand costs
nothing and says so; a line without a price names what is missing. Edging is paid for once: as bars where the owner has
entered some that are wide enough, else by the metre with the hardware.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from baywright.making.cutting.strips import bar_demands
from baywright.making.shares import Weights, along, pieces_in, used_in
from baywright.model.cost import CostGroup, CostLine
from baywright.model.cutting import BarCutting, BarLayout, CuttingPlan, SheetCutting, SheetLayout, Unplaced
from baywright.model.length import format_length
from baywright.model.making import HardwareItem, Manufacture, Part
from baywright.model.money import Pricing, to_coin
from baywright.model.project import Project
from baywright.model.stock import Bar, BarUse, BoardRole, Sheet

OWNED = "owned already, costs nothing"
AT_HAND = "at hand already, costs nothing"
NOT_LAID_OUT = "not laid out yet"
BARS_NAME, HARDWARE_NAME = "Bars and edging", "Hardware"

Bays = Mapping[int, tuple[float, float]]
"""From where to where along the run each bay reaches, in mm."""


@dataclass(frozen=True)
class Purchase:
    """A line with what it is of and how the bays share it."""

    line: CostLine
    material: str
    weights: Weights
    missing: str = ""
    """What has no price, by name; empty where the line's cost is known."""


def purchases(project: Project, manufacture: Manufacture, cutting: CuttingPlan | None, bays: Bays) -> list[Purchase]:
    """Every line; without a cutting plan the sheets of every material, and the bars of every section, are one line
    without a price.
    """
    return [
        *_sheets(project, manufacture.parts, cutting, bays),
        *_bars(project, manufacture.parts, cutting, bays),
        *(_hardware(item, project.pricing.currency, bays) for item in manufacture.hardware),
    ]


def _sheets(project: Project, parts: Sequence[Part], cutting: CuttingPlan | None, bays: Bays) -> Iterator[Purchase]:
    """The sheets of every material, bought or owned; what could not be cut is told as missing."""
    if cutting is None:
        for material_id, name in dict.fromkeys((part.material_id, part.material) for part in parts):
            line = _line(CostGroup.SHEETS, material_id, name, 0, "sheets", project.pricing, _Offer(None, NOT_LAID_OUT))
            yield Purchase(line, name, _areas(parts, material_id, bays), f"{name}: {NOT_LAID_OUT}")
        return
    sheets = {sheet.id: sheet for sheet in project.stock.sheets}
    for of_material in cutting.sheets:
        weights = _areas(parts, of_material.material_id, bays)
        kinds: dict[tuple[str, bool], list[SheetLayout]] = {}
        for layout in of_material.layouts:
            kinds.setdefault((layout.sheet_id, layout.is_owned), []).append(layout)
        for (sheet_id, is_owned), layouts in kinds.items():
            name = _sheet_name(project, of_material, layouts[0])
            offer = _offer(sheets.get(sheet_id), is_owned)
            number = sheet_id or of_material.material_id
            line = _line(CostGroup.SHEETS, number, name, len(layouts), "sheets", project.pricing, offer)
            yield Purchase(line, of_material.material, weights, name if offer.price is None else "")
        for one in of_material.unplaced:
            yield _missing_piece(project, of_material, one, weights)


def _missing_piece(project: Project, of: SheetCutting | BarCutting, left: Unplaced, weights: Weights) -> Purchase:
    """Pieces that no sheet or bar holds: what they will cost is not known."""
    if isinstance(of, SheetCutting):
        group, number, material, what = CostGroup.SHEETS, of.material_id, of.material, "sheet"
    else:
        group, number, material, what = CostGroup.BARS, of.id, of.name, "bar"
    name = f"{material} for {left.pieces} of {left.part_number}"
    line = _line(group, number, name, left.pieces, "pieces", project.pricing, _Offer(None, left.reason))
    return Purchase(line, material if what == "sheet" else BARS_NAME, weights, f"{name}: not cut from any {what}")


def _bars(project: Project, parts: Sequence[Part], cutting: CuttingPlan | None, bays: Bays) -> Iterator[Purchase]:
    """Bars and rolls, bought or owned; edging from a roll that was only assumed is ordered as hardware."""
    if cutting is None:
        for demand in bar_demands(project, parts):
            if demand.use is BarUse.EDGING and not demand.is_in(project.stock):
                continue
            unknown = _Offer(None, NOT_LAID_OUT)
            line = _line(CostGroup.BARS, demand.id, demand.name, 0, "bars", project.pricing, unknown)
            weights = _edges(parts, bays) if demand.use is BarUse.EDGING else _rails(parts, bays)
            yield Purchase(line, BARS_NAME, weights, f"{demand.name}: {NOT_LAID_OUT}")
        return
    bars = {bar.id: bar for bar in project.stock.bars}
    for of_section in cutting.bars:
        is_edging = of_section.use is BarUse.EDGING
        if is_edging and of_section.is_assumed:
            continue
        weights = _edges(parts, bays) if is_edging else _rails(parts, bays)
        kinds: dict[tuple[str, bool], list[BarLayout]] = {}
        for layout in of_section.layouts:
            kinds.setdefault((layout.bar_id, layout.is_owned), []).append(layout)
        for (bar_id, is_owned), layouts in kinds.items():
            name = _bar_name(project, of_section, layouts[0])
            offer = _offer(bars.get(bar_id), is_owned)
            line = _line(CostGroup.BARS, bar_id or of_section.id, name, len(layouts), "bars", project.pricing, offer)
            yield Purchase(line, BARS_NAME, weights, name if offer.price is None else "")
        for one in of_section.unplaced:
            yield _missing_piece(project, of_section, one, weights)


def _hardware(item: HardwareItem, currency: str, bays: Bays) -> Purchase:
    """A line of the hardware order."""
    amount = item.cost
    name = ", ".join(filter(None, (item.name, item.specification)))
    line = CostLine(
        group=CostGroup.HARDWARE, number=item.number, name=name, quantity=item.packs, unit="packs",
        unit_price=item.price, cost=None if amount is None else to_coin(amount, currency),
        supplier=item.supplier, note=AT_HAND if item.is_left_out else "",
    )  # fmt: skip
    return Purchase(line, HARDWARE_NAME, used_in(item, bays), name if amount is None else "")


@dataclass(frozen=True)
class _Offer:
    """What a sheet or bar costs (None: not known), what there is to say of it, and who sells it."""

    price: Decimal | None
    note: str = ""
    supplier: str = ""


def _offer(stock: Sheet | Bar | None, is_owned: bool) -> _Offer:
    """The offer of a line of the stock; of a usual size that was assumed nothing is known."""
    if is_owned:
        return _Offer(Decimal(0), OWNED)
    return _Offer(None) if stock is None else _Offer(stock.price, supplier=stock.supplier)


def _line(
    group: CostGroup, number: str, name: str, quantity: float, unit: str, pricing: Pricing, offer: _Offer
) -> CostLine:
    price = offer.price
    return CostLine(
        group=group, number=number, name=name, quantity=quantity, unit=unit, unit_price=price,
        cost=None if price is None else to_coin(price * Decimal(str(quantity)), pricing.currency),
        supplier=offer.supplier, note=offer.note,
    )  # fmt: skip


def _sheet_name(project: Project, of_material: SheetCutting, layout: SheetLayout) -> str:
    size = " × ".join(format_length(mm, project.unit) for mm in (layout.length_mm, layout.width_mm))
    what = "offcut" if layout.is_owned else "sheet"
    own = f" “{layout.sheet_name}”" if layout.sheet_name else ""
    return f"{of_material.material}, {what}{own} {size}"


def _bar_name(project: Project, of_section: BarCutting, layout: BarLayout) -> str:
    own = f" “{layout.bar_name}”" if layout.bar_name else ""
    size = " × ".join(format_length(mm, project.unit) for mm in (layout.length_mm, layout.width_mm) if mm is not None)
    return f"{of_section.name}, bar{own} {size}"


# How the bays share it


def _weighed(parts: Sequence[Part], bays: Bays, measure: Callable[[Part], float]) -> Weights:
    """What the pieces in each bay measure together; by the run's length where they measure nothing."""
    found = dict.fromkeys(bays, 0.0)
    for part in parts:
        each = measure(part)
        if each:
            for bay, pieces in pieces_in(part, bays).items():
                found[bay] += pieces * each
    return found if any(found.values()) else along(bays)


def _areas(parts: Sequence[Part], material_id: str, bays: Bays) -> Weights:
    of_material = [part for part in parts if part.material_id == material_id]
    return _weighed(of_material, bays, lambda part: part.length_mm * part.width_mm)


def _edges(parts: Sequence[Part], bays: Bays) -> Weights:
    return _weighed(parts, bays, lambda part: part.edged_length_mm)


def _rails(parts: Sequence[Part], bays: Bays) -> Weights:
    rails = [part for part in parts if part.role is BoardRole.BRACE]
    return _weighed(rails, bays, lambda part: part.length_mm)
