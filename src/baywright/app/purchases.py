"""What has to be bought for a shape of the run that is only on offer: sheets, and the cost of everything.

A first layout is enough to compare shapes by: a longer search may save a sheet here and there, never need one more.

Laws: the number of sheets is told only where every part is cut, the cost only where no price is missing.
"""

from baywright.making import manufacture, parts_to_cut
from baywright.making.costing import cost
from baywright.making.cutting.packing import never
from baywright.making.cutting.plan import Stop, cutting_plan, sheets_needed
from baywright.making.cutting.task import CuttingTask, cutting_task
from baywright.model.project import Project
from baywright.planner.choices.options import Purchase


class Purchases:
    """Reckons what shapes of one document need, and remembers it: plans of one shape mostly have the same parts."""

    def __init__(self, stop: Stop = never) -> None:
        self._stop = stop
        self._known: dict[CuttingTask, Purchase] = {}

    def __call__(self, shaped: Project) -> Purchase:
        """What is to be bought for a document in the shape of an option; nothing is known after a stop."""
        parts = parts_to_cut(shaped)
        task = cutting_task(shaped, parts)
        if task not in self._known:
            sheets = sheets_needed(shaped, parts, stop=self._stop)
            total = None if sheets is None else self._cost(shaped)
            if self._stop():
                return Purchase()
            self._known[task] = Purchase(sheets, total)
        return self._known[task]

    def _cost(self, shaped: Project) -> float | None:
        """The cost of everything, which is worked out only where it can be whole: every sheet bought has a price."""
        bought = [sheet for sheet in shaped.stock.sheets if not sheet.is_owned]
        if not bought or any(sheet.price is None for sheet in bought):
            return None
        made = manufacture(shaped)
        whole = cost(shaped, made, cutting_plan(shaped, made, effort=0, stop=self._stop))
        return float(whole.gross) if whole.is_complete else None
