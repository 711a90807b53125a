"""The distribution as a network flow, written down for the CP-SAT solver.

A bay is a path from its lowest row to its highest: an arc *drawer starts at this row* leads past the rows the drawer
takes, an arc *wait* leads one row up. Bays of one kind are so many units of one flow, so that the solver never tells
interchangeable bays apart; that is what makes proofs short. Where the limit on drawers a bay can bind, a node is
(row, drawers so far), else a row alone.

The flow only knows families (`distribution.family`): what a drawer holds is one item of a family, or a team.
Which item of a family takes which start is nothing to the flow; what it costs is added by
`distribution.pricing`. All numbers are integers, so that a proof of the solver holds exactly.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property

from baywright.planner.distribution.family import Families, families
from baywright.planner.distribution.problem import Problem
from baywright.planner.distribution.solver import cp_model

Value = Callable[["cp_model.LinearExprT"], int]
"""Reads a variable, or a sum of variables, of a solution."""
Point = tuple[int, int]
"""A row and the number of the drawer in its bay (0 where drawers are not counted)."""
Starts = dict[tuple[int, int], tuple[Point, ...]]
"""Where a drawer may start, by kind of bay and filling."""


@dataclass(frozen=True, slots=True)
class Arc:
    """A drawer that starts at `row` of a bay of `kind` as drawer number `drawer` (0 where not counted).

    `family` is the number of its filling: below the number of families a single item of that family, else a team.
    """

    family: int
    kind: int
    row: int
    drawer: int


@dataclass(frozen=True, slots=True)
class Start:
    """`count` starts of an arc in a solution."""

    arc: Arc
    count: int


def most_drawers(problem: Problem, kind: int) -> int:
    """How many drawers at most can stand in one bay of that kind, by rows alone."""
    spans = [span for shape in problem.shapes if problem.kinds[kind].starts(span := shape.spans[kind]) and span]
    if not spans:
        return 0
    fewest = min(span.rows for span in spans)
    return (max(span.highest for span in spans) - min(span.lowest for span in spans)) // fewest + 1


def counted_drawers(problem: Problem, kind: int) -> int | None:
    """The limit on drawers where it can bind in a bay of that kind, else None."""
    limit = problem.kinds[kind].drawers
    if limit is None or limit >= min(most_drawers(problem, kind), len(problem.items)):
        return None
    return limit


def every_start(problem: Problem) -> Starts:
    """Every start that every filling may have."""
    found: Starts = {}
    fillings = families(problem).fillings
    for number, kind in enumerate(problem.kinds):
        drawers = range(counted_drawers(problem, number) or 1)
        for filling_number, filling in enumerate(fillings):
            rows = kind.starts(filling.spans[number])
            found[number, filling_number] = tuple((row, drawer) for row in rows for drawer in drawers)
    return found


def size(problem: Problem, starts: Starts | None = None) -> int:
    """How many variables the model of a problem has, roughly; to refuse what would not be built in time."""
    fillings = families(problem).fillings
    total = 0 if starts is None else sum(map(len, starts.values()))
    for number, kind in enumerate(problem.kinds):
        layers = counted_drawers(problem, number) or 1
        total += layers * kind.rows
        if starts is None:
            total += layers * sum(len(kind.starts(filling.spans[number])) for filling in fillings)
    return total


class FlowModel:
    """The CP-SAT model of one problem: every item somewhere, every rule kept, nothing minimised."""

    def __init__(self, problem: Problem, starts: Starts | None = None) -> None:
        """A model of the problem; drawers may start where `starts` says, else wherever they may."""
        self.problem = problem
        self.model = cp_model.CpModel()
        self.families: Families = families(problem)
        self._starts = every_start(problem) if starts is None else starts
        self.family_of = self.families.of_shape
        self.arcs: dict[Arc, cp_model.IntVar] = {}
        self._family_counts = [0] * self.families.count
        for item in problem.items:
            self._family_counts[self.family_of[item.shape]] += 1
        for kind in range(len(problem.kinds)):
            if problem.kinds[kind].bays:
                self._add_kind(kind)
        self._cover()
        if problem.spare_rows:
            self.model.add(sum(self._room_taken()) <= problem.room - problem.spare_rows)

    def _cover(self) -> None:
        """Every item of every family stands somewhere."""
        covering: dict[int, list[cp_model.IntVar]] = defaultdict(list)
        for (family, _), standing in self.starting.items():
            covering[family] += standing
        for family, count in enumerate(self._family_counts):
            self.model.add(sum(covering[family]) == count)

    def _room_taken(self) -> Iterable[cp_model.LinearExprT]:
        for arc, variable in self.arcs.items():
            span = self.families.fillings[arc.family].spans[arc.kind]
            if span is not None and (taken := self.problem.kinds[arc.kind].room_taken(arc.row, span.rows)):
                yield taken * variable

    def _add_kind(self, kind: int) -> None:
        """One flow: its arcs, its waits, and what goes in at every node goes out again."""
        bays, rows = self.problem.kinds[kind].bays, self.problem.kinds[kind].rows
        limit = counted_drawers(self.problem, kind)
        entering: dict[tuple[int, int], list[cp_model.IntVar]] = defaultdict(list)
        leaving: dict[tuple[int, int], list[cp_model.IntVar]] = defaultdict(list)
        for number, filling in enumerate(self.families.fillings):
            span = filling.spans[kind]
            if span is None:
                continue
            most = min(bays, *(self._family_counts[family] for family in filling.families))
            for row, drawer in self._starts.get((kind, number), ()):
                arc = self.model.new_int_var(0, most, "")
                self.arcs[Arc(number, kind, row, drawer)] = arc
                leaving[row, drawer].append(arc)
                entering[min(row + span.rows, rows), drawer + (limit is not None)].append(arc)
        for layer in range(1 if limit is None else limit + 1):
            for row in range(rows):
                wait = self.model.new_int_var(0, bays, "")
                leaving[row, layer].append(wait)
                entering[row + 1, layer].append(wait)
                source = bays if row == 0 and layer == 0 else 0
                self.model.add(sum(entering[row, layer]) + source == sum(leaving[row, layer]))

    @cached_property
    def starting(self) -> dict[tuple[int, int], list[cp_model.IntVar]]:
        """For each (family, row) the variables whose sum counts the items of the family starting at that row; a
        drawer with two of the family is there twice.
        """
        found: dict[tuple[int, int], list[cp_model.IntVar]] = defaultdict(list)
        for (family, _, row), variables in self._standing.items():
            found[family, row] += variables
        return dict(found)

    @cached_property
    def _standing(self) -> dict[tuple[int, int, int], list[cp_model.IntVar]]:
        found: dict[tuple[int, int, int], list[cp_model.IntVar]] = defaultdict(list)
        for arc, variable in self.arcs.items():
            for family in self.families.fillings[arc.family].families:
                found[family, arc.kind, arc.row].append(variable)
        return found

    def standing(self, family: int, kind: int, row: int) -> cp_model.LinearExprT:
        """How many items of a family stand at that row of the bays of that kind, alone or in a team."""
        variables = self._standing.get((family, kind, row))
        return sum(variables) if variables else 0

    def starts(self, value: Value) -> tuple[Start, ...]:
        """The starts of a solution, lowest first."""
        found = [Start(arc, count) for arc, variable in self.arcs.items() if (count := int(value(variable)))]
        return tuple(sorted(found, key=lambda s: (s.arc.row, s.arc.kind, s.arc.drawer, s.arc.family)))

    def counts(self, starts: Iterable[Start]) -> Counter[tuple[int, int]]:
        """How many items of each family start at each row in a solution, by (family, row)."""
        found: Counter[tuple[int, int]] = Counter()
        for start in starts:
            for family in self.families.fillings[start.arc.family].families:
                found[family, start.arc.row] += start.count
        return found

    def rows(self, starts: Iterable[Start]) -> tuple[int, ...]:
        """A start row for every item, as they come: which item of a family goes where is left open by the flow."""
        waiting: dict[int, list[int]] = defaultdict(list)
        for index, item in reversed(list(enumerate(self.problem.items))):
            waiting[self.family_of[item.shape]].append(index)
        rows: dict[int, int] = {}
        for start in starts:
            for _ in range(start.count):
                for family in self.families.fillings[start.arc.family].families:
                    rows[waiting[family].pop()] = start.arc.row
        return tuple(rows[i] for i in range(len(self.problem.items)))
