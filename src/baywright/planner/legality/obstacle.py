"""What stands in the way before anything is distributed: the wall, the height, the worktop, the depth, what is built.

Each finding is about the document alone, not about where boxes stand, so that the planner and the check of a dragged
arrangement say the same; what no drawer takes is told by `legality.misfit`. Laws: a limit that the run breaks
is named once, with the amounts as an inequality needed > available.
"""

from collections.abc import Callable, Sequence

from baywright.model.length import format_length, shown_up
from baywright.model.plan import Conflict, LimitKind
from baywright.model.project import Project
from baywright.planner.framing.grid import Grid
from baywright.planner.framing.widths import WidthChoice, as_built
from baywright.planner.legality.built import built_conflicts, built_rows, standing_bays
from baywright.planner.legality.misfit import box_obstacles
from baywright.workings import Workings

MEASURED_MM = 1e-6
"""What a height may lack or be over, so that noise in the last digit breaks no limit."""

__all__ = ["box_obstacles", "least_bays", "most_bays", "most_rows", "obstacles", "run_obstacles"]


def obstacles(project: Project, workings: Workings, grid: Grid) -> tuple[Conflict, ...]:
    """All findings about the run and its boxes; empty where nothing stands in the way."""
    bays, rows = project.limits.bay_count or least_bays(project), least_rows(project, grid)
    run = run_obstacles(project, workings, grid, bays, rows)
    return (*run, *box_obstacles(project, workings, grid, most_rows(project, grid)))


def most_rows(project: Project, grid: Grid) -> int:
    """The rows that the run may have at most: as built, the fixed number, else what fits under the height limits."""
    fixed = _fixed_rows(project)
    return grid.rows_that_fit if fixed is None else fixed


def least_rows(project: Project, grid: Grid) -> int:
    """The rows that the run may have at least: as built, the fixed number, else what the worktop's height asks for."""
    return _fixed_rows(project) or grid.least_rows


def most_bays(project: Project, grid: Grid) -> int:
    """The drawer bays there may be at most: the fixed number, else what the wall holds."""
    fixed = project.limits.bay_count
    return grid.bays_that_fit if fixed is None else fixed


def least_bays(project: Project) -> int:
    """So many drawer bays there must be at least: one for every wish and every bay that stands."""
    return max(1, len(project.limits.bays), len(as_built(project)))


def run_obstacles(
    project: Project, workings: Workings, grid: Grid, bays: int, rows: int, widths: Sequence[float] | None = None
) -> tuple[Conflict, ...]:
    """Findings about wall length, height and depth for a run of that many bays and rows; with the narrowest bays that
    may be where `widths` are not given.
    """
    choice = WidthChoice(project, workings)
    widths = widths if widths is not None else choice.narrowest(bays)
    found = (
        *_along(project, workings, grid, widths, choice.bays_that_fit),
        *_upwards(project, grid, workings, rows),
        *_worktop(project, workings, grid, rows),
        *_wishes(project, workings, bays),
        *_runners(project, workings),
    )
    if standing_bays(project) is not None and bays:
        found = (*found, *built_conflicts(project, workings, workings.lay_out(widths, rows), rows))
    return found


def _runners(project: Project, workings: Workings) -> tuple[Conflict, ...]:
    """Whether any runner fits the depth."""
    room = workings.value("runner_room")
    if workings.value("runner_length") > 0:
        return ()
    runners = project.construction.runners
    shortest = runners.length_mm if runners.length_mm is not None else min(runners.lengths_mm)
    length = _length(project)
    which = "runner length that is set" if runners.length_mm is not None else "shortest runner"
    return (Conflict(
        kind=LimitKind.DEPTH,
        message=f"No runner fits: the {which} is {length(shortest)}, the depth leaves room for "
        f"{length(max(0.0, room))}.",
        mend=f"Make the space {_at_least(project)(shortest - room)} deeper, or choose a shorter runner.",
        needed=shortest, available=max(0.0, room), unit="mm",
    ),)  # fmt: skip


def _along(project: Project, workings: Workings, grid: Grid, widths: Sequence[float], fit: int) -> tuple[Conflict, ...]:
    """Whether the wall holds the bays, and beside them the shelf bay that is wished for."""
    wanted, shelf = len(widths), workings.value("shelf_room")
    room = workings.value("room_for_run")
    length = _length(project)
    if not wanted:
        return ()
    needed = workings.lay_out(widths, 1).bays_end_mm
    if needed + shelf <= room + 1e-9:
        return ()
    what = "One bay" if wanted == 1 else f"{wanted} bays"
    verb = "needs" if wanted == 1 else "need"
    around = ", with what must be kept clear," if workings.lay_out(widths, 1).gaps_mm > 0 else ""
    if needed <= room + 1e-9:
        return (Conflict(
            kind=LimitKind.SHELF_BAY,
            message=f"{what} with uprights{around} {verb} {length(needed)} of wall and the shelf bay that is wished "
            f"for {length(shelf)} with its upright, {length(needed + shelf)} together; there are {length(room)}.",
            mend=f"Make the shelf bay {_at_least(project)(needed + shelf - room)} narrower, or give the run so much "
            "more wall.",
            needed=needed + shelf, available=room, unit="mm",
        ),)  # fmt: skip
    holds = "none" if fit == 0 else str(fit)
    mend = f"Give the run {_at_least(project)(needed + shelf - room)} more wall"
    if fit:
        mend += f", or have {fit} bay{'s' * (fit != 1)}"
    return (Conflict(
        kind=LimitKind.WALL_LENGTH if fit == 0 else LimitKind.BAY_COUNT,
        message=f"{what} with uprights{around} {verb} {length(needed)} of wall; "
        f"there are {length(max(0.0, room))}, which hold {holds}.",
        mend=mend + ".", needed=needed, available=max(0.0, room), unit="mm",
    ),)  # fmt: skip


def _upwards(project: Project, grid: Grid, workings: Workings, wanted: int) -> tuple[Conflict, ...]:
    """Whether uprights of so many rows stay under the height limit."""
    allowed = grid.rows_under_limit
    if wanted <= allowed or (_fixed_rows(project) is None and wanted == grid.least_rows > 1):
        return ()  # rows that the worktop asks for are told of with it
    needed, limit = run_height(workings, grid, wanted), workings.value("height_limit")
    what = "Uprights with one row" if wanted == 1 else f"Uprights with {wanted} rows"
    mend = f"Raise the height limit by {_at_least(project)(needed - limit)}"
    if allowed:
        mend += f", or have {allowed} rows"
    return (Conflict(
        kind=LimitKind.HEIGHT,
        message=f"{what} make a run {_length(project)(needed)} high; the height limit is {_length(project)(limit)}, "
        f"which allows {allowed} rows.",
        mend=mend + ".", needed=needed, available=limit, unit="mm",
    ),)  # fmt: skip


def _worktop(project: Project, workings: Workings, grid: Grid, rows: int) -> tuple[Conflict, ...]:
    """Whether the top's upper side is as high as is wished in a run of so many rows."""
    limits, length = project.limits, _length(project)
    least, most, limit = limits.worktop_least_mm, limits.worktop_most_mm, workings.value("height_limit")
    height = run_height(workings, grid, rows)
    with_rows = f"With {rows} row{'s' * (rows != 1)} the worktop is {length(height)} high"
    if least is not None and height < least - MEASURED_MM:
        return (Conflict(
            kind=LimitKind.WORKTOP, message=f"{with_rows}; at least {length(least)} are wished for.",
            mend="Have more rows, or allow a lower worktop.", needed=least, available=height, unit="mm",
        ),)  # fmt: skip
    is_least = _fixed_rows(project) is None and rows == grid.least_rows
    if most is not None and height > most + MEASURED_MM:
        why = f", and one row less gives less than {length(least)}" if is_least and rows > 1 and least else ""
        return (Conflict(
            kind=LimitKind.WORKTOP, message=f"{with_rows}; at most {length(most)} are wished for{why}.",
            mend=f"Allow a worktop {_at_least(project)(height)} high{'' if is_least else ', or have fewer rows'}.",
            needed=height, available=most, unit="mm",
        ),)  # fmt: skip
    if is_least and rows > max(1, grid.rows_under_limit) and least is not None:
        return (Conflict(
            kind=LimitKind.WORKTOP,
            message=f"A worktop at least {length(least)} high needs {rows} rows and is {length(height)} high; the "
            f"height limit is {length(limit)}.",
            mend=f"Raise the height limit by {_at_least(project)(height - limit)}, or allow a lower worktop.",
            needed=height, available=limit, unit="mm",
        ),)  # fmt: skip
    return ()


def _fixed_rows(project: Project) -> int | None:
    return built_rows(project) or project.limits.upright_rows


def _wishes(project: Project, workings: Workings, bays: int) -> tuple[Conflict, ...]:
    """Bays that are wished higher than the height limit, or that there are not enough bays for."""
    limit, length = workings.value("height_limit"), _length(project)
    around = workings.value("base_upper_height") + workings.value("top_thickness")
    found = []
    for bay, wish in enumerate(project.limits.bays):
        if wish.rows is None:
            continue
        height = around + workings.upright_height(wish.rows)
        if height > limit + MEASURED_MM:
            found.append(Conflict(
                kind=LimitKind.HEIGHT,
                message=f"Bay {bay + 1} with {wish.rows} rows is {length(height)} high; the height limit is "
                f"{length(limit)}.",
                mend=f"Give bay {bay + 1} fewer rows, or raise the height limit by "
                f"{_at_least(project)(height - limit)}.",
                needed=height, available=limit, unit="mm",
            ))  # fmt: skip
    if bays < len(project.limits.bays):
        wishes = len(project.limits.bays)
        found.append(Conflict(
            kind=LimitKind.BAY_COUNT,
            message=f"There are wishes for {wishes} bays, but {bays} in the run.",
            mend="Plan again, or leave out the wishes for further bays.",
            needed=wishes, available=bays, unit="bays",
        ))  # fmt: skip
    return tuple(found)


def run_height(workings: Workings, grid: Grid, rows: int) -> float:
    """Height of a run of so many rows from the floor to the top's upper side, in mm."""
    return grid.floor_mm + grid.upright_mm(rows) + workings.value("top_thickness")


def _length(project: Project) -> Callable[[float], str]:
    return lambda length_mm: format_length(length_mm, project.unit)


def _at_least(project: Project) -> Callable[[float], str]:
    """Shows a length that something must have: what is shown can be typed and is enough."""
    return lambda length_mm: format_length(shown_up(length_mm, project.unit), project.unit)
