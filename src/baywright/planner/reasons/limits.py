"""The limits that the owner set, each with its words, and the document without some of them.

Laws: a limit is named by the path of its field; only limits that are set are listed; leaving out more limits never
makes a plan impossible (what replaces a limit left out is ample: more wall, height or rows than the boxes can use).
They stand in the order in which they are left out when the few that clash are sought, so that what remains is what
tells most: single wishes and locks first, wall and height last.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from baywright.model.arrangement import Lock
from baywright.model.length import format_length
from baywright.model.plan import LimitKind
from baywright.model.project import Project
from baywright.planner.reasons.question import Reading

WALL = "space.length_mm"
HEIGHT = "space.height_limit_mm"
DEPTH = "space.depth_mm"
CEILING = "space.ceiling"
BAYS = "limits.bay_count"
ROWS = "limits.upright_rows"
DRAWERS = "limits.drawers_per_bay"
WIDTH = "limits.bay_box_width_mm"
WORKTOP_LEAST = "limits.worktop_least_mm"
WORKTOP_MOST = "limits.worktop_most_mm"
SPARE = "limits.spare_rows"
SHELF = "limits.shelf_bay_clear_width_mm"
RUNNER = "construction.runners.length_mm"
BUILT = "built"
LOCKS = "arrangement."
"""What the paths of all locks begin with."""


def lock_path(box_id: str) -> str:
    """The path of a box's lock."""
    return f"arrangement.placements[{box_id}].lock"


def status_path(box_id: str) -> str:
    """The path of a box's status, for the limit that it is to have a drawer here."""
    return f"boxes[{box_id}].status"


def zone_path(zone_id: str) -> str:
    """The path of a zone of the wall."""
    return f"space.zones[{zone_id}]"


def bay_path(bay: int, field: str) -> str:
    """The path of what is wished for a bay (from 0)."""
    return f"limits.bays[{bay}].{field}"


@dataclass(frozen=True)
class Limit:
    """One limit: the path of its field, its kind, and its name in a sentence: “the height limit of 1200 mm”."""

    path: str
    kind: LimitKind
    words: str
    box_id: str = ""
    """The box that it is about, if it is about one."""


def limits_of(reading: Reading) -> tuple[Limit, ...]:
    """All limits that are set in a document, in the order in which they are left out."""
    project = reading.project
    return (
        *_locks(project),
        *_wishes(project),
        *_surroundings(project),
        *_numbers(reading),
    )


def _locks(project: Project) -> Iterator[Limit]:
    placed = {box.id for box in project.boxes_to_place}
    for p in project.arrangement.placements:
        if p.lock is not Lock.NONE and p.box_id in placed:
            where = f"in bay {p.bay + 1}" if p.lock is Lock.BAY else f"at row {p.row + 1} of bay {p.bay + 1}"
            words = f"“{project.box(p.box_id).label}” locked {where}"
            yield Limit(lock_path(p.box_id), LimitKind.LOCK, words, p.box_id)
    if project.built is not None:
        bays = [str(bay + 1) for bay in project.built.bays]
        words = f"bay {bays[0]} as built" if len(bays) == 1 else f"bays {', '.join(bays[:-1])} and {bays[-1]} as built"
        yield Limit(BUILT, LimitKind.BUILT, words)


def _wishes(project: Project) -> Iterator[Limit]:
    limits, unit = project.limits, project.unit
    for bay, wish in enumerate(limits.bays):
        if wish.box_width_mm is not None:
            words = f"bay {bay + 1} made for boxes {format_length(wish.box_width_mm, unit)} wide"
            yield Limit(bay_path(bay, "box_width_mm"), LimitKind.BOX_WIDTH, words)
        if wish.rows is not None:
            yield Limit(bay_path(bay, "rows"), LimitKind.HEIGHT, f"bay {bay + 1} with {count(wish.rows, 'row')}")
        if wish.drawers is not None:
            words = f"at most {count(wish.drawers, 'drawer')} in bay {bay + 1}"
            yield Limit(bay_path(bay, "drawers"), LimitKind.DRAWERS_PER_BAY, words)
    if limits.spare_rows:
        yield Limit(SPARE, LimitKind.SPARE_ROWS, f"{count(limits.spare_rows, 'row')} to stay free")
    if limits.shelf_bay and limits.shelf_bay_clear_width_mm is not None:
        words = f"a shelf bay {format_length(limits.shelf_bay_clear_width_mm, unit)} wide"
        yield Limit(SHELF, LimitKind.SHELF_BAY, words)


def _surroundings(project: Project) -> Iterator[Limit]:
    for zone in project.space.zones:
        yield Limit(zone_path(zone.id), LimitKind.ZONE, f"the zone “{zone.label}”")
    if project.space.ceiling:
        yield Limit(CEILING, LimitKind.ZONE, "the sloping ceiling")
    runner = project.construction.runners.length_mm
    if runner is not None:
        yield Limit(RUNNER, LimitKind.DEPTH, f"runners {format_length(runner, project.unit)} long")
    words = f"the depth of {format_length(project.space.depth_mm, project.unit)}"
    yield Limit(DEPTH, LimitKind.DEPTH, words)


def _numbers(reading: Reading) -> Iterator[Limit]:
    project, grid = reading.project, reading.grid
    limits, space, unit = project.limits, project.space, project.unit
    if limits.bay_box_width_mm is not None:
        words = f"bays made for boxes {format_length(limits.bay_box_width_mm, unit)} wide"
        yield Limit(WIDTH, LimitKind.BOX_WIDTH, words)
    if limits.worktop_least_mm is not None:
        words = f"a worktop at least {format_length(limits.worktop_least_mm, unit)} high"
        yield Limit(WORKTOP_LEAST, LimitKind.WORKTOP, words)
    if limits.worktop_most_mm is not None:
        words = f"a worktop at most {format_length(limits.worktop_most_mm, unit)} high"
        yield Limit(WORKTOP_MOST, LimitKind.WORKTOP, words)
    if limits.drawers_per_bay is not None:
        words = f"at most {count(limits.drawers_per_bay, 'drawer')} in a bay"
        yield Limit(DRAWERS, LimitKind.DRAWERS_PER_BAY, words)
    if limits.upright_rows is not None:
        yield Limit(ROWS, LimitKind.HEIGHT, f"{count(limits.upright_rows, 'row')} fixed for the uprights")
    if limits.bay_count is not None:
        yield Limit(BAYS, LimitKind.BAY_COUNT, f"{count(limits.bay_count, 'bay')} fixed")
    height = format_length(space.height_limit_mm, unit)
    rows = count(grid.rows_that_fit, "row")
    yield Limit(HEIGHT, LimitKind.HEIGHT, f"the height limit of {height}, which allows {rows}")
    wall = format_length(space.length_mm, unit)
    bays = count(grid.bays_that_fit, "bay")
    yield Limit(WALL, LimitKind.WALL_LENGTH, f"the wall of {wall}, which holds {bays}")


def status_limits(project: Project, box_ids: tuple[str, ...]) -> tuple[Limit, ...]:
    """That each of these boxes is to have a drawer here, as limits."""
    return tuple(
        Limit(status_path(box_id), LimitKind.PLACE, f"a drawer for “{project.box(box_id).label}”", box_id)
        for box_id in box_ids
    )


def count(number: int, noun: str) -> str:
    """“1 row”, “2 rows”."""
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"
