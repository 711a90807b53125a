"""The free piece in a model: rows of single bays that no drawer takes, in one stretch."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Mapping

from baywright.planner.distribution.flow import FlowModel
from baywright.planner.distribution.solver import cp_model
from baywright.planner.goals.task import Task
from baywright.planner.replanning.standing import Spot

Covering = Mapping[Spot, Collection["cp_model.IntVar"]]
"""For each usable row of a single bay that is not locked, by bay (or kind) and row, the drawers that take it."""


def open_rows(task: Task, bay: int) -> tuple[int, ...]:
    """Usable rows of a bay that nothing locked takes."""
    blocked = task.problem.kinds[bay].blocked
    return tuple(row for row in task.usable[bay] if not any(first <= row < last for first, last in blocked))


def covering(flow: FlowModel, rows: Mapping[int, Collection[int]]) -> Covering:
    """What takes the given rows of kinds that have a single bay."""
    found: dict[Spot, list[cp_model.IntVar]] = {(kind, row): [] for kind, here in rows.items() for row in here}
    for arc, variable in flow.arcs.items():
        span = flow.families.fillings[arc.family].spans[arc.kind]
        for row in range(arc.row, arc.row + (span.rows if span else 0)):
            if (arc.kind, row) in found:
                found[arc.kind, row].append(variable)
    return found


def keep_free(model: cp_model.CpModel, covered: Covering, length: int) -> None:
    """Ask for a stretch of so many rows that stays free in one bay."""
    if length <= 0:
        return
    reaching: dict[Spot, list[cp_model.IntVar]] = defaultdict(list)
    starts: list[cp_model.IntVar] = []
    for bay, first in covered:
        stretch = [(bay, row) for row in range(first, first + length)]
        if all(spot in covered for spot in stretch):
            starts.append(start := model.new_bool_var(""))
            for spot in stretch:
                reaching[spot].append(start)
    model.add(sum(starts) == 1)
    for spot, variables in reaching.items():
        model.add(sum(variables) + sum(covered[spot]) <= 1)


def free_rows(model: cp_model.CpModel, covered: Covering) -> cp_model.LinearExpr:
    """The length of one free stretch, at most as long as there is one."""
    free: dict[Spot, cp_model.IntVar] = {}
    begins: list[cp_model.IntVar] = []
    for (bay, row), drawers in covered.items():
        free[bay, row] = model.new_bool_var("")
        begins.append(begin := model.new_bool_var(""))
        model.add(free[bay, row] + sum(drawers) <= 1)
        model.add(free[bay, row] <= begin + free.get((bay, row - 1), 0))
    model.add(sum(begins) <= 1)
    return cp_model.LinearExpr.sum(list(free.values()))
