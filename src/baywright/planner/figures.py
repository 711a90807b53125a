"""The plain figure of every goal for any arrangement, planned or dragged.

Laws: nothing is searched or bounded here; what the planner proves is a statement about these very figures. Handling is
counted in whole numbers (see `baywright.planner.handling`), everything else in bays, rows, boxes or runner pairs. What
one box more or less at a place changes is worked out from that place alone, so that every place a box could go can be
weighed at once.
"""

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from typing import TypeVar

from baywright.model.arrangement import Arrangement
from baywright.model.goals import FIRST_GOALS, Goal
from baywright.model.inventory import BoxStatus
from baywright.model.plan import GoalValue
from baywright.model.project import Project
from baywright.planner import handling
from baywright.planner.framing.bay import faces, is_plain
from baywright.planner.framing.grid import Grid, read_grid
from baywright.planner.framing.widths import WidthChoice
from baywright.planner.replanning.standing import Spot, Standing, standing_of
from baywright.workings import derive

UNITS: Mapping[Goal, str] = {
    Goal.BAYS: "bays",
    Goal.ROWS: "rows",
    Goal.MOVES: "boxes",
    Goal.RESCREWS: "runner pairs",
    Goal.HANDLING: handling.UNIT,
    Goal.GROUPS: "bays",
    Goal.FREE_PIECE: "rows",
}
Key = TypeVar("Key")

AGAINST_STANDING = frozenset({Goal.MOVES, Goal.RESCREWS})
"""Goals that only mean something where a run stands already."""


def goals_of(project: Project, *, keep: bool) -> tuple[Goal, ...]:
    """The goals that count, in their order: those about changes only when planning again or where bays are built."""
    counts_changes = keep or project.built is not None
    return (*FIRST_GOALS, *(goal for goal in project.goals if counts_changes or goal not in AGAINST_STANDING))


def goal_value(goal: Goal, value: int, bound: int) -> GoalValue:
    """A figure and its bound in the goal's unit, from whole numbers."""
    per_unit = handling.PER_UNIT if goal is Goal.HANDLING else 1
    return GoalValue(goal=goal, value=value / per_unit, bound=bound / per_unit, unit=UNITS[goal])


def figures(project: Project, arrangement: Arrangement, standing: Standing | None = None) -> tuple[GoalValue, ...]:
    """The exact value of every goal that an arrangement has, in their order.

    Changes are counted against `standing`, else against what is built; with neither, they are left out. The bounds
    are those that need no thought: nothing, or every usable row of the highest bay.
    """
    scale = Scale(project, standing)
    spots = {p.box_id: (p.bay, p.row) for p in arrangement.placements if p.box_id in scale.boxes}
    return Tally(scale, arrangement.upright_rows, usable_rows(project, scale.grid, arrangement), spots).goal_values()


class Scale:
    """What the goals of one project are measured by; read once, used for any number of arrangements."""

    def __init__(self, project: Project, standing: Standing | None = None, grid: Grid | None = None) -> None:
        if standing is None and project.built is not None:
            standing = standing_of(project)
        self.goals = goals_of(project, keep=standing is not None)
        self.standing = standing or Standing({}, frozenset())
        self.grid = grid if grid is not None else read_grid(project)
        self.boxes = {box.id: box for box in project.boxes_to_place}
        mass = handling.masses(project)
        self.weights = {box.id: handling.weight(mass[box.id], box.use) for box in project.boxes_to_place}
        self._penalties: dict[str, tuple[int, ...]] = {}

    def cost(self, box_id: str, row: int) -> int:
        """What handling a box at a row costs, in whole numbers."""
        size_id = self.boxes[box_id].size_id
        known = self._penalties.get(size_id, ())
        if row >= len(known):
            known = self._penalties[size_id] = self.grid.penalties(size_id, row + 32)
        return self.weights[box_id] * known[row]

    def rows_of(self, box_id: str) -> int:
        """The rows that a drawer takes for that box."""
        return self.grid.sizes[self.boxes[box_id].size_id].rows


class Tally:
    """The figures of one arrangement, kept up to date as single boxes are put in, taken out or put elsewhere."""

    def __init__(self, scale: Scale, rows: int, usable: Sequence[range], spots: Mapping[str, Spot]) -> None:
        """For a run of uprights with `rows` rows; `usable` are the rows of each bay that whole openings can use."""
        self._scale = scale
        self._rows = rows
        self._usable = usable
        self.places: dict[str, Spot] = {}
        self._stacks: dict[int, dict[str, int]] = defaultdict(dict)
        self._group_bays: dict[str, Counter[int]] = defaultdict(Counter)
        self._drawers: Counter[Spot] = Counter()
        self._longest: dict[int, int] = {}
        self._moves = self._cost = self._split = self._kept = 0
        for box_id, spot in spots.items():
            self.put(box_id, spot)

    def put(self, box_id: str, spot: Spot | None) -> None:
        """Put a box at a bay and row, or nowhere. KeyError for a box that is not to be placed."""
        self._count(box_id, -1)
        if spot is None:
            self.places.pop(box_id, None)
        else:
            self.places[box_id] = spot
        self._count(box_id, 1)

    def _count(self, box_id: str, change: int) -> None:
        """Count a box at its place in (1) or out (−1)."""
        box, spot = self._scale.boxes[box_id], self.places.get(box_id)
        if spot is None:
            return
        bay, row = spot
        if change > 0:
            self._stacks[bay][box_id] = row
        else:
            del self._stacks[bay][box_id]
        self._longest.pop(bay, None)
        before = self._scale.standing.places.get(box_id)
        self._moves += change * (before is not None and before != spot)
        self._cost += change * self._scale.cost(box_id, row)
        if box.status is not BoxStatus.WISHED and _changes(self._drawers, spot, change):
            self._kept += change * (spot in self._scale.standing.drawers)
        if box.group:
            bays = self._group_bays[box.group]
            alone = len(bays) == 1 if change < 0 else not bays
            if _changes(bays, bay, change) and not alone:
                self._split += change

    def _rescrews(self) -> int:
        return min(len(self._drawers), len(self._scale.standing.drawers)) - self._kept

    def free_piece(self) -> int:
        """The longest stretch of free usable rows in one bay."""
        return max(map(self.free_in, range(len(self._usable))), default=0)

    def free_in(self, bay: int) -> int:
        """The longest stretch of free usable rows in that bay."""
        if bay in self._longest:
            return self._longest[bay]
        taken = ((row, row + self._scale.rows_of(box_id)) for box_id, row in self._stacks[bay].items())
        self._longest[bay] = longest_free(self._usable[bay], taken)
        return self._longest[bay]

    def together(self, group: str, bay: int) -> int:
        """How many boxes of a group stand in a bay."""
        return self._group_bays[group][bay]

    def figure(self, goal: Goal) -> int:
        """One goal's figure as a whole number; handling in its own small unit."""
        match goal:
            case Goal.HANDLING:
                return self._cost
            case Goal.GROUPS:
                return self._split
            case Goal.MOVES:
                return self._moves
            case Goal.RESCREWS:
                return self._rescrews()
            case Goal.FREE_PIECE:
                return self.free_piece()
            case Goal.ROWS:
                return self._rows
        return len(self._usable)

    def whole_numbers(self) -> dict[Goal, int]:
        """Every goal's figure as a whole number; handling in its own small unit."""
        return {goal: self.figure(goal) for goal in self._scale.goals}

    def goal_values(self) -> tuple[GoalValue, ...]:
        """Every goal's figure, with a bound that needs no thought."""
        longest = max((len(rows) for rows in self._usable), default=0)
        return tuple(
            goal_value(goal, value, longest if goal is Goal.FREE_PIECE else 0)
            for goal, value in self.whole_numbers().items()
        )


def _changes(counts: Counter[Key], key: Key, change: int) -> bool:
    """Count one more or one less of a key; whether it comes in or goes out altogether."""
    before = counts[key]
    counts[key] = before + change
    if not counts[key]:
        del counts[key]
    return not before or before + change == 0


def usable_rows(project: Project, grid: Grid, arrangement: Arrangement) -> tuple[range, ...]:
    """For each bay of an arrangement the rows that whole openings can use."""
    bays, rows = arrangement.bay_count, arrangement.upright_rows
    if is_plain(project):
        return (range(grid.lowest, grid.lowest + grid.usable_rows(rows)),) * bays
    workings = derive(project)
    widths = (*arrangement.box_widths_mm, *WidthChoice(project, workings).usual(bays)[len(arrangement.box_widths_mm) :])
    there = faces(project, workings, widths[:bays], rows)
    return tuple(range(grid.lowest, grid.lowest + grid.usable_rows(face.rows)) for face in there)


def longest_free(usable: range, taken: Iterable[Spot]) -> int:
    """The longest stretch of `usable` rows that no `taken` stretch (first, one past the last) reaches into."""
    longest, free = 0, usable.start
    for first, end in sorted(taken):
        longest = max(longest, min(first, usable.stop) - free)
        free = max(free, end)
    return max(longest, usable.stop - free)
