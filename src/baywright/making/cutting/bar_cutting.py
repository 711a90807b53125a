"""Cutting strips and rails of one section from bars or rolls: asked of the one-dimensional search, told in mm.

Laws: every strip is cut once or told with the reason; an owned bar costs nothing; where a price is missing, length is
reckoned instead of money. Sections share the bars of their use: of what is limited, the next has what the one before
left, and its bound is what it could not go below with all of it. Where pieces are missing that a bar could give, no
bound is told.
"""

from collections import Counter, deque
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from math import gcd

from baywright.making.cutting.bars.search import cut_bars
from baywright.making.cutting.bars.stock import Bar as Stick
from baywright.making.cutting.bars.stock import BarPacking, Length
from baywright.making.cutting.reasons import gathered_reasons
from baywright.making.cutting.strips import BarDemand, Strip
from baywright.making.cutting.units import millimetres, units
from baywright.model.construction import EdgingKind
from baywright.model.cutting import BarCutting, BarLayout, BarPiece, Unplaced
from baywright.model.length import format_length
from baywright.model.project import Project
from baywright.model.stock import Bar, BarUse

USUAL_BAR_MM = 2500.0
USUAL_ROLL_MM = 25_000.0
"""Lengths that are assumed where none is in stock; common practice."""
_PRICE_UNITS = 10_000
Stop = Callable[[], bool]
Left = Counter[str]
"""How many bars of a limited kind were taken already, by id."""


@dataclass(frozen=True)
class _Kind:
    bar: Bar
    cost: int
    available: int | None
    is_assumed: bool = False


class BarJob:
    """All bars of one use and section. `taken` is what sections before it took of bars that are limited."""

    def __init__(self, project: Project, demand: BarDemand, taken: Left) -> None:
        self._project = project
        self._demand = demand
        self._kerf = units(project.stock.rules.bar_kerf_mm)
        bars = [bar for bar in project.stock.bars if bar.serves(demand.use, demand.width_mm)]
        bars.sort(key=lambda bar: (bar.width_mm is None, bar.width_mm or 0.0))  # of bars alike the narrower is cut
        is_assumed = not bars
        if is_assumed:
            bars = [self._usual()]
        self._counts_length = any(not bar.price for bar in bars if not bar.is_owned)
        costs = [self._cost_of(bar) for bar in bars]
        shared = gcd(*costs) or 1
        self._unit = shared / (units(1000) if self._counts_length else _PRICE_UNITS)
        self._kinds = [
            _Kind(bar, cost // shared, _available(bar, taken), is_assumed)
            for bar, cost in zip(bars, costs, strict=True)
        ]
        self._untouched = [replace(kind, available=_available(kind.bar, Counter())) for kind in self._kinds]
        self._possible = [strip for strip in demand.strips if strip.length > 0]

    def cut(self, *, effort: float | None, stop: Stop) -> BarPacking:
        """The best cutting found, with a bound that holds whichever sections take the bars."""
        packing = self._cut(self._kinds, effort, stop)
        if self._kinds == self._untouched or not (packing.cost or packing.unplaced):
            return packing
        whole = self._cut(self._untouched, effort, stop)
        return replace(packing, bound=min(whole.bound, packing.cost), unplaceable=whole.unplaceable)

    def _cut(self, kinds: Sequence[_Kind], effort: float | None, stop: Stop) -> BarPacking:
        counts = Counter(strip.length for strip in self._possible)
        grid = gcd(*(length + self._kerf for length in counts)) or 1  # as coarse as the pieces allow, and as exact
        lengths = [Length(length, (length + self._kerf) // grid, count) for length, count in sorted(counts.items())]
        sticks = [
            Stick(number, size, kind.cost, kind.available)
            for number, kind in enumerate(kinds)
            if (size := (units(kind.bar.length_mm) + self._kerf) // grid) > 0
        ]
        return cut_bars(lengths, sticks, effort=effort, stop=stop)

    def told(self, packing: BarPacking, first: int) -> BarCutting:
        """The cutting in the owner's words; its bars are numbered from `first`."""
        layouts = tuple(self._layouts(packing, first))
        bought = [layout for layout in layouts if not layout.is_owned]
        bound = min(packing.bound, packing.cost) if packing.unplaced == packing.unplaceable else 0
        return BarCutting(
            id=self._demand.id,
            name=self._demand.name,
            use=self._demand.use,
            layouts=layouts,
            width_mm=self._demand.width_mm,
            unplaced=self._unplaced(packing),
            bought=len(bought),
            cost=self._cost(bought),
            bound=bound * self._unit,
            value=packing.cost * self._unit,
            is_proved=packing.proved,
            counts_length=self._counts_length,
            is_assumed=any(kind.is_assumed for kind in self._kinds),
        )

    @property
    def assumed(self) -> dict[str, str]:
        """The section with the length that was assumed for it, where no bar in stock serves."""
        if not self._kinds[0].is_assumed:
            return {}
        unit, demand = self._project.unit, self._demand
        size = f"a length of {format_length(self._kinds[0].bar.length_mm, unit)}"
        if any(bar.use is demand.use for bar in self._project.stock.bars):  # but none of a width that serves
            more = " or more" if demand.use is BarUse.EDGING else ""
            size += f", {format_length(demand.width_mm, unit)}{more} wide,"
        return {demand.name: size}

    def _usual(self) -> Bar:
        is_band = self._demand.use is BarUse.EDGING and self._project.construction.edging.kind is EdgingKind.BAND
        longest = millimetres(max(strip.length for strip in self._demand.strips))
        usual = USUAL_ROLL_MM if is_band else USUAL_BAR_MM
        return Bar(id="assumed", use=self._demand.use, length_mm=min(100_000.0, max(usual, longest)))

    def _cost_of(self, bar: Bar) -> int:
        if bar.is_owned:
            return 0
        return units(bar.length_mm) if self._counts_length else round((bar.price or 0) * _PRICE_UNITS)

    def _layouts(self, packing: BarPacking, first: int) -> Iterator[BarLayout]:
        waiting: dict[int, deque[Strip]] = {}
        for strip in self._possible:
            waiting.setdefault(strip.length, deque()).append(strip)
        number, numbers = first, Counter[str]()
        ordered = sorted(packing.patterns, key=lambda pattern: not self._kinds[pattern.bar].bar.is_owned)
        for pattern in ordered:
            for _ in range(pattern.times):
                strips = [waiting[length].popleft() for length, count in pattern.counts for _ in range(count)]
                yield self._layout(self._kinds[pattern.bar], f"L{number}", strips, numbers)
                number += 1

    def _layout(self, kind: _Kind, number: str, strips: Sequence[Strip], numbers: "Counter[str]") -> BarLayout:
        at, pieces = 0, []
        for strip in strips:
            numbers[strip.part_number] += 1
            pieces.append(BarPiece(
                part_number=strip.part_number, piece=numbers[strip.part_number],
                from_mm=millimetres(at), length_mm=millimetres(strip.length),
            ))  # fmt: skip
            at += strip.length + self._kerf
        rest = max(0.0, millimetres(units(kind.bar.length_mm) - at))
        return BarLayout(
            number=number,
            bar_id="" if kind.is_assumed else kind.bar.id,
            bar_name=kind.bar.name,
            length_mm=kind.bar.length_mm,
            width_mm=kind.bar.width_mm,
            is_owned=kind.bar.is_owned,
            pieces=tuple(pieces),
            rest_mm=rest,
            is_rest_reusable=rest >= self._project.stock.rules.bar_rest_mm,
        )

    def _unplaced(self, packing: BarPacking) -> tuple[Unplaced, ...]:
        missing = dict(packing.unplaced)
        left = [
            (strip.part_number, "nothing is left of it; make the part larger.")
            for strip in self._demand.strips
            if strip.length <= 0
        ]
        for strip in reversed(self._possible):  # those before it were cut
            if missing.get(strip.length, 0) > 0:
                missing[strip.length] -= 1
                left.append((strip.part_number, self._reason(strip)))
        return gathered_reasons(left)

    def _reason(self, strip: Strip) -> str:
        unit, longest = self._project.unit, max((units(kind.bar.length_mm) for kind in self._kinds), default=0)
        if strip.length <= longest:
            return f"the bars for “{self._demand.name}” are used up; add bars to buy, or more of those that there are."
        return (
            f"its strip is {format_length(millimetres(strip.length), unit)} long, "
            f"{format_length(millimetres(strip.length - longest), unit)} more than the longest bar; enter a longer one."
        )

    def _cost(self, bought: Sequence[BarLayout]) -> Decimal | None:
        prices = {kind.bar.id: kind.bar.price for kind in self._kinds if not kind.is_assumed}
        known = [price for layout in bought if (price := prices.get(layout.bar_id)) is not None]
        return sum(known, Decimal(0)) if len(known) == len(bought) else None


def _available(bar: Bar, taken: Left) -> int | None:
    quantity = 1 if bar.is_owned and bar.quantity is None else bar.quantity
    return None if quantity is None else max(0, quantity - taken[bar.id])
