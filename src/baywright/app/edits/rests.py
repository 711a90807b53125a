"""What is left of the cut sheets and bars, put back into the stock once they are cut.

Laws: only what the owner's rule calls worth keeping comes back, as it was told in the cutting plan; what was owned and
is cut now leaves the stock by the same edit, so that one undo brings all of it back; a rest is as wide as its bar, or,
where that is not known, as wide as the pieces cut from it ask for.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeVar

from baywright.app.commands import EditRefused
from baywright.app.edits.materials import adopted
from baywright.app.edits.stock import with_stock
from baywright.model.cutting import BarCutting, BarLayout, CuttingPlan, RestPiece, SheetLayout
from baywright.model.identity import free_ids
from baywright.model.length import format_length
from baywright.model.project import Project
from baywright.model.stock import Bar, Sheet

Line = TypeVar("Line", Sheet, Bar)


@dataclass(frozen=True)
class KeepRests:
    """Puts the rests of cut sheets and bars into the stock, and takes what was owned and cut out of it."""

    plan: CuttingPlan
    numbers: tuple[str, ...] | None = None
    """Numbers of the layouts that are cut, e.g. `C3`; None: all."""

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        if self.numbers is not None and len(self.numbers) == 1:
            return f"Keep the rests of {self.numbers[0]}"
        return "Keep the rests"

    def apply(self, project: Project) -> Project:
        """The project with the rests as owned offcuts; EditRefused where a layout is not of the plan, where none has a
        rest worth keeping, or where the stock no longer has what the plan was made with.
        """
        sheets = [layout for layout in self.plan.sheet_layouts if self._means(layout.number)]
        bars = [(cut, layout) for cut in self.plan.bars for layout in cut.layouts if self._means(layout.number)]
        self._refuse_unknown({layout.number for layout in sheets} | {layout.number for _, layout in bars})
        rests = [(layout, rest) for layout in sheets for rest in layout.rests if rest.is_reusable]
        bar_rests = [(cut, layout) for cut, layout in bars if layout.is_rest_reusable]
        if not rests and not bar_rests:
            raise EditRefused(_nothing_to_keep(project))
        for material_id in dict.fromkeys(layout.material_id for layout, _ in rests):
            project = adopted(project, material_id)
        cut_sheets = Counter(layout.sheet_id for layout in sheets if layout.is_owned)
        cut_bars = Counter(layout.bar_id for _, layout in bars if layout.is_owned)
        stock = project.stock
        kept = stock.replace(sheets=_left(stock.sheets, cut_sheets), bars=_left(stock.bars, cut_bars))
        return _with_rests(project.replace(stock=kept), rests, bar_rests)

    def _means(self, number: str) -> bool:
        return self.numbers is None or number in self.numbers

    def _refuse_unknown(self, known: set[str]) -> None:
        unknown = [number for number in self.numbers or () if number not in known]
        if unknown:
            raise EditRefused(f"There is no {unknown[0]} in the cutting plan any more.")


def _nothing_to_keep(project: Project) -> str:
    rules, unit = project.stock.rules, project.unit
    return (
        f"No rest is worth keeping: of sheets none measures {format_length(rules.rest_length_mm, unit)} × "
        f"{format_length(rules.rest_width_mm, unit)}, of bars none {format_length(rules.bar_rest_mm, unit)}. "
        "What is worth keeping can be set in the saw's rules."
    )


def _fewer(name: str, quantity: int | None, taken: int) -> int:
    """How many are left; what is owned without a number is there once."""
    left = (1 if quantity is None else quantity) - taken
    if left < 0:
        raise EditRefused(
            f"The stock has changed: “{name}” is not there {taken} times any more. Plan the cutting anew."
        )
    return left


def _left(lines: Sequence[Line], taken: Counter[str]) -> tuple[Line, ...]:
    """The sheets or bars that are left once so many of each id are cut; EditRefused where one is gone."""
    if taken.keys() - {line.id for line in lines}:
        raise EditRefused("The stock has changed: what was cut is no longer in the stock. Plan the cutting anew.")
    left = {line.id: _fewer(line.name or line.id, line.quantity, taken[line.id]) for line in lines if line.id in taken}
    return tuple(
        line.replace(quantity=left[line.id]) if line.id in left else line for line in lines if left.get(line.id) != 0
    )


def _with_rests(
    project: Project,
    rests: Sequence[tuple[SheetLayout, RestPiece]],
    bar_rests: Sequence[tuple[BarCutting, BarLayout]],
) -> Project:
    stock = project.stock
    sheet_ids = free_ids("offcut", [sheet.id for sheet in stock.sheets])
    bar_ids = free_ids("offcut", [bar.id for bar in stock.bars])
    sheets = tuple(
        Sheet(
            id=next(sheet_ids), material_id=layout.material_id, name=f"rest of {layout.number}",
            length_mm=rest.length_mm, width_mm=rest.width_mm, quantity=1, is_owned=True, is_trimmed=False,
        )
        for layout, rest in rests
    )  # fmt: skip
    bars = tuple(
        Bar(
            id=next(bar_ids), use=cutting.use,
            name=f"rest of {layout.number}", length_mm=layout.rest_mm,
            width_mm=layout.width_mm or cutting.width_mm, quantity=1, is_owned=True,
        )
        for cutting, layout in bar_rests
    )  # fmt: skip
    return with_stock(project, lambda stock: stock.replace(sheets=(*stock.sheets, *sheets), bars=(*stock.bars, *bars)))
