"""Whether what is locked can stay at all: each locked box by itself, and any two of them against each other."""

from collections import defaultdict
from itertools import pairwise

from baywright.model.arrangement import Lock, Placement
from baywright.model.plan import Conflict, LimitKind
from baywright.model.project import Project
from baywright.planner.grid import Grid


def lock_conflicts(project: Project, grid: Grid, bays: int, rows: int) -> tuple[Conflict, ...]:
    """The clashes of locks in a run of at most that many bays and rows."""
    locked = [p for p in project.arrangement.placements if p.lock is not Lock.NONE]
    found = [c for p in locked if (c := _alone(project, grid, p, bays, rows)) is not None]
    by_bay: dict[int, list[Placement]] = defaultdict(list)
    for p in locked:
        by_bay[p.bay].append(p)
    for bay, here in sorted(by_bay.items()):
        pinned = sorted((p for p in here if p.lock is Lock.DRAWER), key=lambda p: (p.row, p.box_id))
        for lower, upper in pairwise(pinned):
            if (clash := _pair(project, grid, lower, upper)) is not None:
                found.append(clash)
        limit = project.limits.drawers_per_bay
        if limit is not None and len(here) > limit:
            found.append(_too_many(bay, here, limit))
    return tuple(found)


def _alone(project: Project, grid: Grid, p: Placement, bays: int, rows: int) -> Conflict | None:
    box = project.box(p.box_id)
    name, mend = f"“{box.label}” is locked", "Unlock the box."
    if p.bay >= bays:
        there = "there is only 1 bay" if bays == 1 else f"there are only {bays} bays"
        return Conflict(
            kind=LimitKind.LOCK, message=f"{name} in bay {p.bay + 1}; {there}.", mend=mend,
            box_ids=(box.id,), needed=p.bay + 1, available=bays, unit="bays",
        )  # fmt: skip
    if p.lock is Lock.BAY:
        return None
    at = f"{name} at row {p.row + 1} of bay {p.bay + 1}"
    if p.row < grid.lowest:
        return Conflict(
            kind=LimitKind.LOCK, box_ids=(box.id,), mend=mend,
            message=f"{at}; the lowest row a drawer can use is {grid.lowest + 1}, or it would meet the base.",
        )  # fmt: skip
    highest = grid.highest(box.size_id, rows)
    if p.row > highest:
        reach = f"the highest row for its size is {highest + 1}" if highest >= grid.lowest else "it fits at no row"
        return Conflict(
            kind=LimitKind.LOCK, box_ids=(box.id,), mend=mend,
            message=f"{at}; with {rows} rows {reach}, or it would meet the top.",
        )  # fmt: skip
    return None


def _pair(project: Project, grid: Grid, lower: Placement, upper: Placement) -> Conflict | None:
    first, second = project.box(lower.box_id), project.box(upper.box_id)
    rows = grid.sizes[first.size_id].rows
    if lower.row + rows <= upper.row:
        return None
    where = (
        f"both locked at row {lower.row + 1} of bay {lower.bay + 1}"
        if lower.row == upper.row
        else f"locked at rows {lower.row + 1} and {upper.row + 1} of bay {lower.bay + 1}"
    )
    there = upper.row - lower.row
    return Conflict(
        kind=LimitKind.LOCK,
        message=f"“{first.label}” and “{second.label}” are {where}; “{first.label}” takes {rows} "
        f"row{'s' if rows != 1 else ''}, {there if there else 'none'} {'is' if there == 1 else 'are'} between them.",
        mend=f"Unlock “{second.label}” or “{first.label}”.",
        box_ids=(first.id, second.id), needed=rows, available=there, unit="rows",
    )  # fmt: skip


def _too_many(bay: int, here: list[Placement], limit: int) -> Conflict:
    return Conflict(
        kind=LimitKind.LOCK,
        message=f"{len(here)} boxes are locked in bay {bay + 1}; a bay may have {limit} drawer{'s' * (limit != 1)}.",
        mend="Unlock one of them, or allow more drawers in a bay.",
        box_ids=tuple(p.box_id for p in here), needed=len(here), available=limit, unit="drawers",
    )  # fmt: skip
