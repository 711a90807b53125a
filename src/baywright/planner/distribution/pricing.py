"""What places cost, added to a flow without telling single items apart.

Items of one shape can be exchanged, so in the best plan the heaviest stand where the penalty is least. If m of them
stand at rows with a penalty of q or more, these are the m lightest. So the cost of a shape is the sum over its
penalty levels q of *(q − the level below) × (sum of the m(q) lightest weights)*: a convex function of the counts
m(q), piecewise linear with whole numbers at its bends. The model holds it from below by tangents; as many as were
needed so far, and where a solution shows that they were too few, more. When the tangents meet the true cost at the
solution, the least of the model is the least of all.

So the size of the model depends on sizes and rows, not on how many boxes there are and how their masses differ.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import defaultdict
from dataclasses import dataclass, field
from itertools import accumulate

from baywright.planner.distribution.flow import FlowModel, Value
from baywright.planner.distribution.solver import cp_model

FIRST_TANGENTS = 12
"""How many tangents each level starts with where weights differ much."""


@dataclass
class Level:
    """One penalty level of one shape: how many items stand at it or over it, what that costs, and the tangents."""

    weights: tuple[int, ...]
    """Weights of the shape's items, lightest first."""
    sums: tuple[int, ...]
    """The sum of the m lightest, for each m."""
    count: cp_model.IntVar
    cost: cp_model.IntVar
    slopes: set[int] = field(default_factory=set)

    def hold_at(self, model: cp_model.CpModel, count: int) -> bool:
        """Hold the cost exactly at a count; False where it was already."""
        touching = {self.weights[c - 1] for c in (count, count + 1) if 1 <= c <= len(self.weights)}
        if touching & self.slopes:
            return False
        for slope in sorted(touching):
            first = bisect_left(self.weights, slope)
            model.add(self.cost >= slope * self.count + (self.sums[first] - slope * first))
        self.slopes |= touching
        return True


class Pricing:
    """The cost of a flow's starts, minimised in its model."""

    def __init__(self, flow: FlowModel) -> None:
        self._flow = flow
        self._problem = flow.problem
        self._rows: dict[int, dict[int, cp_model.LinearExprT]] = defaultdict(dict)
        self._levels: list[Level] = []
        self._spread()
        costs: list[cp_model.IntVar] = []
        steps: list[int] = []
        fixed = 0
        for shape in sorted(self._rows):
            fixed += self._price(shape, costs, steps)
        self.cost: cp_model.LinearExprT = cp_model.LinearExpr.weighted_sum(costs, steps) + fixed
        """The cost of all items together, never over the true one."""
        flow.model.minimize(self.cost)

    def _spread(self) -> None:
        """How many items of each shape start at each row: the flow's counts, dealt out among shapes of a family."""
        shapes: dict[int, list[int]] = defaultdict(list)
        for shape, family in enumerate(self._flow.family_of):
            if self._problem.members[shape]:
                shapes[family].append(shape)
        dealt: dict[int, list[cp_model.IntVar]] = defaultdict(list)
        for (family, row), arcs in self._flow.starting.items():
            if len(shapes[family]) == 1:
                self._rows[shapes[family][0]][row] = sum(arcs)
                continue
            parts = []
            for shape in shapes[family]:
                part = self._flow.model.new_int_var(0, len(self._problem.members[shape]), "")
                self._rows[shape][row] = part
                parts.append(part)
                dealt[shape].append(part)
            self._flow.model.add(sum(arcs) == sum(parts))
        for shape, parts in dealt.items():
            self._flow.model.add(sum(parts) == len(self._problem.members[shape]))

    def _by_penalty(self, shape: int) -> dict[int, list[int]]:
        """The rows at which the shape may start, by penalty, least first."""
        found: dict[int, list[int]] = defaultdict(list)
        for row in sorted(self._rows[shape]):
            found[self._problem.shapes[shape].penalty(row)].append(row)
        return dict(sorted(found.items()))

    def _price(self, shape: int, costs: list[cp_model.IntVar], steps: list[int]) -> int:
        """Add one shape's levels, highest penalty first, and their costs a step; returns what it costs anyway."""
        by_penalty, model = self._by_penalty(shape), self._flow.model
        weights = tuple(sorted(self._problem.items[i].weight for i in self._problem.members[shape]))
        sums = (0, *accumulate(weights))
        penalties = list(by_penalty)
        number = len(weights)
        above: list[cp_model.LinearExprT] = []
        for penalty, under in zip(penalties[:0:-1], penalties[-2::-1], strict=True):
            count = model.new_int_var(0, number, "")
            model.add(count == sum([*above, *(self._rows[shape][row] for row in by_penalty[penalty])]))
            above = [count]
            level = Level(weights, sums, count, model.new_int_var(0, sums[-1], ""))
            for step in range(FIRST_TANGENTS + 1):
                level.hold_at(model, round(number * step / FIRST_TANGENTS))
            self._levels.append(level)
            costs.append(level.cost)
            steps.append(penalty - under)
        return penalties[0] * sums[-1]

    def refine(self, value: Value) -> bool:
        """Add the tangents that a solution shows to be missing; False where none is."""
        counts = [int(value(level.count)) for level in self._levels]
        added = [level.hold_at(self._flow.model, c) for level, c in zip(self._levels, counts, strict=True)]
        return any(added)

    def rows(self, value: Value, present: dict[int, int]) -> tuple[int, ...]:
        """The start row of every item in a solution: heavy ones where the penalty is least, and of rows with the same
        penalty the present one where it is among them.
        """
        rows: dict[int, int] = {}
        for shape, parts in self._rows.items():
            waiting = list(self._problem.members[shape])
            for level_rows in self._by_penalty(shape).values():
                free = [row for row in level_rows for _ in range(int(value(parts[row])))]
                here, waiting = waiting[: len(free)], waiting[len(free) :]
                rows.update(_dealt(here, free, present))
        return tuple(rows[i] for i in range(len(self._problem.items)))


def _dealt(items: list[int], rows: list[int], present: dict[int, int]) -> dict[int, int]:
    """Rows for items, present rows first."""
    left = list(rows)
    found: dict[int, int] = {}
    for item in items:
        row = present.get(item, -1)
        if row in left:
            left.remove(row)
            found[item] = row
    found.update(zip((i for i in items if i not in found), left, strict=True))
    return found
