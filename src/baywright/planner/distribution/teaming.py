"""Items put together beforehand, so that the simple first tries can fill shared drawers, too.

The teams that save most rows are formed as often as there are items for them, and each becomes one item of a smaller
problem. What the first tries find for that is unfolded again. Law: an unfolded plan keeps every rule that the folded
one kept.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from baywright.planner.distribution.problem import Item, Place, Problem, Shape, Team


@dataclass(frozen=True)
class Folded:
    """A problem in which some items stand for a whole drawer."""

    problem: Problem
    crews: tuple[tuple[int, ...], ...]
    """For each of its items those of the first problem."""

    def unfold(self, places: Iterable[Place]) -> tuple[Place, ...]:
        """The places of the first problem's items."""
        found = [replace(place, item=item) for place in places for item in self.crews[place.item]]
        return tuple(sorted(found, key=lambda p: p.item))


def folded(problem: Problem) -> Folded | None:
    """The problem with as many of its items in teams as can be; None where no team can be formed."""
    waiting = [list(reversed(members)) for members in problem.members]
    crews: list[tuple[int, ...]] = []
    shapes: list[int] = []
    for number, team in sorted(enumerate(problem.teams), key=lambda t: (*_lost(problem, t[1]), t[0])):
        while all(len(waiting[shape]) >= team.shapes.count(shape) for shape in team.shapes):
            crews.append(tuple(waiting[shape].pop() for shape in team.shapes))
            shapes.append(len(problem.shapes) + number)
    if not crews:
        return None
    alone = sorted(item for items in waiting for item in items)
    drawers = [*zip(crews, shapes, strict=True), *(((i,), problem.items[i].shape) for i in alone)]
    items = tuple(
        Item(problem.items[crew[0]].name, shape, sum(problem.items[i].weight for i in crew)) for crew, shape in drawers
    )
    all_shapes = (*problem.shapes, *(Shape(team.spans) for team in problem.teams))
    smaller = replace(problem, shapes=all_shapes, items=items, teams=())
    return Folded(smaller, tuple(crew for crew, _ in drawers))


def _lost(problem: Problem, team: Team) -> tuple[int, int]:
    """Less than nothing for every row that a team saves where it saves most, and for every drawer."""
    saved = 0
    for kind, span in enumerate(team.spans):
        if span is None or not problem.kinds[kind].starts(span):
            continue
        alone = [own.rows for shape in team.shapes if (own := problem.shapes[shape].spans[kind]) is not None]
        saved = max(saved, sum(alone) - span.rows)
    return -saved, 1 - len(team.shapes)
