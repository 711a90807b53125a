"""From a solution of the model back to a plan: which box stands where.

Laws: what the solution counts as staying stays; every count of the solution is met; and of the plans that meet them,
boxes are left where they are, or else in their bay, wherever that is among the places to be given out.
"""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from baywright.planner.distribution.flow import Value
from baywright.planner.goals.counts import Counts
from baywright.planner.goals.sorts import Likeness, Sort
from baywright.planner.goals.task import Spots
from baywright.planner.replanning.standing import Spot


@dataclass(frozen=True, slots=True, order=True)
class Slot:
    """One box's place in a solution; `is_wished` where it is counted as one that is only wished for."""

    spot: Spot
    is_wished: bool = False


class Reading:
    """One solution of a model."""

    def __init__(self, counts: Counts, value: Value) -> None:
        self._counts = counts
        self._value = value
        self._stays = counts.stays if counts.has_stays else {}
        self._spots: dict[int, Spot] = {}

    def spots(self) -> Spots:
        """The spot of every item."""
        task, sorts = self._counts.task, self._counts.sorts
        for item, stay in self._stays.items():
            spot = task.stood[item]
            if spot is not None and self._value(stay):
                self._spots[item] = spot
        slots = self._slots()
        for (family, level), items in self._items(slots).items():
            self._deal(items, slots[family, level], self._quotas(family, level))
        assert len(self._spots) == len(sorts.likeness_of)
        return tuple(self._spots[item] for item in range(len(task.boxes)))

    def _slots(self) -> dict[tuple[int, int], list[Slot]]:
        """The places that are left for those that do not stay, by family and level."""
        counts = self._counts
        there: dict[tuple[int, int, int], int] = defaultdict(int)
        for arc, variable in counts.flow.arcs.items():
            if self._value(variable):
                for family in counts.flow.families.fillings[arc.family].families:
                    there[family, arc.kind, arc.row] += 1
        staying: dict[tuple[int, Spot], int] = defaultdict(int)
        for item, spot in self._spots.items():
            staying[counts.sorts.likeness_of[item].sort.family, spot] += 1
        found: dict[tuple[int, int], list[Slot]] = defaultdict(list)
        for (family, bay, row), number in sorted(there.items()):
            owned = self._owned(family, bay, row, number)
            slots = [Slot((bay, row), position >= owned) for position in range(number)]
            found[family, counts.sorts.level_of[family, row]] += slots[staying[family, (bay, row)] :]
        return found

    def _owned(self, family: int, bay: int, row: int, number: int) -> int:
        """How many of the places at a row are for boxes that are there; all where they are not told apart."""
        sorts = self._counts.sorts.by_family[family]
        if not any(sort.is_wished for sort in sorts):
            return number
        owned = self._counts.owned.get((family, bay, row), 0) if self._counts.has_owned else 0
        return int(self._value(owned))

    def _items(self, slots: dict[tuple[int, int], list[Slot]]) -> dict[tuple[int, int], list[int]]:
        """The items that do not stay, by family and level."""
        found: dict[tuple[int, int], list[int]] = defaultdict(list)
        for likeness, members in self._counts.sorts.members.items():
            waiting = [item for item in members if item not in self._spots]
            family = likeness.sort.family
            levels = len(self._counts.sorts.rows[family])
            for level in range(levels):
                number = len(waiting) if levels == 1 else self._missing(likeness, members, level)
                chosen = self._nearest(waiting, slots[family, level])[:number]
                found[family, level] += chosen
                waiting = [item for item in waiting if item not in chosen]
        return found

    def _missing(self, likeness: Likeness, members: list[int], level: int) -> int:
        level_of, family = self._counts.sorts.level_of, likeness.sort.family
        there = sum(1 for i in members if i in self._spots and level_of[family, self._spots[i][1]] == level)
        return int(self._value(self._counts.at_level[likeness, level])) - there

    def _nearest(self, items: list[int], slots: list[Slot]) -> list[int]:
        """Items in the order in which they are to get one of these places."""
        spots = {slot.spot for slot in slots}
        bays = {bay for bay, _ in spots}
        present = self._counts.task.present

        def distance(item: int) -> int:
            spot = present[item]
            if spot is None:
                return 2
            return 0 if spot in spots else 1 if spot[0] in bays else 3

        return sorted(items, key=distance)

    def _quotas(self, family: int, level: int) -> dict[tuple[Sort, int], int] | None:
        """How many of each sort are still to stand in each bay; None where that is free."""
        counts = self._counts
        sorts = counts.sorts.by_family[family]
        if not counts.is_sorted or len(sorts) == 1:
            return None
        left = {(sort, bay): int(self._value(counts.in_bay[sort, level, bay])) for sort in sorts for bay in counts.bays}
        for item, (bay, row) in self._spots.items():
            sort = counts.sorts.likeness_of[item].sort
            if sort.family == family and counts.sorts.level_of[family, row] == level:
                left[sort, bay] -= 1
        return left

    def _deal(self, items: list[int], slots: list[Slot], quotas: dict[tuple[Sort, int], int] | None) -> None:
        """Give every item one of the places."""
        left = list(slots)
        for is_right in (self._is_own, self._is_own_bay, lambda item, slot: True):
            waiting = [item for item in items if item not in self._spots]
            for item in waiting:
                slot = next((s for s in self._open(item, left, quotas) if is_right(item, s)), None)
                if slot is not None:
                    left.remove(slot)
                    self._spots[item] = slot.spot
                    if quotas is not None:
                        quotas[self._counts.sorts.likeness_of[item].sort, slot.spot[0]] -= 1

    def _open(self, item: int, slots: list[Slot], quotas: dict[tuple[Sort, int], int] | None) -> Iterator[Slot]:
        sort = self._counts.sorts.likeness_of[item].sort
        for slot in slots:
            if slot.is_wished == sort.is_wished and (quotas is None or quotas[sort, slot.spot[0]] > 0):
                yield slot

    def _is_own(self, item: int, slot: Slot) -> bool:
        return self._counts.task.present[item] == slot.spot

    def _is_own_bay(self, item: int, slot: Slot) -> bool:
        spot = self._counts.task.present[item]
        return spot is not None and spot[0] == slot.spot[0]
