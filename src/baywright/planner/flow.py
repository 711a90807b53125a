"""The distribution as a network flow, written down for the CP-SAT solver.

A bay is a path from its lowest row to its highest: an arc *item starts at this row* leads past the rows the item
takes, an arc *wait* leads one row up. Bays of one kind are so many units of one flow, so that the solver never tells
interchangeable bays apart; that is what makes proofs short. Where the limit on drawers a bay can bind, a node is
(row, drawers so far), else a row alone.

The flow only knows families: shapes with the same spans. Which item of a family takes which start is a second,
transport-like part of the model, needed only where places cost something; items of equal shape and weight are
counted, not told apart. All numbers are integers, so that a proof of the solver holds exactly.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable
from dataclasses import dataclass

from ortools.sat.python import cp_model

from baywright.planner.problem import Place, Problem, Span


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
        starts = sum(len(kind.starts(spans[number])) for spans in spans_by_family)
        total += layers * (starts + kind.rows)
    weights = {(item.shape, item.weight) for item in problem.items}
    longest = max((kind.rows for kind in problem.kinds), default=0)
    return total + (len(weights) * longest if problem.has_costs else 0)


class FlowModel:
    """The CP-SAT model of one problem. With `priced` the cost of the places is minimised, else any plan will do."""

    def __init__(self, problem: Problem, *, priced: bool) -> None:
        self.problem = problem
        self.priced = priced and problem.has_costs
        self.model = cp_model.CpModel()
        self.family_of, self._family_spans = families(problem)
        self._arcs: dict[Arc, cp_model.IntVar] = {}
        self._waits: dict[tuple[int, int, int], cp_model.IntVar] = {}
        self._choices: dict[tuple[int, int, int], cp_model.IntVar] = {}
        self._counted = tuple(counted_drawers(problem, kind) is not None for kind in range(len(problem.kinds)))
        self._family_counts = [0] * len(self._family_spans)
        for item in problem.items:
            self._family_counts[self.family_of[item.shape]] += 1
        for kind in range(len(problem.kinds)):
            self._add_kind(kind)
        self._place_everything()

    def _add_kind(self, kind: int) -> None:
        """One flow: its arcs, its waits, and what goes in at every node goes out again."""
        bays, rows = self.problem.kinds[kind].bays, self.problem.kinds[kind].rows
        limit = counted_drawers(self.problem, kind)
        layers = 1 if limit is None else limit + 1
        if bays == 0:
            return
        entering: dict[tuple[int, int], list[cp_model.IntVar]] = defaultdict(list)
        leaving: dict[tuple[int, int], list[cp_model.IntVar]] = defaultdict(list)
        for family, spans in enumerate(self._family_spans):
            span = spans[kind]
            if span is None:
                continue
            for row in self.problem.kinds[kind].starts(span):
                for drawer in range(1 if limit is None else limit):
                    most = min(bays, self._family_counts[family])
                    arc = self.model.new_int_var(0, most, "")
                    self._arcs[Arc(family, kind, row, drawer)] = arc
                    leaving[row, drawer].append(arc)
                    entering[min(row + span.rows, rows), drawer + (limit is not None)].append(arc)
        for layer in range(layers):
            for row in range(rows):
                wait = self.model.new_int_var(0, bays, "")
                self._waits[kind, row, layer] = wait
                leaving[row, layer].append(wait)
                entering[row + 1, layer].append(wait)
                source = bays if row == 0 and layer == 0 else 0
                self.model.add(sum(entering[row, layer]) + source == sum(leaving[row, layer]))

    def _place_everything(self) -> None:
        starts: dict[tuple[int, int], list[cp_model.IntVar]] = defaultdict(list)
        for arc, variable in self._arcs.items():
            starts[arc.family, arc.row].append(variable)
        if not self.priced:
            for family, count in enumerate(self._family_counts):
                self.model.add(sum(v for (f, _), group in starts.items() if f == family for v in group) == count)
            return
        takers: dict[tuple[int, int], list[cp_model.IntVar]] = defaultdict(list)
        costs: list[int] = []
        priced: list[cp_model.IntVar] = []
        for (shape, weight), count in self.classes().items():
            family = self.family_of[shape]
            rows = sorted(row for f, row in starts if f == family)
            mine = []
            for row in rows:
                choice = self.model.new_int_var(0, count, "")
                self._choices[shape, weight, row] = choice
                mine.append(choice)
                takers[family, row].append(choice)
                if cost := weight * self.problem.shapes[shape].penalty(row):
                    costs.append(cost)
                    priced.append(choice)
            self.model.add(sum(mine) == count)
        for key, group in starts.items():
            self.model.add(sum(group) == sum(takers[key]))
        self.model.minimize(cp_model.LinearExpr.weighted_sum(priced, costs))

    def classes(self) -> dict[tuple[int, int], int]:
        """How many items there are of each (shape, weight)."""
        counts: dict[tuple[int, int], int] = defaultdict(int)
        for item in self.problem.items:
            counts[item.shape, item.weight] += 1
        return dict(counts)

    def hint(self, places: Iterable[Place]) -> None:
        """Give the solver a plan to start from."""
        arcs: dict[Arc, int] = defaultdict(int)
        choices: dict[tuple[int, int, int], int] = defaultdict(int)
        free: dict[tuple[int, int], tuple[int, int]] = {}
        waits: dict[tuple[int, int, int], int] = defaultdict(int)
        for place in sorted(places, key=lambda p: (p.row, p.kind, p.bay)):
            item = self.problem.items[place.item]
            span = self.problem.span(place.item, place.kind)
            row, layer = free.get((place.kind, place.bay), (0, 0))
            for waited in range(row, place.row):
                waits[place.kind, waited, layer] += 1
            arcs[Arc(self.family_of[item.shape], place.kind, place.row, layer)] += 1
            choices[item.shape, item.weight, place.row] += 1
            after = place.row + (span.rows if span else 0)
            free[place.kind, place.bay] = (after, layer + self._counted[place.kind])
        for number, kind in enumerate(self.problem.kinds):
            for bay in range(kind.bays):
                row, layer = free.get((number, bay), (0, 0))
                for waited in range(row, kind.rows):
                    waits[number, waited, layer] += 1
        for arc, variable in self._arcs.items():
            self.model.add_hint(variable, arcs[arc])
        for wait, variable in self._waits.items():
            self.model.add_hint(variable, waits[wait])
        for choice, variable in self._choices.items():
            self.model.add_hint(variable, choices[choice])

    def starts(self, value: Callable[[cp_model.IntVar], int]) -> tuple[Start, ...]:
        """The starts of a solution, lowest first."""
        found = [Start(arc, count) for arc, variable in self._arcs.items() if (count := int(value(variable)))]
        return tuple(sorted(found, key=lambda s: (s.arc.row, s.arc.kind, s.arc.drawer, s.arc.family)))

    def rows_of_items(self, value: Callable[[cp_model.IntVar], int], starts: Iterable[Start]) -> tuple[int, ...]:
        """The start row of every item in a solution."""
        rows: dict[int, int] = {}
        if self.priced:
            pools = {key: [i for i in self.problem.members[key[0]] if self.problem.items[i].weight == key[1]]
                     for key in self.classes()}  # fmt: skip
            for (shape, weight, row), variable in sorted(self._choices.items()):
                for _ in range(int(value(variable))):
                    rows[pools[shape, weight].pop(0)] = row
        else:
            waiting: dict[int, list[int]] = defaultdict(list)
            for index, item in enumerate(self.problem.items):
                waiting[self.family_of[item.shape]].append(index)
            for start in starts:
                for _ in range(start.count):
                    rows[waiting[start.arc.family].pop(0)] = start.arc.row
        return tuple(rows[i] for i in range(len(self.problem.items)))
