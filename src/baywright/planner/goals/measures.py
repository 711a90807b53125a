"""Every goal as an expression over the counts of the model; less is better.

Laws: a goal is measured here exactly as `baywright.planner.figures` counts it; what is locked to its drawer counts,
too. The free piece is no expression: a length of it is asked for, or not.
"""

from __future__ import annotations

from collections import defaultdict

from baywright.model.inventory import BoxStatus
from baywright.planner.distribution.solver import cp_model
from baywright.planner.goals import piece
from baywright.planner.goals.counts import MOST_IN_A_DRAWER, Counts, Linear, total
from baywright.planner.goals.sorts import Sort
from baywright.planner.replanning.standing import Spot


def moves(counts: Counts) -> Linear:
    """The boxes that do not stay where they stand."""
    task = counts.task
    places = task.scale.standing.places
    pinned = sum(1 for p in task.frame.pinned if places.get(p.box_id, (p.bay, p.row)) != (p.bay, p.row))
    stood = sum(1 for box in task.boxes if box.id in places)
    return pinned + stood - total(counts.stays.values())


def cost(counts: Counts) -> Linear:
    """The cost of handling."""
    found: list[Linear] = [counts.task.frame.pinned_cost]
    for (likeness, level), count in counts.at_level.items():
        if factor := likeness.weight * counts.sorts.penalty(likeness, level):
            found.append(factor * count)
    return total(found)


def split(counts: Counts) -> Linear:
    """The bays that groups are spread over, less one for each group."""
    task = counts.task
    pinned = {(task.scale.boxes[p.box_id].group, p.bay) for p in task.frame.pinned}
    present: dict[tuple[str, int], Linear] = {key: 1 for key in sorted(pinned) if key[0]}
    by_group: dict[str, list[Sort]] = defaultdict(list)
    for sort in counts.sorts.likenesses:
        by_group[sort.group].append(sort)
    for group, sorts in by_group.items():
        for bay in counts.bays if group else ():
            if (group, bay) not in present:
                present[group, bay] = presence = counts.model.new_bool_var("")
                for sort in sorts:
                    _need_presence(counts, sort, bay, presence)
                _need_presence_at_rows(counts, sorts, bay, presence)
    return total(present.values()) - len({group for group, _ in present})


def _need_presence_at_rows(counts: Counts, sorts: list[Sort], bay: int, presence: cp_model.IntVar) -> None:
    """A row is taken by one drawer, which the solver's relaxation would not see by itself."""
    over: dict[int, list[Linear]] = defaultdict(list)
    for sort in sorts:
        likeness = counts.sorts.likenesses[sort][0]
        for level in range(len(counts.sorts.rows[sort.family])):
            count = counts.in_bay[sort, level, bay]
            if not isinstance(count, int):
                for row in counts.sorts.always_taken(likeness, level):
                    over[row].append(count)
    in_a_drawer = max((len(team.shapes) for team in counts.task.problem.teams), default=1)
    for taking in dict.fromkeys(tuple(map(id, found)) for found in over.values()):
        found = next(f for f in over.values() if tuple(map(id, f)) == taking)
        counts.model.add(total(found) <= in_a_drawer * presence)


def _need_presence(counts: Counts, sort: Sort, bay: int, presence: cp_model.IntVar) -> None:
    levels = range(len(counts.sorts.rows[sort.family]))
    there = [count for level in levels if not isinstance(count := counts.in_bay[sort, level, bay], int)]
    if there:
        counts.model.add(total(there) <= counts.most(sort, bay) * presence)


def rescrews(counts: Counts) -> Linear:
    """As many runner pairs as are both given up and wanted elsewhere: the lesser of the numbers of old and of new
    positions, less the positions that stay.
    """
    task, model = counts.task, counts.model
    old = task.scale.standing.drawers
    pinned = {(p.bay, p.row) for p in task.frame.pinned if task.scale.boxes[p.box_id].status is not BoxStatus.WISHED}
    there: dict[Spot, list[Linear]] = defaultdict(list)
    for (_, bay, row), count in counts.owned.items():
        there[bay, row].append(count)
    kept: list[Linear] = [len(pinned & old)]
    for spot in sorted(old - pinned):
        if there[spot]:
            kept.append(serves := model.new_bool_var(""))
            model.add(serves <= total(there[spot]))
    number = _drawers(counts, there)
    if isinstance(number, int):
        return min(number + len(pinned), len(old)) - total(kept)
    large = len(task.boxes) + len(pinned) + len(old)
    anew, more = model.new_int_var(0, large, ""), model.new_bool_var("")
    model.add(anew >= number + len(pinned) - total(kept) - large * more)
    model.add(anew >= len(old) - total(kept) - large * (1 - more))
    return anew


def _drawers(counts: Counts, there: dict[Spot, list[Linear]]) -> Linear:
    """How many drawers there will be, without those that only hold boxes wished for."""
    if not counts.task.problem.teams:
        return sum(1 for is_wished in counts.task.is_wished if not is_wished)
    if not any(counts.task.is_wished):
        return total(counts.flow.arcs.values())
    drawers = []
    for found in there.values():
        drawers.append(drawer := counts.model.new_bool_var(""))
        counts.model.add(total(found) <= MOST_IN_A_DRAWER * drawer)
    return total(drawers)


def _covered(counts: Counts) -> piece.Covering:
    return piece.covering(counts.flow, {bay: piece.open_rows(counts.task, bay) for bay in counts.bays})


def keep_free(counts: Counts, length: int) -> None:
    """Ask for a stretch of so many usable rows that stays free in one bay."""
    piece.keep_free(counts.model, _covered(counts), length)
