"""A plan made better in one goal by exchanging drawers between bays, the goals before it held: quick, but no proof.

A step takes a few neighbouring drawers of one bay and a few of another and puts each in the other's place, where they
fit; or it exchanges two boxes of one size, or slides drawers up or down. Steps that help are taken, others now and
then, ever more rarely (simulated annealing, seeded). Laws: every plan on the way is legal and holds the goals before;
the same start gives the same end.
"""

import math
import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from baywright.model.goals import MORE_IS_BETTER, Goal
from baywright.planner.distribution.problem import Span
from baywright.planner.goals.task import Held, Spots, Task
from baywright.planner.replanning.standing import Spot

HOT, COLD = 0.6, 0.05
"""How much worse, in the goal's unit, a step may be that is taken about every third time, at first and at last."""
LONGEST_RUN = 3
"""So many neighbouring drawers change places at most."""
CLOSENESS = 0.02
"""How much it counts that boxes of a group stand many together, or free rows in one piece, beside the figure."""
CHECK_EVERY = 64


@dataclass(slots=True)
class Drawer:
    """A drawer in its bay: first row, rows, and the items in it; none in one that is locked."""

    row: int
    rows: int
    items: tuple[int, ...]

    @property
    def end(self) -> int:
        """The row after it."""
        return self.row + self.rows


class Exchange:
    """The drawers of a plan by bay, and the figures as they change."""

    def __init__(self, task: Task, held: Sequence[Held], goal: Goal, spots: Spots) -> None:
        self._task = task
        self._held = held
        self._goal = goal
        self._sign = -1 if goal in MORE_IS_BETTER else 1
        self._chance = random.Random(len(spots))
        self._spots = list(spots)
        self._tally = task.tally(spots)
        self._unit = max(1.0, self._tally.figure(goal) / len(spots)) if goal is Goal.HANDLING else 1.0
        self._names = [item.name for item in task.problem.items]
        self._bays = self._stacks(spots)
        self._movable = [bay for bay, stack in enumerate(self._bays) if any(drawer.items for drawer in stack)]
        self._mates: dict[str, list[int]] = {}
        for item, box in enumerate(task.boxes):
            if box.group:
                self._mates.setdefault(box.group, []).append(item)
        self._grouped = [item for mates in self._mates.values() if len(mates) > 1 for item in mates]

    def _stacks(self, spots: Spots) -> list[list[Drawer]]:
        contents: dict[Spot, list[int]] = {}
        for item, spot in enumerate(spots):
            contents.setdefault(spot, []).append(item)
        problem = self._task.problem
        stacks = [[Drawer(first, last - first, ()) for first, last in kind.blocked] for kind in problem.kinds]
        for (bay, row), items in contents.items():
            span = problem.drawer_span(items, bay)
            assert span is not None
            stacks[bay].append(Drawer(row, span.rows, tuple(items)))
        return [sorted(stack, key=lambda drawer: drawer.row) for stack in stacks]

    def improve(self, tries: int, enough: int, check: Callable[[], None]) -> Spots:
        """The best plan met in so many tries; ends early where the figure `enough` is reached."""
        figure = best = self._tally.figure(self._goal)
        answer = tuple(self._spots)
        cooling = (COLD / HOT) ** (1 / max(1, tries))
        heat = HOT
        for number in range(tries):
            if number % CHECK_EVERY == 0:
                check()
            if self._sign * best <= self._sign * enough:
                break
            heat *= cooling
            undo = self._try(heat, figure)
            if undo is None:
                continue
            figure = self._tally.figure(self._goal)
            if self._sign * figure < self._sign * best:
                best, answer = figure, tuple(self._spots)
        return answer

    def _try(self, heat: float, figure: int) -> bool | None:
        """One step, taken or not; None where it was not."""
        found = self._step()
        if found is None:
            return None
        stacks, moved = found
        groups = {self._task.boxes[item].group for item, _ in moved}
        bays = {spot[0] for _, spot in moved} | {self._spots[item][0] for item, _ in moved}
        close = self._closeness(groups, bays)
        before = [(item, self._spots[item]) for item, _ in moved]
        self._put(moved)
        worse = self._sign * (self._tally.figure(self._goal) - figure) / self._unit
        worse -= CLOSENESS * (self._closeness(groups, bays) - close)
        if self._holds() and (worse <= 0 or self._chance.random() < math.exp(-worse / heat)):
            for bay, stack in stacks.items():
                self._bays[bay] = stack
            return True
        self._put(before)
        return None

    def _put(self, moved: Sequence[tuple[int, Spot]]) -> None:
        for item, spot in moved:
            self._tally.put(self._names[item], spot)
            self._spots[item] = spot

    def _holds(self) -> bool:
        for held in self._held:
            figure = self._tally.figure(held.goal)
            if figure < held.value if held.goal in MORE_IS_BETTER else figure > held.value:
                return False
        return True

    def _closeness(self, groups: set[str], bays: set[int]) -> int:
        """How well the bays concerned are on the way to the goal, though its figure may not show it yet."""
        if self._goal is Goal.FREE_PIECE:
            return sum(self._tally.free_in(bay) ** 2 for bay in bays)
        if self._goal is Goal.GROUPS:
            return sum(self._tally.together(group, bay) ** 2 for group in groups if group for bay in bays)
        return 0

    def _step(self) -> tuple[dict[int, list[Drawer]], list[tuple[int, Spot]]] | None:
        """The changed stacks and the items' new places of one step; None where what was drawn does not go."""
        kind = self._chance.random()
        if kind < 0.4:
            return self._two_boxes()
        one = self._drawn_bay()
        other = self._bay_of_mate(one)
        return self._slide(one) if one == other or kind > 0.97 else self._two_runs(one, other)

    def _drawn_bay(self) -> int:
        if self._goal is Goal.GROUPS and self._grouped:
            return self._spots[self._chance.choice(self._grouped)][0]
        return self._chance.choice(self._movable)

    def _bay_of_mate(self, bay: int) -> int:
        """Another bay, for the groups mostly one where a box of this bay has a mate."""
        if self._goal is Goal.GROUPS and self._chance.random() < 0.7:
            here = [item for drawer in self._bays[bay] for item in drawer.items]
            item = self._chance.choice(here)
            mates = self._mates.get(self._task.boxes[item].group)
            if mates:
                return self._spots[self._chance.choice(mates)][0]
        return self._chance.choice(self._movable)

    def _two_boxes(self) -> tuple[dict[int, list[Drawer]], list[tuple[int, Spot]]] | None:
        """Two boxes of one shape change places."""
        pool = self._grouped if self._goal is Goal.GROUPS and self._grouped else range(len(self._spots))
        one = self._chance.choice(pool)
        bay = self._bay_of_mate(self._spots[one][0])
        shape = self._task.problem.items[one].shape
        others = [
            item
            for drawer in self._bays[bay]
            for item in drawer.items
            if self._task.problem.items[item].shape == shape and item != one
        ]
        if not others:
            return None
        other = self._chance.choice(others)
        places = {one: self._spots[other], other: self._spots[one]}
        if places[one] == places[other]:
            return None
        stacks = {}
        for changed in {self._spots[one][0], self._spots[other][0]}:
            stacks[changed] = [
                Drawer(d.row, d.rows, tuple({one: other, other: one}.get(item, item) for item in d.items))
                for d in self._bays[changed]
            ]
        return stacks, list(places.items())

    def _run(self, bay: int) -> tuple[int, int]:
        """A few neighbouring drawers of a bay that are not locked, by their numbers from … to one past the last."""
        stack = self._bays[bay]
        first = self._chance.randrange(len(stack))
        last = first
        length = self._chance.choice((1, 1, 1, 2, 2, LONGEST_RUN))
        while last < len(stack) and last - first < length and stack[last].items:
            last += 1
        return first, last

    def _two_runs(self, one: int, other: int) -> tuple[dict[int, list[Drawer]], list[tuple[int, Spot]]] | None:
        """Neighbouring drawers of one bay and of another change places."""
        first, second = self._run(one), self._run(other)
        here, there = self._bays[one][slice(*first)], self._bays[other][slice(*second)]
        if not here and not there:
            return None
        left, right = self._with(one, first, there), self._with(other, second, here)
        if left is None or right is None or not self._is_room_kept({one: left, other: right}):
            return None
        moved = [(item, (one, d.row)) for d in left for item in d.items if (one, d.row) != self._spots[item]]
        moved += [(item, (other, d.row)) for d in right for item in d.items if (other, d.row) != self._spots[item]]
        return {one: left, other: right}, moved

    def _slide(self, bay: int) -> tuple[dict[int, list[Drawer]], list[tuple[int, Spot]]] | None:
        """Some neighbouring drawers of a bay are set anew between those under and over them, in another order."""
        run = self._run(bay)
        drawers = list(self._bays[bay][slice(*run)])
        self._chance.shuffle(drawers)
        stack = self._with(bay, run, drawers) if drawers else None
        if stack is None or not self._is_room_kept({bay: stack}):
            return None
        moved = [(item, (bay, d.row)) for d in stack for item in d.items if (bay, d.row) != self._spots[item]]
        return ({bay: stack}, moved) if moved else None

    def _with(self, bay: int, run: tuple[int, int], drawers: list[Drawer]) -> list[Drawer] | None:
        """A bay's stack with `drawers` instead of a run of its own; None where they do not go there."""
        stack, kind = self._bays[bay], self._task.problem.kinds[bay]
        under, over = stack[: run[0]], stack[run[1] :]
        count = sum(1 for d in (*under, *drawers, *over) if d.items)
        if kind.drawers is not None and count > kind.drawers:
            return None
        floor = under[-1].end if under else 0
        spans = [self._task.problem.drawer_span(d.items, bay) for d in drawers]
        if any(span is None for span in spans):
            return None
        whole = [span for span in spans if span is not None]
        high = self._rows_from_top(whole, over[0].row if over else None)
        low = self._rows_from_bottom(whole, floor)
        rows = self._between(low, high, stack[run[0]].row if run[0] < len(stack) else floor)
        if rows is None or not all(kind.admits(span, row) for span, row in zip(whole, rows, strict=True)):
            return None
        placed = [Drawer(r, s.rows, d.items) for r, s, d in zip(rows, whole, drawers, strict=True)]
        return [*under, *placed, *over]

    def _rows_from_top(self, spans: Sequence[Span], lid: int | None) -> list[int]:
        rows: list[int] = []
        for span in reversed(spans):
            row = span.highest if lid is None else min(span.highest, lid - span.rows)
            rows.append(row)
            lid = row
        return rows[::-1]

    def _rows_from_bottom(self, spans: Sequence[Span], floor: int) -> list[int]:
        rows: list[int] = []
        for span in spans:
            row = max(floor, span.lowest)
            rows.append(row)
            floor = row + span.rows
        return rows

    def _between(self, low: list[int], high: list[int], wanted: int) -> list[int] | None:
        """Rows as low, as high, or so that the first drawer stands where one stood; None where they do not fit."""
        if any(lowest > highest for lowest, highest in zip(low, high, strict=True)):
            return None
        if not low:
            return []
        way = self._chance.random()
        if way < 0.2:
            return low
        if way < 0.4:
            return high
        shift = max(0, min(wanted - low[0], *(most - least for least, most in zip(low, high, strict=True))))
        return [row + shift for row in low]

    def _is_room_kept(self, stacks: dict[int, list[Drawer]]) -> bool:
        """Whether the rows to be left free are; drawers of the same rows take the same room, but at the top."""
        if not self._task.problem.spare_rows:
            return True
        kinds = self._task.problem.kinds
        before = sum(kinds[b].room_taken(d.row, d.rows) for b in stacks for d in self._bays[b] if d.items)
        after = sum(kinds[b].room_taken(d.row, d.rows) for b, stack in stacks.items() for d in stack if d.items)
        return after <= before
