"""How the parts are cut, as plain text for a terminal: each sheet with pieces, cuts and rests, bars, what to buy."""

from collections import Counter
from collections.abc import Iterable, Iterator
from decimal import Decimal

from baywright.model.cost import Cost
from baywright.model.count import count_words
from baywright.model.cutting import (
    BarCutting,
    BarLayout,
    CuttingPlan,
    SawCut,
    SheetCutting,
    SheetLayout,
    Unplaced,
    missing_words,
)
from baywright.model.length import LengthUnit, format_length
from baywright.model.money import format_money
from baywright.model.project import Project

NOTHING_TO_CUT = "There is nothing to cut."
NOT_KEPT = "The stock was not changed: add --save to keep the rests."


def cutting_text(project: Project, plan: CuttingPlan, cost: Cost | None) -> str:
    """The whole plan in the project's unit and currency."""
    return CuttingText(project.unit, project.pricing.currency).whole(plan, cost)


class CuttingText:
    """The words for one project's unit and currency."""

    def __init__(self, unit: LengthUnit, currency: str) -> None:
        self._unit = unit
        self._currency = currency

    def whole(self, plan: CuttingPlan, cost: Cost | None) -> str:
        """The whole plan."""
        if not plan.sheets and not plan.bars:
            return NOTHING_TO_CUT
        lines = [line for cutting in plan.sheets for line in self._sheets(cutting)]
        lines += [line for cutting in plan.bars for line in self._bars(cutting)]
        lines += self._purchases(plan, cost)
        lines += plan.remarks
        if not plan.is_finished:
            lines.append("The search was stopped; there may be better layouts.")
        return "\n".join(lines)

    def _sheets(self, cutting: SheetCutting) -> Iterator[str]:
        count = len(cutting.layouts)
        owned = count - cutting.bought
        where = f"{cutting.bought} to buy" + (f", {owned} from the rack" if owned else "")
        yield f"{cutting.material}: {count_words(count, 'sheet')}, {where}; {_proof(cutting)}"
        for layout in cutting.layouts:
            yield from self._layout(layout)
        yield from _left_over(cutting.unplaced)
        yield ""

    def _layout(self, layout: SheetLayout) -> Iterator[str]:
        where = "from the rack" if layout.is_owned else "to buy"
        name = f"“{layout.sheet_name}” " if layout.sheet_name else ""
        yield f"  {layout.number}  {name}{self._size(layout.length_mm, layout.width_mm)}, {where}"
        for piece in layout.pieces:
            turned = ", turned" if piece.is_turned else ""
            place = f"{self._length(piece.x_mm)} along, {self._length(piece.y_mm)} up"
            size = self._size(piece.length_mm, piece.width_mm)
            yield f"      {piece.part_number} no. {piece.piece}: {size} at {place}{turned}"
        yield "    Cuts:"
        width = len(str(len(layout.cuts)))
        yield from (f"      {cut.number:{width}}. {self._cut(cut)}" for cut in layout.cuts)
        if kept := [rest for rest in layout.rests if rest.is_reusable]:
            sizes = ", ".join(self._size(rest.length_mm, rest.width_mm) for rest in kept)
            yield f"    Worth keeping: {sizes}"

    def _cut(self, cut: SawCut) -> str:
        way = "across" if cut.is_across else "along"
        panel = cut.panel if cut.panel == "sheet" else f"panel {cut.panel}"
        gives = " and ".join(f"panel {name}" if name[:1].isdigit() else name for name in cut.gives)
        return f"{panel}, {way}, fence at {self._length(cut.measure_mm)}: gives {gives}"

    def _bars(self, cutting: BarCutting) -> Iterator[str]:
        count = len(cutting.layouts)
        words = f"{cutting.name}: {count_words(count, 'length')}, {cutting.bought} to buy"
        yield f"{words}; {_proof(cutting)}"
        for layout in cutting.layouts:
            yield self._bar(layout)
        yield from _left_over(cutting.unplaced)
        yield ""

    def _bar(self, layout: BarLayout) -> str:
        counts = Counter((piece.part_number, piece.length_mm) for piece in layout.pieces)
        pieces = ", ".join(
            f"{count} × {self._length(length)} for {number}" for (number, length), count in counts.items()
        )
        rest = f"; rest {self._length(layout.rest_mm)}" + (", worth keeping" if layout.is_rest_reusable else "")
        where = "from the rack" if layout.is_owned else "to buy"
        return f"  {layout.number}  {self._bar_size(layout)}, {where}: {pieces}{rest}"

    def _bar_size(self, layout: BarLayout) -> str:
        """Its length, and its width where the stock says it."""
        if layout.width_mm is None:
            return self._length(layout.length_mm)
        return self._size(layout.length_mm, layout.width_mm)

    def _purchases(self, plan: CuttingPlan, cost: Cost | None) -> Iterator[str]:
        yield "To buy:"
        bought = Counter(
            (cutting.material, layout.sheet_name, layout.length_mm, layout.width_mm)
            for cutting in plan.sheets
            for layout in cutting.layouts
            if not layout.is_owned
        )
        for (material, name, length, width), count in bought.items():
            yield f"  {count} × {material}{f' “{name}”' if name else ''}, {self._size(length, width)}"
        for cutting in plan.bars:
            kinds = Counter(
                (layout.bar_name, self._bar_size(layout)) for layout in cutting.layouts if not layout.is_owned
            )
            for (name, size), count in kinds.items():
                yield f"  {count} × {cutting.name}{f' “{name}”' if name else ''}, {size}"
        if not bought and not any(cutting.bought for cutting in plan.bars):
            yield "  nothing"
        known = [each.cost for each in plan.sheets] + [each.cost for each in plan.bars]
        total = sum((price for price in known if price is not None), Decimal(0))
        missing = sum(price is None for price in known)
        words = f"Sheets and bars: {format_money(total, self._currency)}"
        if cost is not None and cost.vat and not cost.prices_include_vat:
            words += " before tax"
        yield words + (f", without {missing} of {len(known)} lists that lack a price" if missing else "")
        if cost is not None:
            yield self._together(cost)

    def _together(self, cost: Cost) -> str:
        """The sum of boards and hardware, with tax, and what is missing in it."""
        words = f"With all hardware: {format_money(cost.gross, self._currency)}"
        if cost.vat:
            words += f", of which {format_money(cost.vat, self._currency)} value added tax"
        if cost.missing:
            others = f" and {len(cost.missing) - 3} more" if len(cost.missing) > 3 else ""
            words += f"; no price for {'; '.join(cost.missing[:3])}{others}"
        return words

    def _length(self, length_mm: float) -> str:
        return format_length(length_mm, self._unit)

    def _size(self, length_mm: float, width_mm: float) -> str:
        return f"{self._length(length_mm)} × {self._length(width_mm)}"


def _proof(cutting: SheetCutting | BarCutting) -> str:
    if isinstance(cutting, SheetCutting):
        what = "area" if cutting.counts_area else "cost"
    else:
        what = "length" if cutting.counts_length else "cost"
    if cutting.unplaced:
        return missing_words(cutting.unplaced, why=False)
    if cutting.is_proved:
        return f"proved: no cutting takes less {what}"
    if cutting.gap is None:
        return "not proved best"
    return f"at most {cutting.gap:.1%} less {what} may be possible"


def _left_over(unplaced: Iterable[Unplaced]) -> Iterator[str]:
    for each in unplaced:
        yield f"  Not cut: {each.part_number}, {count_words(each.pieces, 'piece')}. {each.reason}"


def has_left_over(plan: CuttingPlan) -> bool:
    """Whether any piece could not be cut."""
    return any(cutting.unplaced for cutting in plan.sheets) or any(cutting.unplaced for cutting in plan.bars)
