"""Which boxes stand where, in the model: counts laid over the flow, as far as the goals in question need them.

The flow of `distribution.flow` says how many boxes of a family stand at which row of which bay. Over it stand

- which box stays where it stands (no more at a place than stand there of its family);
- how many boxes of each likeness stand at each level of penalty;
- how many boxes of each sort stand at each level in each bay;
- how many of the boxes at a place are there already, where others of the family are only wished for.

Law: every solution can be read as a plan, and every plan is a solution.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable
from dataclasses import replace
from functools import cached_property
from typing import TypeAlias

from baywright.model.goals import Goal
from baywright.planner.distribution.flow import FlowModel
from baywright.planner.distribution.solver import cp_model
from baywright.planner.goals.sorts import Likeness, Sort, Sorts
from baywright.planner.goals.task import Task
from baywright.planner.replanning.standing import Spot

Linear: TypeAlias = "cp_model.LinearExpr | int"
MOST_IN_A_DRAWER = 3


def total(terms: Iterable[Linear]) -> Linear:
    """The sum of terms."""
    return cp_model.LinearExpr.sum(list(terms))


class Counts:
    """The flow of a task with every bay told apart, and the counts over it."""

    def __init__(self, task: Task, goals: Collection[Goal]) -> None:
        self.task = task
        kinds = tuple(replace(kind, drawers=kind.drawers and None) for kind in task.problem.kinds)
        self.flow = FlowModel(replace(task.problem, kinds=kinds))
        self.model = self.flow.model
        self.sorts = Sorts(task, self.flow, goals)
        self.bays = range(task.frame.bays)
        self.has_levels = Goal.HANDLING in goals
        self.has_stays = Goal.MOVES in goals
        self.has_owned = Goal.RESCREWS in goals
        self.is_sorted = Goal.GROUPS in goals and any(box.group for box in task.boxes)
        self._limit_drawers()
        if self.is_sorted:
            self.in_bay  # noqa: B018 - every box has its bay, whatever the goals ask
        elif self.has_levels:
            self.at_level  # noqa: B018

    def _limit_drawers(self) -> None:
        """A single bay is one path, so that its drawers are simply counted."""
        arcs: dict[int, list[cp_model.IntVar]] = defaultdict(list)
        for arc, variable in self.flow.arcs.items():
            arcs[arc.kind].append(variable)
        for bay, variables in arcs.items():
            limit = self.task.problem.kinds[bay].drawers
            if limit is not None:
                self.model.add(total(variables) <= limit)

    @cached_property
    def stays(self) -> dict[int, cp_model.IntVar]:
        """For each item that can stay where it stands, whether it does."""
        at: dict[tuple[int, Spot], list[int]] = defaultdict(list)
        for item, spot in enumerate(self.task.stood):
            if spot is not None:
                at[self.sorts.likeness_of[item].sort.family, spot].append(item)
        found: dict[int, cp_model.IntVar] = {}
        for (family, spot), items in at.items():
            standing = self.standing(family, *spot)
            if isinstance(standing, int):
                continue
            found |= {item: self.model.new_bool_var("") for item in items}
            self.model.add(total(found[item] for item in items) <= standing)
        self._stays_count(found)
        return found

    def _stays_count(self, stays: dict[int, cp_model.IntVar]) -> None:
        """What stays counts among the boxes of its likeness at its level and of its sort in its bay."""
        by_level: dict[tuple[Likeness, int], list[cp_model.IntVar]] = defaultdict(list)
        by_bay: dict[tuple[Sort, int, int], list[cp_model.IntVar]] = defaultdict(list)
        for item, stay in stays.items():
            likeness, spot = self.sorts.likeness_of[item], self.task.stood[item]
            assert spot is not None
            level = self.sorts.level_of[likeness.sort.family, spot[1]]
            by_level[likeness, level].append(stay)
            by_bay[likeness.sort, level, spot[0]].append(stay)
        for (likeness, level), variables in by_level.items():
            if len(self.sorts.rows[likeness.sort.family]) > 1:
                self.model.add(total(variables) <= self.at_level[likeness, level])
        for key, variables in by_bay.items() if self.is_sorted else ():
            self.model.add(total(variables) <= self.in_bay[key])

    @cached_property
    def at_level(self) -> dict[tuple[Likeness, int], Linear]:
        """How many boxes of each likeness stand at each level of penalty."""
        found: dict[tuple[Likeness, int], Linear] = {}
        for likeness, items in self.sorts.members.items():
            levels = len(self.sorts.rows[likeness.sort.family])
            if levels == 1:
                found[likeness, 0] = len(items)
                continue
            counts = [self.model.new_int_var(0, len(items), "") for _ in range(levels)]
            self.model.add(total(counts) == len(items))
            found |= {(likeness, level): count for level, count in enumerate(counts)}
        for family, rows in self.sorts.rows.items():
            for level in range(len(rows)) if len(rows) > 1 and not self.is_sorted else ():
                there = [found[likeness, level] for likeness in self._of_family(family)]
                self.model.add(total(there) == total(self._standing(family, level, bay) for bay in self.bays))
        return found

    def _of_family(self, family: int) -> list[Likeness]:
        return [likeness for sort in self.sorts.by_family[family] for likeness in self.sorts.likenesses[sort]]

    def _standing(self, family: int, level: int, bay: int) -> Linear:
        """How many boxes of a family stand at a level in a bay."""
        counts = [self.standing(family, bay, row) for row in self.sorts.rows[family][level]]
        counts = [count for count in counts if not isinstance(count, int)]
        return total(counts) if counts else 0

    def standing(self, family: int, bay: int, row: int) -> Linear:
        """How many boxes of a family stand at a row of a bay; the number 0 where none can."""
        found: Linear = self.flow.standing(family, bay, row)  # type: ignore[assignment]
        return found

    @cached_property
    def in_bay(self) -> dict[tuple[Sort, int, int], Linear]:
        """How many boxes of each sort stand at each level in each bay."""
        found: dict[tuple[Sort, int, int], Linear] = {}
        for family, sorts in self.sorts.by_family.items():
            for level in range(len(self.sorts.rows[family])):
                for bay in self.bays:
                    standing = self._standing(family, level, bay)
                    if len(sorts) == 1 or isinstance(standing, int):
                        found |= {(sort, level, bay): standing for sort in sorts}
                        continue
                    counts = [self.model.new_int_var(0, self.most(sort, bay), "") for sort in sorts]
                    self.model.add(total(counts) == standing)
                    found |= {(sort, level, bay): count for sort, count in zip(sorts, counts, strict=True)}
        for sort, likenesses in self.sorts.likenesses.items():
            for level in range(len(self.sorts.rows[sort.family])):
                there = total(self.at_level[likeness, level] for likeness in likenesses)
                self.model.add(total(found[sort, level, bay] for bay in self.bays) == there)
        return found

    def most(self, sort: Sort, bay: int) -> int:
        """At most so many boxes of a sort can stand in a bay."""
        limit = self.task.problem.kinds[bay].drawers
        in_a_drawer = max((len(team.shapes) for team in self.task.problem.teams), default=1)
        count = self.sorts.count(sort)
        return count if limit is None else min(count, limit * in_a_drawer)

    @cached_property
    def owned(self) -> dict[tuple[int, int, int], Linear]:
        """How many boxes that are there stand at each place, by family, bay and row; to be asked for only where the
        sorts tell them from those that are wished for.
        """
        found: dict[tuple[int, int, int], Linear] = {}
        for family, sorts in self.sorts.by_family.items():
            is_mixed = any(sort.is_wished for sort in sorts)
            if is_mixed and all(sort.is_wished for sort in sorts):
                continue
            for bay in self.bays:
                for row in (row for rows in self.sorts.rows[family] for row in rows):
                    standing = self.standing(family, bay, row)
                    if isinstance(standing, int):
                        continue
                    found[family, bay, row] = standing
                    if is_mixed:
                        found[family, bay, row] = count = self.model.new_int_var(0, MOST_IN_A_DRAWER, "")
                        self.model.add(count <= standing)
            if is_mixed:
                self._count_owned(family, [sort for sort in sorts if not sort.is_wished], found)
        return found

    def _count_owned(self, family: int, sorts: list[Sort], owned: dict[tuple[int, int, int], Linear]) -> None:
        """Those counted as there are as many as the other counts say, and what stays is among them."""
        for level, rows in enumerate(self.sorts.rows[family]):
            by_bay = [total(owned.get((family, bay, row), 0) for row in rows) for bay in self.bays]
            likenesses = [likeness for sort in sorts for likeness in self.sorts.likenesses[sort]]
            self.model.add(total(by_bay) == total(self.at_level[likeness, level] for likeness in likenesses))
            for bay in self.bays if self.is_sorted else ():
                self.model.add(by_bay[bay] == total(self.in_bay[sort, level, bay] for sort in sorts))
        staying: dict[tuple[int, int, int], list[cp_model.IntVar]] = defaultdict(list)
        for item, stay in self.stays.items():
            spot = self.task.stood[item]
            if spot is not None and self.sorts.likeness_of[item].sort.family == family:
                staying[family, *spot].append(stay)
        for key, stays in staying.items():
            self.model.add(total(stays) <= owned[key])
