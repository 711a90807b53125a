"""Whether an arrangement, planned or dragged, keeps every limit, and why a box could not stand at some place.

Laws: nothing is searched here, so both answers come at once; a place is judged with the other boxes as they stand
and the box itself lifted out, and boxes at one row of one bay share a drawer; an arrangement of the planner has no
conflict.
"""

from functools import lru_cache
from itertools import islice

from baywright.model.plan import ArrangementReport, Conflict, LimitKind
from baywright.model.project import Project
from baywright.planner.legality.board import Board, Drawer
from baywright.planner.legality.content import names
from baywright.planner.legality.obstacle import run_obstacles


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
    stack = [drawer.without(box_id) for drawer in board.by_bay.get(bay, ())]
    others = [drawer for drawer in stack if drawer.boxes]
    there = next((drawer for drawer in others if drawer.row == row), None)
    mine = Drawer(bay, row, ((*there.boxes, box) if there is not None else (box,)), ())
    if not found:
        found += board.contents_of(mine)
    rows = board.rows_of(mine)
    for other in others:
        if other.row != row:
            lower, upper = (other, mine) if other.row < row else (mine, other)
            if (clash := board.overlap(lower, upper)) is not None:
                found.append(clash)
    drawers = [*(drawer for drawer in others if drawer.row != row), mine]
    if (many := board.too_many(bay, drawers)) is not None:
        found.append(many)
    if not found and project.limits.spare_rows and (kept := board.spare_with(box_id, mine, rows)) is not None:
        found.append(kept)
    return tuple(found)


def report(project: Project) -> ArrangementReport:
    """What is wrong with the present arrangement, what has no place, and how much room is used and free."""
    board = _board(_Same(project))
    arrangement = project.arrangement
    found: list[Conflict] = []
    if project.boxes_to_place or arrangement.placements:
        shape = max(1, arrangement.bay_count), max(1, arrangement.upright_rows)
        widths = board.widths if arrangement.bay_count else None
        found += run_obstacles(project, board.workings, board.grid, *shape, widths)
        found += _other_shape(board)
        found += board.box_conflicts
    for bay, stack in sorted(board.by_bay.items()):
        found += _stack_conflicts(board, bay, stack)
    placed = {p.box_id for p in arrangement.placements}
    used, total = board.rows_used, board.rows_total
    spare = project.limits.spare_rows
    if arrangement.bay_count and total - used < spare:
        found.append(board.too_few_spare(total - used))
    return ArrangementReport(
        conflicts=tuple(found),
        unplaced=tuple(box.id for box in project.boxes_to_place if box.id not in placed),
        rows_total=total,
        rows_used=used,
        rows_free=max(0, total - used),
        drawers=sum(len(stack) for stack in board.by_bay.values()),
    )


def _other_shape(board: Board) -> list[Conflict]:
    """Where the arrangement has other numbers of bays or rows, or other widths, than were fixed after it was made."""
    project = board.project
    arrangement, limits = project.arrangement, project.limits
    if not arrangement.bay_count:
        return []
    pairs = (
        (LimitKind.BAY_COUNT, "bay", arrangement.bay_count, limits.bay_count),
        (LimitKind.HEIGHT, "hole row", arrangement.upright_rows, limits.upright_rows),
    )
    found = [
        Conflict(
            kind=kind,
            message=f"The arrangement has {there} {noun}{'s' * (there != 1)}, but the limits fix {fixed}.",
            mend=f"Plan again, or leave the number of {noun}s free.",
        )
        for kind, noun, there, fixed in pairs
        if fixed is not None and fixed != there
    ]
    found += board.other_widths()
    elsewhere = [board.boxes[p.box_id] for p in arrangement.placements if p.box_id not in board.to_place]
    if elsewhere:
        found.append(Conflict(
            kind=LimitKind.PLACE, box_ids=tuple(box.id for box in elsewhere),
            message=f"{names(elsewhere[:4])} {'has a drawer' if len(elsewhere) == 1 else 'have drawers'} here, but "
            f"{'is' if len(elsewhere) == 1 else 'are'} kept elsewhere.",
            mend="Plan again, or take the box out of its drawer.",
        ))  # fmt: skip
    return found


def _stack_conflicts(board: Board, bay: int, stack: list[Drawer]) -> list[Conflict]:
    found: list[Conflict] = []
    for drawer in stack:
        outside = [c for box in drawer.boxes for c in board.outside(box, bay, drawer.row)]
        found += outside
        known = set(board.conflicts_of_box)
        if not outside and not known & {box.id for box in drawer.boxes}:
            found += board.contents_of(drawer)
    for number, lower in enumerate(stack):
        for upper in islice(stack, number + 1, None):
            if (clash := board.overlap(lower, upper)) is None:
                break
            found.append(clash)
    if (many := board.too_many(bay, stack)) is not None:
        found.append(many)
    return found
