"""Single changes that would make everything fit, each tried before it is offered.

A repair is one change of one field: a little less clearance, another line offset, one more row, drawer or bay, one
lock undone, one box left out. Of each sort the smallest change that works is sought: where more of it never hurts, by
halving; where it may hurt (the line offset), nearest first.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import floor

from baywright.model.arrangement import Arrangement, Lock
from baywright.model.length import INCH_MM, LengthUnit, format_length, shown_up
from baywright.model.limits import MOST_BAYS, MOST_ROWS
from baywright.model.project import Project
from baywright.model.space import HIGHEST_LIMIT_MM, LONGEST_WALL_MM
from baywright.planner.budget import Budget
from baywright.planner.frame import Framer
from baywright.planner.grid import Grid, read_grid
from baywright.planner.locks import lock_conflicts
from baywright.planner.obstacle import most_bays, most_rows, obstacles
from baywright.planner.search import holds
from baywright.workings import Workings, derive

MOST_STEPS = 40
"""How many rows, drawers or bays more are tried at most."""
WIDEST_OFFSET_MM = 64
"""Line offsets are tried up to this."""
SHARE = 0.1
"""Share of the effort left that one try may take."""


@dataclass(frozen=True)
class Repair:
    """What to change, in words, and the document with the change made."""

    text: str
    project: Project


Make = Callable[[int], Repair]


def fits(project: Project, budget: Budget) -> bool:
    """Whether everything has a place; False also where it could not be settled."""
    workings = derive(project)
    grid = read_grid(project, workings)
    bays, rows = most_bays(project, grid), most_rows(project, grid)
    if obstacles(project, workings, grid) or lock_conflicts(project, grid, bays, rows):
        return False
    if not project.boxes:
        return True
    return holds(Framer(project, grid).frame(bays, rows).problem, budget, SHARE).holds is True


def repairs(project: Project, budget: Budget) -> Iterator[Repair]:
    """Single changes with which everything fits, the least trouble first; each was tried."""
    workings = derive(project)
    grid = read_grid(project, workings)
    yield from _clearance(project, budget)
    yield from _line_offset(project, grid, budget)
    yield from _least(_more_rows(project, grid, workings), budget)
    yield from _least(_more_drawers(project), budget)
    yield from _least(_more_bays(project, grid, workings), budget)
    yield from _unlocked(project, budget)
    yield from _left_out(project, grid, budget)


def _least(changes: Sequence[Make], budget: Budget) -> Iterator[Repair]:
    """The first of ever larger changes that works, where a larger one works whenever a smaller one does."""
    if not changes or not fits(changes[-1](len(changes)).project, budget):
        return
    low, high = 0, len(changes) - 1
    while low < high:
        middle = (low + high) // 2
        if fits(changes[middle](middle + 1).project, budget):
            high = middle
        else:
            low = middle + 1
    yield changes[low](low + 1)


def _clearance(project: Project, budget: Budget) -> Iterator[Repair]:
    now = project.construction.drawers.clearance_mm
    values = sorted((value for value in _typed(project, now) if value < now), reverse=True)

    def make(step: int) -> Repair:
        value = values[step - 1]
        drawers = project.construction.drawers.replace(clearance_mm=value)
        changed = project.replace(construction=project.construction.replace(drawers=drawers))
        return Repair(f"lower the clearance from {_mm(project, now)} to {_mm(project, value)}", changed)

    yield from _least([make] * len(values), budget)


def _line_offset(project: Project, grid: Grid, budget: Budget) -> Iterator[Repair]:
    now = project.construction.runners.line_offset_mm
    rows = most_rows(project, grid)
    seen = {_signature(grid, rows)}
    for value in sorted(_typed(project, WIDEST_OFFSET_MM), key=lambda v: (abs(v - now), v)):
        runners = project.construction.runners.replace(line_offset_mm=value)
        changed = project.replace(construction=project.construction.replace(runners=runners))
        signature = _signature(read_grid(changed), rows)
        if signature in seen:
            continue
        seen.add(signature)
        if fits(changed, budget):
            yield Repair(
                f"put the runner line at {_mm(project, value)} over the drawer's lower edge instead of "
                f"{_mm(project, now)}",
                changed,
            )
            return


def _typed(project: Project, most_mm: float) -> list[float]:
    """The lengths up to `most_mm` that a person would type: whole mm, or 1/32 inches, which are shown as they are."""
    step = Fraction(1) if project.unit is LengthUnit.MILLIMETRE else INCH_MM / 32
    return [float(number * step) for number in range(floor(most_mm / step + 1e-9) + 1)]


def _signature(grid: Grid, rows: int) -> tuple[int, ...]:
    return (grid.lowest, *(grid.highest(size_id, rows) for size_id in sorted(grid.sizes)))


def _more_rows(project: Project, grid: Grid, workings: Workings) -> list[Make]:
    fixed = project.limits.upright_rows
    if fixed is not None:

        def fix(step: int) -> Repair:
            changed = project.replace(limits=project.limits.replace(upright_rows=fixed + step))
            more = "one more row" if step == 1 else f"{step} more rows"
            return Repair(f"give the uprights {more} ({fixed + step})", changed)

        return [fix] * min(MOST_STEPS, grid.rows_that_fit - fixed)

    def height_of(rows: int) -> float:
        return grid.floor_mm + grid.upright_mm(rows) + workings.value("top_thickness")

    def raise_limit(step: int) -> Repair:
        rows = grid.rows_that_fit + step
        height = shown_up(height_of(rows), project.unit)
        changed = project.replace(space=project.space.replace(height_limit_mm=height))
        return Repair(f"allow {_mm(project, height)} of height, for {rows} rows", changed)

    steps = range(1, min(MOST_STEPS, MOST_ROWS - grid.rows_that_fit) + 1)
    highest = HIGHEST_LIMIT_MM - 1.0  # what is shown may be a little more
    return [raise_limit for step in steps if height_of(grid.rows_that_fit + step) <= highest]


def _more_drawers(project: Project) -> list[Make]:
    now = project.limits.drawers_per_bay
    if now is None:
        return []

    def make(step: int) -> Repair:
        changed = project.replace(limits=project.limits.replace(drawers_per_bay=now + step))
        more = "one more drawer" if step == 1 else f"{step} more drawers"
        return Repair(f"allow {more} in a bay ({now + step})", changed)

    return [make] * min(MOST_STEPS, MOST_ROWS - now)


def _more_bays(project: Project, grid: Grid, workings: Workings) -> list[Make]:
    fixed = project.limits.bay_count
    if fixed is not None:

        def fix(step: int) -> Repair:
            changed = project.replace(limits=project.limits.replace(bay_count=fixed + step))
            return Repair(f"take {'one more bay' if step == 1 else f'{step} more bays'} ({fixed + step})", changed)

        return [fix] * min(MOST_STEPS, grid.bays_that_fit - fixed)

    pitch = workings.value("bay_pitch")
    upright = 0.0 if workings.value("own_uprights") else workings.value("upright_thickness")
    around = project.space.length_mm - workings.value("room_for_run")

    def length_of(bays: int) -> float:
        return around + bays * pitch + upright

    def lengthen(step: int) -> Repair:
        bays = grid.bays_that_fit + step
        length = shown_up(length_of(bays), project.unit)
        changed = project.replace(space=project.space.replace(length_mm=length))
        return Repair(f"allow {_mm(project, length)} of wall, for {bays} bays", changed)

    steps = range(1, min(MOST_STEPS, MOST_BAYS - grid.bays_that_fit) + 1)
    longest = LONGEST_WALL_MM - 1.0  # what is shown may be a little more
    return [lengthen for step in steps if length_of(grid.bays_that_fit + step) <= longest]


def _unlocked(project: Project, budget: Budget) -> Iterator[Repair]:
    for p in project.arrangement.placements:
        if p.lock is Lock.NONE:
            continue
        others = tuple(q if q.box_id != p.box_id else q.replace(lock=Lock.NONE) for q in project.arrangement.placements)
        changed = project.replace(arrangement=project.arrangement.replace(placements=others))
        if fits(changed, budget):
            yield Repair(f"unlock “{project.box(p.box_id).label}”", changed)
            return


def _left_out(project: Project, grid: Grid, budget: Budget) -> Iterator[Repair]:
    """The box of the fewest rows without which the rest fits."""
    tried: set[str] = set()
    locked = {p.box_id for p in project.arrangement.placements if p.lock is not Lock.NONE}
    for box in sorted(project.boxes, key=lambda b: grid.sizes[b.size_id].rows):
        if box.size_id in tried or box.id in locked:
            continue
        tried.add(box.size_id)
        changed = _without(project, box.id)
        if fits(changed, budget):
            yield Repair(f"leave out “{box.label}”", changed)
            return


def _without(project: Project, box_id: str) -> Project:
    placements = tuple(p for p in project.arrangement.placements if p.box_id != box_id)
    arrangement = Arrangement(
        bay_count=project.arrangement.bay_count, upright_rows=project.arrangement.upright_rows, placements=placements
    )
    return project.replace(boxes=tuple(b for b in project.boxes if b.id != box_id), arrangement=arrangement)


def _mm(project: Project, length_mm: float) -> str:
    return format_length(length_mm, project.unit)
