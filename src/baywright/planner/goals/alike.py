"""Handling and the free piece where nothing before them tells bays apart: settled by the flow of alike bays.

One bay of every kind is set apart, in which the free piece may lie. Laws: bounds proved here hold for any plan that is
no worse in what is held; groups, which tell bays apart, are left aside, so that with them the bound still holds.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from baywright.model.goals import Goal
from baywright.planner.distribution import paths
from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.flow import FlowModel
from baywright.planner.distribution.pricing import Pricing
from baywright.planner.distribution.problem import Place
from baywright.planner.distribution.solving import Verdict
from baywright.planner.goals import piece
from baywright.planner.goals.task import Held, Spots, Task

MOST_ROUNDS = 12
SHARE = 0.4
ALIKE = frozenset({Goal.HANDLING, Goal.FREE_PIECE})
"""Goals that do not tell alike bays apart."""


@dataclass(frozen=True)
class Answer:
    """A bound for the goal sought, and a plan with a better figure where one was found."""

    bound: int | None
    spots: Spots | None = None


class AlikeBays:
    """The flow of alike bays of one task, for handling and the free piece."""

    def __init__(self, task: Task, held: Sequence[Held]) -> None:
        self._task = task
        self._handling = next((h.value for h in held if h.goal is Goal.HANDLING), None)
        self._piece = next((h.value for h in held if h.goal is Goal.FREE_PIECE), 0)
        kinds, self._bays = [], []
        numbers = []
        for number, bays in enumerate(task.frame.indices):
            kind = task.frame.problem.kinds[number]
            for part in (bays[:1], bays[1:]):
                if part:
                    kinds.append(replace(kind, bays=len(part)))
                    self._bays.append(part)
                    numbers.append(number)
        self._problem = replace(
            task.frame.problem,
            kinds=tuple(kinds),
            shapes=tuple(replace(s, spans=tuple(s.spans[n] for n in numbers)) for s in task.frame.problem.shapes),
            teams=tuple(replace(t, spans=tuple(t.spans[n] for n in numbers)) for t in task.frame.problem.teams),
        )
        self._flow = FlowModel(self._problem)
        self._pricing = Pricing(self._flow)
        rows = {kind: piece.open_rows(task, bays[0]) for kind, bays in enumerate(self._bays) if len(bays) == 1}
        self._covered = piece.covering(self._flow, rows)

    def longest_piece(self, over: int, budget: Budget) -> Answer:
        """The longest free piece that is longer than `over`."""
        model, task = self._flow.model, self._task
        length = piece.free_rows(model, self._covered)
        model.add(length >= over + 1)
        if self._handling is not None:
            model.add(self._pricing.cost <= self._handling - task.frame.pinned_cost)
        model.minimize(task.longest - length)
        bound: int | None = None
        for _ in range(MOST_ROUNDS):
            outcome = budget.minimise(model, SHARE, is_loose=bool(self._problem.teams))
            if outcome.verdict is Verdict.NONE:
                return Answer(over)
            bound = min(task.longest - outcome.bound, task.longest if bound is None else bound)
            if outcome.value is None:
                break
            spots = self._read(outcome.value)
            if self._handling is None or task.tally(spots).figure(Goal.HANDLING) <= self._handling:
                return Answer(bound, spots)
            if not self._pricing.refine(outcome.value):
                break
        return Answer(bound)

    def easiest(self, under: int, budget: Budget) -> Answer:
        """The easiest handling that costs less than `under`, with the free piece held."""
        model, task = self._flow.model, self._task
        piece.keep_free(model, self._covered, self._piece)
        model.add(self._pricing.cost <= under - 1 - task.frame.pinned_cost)
        bound, best = 0, None
        for _ in range(MOST_ROUNDS):
            outcome = budget.minimise(model, SHARE, is_loose=bool(self._problem.teams))
            if outcome.verdict is Verdict.NONE:
                return Answer(under, best)
            bound = max(bound, outcome.bound + task.frame.pinned_cost)
            if outcome.value is None:
                break
            spots = self._read(outcome.value)
            cost = task.tally(spots).figure(Goal.HANDLING)
            if cost < under:
                best, under = spots, cost
            if cost <= bound or not self._pricing.refine(outcome.value):
                break
        return Answer(min(bound, under), best)

    def _read(self, value: object) -> Spots:
        """The plan of a solution, following the present one."""
        where = {bay: (kind, n) for kind, bays in enumerate(self._bays) for n, bay in enumerate(bays)}
        present = {item: (*where[spot[0]], spot[1]) for item, spot in enumerate(self._task.present) if spot is not None}
        rows = self._pricing.rows(value, {item: row for item, (_, _, row) in present.items()})  # type: ignore[arg-type]
        starts = self._flow.starts(value)  # type: ignore[arg-type]
        places: tuple[Place, ...] = paths.split(self._problem, self._flow.family_of, starts, rows, present)
        found = {p.item: (self._bays[p.kind][p.bay], p.row) for p in places}
        return tuple(found[item] for item in range(len(self._task.boxes)))
