"""The distribution as a network flow, written down for the CP-SAT solver.

A bay is a path from its lowest row to its highest: an arc *item starts at this row* leads past the rows the item
takes, an arc *wait* leads one row up. Bays of one kind are so many units of one flow, so that the solver never tells
interchangeable bays apart; that is what makes proofs short. Where the limit on drawers a bay can bind, a node is
(row, drawers so far), else a row alone.

The flow only knows families: shapes with the same spans. Which item of a family takes which start is nothing to the
flow; what it costs is added by `baywright.planner.pricing`. All numbers are integers, so that a proof of the solver
holds exactly.
"""

from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from ortools.sat.python import cp_model

from baywright.planner.problem import Problem, Span

Value = Callable[[cp_model.LinearExprT], int]
"""Reads a variable, or a sum of variables, of a solution."""


@dataclass(frozen=True, slots=True)
class Arc:
    """An item of `family` that starts at `row` of a bay of `kind` as drawer number `drawer` (0 where not counted)."""

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
    """How many items at most can stand in one bay of that kind, by rows alone."""
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


def families(problem: Problem) -> tuple[tuple[int, ...], tuple[tuple[Span | None, ...], ...]]:
    """For each shape the number of its family, and the spans of each family."""
    numbers: dict[tuple[Span | None, ...], int] = {}
    for shape in problem.shapes:
        numbers.setdefault(shape.spans, len(numbers))
    return tuple(numbers[shape.spans] for shape in problem.shapes), tuple(numbers)


def size(problem: Problem) -> int:
    """How many variables the model of a problem has, roughly; to refuse what would not be built in time."""
    total = 0
    _, spans_by_family = families(problem)
    for number, kind in enumerate(problem.kinds):
        layers = counted_drawers(problem, number) or 1
        total += layers * (sum(len(kind.starts(spans[number])) for spans in spans_by_family) + kind.rows)
    return total


class FlowModel:
    """The CP-SAT model of one problem: every item somewhere, every rule kept, nothing minimised."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.model = cp_model.CpModel()
        self.family_of, self._family_spans = families(problem)
        self._arcs: dict[Arc, cp_model.IntVar] = {}
        self._family_counts = [0] * len(self._family_spans)
        for item in problem.items:
            self._family_counts[self.family_of[item.shape]] += 1
        for kind in range(len(problem.kinds)):
            if problem.kinds[kind].bays:
                self._add_kind(kind)
        for family, count in enumerate(self._family_counts):
            arcs = [variable for arc, variable in self._arcs.items() if arc.family == family]
            self.model.add(sum(arcs) == count)

    def _add_kind(self, kind: int) -> None:
        """One flow: its arcs, its waits, and what goes in at every node goes out again."""
        bays, rows = self.problem.kinds[kind].bays, self.problem.kinds[kind].rows
        limit = counted_drawers(self.problem, kind)
        entering: dict[tuple[int, int], list[cp_model.IntVar]] = defaultdict(list)
        leaving: dict[tuple[int, int], list[cp_model.IntVar]] = defaultdict(list)
        for family, spans in enumerate(self._family_spans):
            span = spans[kind]
            if span is None:
                continue
            most = min(bays, self._family_counts[family])
            for row in self.problem.kinds[kind].starts(span):
                for drawer in range(1 if limit is None else limit):
                    arc = self.model.new_int_var(0, most, "")
                    self._arcs[Arc(family, kind, row, drawer)] = arc
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
        """For each (family, row) the variables that count items of the family starting at that row."""
        found: dict[tuple[int, int], list[cp_model.IntVar]] = defaultdict(list)
        for arc, variable in self._arcs.items():
            found[arc.family, arc.row].append(variable)
        return dict(found)

    def starts(self, value: Value) -> tuple[Start, ...]:
        """The starts of a solution, lowest first."""
        found = [Start(arc, count) for arc, variable in self._arcs.items() if (count := int(value(variable)))]
        return tuple(sorted(found, key=lambda s: (s.arc.row, s.arc.kind, s.arc.drawer, s.arc.family)))

    def rows(self, starts: tuple[Start, ...]) -> tuple[int, ...]:
        """A start row for every item, as they come: which item of a family goes where is left open by the flow."""
        waiting: dict[int, list[int]] = defaultdict(list)
        for index, item in reversed(list(enumerate(self.problem.items))):
            waiting[self.family_of[item.shape]].append(index)
        rows: dict[int, int] = {}
        for start in starts:
            for _ in range(start.count):
                rows[waiting[start.arc.family].pop()] = start.arc.row
        return tuple(rows[i] for i in range(len(self.problem.items)))
