"""What has to be bought for a shape of the run that is only on offer: sheets, and the cost of everything.

A first layout is enough to compare shapes by: a longer search may save a sheet here and there, never need one more.

Laws: the number of sheets is told only where every part is cut, the cost only where no price is missing.
"""

from baywright.making import manufacture, parts_to_cut
from baywright.making.costing import cost
from baywright.making.cutting.packing import never
from baywright.making.cutting.plan import Stop, cutting_plan
from baywright.making.cutting.task import CuttingTask, cutting_task
from baywright.model.cutting import CuttingPlan
from baywright.model.making import Manufacture
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
            plan = cutting_plan(shaped, Manufacture(parts=parts, hardware=(), schedule=()), effort=0, stop=self._stop)
            if not plan.is_finished:
                return Purchase()
            is_whole = not any(cutting.unplaced for cutting in plan.sheets)
            self._known[task] = Purchase(plan.sheets_bought, _cost(shaped, plan)) if is_whole else Purchase()
        return self._known[task]


def _cost(shaped: Project, plan: CuttingPlan) -> float | None:
    """The cost of everything; the hardware is worked out only where it can make up a whole."""
    if any(cutting.cost is None for cutting in plan.sheets):
        return None
    whole = cost(shaped, manufacture(shaped), plan)
    return float(whole.gross) if whole.is_complete else None
