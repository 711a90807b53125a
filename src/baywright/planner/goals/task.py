"""One run of settled shape, every bay told apart: what the goals are weighed on.

Laws: the number of a bay is the number of its kind, so that a place is a bay and a row; what is locked to its drawer
is no item, but counts in every figure.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cached_property

from baywright.model.arrangement import Arrangement
from baywright.model.goals import FIRST_GOALS, MORE_IS_BETTER, Goal
from baywright.model.inventory import Box, BoxStatus
from baywright.planner.distribution.flow import size
from baywright.planner.distribution.problem import Place, Problem, is_kept
from baywright.planner.figures import Scale, Tally
from baywright.planner.framing.frame import Frame
from baywright.planner.replanning.standing import Spot

Spots = tuple[Spot, ...]
"""The bay and row of every item of a problem."""
Figures = dict[Goal, int]
"""Every goal's figure as a whole number, in the order of the goals."""


def rank(figures: Figures) -> tuple[int, ...]:
    """Figures as a tuple that is less for the better plan, by the goals in their order."""
    return tuple(-value if goal in MORE_IS_BETTER else value for goal, value in figures.items())


@dataclass(frozen=True)
class Held:
    """A goal that counts before another one, and the figure it has reached: no plan may be worse in it."""

    goal: Goal
    value: int


@dataclass(frozen=True)
class Task:
    """The frame of a run, and the scale that its goals are measured by."""

    frame: Frame
    scale: Scale
    arrangement: Arrangement
    """The present arrangement of the document."""

    @cached_property
    def goals(self) -> tuple[Goal, ...]:
        """The goals to be settled in this frame, in their order."""
        return tuple(goal for goal in self.scale.goals if goal not in FIRST_GOALS)

    @cached_property
    def kind_of(self) -> tuple[Spot, ...]:
        """For each bay its kind in the frame's problem and its number within the kind."""
        found = {bay: (kind, n) for kind, bays in enumerate(self.frame.indices) for n, bay in enumerate(bays)}
        return tuple(found[bay] for bay in range(self.frame.bays))

    @cached_property
    def problem(self) -> Problem:
        """The frame's problem with every bay as a kind of its own, in the order of the bays."""
        problem = self.frame.problem
        numbers = [kind for kind, _ in self.kind_of]
        return replace(
            problem,
            kinds=tuple(replace(problem.kinds[kind], bays=1) for kind in numbers),
            shapes=tuple(replace(s, spans=tuple(s.spans[kind] for kind in numbers)) for s in problem.shapes),
            teams=tuple(replace(t, spans=tuple(t.spans[kind] for kind in numbers)) for t in problem.teams),
        )

    @cached_property
    def arcs(self) -> int:
        """How large the flow is with every bay told apart."""
        return size(replace(self.problem, kinds=tuple(replace(kind, drawers=None) for kind in self.problem.kinds)))

    @cached_property
    def boxes(self) -> tuple[Box, ...]:
        """The box of each item."""
        return tuple(self.scale.boxes[item.name] for item in self.frame.problem.items)

    @cached_property
    def is_wished(self) -> tuple[bool, ...]:
        """Whether each item's box is only wished for."""
        return tuple(box.status is BoxStatus.WISHED for box in self.boxes)

    @cached_property
    def stood(self) -> tuple[Spot | None, ...]:
        """Where each item stands now, as far as moving it would count; None also where that bay is no more."""
        places = [self.scale.standing.places.get(box.id) for box in self.boxes]
        return tuple(spot if spot is not None and spot[0] < self.frame.bays else None for spot in places)

    @cached_property
    def present(self) -> tuple[Spot | None, ...]:
        """Where each item stands or is planned now; where nothing else counts, it is left there."""
        placed = self.arrangement.placements_by_box
        places = [(p.bay, p.row) if (p := placed.get(box.id)) is not None else None for box in self.boxes]
        return tuple(
            before or (spot if spot is not None and spot[0] < self.frame.bays else None)
            for before, spot in zip(self.stood, places, strict=True)
        )

    @cached_property
    def usable(self) -> tuple[range, ...]:
        """For each bay the rows that whole openings can use."""
        grid = self.scale.grid
        return tuple(
            range(*kind.usable)
            if kind.usable is not None
            else range(grid.lowest, grid.lowest + grid.usable_rows(kind.rows))
            for kind in self.problem.kinds
        )

    @property
    def longest(self) -> int:
        """The usable rows of the highest bay: no free piece is longer."""
        return max(map(len, self.usable), default=0)

    def spots(self, places: Iterable[Place]) -> Spots:
        """The spot of each item for places of the frame's problem, one for every item."""
        found = {p.item: (self.frame.indices[p.kind][p.bay], p.row) for p in places}
        return tuple(found[item] for item in range(len(self.boxes)))

    def places(self, spots: Spots) -> tuple[Place, ...]:
        """The places in the frame's problem for the spot of each item."""
        return tuple(Place(item, *self.kind_of[bay], row) for item, (bay, row) in enumerate(spots))

    def is_legal(self, spots: Spots) -> bool:
        """Whether the spots keep every rule."""
        return is_kept(self.problem, [Place(item, bay, 0, row) for item, (bay, row) in enumerate(spots)])

    def tally(self, spots: Spots) -> Tally:
        """The figures of a plan."""
        by_box = {p.box_id: (p.bay, p.row) for p in self.frame.pinned if p.box_id in self.scale.boxes}
        by_box |= {box.id: spot for box, spot in zip(self.boxes, spots, strict=True)}
        return Tally(self.scale, self.frame.rows, self.usable, by_box)

    def figures(self, spots: Spots) -> Figures:
        """Every goal's figure of a plan as a whole number."""
        return self.tally(spots).whole_numbers()
