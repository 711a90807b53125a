"""Which boxes the goals tell apart, and at which rows: as few kinds of boxes and rows as the goals in question allow.

Laws: items of one class are alike in everything that counts, so that any of them can take the place of any other that
does not stay where it stands. Rows of one level cost every box of a family the same as each other.
"""

from collections import defaultdict
from collections.abc import Collection
from dataclasses import dataclass
from functools import cached_property

from baywright.model.goals import Goal
from baywright.planner.distribution.flow import FlowModel
from baywright.planner.goals.task import Task


@dataclass(frozen=True, slots=True, order=True)
class Sort:
    """What a bay may have to be told about a box: its family, its group, and whether it is only wished for."""

    family: int
    group: str = ""
    is_wished: bool = False


@dataclass(frozen=True, slots=True, order=True)
class Likeness:
    """Boxes that differ in nothing that counts."""

    sort: Sort
    shape: int
    weight: int


class Sorts:
    """The items of a task by what the goals in question tell apart."""

    def __init__(self, task: Task, flow: FlowModel, goals: Collection[Goal]) -> None:
        self._task = task
        self._flow = flow
        self._has_levels = Goal.HANDLING in goals
        self._has_groups = Goal.GROUPS in goals
        self._has_wishes = Goal.RESCREWS in goals
        self.likeness_of = tuple(self._likeness(item) for item in range(len(task.boxes)))

    def _likeness(self, item: int) -> Likeness:
        task = self._task
        entry = task.problem.items[item]
        sort = Sort(
            self._flow.family_of[entry.shape],
            task.boxes[item].group if self._has_groups else "",
            self._has_wishes and task.is_wished[item],
        )
        return Likeness(sort, entry.shape if self._has_levels else 0, entry.weight if self._has_levels else 0)

    @cached_property
    def members(self) -> dict[Likeness, list[int]]:
        """The items of each likeness."""
        found: dict[Likeness, list[int]] = defaultdict(list)
        for item, likeness in enumerate(self.likeness_of):
            found[likeness].append(item)
        return {likeness: found[likeness] for likeness in sorted(found)}

    @cached_property
    def likenesses(self) -> dict[Sort, list[Likeness]]:
        """The likenesses of each sort."""
        found: dict[Sort, list[Likeness]] = defaultdict(list)
        for likeness in self.members:
            found[likeness.sort].append(likeness)
        return dict(found)

    @cached_property
    def by_family(self) -> dict[int, list[Sort]]:
        """The sorts of each family."""
        found: dict[int, list[Sort]] = defaultdict(list)
        for sort in self.likenesses:
            found[sort.family].append(sort)
        return dict(found)

    def count(self, sort: Sort) -> int:
        """How many items there are of a sort."""
        return sum(len(self.members[likeness]) for likeness in self.likenesses[sort])

    @cached_property
    def level_of(self) -> dict[tuple[int, int], int]:
        """The level of each row at which a family may start, by family and row; 0 is the cheapest."""
        shapes: dict[int, set[int]] = defaultdict(set)
        for item in self._task.problem.items:
            shapes[self._flow.family_of[item.shape]].add(item.shape)
        found: dict[tuple[int, int], int] = {}
        penalties: dict[int, dict[int, tuple[int, ...]]] = defaultdict(dict)
        for family, row in self._flow.starting:
            members = sorted(shapes[family]) if self._has_levels else ()
            penalties[family][row] = tuple(self._task.problem.shapes[shape].penalty(row) for shape in members)
        for family, rows in penalties.items():
            numbers = {penalty: number for number, penalty in enumerate(sorted(set(rows.values())))}
            found |= {(family, row): numbers[penalty] for row, penalty in rows.items()}
        return found

    @cached_property
    def rows(self) -> dict[int, list[list[int]]]:
        """The rows of each family's levels, cheapest level first."""
        found: dict[int, list[list[int]]] = defaultdict(list)
        for (family, row), level in sorted(self.level_of.items(), key=lambda entry: (entry[0][0], entry[1], entry[0])):
            if level == len(found[family]):
                found[family].append([])
            found[family][level].append(row)
        return dict(found)

    def penalty(self, likeness: Likeness, level: int) -> int:
        """What a box of that likeness costs at a level, for each unit of its weight."""
        return self._task.problem.shapes[likeness.shape].penalty(self.rows[likeness.sort.family][level][0])

    def always_taken(self, likeness: Likeness, level: int) -> range:
        """The rows that a drawer with that box takes wherever at that level it starts."""
        rows = self.rows[likeness.sort.family][level]
        alone = self._flow.families.fillings[likeness.sort.family]  # a likeness has a shape only where levels count
        spans = [span for span in alone.spans if span is not None]
        return range(max(rows), min(rows) + min((span.rows for span in spans), default=0))
