"""Whether an arrangement, planned or dragged, keeps every limit, and why a box could not stand at some place.

Laws: nothing is searched here, so both answers come at once; a place is judged with the other boxes as they stand
and the box itself lifted out; an arrangement of the planner has no conflict.
"""

from collections import defaultdict
from functools import cached_property, lru_cache
from itertools import islice

from baywright.model.arrangement import Placement
from baywright.model.inventory import Box
from baywright.model.plan import ArrangementReport, Conflict, LimitKind
from baywright.model.project import Project
from baywright.planner.grid import Grid, read_grid
from baywright.planner.obstacle import box_obstacles, most_bays, most_rows, run_obstacles
from baywright.workings import derive


class Board:
    """The present arrangement of one document, laid out for quick questions."""

    def __init__(self, project: Project) -> None:
        self.project = project
        self.workings = derive(project)
        self.grid: Grid = read_grid(project, self.workings)
        arrangement = project.arrangement
        self.bays = arrangement.bay_count or most_bays(project, self.grid)
        self.rows = arrangement.upright_rows or most_rows(project, self.grid)
        self.boxes = {box.id: box for box in project.boxes}
        self.by_bay: dict[int, list[Placement]] = defaultdict(list)
        for placement in arrangement.placements:
            self.by_bay[placement.bay].append(placement)
        for stack in self.by_bay.values():
            stack.sort(key=lambda p: (p.row, p.box_id))

    @cached_property
    def box_conflicts(self) -> tuple[Conflict, ...]:
        """What is wrong with boxes wherever they stand."""
        return box_obstacles(self.project, self.workings, self.grid, self.rows)

    @cached_property
    def conflicts_of_box(self) -> dict[str, list[Conflict]]:
        """The same, by box."""
        found: dict[str, list[Conflict]] = defaultdict(list)
        for conflict in self.box_conflicts:
            for box_id in conflict.box_ids:
                found[box_id].append(conflict.replace(box_ids=(box_id,)))
        return found

    def rows_of(self, box: Box) -> int:
        """Rows the box takes in an inner place."""
        return self.grid.sizes[box.size_id].rows

    def outside(self, box: Box, bay: int, row: int) -> tuple[Conflict, ...]:
        """What keeps a box from that place even in an empty run."""
        found = []
        if not 0 <= bay < self.bays:
            there = "there is only 1 bay" if self.bays == 1 else f"there are only {self.bays} bays"
            found.append(Conflict(
                kind=LimitKind.BAY_COUNT, message=f"“{box.label}” cannot stand in bay {bay + 1}; {there}.",
                mend="Choose another bay.", box_ids=(box.id,), needed=bay + 1, available=self.bays, unit="bays",
            ))  # fmt: skip
        highest = self.grid.highest(box.size_id, self.rows)
        if row < self.grid.lowest:
            found.append(Conflict(
                kind=LimitKind.PLACE,
                message=f"“{box.label}” cannot stand at row {row + 1}: its drawer would meet the base; the lowest row "
                f"a drawer can use is {self.grid.lowest + 1}.",
                mend=f"Choose row {self.grid.lowest + 1} or higher.", box_ids=(box.id,),
            ))  # fmt: skip
        elif row > highest >= self.grid.lowest:
            found.append(Conflict(
                kind=LimitKind.HEIGHT,
                message=f"“{box.label}” cannot stand at row {row + 1}: it would meet the top; the highest row for its "
                f"size is {highest + 1} of {self.rows}.",
                mend=f"Choose row {highest + 1} or lower.", box_ids=(box.id,),
                needed=row + 1, available=highest + 1, unit="rows",
            ))  # fmt: skip
        return tuple(found)

    def overlap(self, lower: Box, lower_row: int, upper: Box, upper_row: int) -> Conflict | None:
        """Whether the drawer of `lower` reaches into that of `upper` at or over it."""
        rows = self.rows_of(lower)
        if lower_row + rows <= upper_row:
            return None
        return Conflict(
            kind=LimitKind.PLACE,
            message=f"“{lower.label}” at row {lower_row + 1} takes {rows} row{'s' * (rows != 1)}, up to row "
            f"{lower_row + rows}; “{upper.label}” stands at row {upper_row + 1}.",
            mend=f"Put “{upper.label}” at row {lower_row + rows + 1} or higher, or one of them elsewhere.",
            box_ids=(lower.id, upper.id), needed=rows, available=upper_row - lower_row, unit="rows",
        )  # fmt: skip

    def too_many(self, bay: int, box_ids: tuple[str, ...]) -> Conflict | None:
        """Whether so many boxes are more drawers than a bay may have."""
        limit = self.project.limits.drawers_per_bay
        if limit is None or len(box_ids) <= limit:
            return None
        return Conflict(
            kind=LimitKind.DRAWERS_PER_BAY,
            message=f"Bay {bay + 1} would have {len(box_ids)} drawers, allowed {limit}.",
            mend="Put a box elsewhere, or allow more drawers in a bay.", box_ids=box_ids,
            needed=len(box_ids), available=limit, unit="drawers",
        )  # fmt: skip


class _Same:
    """A document by identity, so that asking again about the very same one reads it only once."""

    __slots__ = ("project",)

    def __init__(self, project: Project) -> None:
        self.project = project

    def __hash__(self) -> int:
        return id(self.project)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and other.project is self.project


@lru_cache(maxsize=2)
def _board(same: _Same) -> Board:
    return Board(same.project)


def place_conflicts(project: Project, box_id: str, bay: int, row: int) -> tuple[Conflict, ...]:
    """Why a box could not stand at that row of that bay; empty where it could. KeyError for an unknown box."""
    board = _board(_Same(project))
    box = board.boxes[box_id]
    found = [*board.conflicts_of_box.get(box_id, ()), *board.outside(box, bay, row)]
    others = [p for p in board.by_bay.get(bay, ()) if p.box_id != box_id]
    for other in others:
        neighbour = board.boxes[other.box_id]
        if other.row < row or (other.row == row and other.box_id < box_id):
            clash = board.overlap(neighbour, other.row, box, row)
        else:
            clash = board.overlap(box, row, neighbour, other.row)
        if clash is not None:
            found.append(clash)
    if (many := board.too_many(bay, (*(p.box_id for p in others), box_id))) is not None:
        found.append(many)
    return tuple(found)


def report(project: Project) -> ArrangementReport:
    """What is wrong with the present arrangement, what has no place, and how much room is used and free."""
    board = _board(_Same(project))
    arrangement = project.arrangement
    found: list[Conflict] = []
    if project.boxes or arrangement.placements:
        shape = max(1, arrangement.bay_count), max(1, arrangement.upright_rows)
        found += run_obstacles(project, board.workings, board.grid, *shape)
        found += _other_shape(project)
        found += board.box_conflicts
    used = 0
    for bay, stack in sorted(board.by_bay.items()):
        found += _stack_conflicts(board, bay, stack)
        used += sum(_rows_used(board, p) for p in stack if p.bay < board.bays)
    placed = {p.box_id for p in arrangement.placements}
    total = arrangement.bay_count * board.grid.usable_rows(board.rows) if board.rows else 0
    return ArrangementReport(
        conflicts=tuple(found),
        unplaced=tuple(box.id for box in project.boxes if box.id not in placed),
        rows_total=total,
        rows_used=used,
        rows_free=max(0, total - used),
        drawers=len(arrangement.placements),
    )


def _other_shape(project: Project) -> list[Conflict]:
    """Where the arrangement has other numbers of bays or rows than were fixed after it was made."""
    arrangement, limits = project.arrangement, project.limits
    if not arrangement.bay_count:
        return []
    pairs = (
        (LimitKind.BAY_COUNT, "bay", arrangement.bay_count, limits.bay_count),
        (LimitKind.HEIGHT, "hole row", arrangement.upright_rows, limits.upright_rows),
    )
    return [
        Conflict(
            kind=kind,
            message=f"The arrangement has {there} {noun}{'s' * (there != 1)}, but the limits fix {fixed}.",
            mend=f"Plan again, or leave the number of {noun}s free.",
        )
        for kind, noun, there, fixed in pairs
        if fixed is not None and fixed != there
    ]


def _stack_conflicts(board: Board, bay: int, stack: list[Placement]) -> list[Conflict]:
    found: list[Conflict] = []
    for p in stack:
        found += board.outside(board.boxes[p.box_id], bay, p.row)
    for number, lower in enumerate(stack):
        for upper in islice(stack, number + 1, None):
            clash = board.overlap(board.boxes[lower.box_id], lower.row, board.boxes[upper.box_id], upper.row)
            if clash is None:
                break
            found.append(clash)
    if (many := board.too_many(bay, tuple(p.box_id for p in stack))) is not None:
        found.append(many)
    return found


def _rows_used(board: Board, placement: Placement) -> int:
    """The usable rows that a placed box takes; what a top drawer reaches beyond them does not count."""
    end = board.grid.lowest + board.grid.usable_rows(board.rows)
    start = max(placement.row, board.grid.lowest)
    return max(0, min(placement.row + board.rows_of(board.boxes[placement.box_id]), end) - start)
