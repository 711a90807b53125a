"""A bound for how far groups are spread that sees what the goals before ask of single boxes.

Where easy handling is held, many boxes have no choice of their row: the light ones that are seldom used stand at the
bottom. A row of a bay is taken by one drawer only; so of a group's boxes those whose drawers all reach over one row
stand in as many bays. The flow of alike bays, with every box's level of penalty and that count for every group, is
small and gives a bound that holds for the bays told apart.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence

from baywright.model.goals import Goal
from baywright.planner.distribution.flow import FlowModel
from baywright.planner.distribution.solver import cp_model
from baywright.planner.goals.bound import bays_of_groups
from baywright.planner.goals.sorts import Likeness, Sorts
from baywright.planner.goals.task import Held, Task


class SpreadBound:
    """The model whose least is a bound for the bays that groups are spread over."""

    def __init__(self, task: Task, held: Sequence[Held], fewest: Mapping[str, int] | None = None) -> None:
        """`fewest` are bounds for the bays of single groups; those that need no search where they are not given."""
        self._task = task
        self._fewest = bays_of_groups(task) if fewest is None else fewest
        self._flow = FlowModel(task.frame.problem)
        self.model = self._flow.model
        self._sorts = Sorts(task, self._flow, {Goal.HANDLING, Goal.GROUPS})
        self._counts = self._at_levels()
        handling = next((h.value for h in held if h.goal is Goal.HANDLING), None)
        if handling is not None:
            terms = [
                likeness.weight * self._sorts.penalty(likeness, level) * count
                for (likeness, level), count in self._counts.items()
            ]
            self.model.add(cp_model.LinearExpr.sum(terms) <= handling - task.frame.pinned_cost)
        bays = self._bays()
        self.model.minimize(cp_model.LinearExpr.sum(list(bays.values())) - len(bays))

    def _at_levels(self) -> dict[tuple[Likeness, int], cp_model.IntVar]:
        """How many boxes of each likeness stand at each level, as many as the flow has there."""
        found: dict[tuple[Likeness, int], cp_model.IntVar] = {}
        there: dict[tuple[int, int], list[cp_model.IntVar]] = defaultdict(list)
        for likeness, items in self._sorts.members.items():
            levels = range(len(self._sorts.rows[likeness.sort.family]))
            for level in levels:
                found[likeness, level] = count = self.model.new_int_var(0, len(items), "")
                there[likeness.sort.family, level].append(count)
            self.model.add(sum(found[likeness, level] for level in levels) == len(items))
        for (family, level), counts in there.items():
            rows = self._sorts.rows[family][level]
            arcs = [arc for row in rows for arc in self._flow.starting[family, row]]
            self.model.add(sum(counts) == sum(arcs))
        return found

    def _bays(self) -> dict[str, cp_model.IntVar]:
        """How many bays each group needs at least."""
        found = {
            group: self.model.new_int_var(least, max(least, self._task.frame.bays), "")
            for group, least in self._fewest.items()
        }
        over: dict[tuple[str, int], list[cp_model.IntVar]] = defaultdict(list)
        for (likeness, level), count in self._counts.items():
            if likeness.sort.group:
                for row in self._sorts.always_taken(likeness, level):
                    over[likeness.sort.group, row].append(count)
        in_a_drawer = max((len(team.shapes) for team in self._task.problem.teams), default=1)
        for (group, _), counts in over.items():
            self.model.add(in_a_drawer * found[group] >= sum(counts))
        return found
