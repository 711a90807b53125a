"""How the parts are cut: a layout for every sheet and bar, the order of the cuts, what is left.

Laws: all in mm as cut, before edging; x along the sheet's length, y along its width, from the corner of the untrimmed
sheet; every piece is cut once or told among the unplaced with the reason; no bound is above the truth.
"""

from collections.abc import Sequence
from decimal import Decimal

from baywright.model.base import Frozen
from baywright.model.count import count_words
from baywright.model.stock import BarUse

USELESS_GAP = 0.9
"""A bound so far below says nothing that is worth saying."""


class CutPiece(Frozen):
    """One piece of a part on its sheet, as it lies."""

    part_number: str
    piece: int
    """Which of the part's pieces, from 1."""
    x_mm: float
    y_mm: float
    length_mm: float
    width_mm: float
    """Along the sheet's length and width."""
    is_turned: bool = False


class RestPiece(Frozen):
    """What is left of a sheet, as it lies."""

    x_mm: float
    y_mm: float
    length_mm: float
    width_mm: float
    is_reusable: bool = False


class SawCut(Frozen):
    """One cut, edge to edge through one panel, in the order of sawing."""

    number: int
    panel: str
    """The panel that is cut: “sheet”, or the name that an earlier cut gave."""
    x_mm: float
    y_mm: float
    length_mm: float
    width_mm: float
    """Where that panel lay on the untrimmed sheet, so that it can be shown."""
    is_across: bool
    """Cut across the sheet's length (a given x), else along it (a given y)."""
    at_mm: float
    """Where the blade's near side runs: x or y on the untrimmed sheet."""
    measure_mm: float
    """What the fence is set to: width of the panel that the cut gives."""
    gives: tuple[str, ...]
    """What comes off and what stays: names of panels, numbers of parts, “rest” or “waste”."""


class SheetLayout(Frozen):
    """One sheet and what is cut from it."""

    number: str
    """E.g. `C3`; no part has such a number."""
    sheet_id: str
    """The stock it is of; empty for a size that was assumed."""
    sheet_name: str
    material_id: str
    length_mm: float
    width_mm: float
    trim_mm: float
    is_owned: bool
    pieces: tuple[CutPiece, ...]
    rests: tuple[RestPiece, ...]
    cuts: tuple[SawCut, ...]
    stages: int
    """How many times the direction of cutting changes, counting the first."""


class Unplaced(Frozen):
    """Pieces that could not be cut, and why."""

    part_number: str
    pieces: int
    reason: str


def missing_words(unplaced: Sequence[Unplaced], *, why: bool = True) -> str:
    """“3 pieces are missing”, on request with the reason where it is one for all; empty where none is."""
    count = sum(left.pieces for left in unplaced)
    if not count:
        return ""
    words = f"{count_words(count, 'piece')} {'is' if count == 1 else 'are'} missing"
    reasons = {left.reason for left in unplaced}
    if not why or len(reasons) > 1:
        return words
    reason = reasons.pop()
    return f"{words}: {reason[:1].lower()}{reason[1:].removesuffix('.')}"


class StockCutting(Frozen):
    """What is told of all sheets of one material and of all bars of one section alike."""

    unplaced: tuple[Unplaced, ...] = ()
    bought: int = 0
    """Sheets or bars to buy."""
    cost: Decimal | None = None
    """Of what is to be bought; None where a price is missing."""
    bound: float = 0.0
    """What no cutting of the same pieces costs less than, in the measure that was minimised (`value`)."""
    value: float = 0.0
    is_proved: bool = False
    is_assumed: bool = False
    """Nothing of it is in stock, so a usual size was assumed."""

    @property
    def gap(self) -> float | None:
        """By what share of its value it could be beaten at most; None where that says nothing worth saying.

        Nothing is told of what is proved best, nor where pieces are missing: fewer sheets are no better cutting then.
        """
        if self.is_proved or self.unplaced or self.value <= 0:
            return None
        gap = (self.value - self.bound) / self.value
        return gap if 0 < gap < USELESS_GAP else None


class SheetCutting(StockCutting):
    """All sheets of one material."""

    material_id: str
    material: str
    thickness_mm: float
    has_grain: bool = True
    """Whether its face has a grain, which runs along the sheets."""
    layouts: tuple[SheetLayout, ...]
    counts_area: bool = False
    """Whether area in m² was minimised because a price is missing; else cost."""


class BarPiece(Frozen):
    """One piece on its bar."""

    part_number: str
    piece: int
    from_mm: float
    length_mm: float


class BarLayout(Frozen):
    """One bar and what is cut from it, from its left end."""

    number: str
    """E.g. `L2`; no part has such a number."""
    bar_id: str
    bar_name: str
    length_mm: float
    width_mm: float | None = None
    """Of the bar; None where the stock does not say it."""
    is_owned: bool
    pieces: tuple[BarPiece, ...]
    rest_mm: float
    is_rest_reusable: bool


class BarCutting(StockCutting):
    """All bars of one use and section."""

    id: str
    name: str
    use: BarUse = BarUse.EDGING
    layouts: tuple[BarLayout, ...]
    width_mm: float | None = None
    """How wide its bars are to be: strips of edging at least, rails exactly."""
    counts_length: bool = False
    """Whether length in m was minimised because a price is missing; else cost."""


class CuttingPlan(Frozen):
    """All cutting of one arrangement."""

    sheets: tuple[SheetCutting, ...] = ()
    bars: tuple[BarCutting, ...] = ()
    remarks: tuple[str, ...] = ()
    is_finished: bool = True
    """Whether the search came to its end; else better layouts may follow."""

    @property
    def sheet_layouts(self) -> tuple[SheetLayout, ...]:
        """Every sheet, in the order of the materials."""
        return tuple(layout for cutting in self.sheets for layout in cutting.layouts)

    @property
    def unplaced(self) -> tuple[Unplaced, ...]:
        """All that could not be cut."""
        return tuple(
            left
            for unplaced in (*(each.unplaced for each in self.sheets), *(each.unplaced for each in self.bars))
            for left in unplaced
        )

    @property
    def sheets_bought(self) -> int:
        """Sheets to buy, of all materials."""
        return sum(cutting.bought for cutting in self.sheets)
