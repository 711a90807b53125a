"""From a project document to the distribution problem in numbers, and from its places back to an arrangement.

A frame is one choice of shape for the run: so many bays with so many hole rows. Bays that are alike, also in what is
locked in them, become one kind; boxes of one size that may go to the same bays share a shape.
"""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.project import Project
from baywright.planner.grid import Grid, read_grid
from baywright.planner.handling import masses, weight
from baywright.planner.problem import Item, Kind, Place, Problem, Shape


@dataclass(frozen=True)
class Frame:
    """The problem for one shape of the run. `indices` are the bay numbers of each kind, lowest first."""

    problem: Problem
    indices: tuple[tuple[int, ...], ...]
    bays: int
    rows: int
    pinned: tuple[Placement, ...]
    """Boxes locked to their drawers: no items of the problem."""
    pinned_cost: int


class Framer:
    """Makes frames of one project; reads the document once."""

    def __init__(self, project: Project, grid: Grid | None = None) -> None:
        self.project = project
        self.grid = grid if grid is not None else read_grid(project)
        placed = {p.box_id: p for p in project.arrangement.placements}
        self.pinned = tuple(p for p in project.arrangement.placements if p.lock is Lock.DRAWER)
        self.held = {p.box_id: p.bay for p in project.arrangement.placements if p.lock is Lock.BAY}
        pinned_ids = {p.box_id for p in self.pinned}
        self.free = tuple(box for box in project.boxes if box.id not in pinned_ids)
        self.locks = {p.box_id: p.lock for p in project.arrangement.placements}
        self._placed = placed
        self._size_of = {box.id: box.size_id for box in project.boxes}

    @cached_property
    def weights(self) -> dict[str, int]:
        """Each box's weight in the handling cost."""
        mass = masses(self.project)
        return {box.id: weight(mass[box.id], box.use) for box in self.project.boxes}

    @property
    def fewest_bays(self) -> int:
        """How many bays there must be for every lock to have its bay."""
        locked = [p.bay for p in self.pinned] + list(self.held.values())
        return max(locked, default=0) + 1

    def frame(self, bays: int, rows: int) -> Frame:
        """The problem with that many bays and rows; locks must lie within them."""
        blocked: dict[int, list[tuple[int, int]]] = defaultdict(list)
        for p in self.pinned:
            end = min(rows, p.row + self.grid.sizes[self._size_of[p.box_id]].rows)
            blocked[p.bay].append((p.row, end))
        held: dict[int, list[str]] = defaultdict(list)
        for box_id, bay in self.held.items():
            held[bay].append(box_id)
        alike: dict[tuple[tuple[tuple[int, int], ...], int], list[int]] = defaultdict(list)
        for bay in range(bays):
            alike[tuple(sorted(blocked[bay])), bay if bay in held else -1].append(bay)
        limit = self.project.limits.drawers_per_bay
        kinds = tuple(
            Kind(len(numbers), rows, None if limit is None else max(0, limit - len(stretches)), stretches)
            for (stretches, _), numbers in alike.items()
        )
        indices = tuple(tuple(numbers) for numbers in alike.values())
        return Frame(self._problem(kinds, indices, rows), indices, bays, rows, self.pinned, self._pinned_cost(rows))

    def _problem(self, kinds: tuple[Kind, ...], indices: tuple[tuple[int, ...], ...], rows: int) -> Problem:
        kind_of = {bay: number for number, bays in enumerate(indices) for bay in bays}
        numbers: dict[tuple[str, int | None], int] = {}
        items = []
        for box in self.free:
            home = kind_of[self.held[box.id]] if box.id in self.held else None
            shape = numbers.setdefault((box.size_id, home), len(numbers))
            items.append(Item(box.id, shape, self.weights[box.id]))
        spans = {size_id: self.grid.span(size_id, rows) for size_id, _ in numbers}
        penalties = {size_id: self.grid.penalties(size_id, rows) for size_id in spans}
        shapes = tuple(
            Shape(
                tuple(spans[size_id] if home in (None, number) else None for number in range(len(kinds))),
                penalties[size_id],
            )
            for size_id, home in numbers
        )
        return Problem(kinds, shapes, tuple(items))

    def _pinned_cost(self, rows: int) -> int:
        total = 0
        for p in self.pinned:
            penalties = self.grid.penalties(self._size_of[p.box_id], rows)
            total += self.weights[p.box_id] * (penalties[p.row] if p.row < rows else 0)
        return total

    def present(self, frame: Frame) -> dict[int, tuple[int, int, int]]:
        """Where the items of a frame stand now: kind, bay within the kind, row."""
        where = {bay: (number, i) for number, bays in enumerate(frame.indices) for i, bay in enumerate(bays)}
        found = {}
        for index, item in enumerate(frame.problem.items):
            placement = self._placed.get(item.name)
            if placement is not None and placement.bay in where:
                found[index] = (*where[placement.bay], placement.row)
        return found

    def arrangement(self, frame: Frame, places: Iterable[Place]) -> Arrangement:
        """The arrangement of a plan, in the order of the inventory; locks stay."""
        by_box = {p.box_id: p for p in frame.pinned}
        for place in places:
            box_id = frame.problem.items[place.item].name
            bay = frame.indices[place.kind][place.bay]
            lock = self.locks.get(box_id, Lock.NONE)
            by_box[box_id] = Placement(box_id=box_id, bay=bay, row=place.row, lock=lock)
        placements = tuple(by_box[box.id] for box in self.project.boxes)
        return Arrangement(bay_count=frame.bays, upright_rows=frame.rows, placements=placements)
