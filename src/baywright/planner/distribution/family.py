"""Which items the flow need not tell apart, and what may stand in a drawer: one of them, or a team.

Laws: shapes are of one family when they have the same spans and can take each other's place in every team; whatever
items of its families a drawer is then given, they are allowed there. The first drawers are those of one item, family
by family; the teams follow.
"""

from collections import defaultdict
from dataclasses import dataclass

from baywright.planner.distribution.problem import Problem, Spans


@dataclass(frozen=True, slots=True)
class Filling:
    """What one drawer holds: a family for each item in it, rising, and the drawer's span in each kind of bay."""

    families: tuple[int, ...]
    spans: Spans


@dataclass(frozen=True)
class Families:
    """The family of each shape, and every filling that a drawer may have."""

    of_shape: tuple[int, ...]
    fillings: tuple[Filling, ...]
    count: int
    """How many families there are; so many fillings of a single item come first."""


def families(problem: Problem) -> Families:
    """The families of a problem's shapes and the fillings they make."""
    links: dict[int, set[tuple[tuple[int, ...], Spans]]] = defaultdict(set)
    for team in problem.teams:
        for position, shape in enumerate(team.shapes):
            others = team.shapes[:position] + team.shapes[position + 1 :]
            links[shape].add((others, team.spans))
    numbers: dict[tuple[Spans, frozenset[tuple[tuple[int, ...], Spans]]], int] = {}
    of_shape = tuple(
        numbers.setdefault((shape.spans, frozenset(links.get(number, ()))), len(numbers))
        for number, shape in enumerate(problem.shapes)
    )
    singles = tuple(Filling((number,), spans) for number, (spans, _) in enumerate(numbers))
    teams = {tuple(sorted(of_shape[shape] for shape in team.shapes)): team.spans for team in problem.teams}
    counts = [0] * len(numbers)
    for item in problem.items:
        counts[of_shape[item.shape]] += 1
    shared = tuple(
        Filling(members, spans)
        for members, spans in sorted(teams.items(), key=lambda team: team[0])
        if all(counts[family] >= members.count(family) for family in members)
    )
    return Families(of_shape, singles + shared, len(singles))
