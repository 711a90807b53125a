"""What stands in the way before anything is distributed: the wall, the height, the depth, a box that no drawer takes.

Each finding is about the document alone, not about where boxes stand, so that the planner and the check of a dragged
arrangement say the same. Laws: a limit that a box or the run breaks is named once, with all boxes it concerns, and
with the amounts as an inequality needed > available.
"""

from collections import defaultdict
from collections.abc import Callable

from baywright.model.inventory import Box, BoxSize
from baywright.model.length import format_length, shown_up
from baywright.model.limits import MOST_ROWS
from baywright.model.plan import Conflict, LimitKind
from baywright.model.project import Project
from baywright.model.space import HIGHEST_LIMIT_MM
from baywright.planner.grid import TOLERANCE, Grid
from baywright.workings import Workings


def obstacles(project: Project, workings: Workings, grid: Grid) -> tuple[Conflict, ...]:
    """All findings about the run and its boxes; empty where nothing stands in the way."""
    run = run_obstacles(project, workings, grid, project.limits.bay_count or 1, project.limits.upright_rows or 1)
    return (*run, *box_obstacles(project, workings, grid, most_rows(project, grid)))


def most_rows(project: Project, grid: Grid) -> int:
    """The rows an upright may have at most: the fixed number, else what fits under the height limit."""
    fixed = project.limits.upright_rows
    return grid.rows_that_fit if fixed is None else fixed


def most_bays(project: Project, grid: Grid) -> int:
    """The drawer bays there may be at most: the fixed number, else what the wall holds."""
    fixed = project.limits.bay_count
    return grid.bays_that_fit if fixed is None else fixed


def run_obstacles(project: Project, workings: Workings, grid: Grid, bays: int, rows: int) -> tuple[Conflict, ...]:
    """Findings about wall length, height and depth for a run of that many bays and rows."""
    found = (*_along(project, workings, grid, bays), *_upwards(project, workings, grid, rows))
    room = workings.value("runner_room")
    if workings.value("runner_length") <= 0:
        runners = project.construction.runners
        shortest = runners.length_mm if runners.length_mm is not None else min(runners.lengths_mm)
        length = _length(project)
        which = "runner length that is set" if runners.length_mm is not None else "shortest runner"
        depth = shortest - room
        found = (*found, Conflict(
            kind=LimitKind.DEPTH,
            message=f"No runner fits: the {which} is {length(shortest)}, the depth leaves room for "
            f"{length(max(0.0, room))}.",
            mend=f"Make the space {_at_least(project)(depth)} deeper, or choose a shorter runner.",
            needed=shortest, available=max(0.0, room), unit="mm",
        ))  # fmt: skip
    return found


def _along(project: Project, workings: Workings, grid: Grid, wanted: int) -> tuple[Conflict, ...]:
    length = _length(project)
    own = workings.value("own_uprights") > 0
    pitch, upright = workings.value("bay_pitch"), workings.value("upright_thickness")
    room = workings.value("room_for_run")
    if wanted <= grid.bays_that_fit:
        return ()
    needed = wanted * pitch + (0 if own else upright)
    what = "One bay" if wanted == 1 else f"{wanted} bays"
    holds = "none" if grid.bays_that_fit == 0 else str(grid.bays_that_fit)
    mend = f"Give the run {_at_least(project)(needed - room)} more wall"
    if grid.bays_that_fit:
        mend += f", or have {grid.bays_that_fit} bays"
    return (Conflict(
        kind=LimitKind.WALL_LENGTH if grid.bays_that_fit == 0 else LimitKind.BAY_COUNT,
        message=f"{what} with uprights {'needs' if wanted == 1 else 'need'} {length(needed)} of wall; "
        f"there are {length(max(0.0, room))}, which hold {holds}.",
        mend=mend + ".", needed=needed, available=max(0.0, room), unit="mm",
    ),)  # fmt: skip


def _upwards(project: Project, workings: Workings, grid: Grid, wanted: int) -> tuple[Conflict, ...]:
    length = _length(project)
    if wanted <= grid.rows_that_fit:
        return ()
    around = grid.floor_mm + workings.value("top_thickness")
    needed, limit = around + grid.upright_mm(wanted), workings.value("height_limit")
    what = "Uprights with one row" if wanted == 1 else f"Uprights with {wanted} rows"
    mend = f"Raise the height limit by {_at_least(project)(needed - limit)}"
    if grid.rows_that_fit:
        mend += f", or have {grid.rows_that_fit} rows"
    return (Conflict(
        kind=LimitKind.HEIGHT,
        message=f"{what} make a run {length(needed)} high; the height limit is {length(limit)}, "
        f"which allows {grid.rows_that_fit} rows.",
        mend=mend + ".", needed=needed, available=limit, unit="mm",
    ),)  # fmt: skip


def box_obstacles(project: Project, workings: Workings, grid: Grid, rows: int) -> tuple[Conflict, ...]:
    """Findings about boxes that no drawer of the run can take, in uprights of `rows` rows."""
    by_size: dict[str, list[Box]] = defaultdict(list)
    for box in project.boxes:
        by_size[box.size_id].append(box)
    found: list[Conflict] = []
    checks: tuple[Callable[[Project, Workings, BoxSize], Conflict | None], ...] = (_too_wide, _too_deep)
    for size in project.box_sizes:
        if boxes := by_size.get(size.id):
            ids = tuple(box.id for box in boxes)
            found += [c.replace(box_ids=ids) for check in checks if (c := check(project, workings, size)) is not None]
            if (high := _too_high(project, workings, grid, size, rows)) is not None:
                found.append(high.replace(box_ids=ids))
    if 1 <= rows <= grid.lowest and by_size:
        found.append(_no_row(project, grid, rows))
    return (*found, *_too_heavy(project))


def _too_wide(project: Project, workings: Workings, size: BoxSize) -> Conflict | None:
    width = workings.value("bay_box_width")
    if size.width_mm <= width + TOLERANCE:
        return None
    length = _length(project)
    return Conflict(
        kind=LimitKind.BOX_WIDTH,
        message=f"“{size.name}” is {length(size.width_mm)} wide; the bays are made for boxes {length(width)} wide.",
        mend=f"Make the bays for boxes {_at_least(project)(size.width_mm)} wide.",
        needed=size.width_mm, available=width, unit="mm",
    )  # fmt: skip


def _too_deep(project: Project, workings: Workings, size: BoxSize) -> Conflict | None:
    if workings.value("runner_length") <= 0:
        return None  # said once for the whole run
    inside, stop = workings.value("drawer_inside_depth"), workings.value("stop")
    needed = size.depth_mm + stop
    if needed <= inside + TOLERANCE:
        return None
    length = _length(project)
    runner = workings.value("runner_length")
    return Conflict(
        kind=LimitKind.DEPTH,
        message=f"“{size.name}” is {length(size.depth_mm)} deep and needs {length(needed)} in the drawer; with "
        f"{length(runner)} runners there are {length(inside)} inside.",
        mend=f"Take runners of {_at_least(project)(runner + needed - inside)} or more, and make the space deep enough "
        "for them.",
        needed=needed, available=inside, unit="mm",
    )  # fmt: skip


def _too_high(project: Project, workings: Workings, grid: Grid, size: BoxSize, rows: int) -> Conflict | None:
    if rows <= grid.lowest or grid.highest(size.id, rows) >= grid.lowest:
        return None  # uprights without a row for any drawer are told of once, for the whole run
    length = _length(project)
    edge = grid.lower_edge_mm(grid.lowest)
    needed = edge + grid.sizes[size.id].need_mm
    there = grid.upright_mm(rows)
    return Conflict(
        kind=LimitKind.BOX_HEIGHT,
        message=f"“{size.name}” needs {length(needed)} between base and top (lower edge of the lowest drawer "
        f"{length(edge)}, then seat, box and clearance); uprights of {rows} rows give {length(there)}.",
        mend=_mend_height(project, workings, grid, _rows_for(grid, size.id, rows)),
        needed=needed, available=there, unit="mm",
    )  # fmt: skip


def _no_row(project: Project, grid: Grid, rows: int) -> Conflict:
    """The runner line lies so high on the drawers that the uprights have no row for even the lowest of them."""
    length, runners = _length(project), project.construction.runners
    return Conflict(
        kind=LimitKind.CONSTRUCTION,
        message=f"No drawer can be hung: the runner line is {length(runners.line_offset_mm)} over the drawer's lower "
        f"edge and {length(runners.gap_under_lowest_mm)} stay free under the lowest drawer, so its runner comes to row "
        f"{grid.lowest + 1}; the uprights have {rows} {'row' if rows == 1 else 'rows'}.",
        mend="Make the runner line offset or the air under the lowest drawer smaller.",
        needed=grid.lowest + 1, available=rows, unit="rows",
    )  # fmt: skip


def _mend_height(project: Project, workings: Workings, grid: Grid, rows: int) -> str:
    """How to come to uprights of `rows` rows."""
    height = grid.floor_mm + grid.upright_mm(rows) + workings.value("top_thickness")
    if rows > MOST_ROWS or height > HIGHEST_LIMIT_MM:
        return "Make the box or the clearance over it lower: no run may be so high."
    if rows <= grid.rows_that_fit:
        return f"Give the uprights {rows} rows."
    return f"Raise the height limit to {_at_least(project)(height)}, for uprights of {rows} rows."


def _rows_for(grid: Grid, size_id: str, rows: int) -> int:
    while grid.highest(size_id, rows) < grid.lowest:
        rows += 1
    return rows


def _too_heavy(project: Project) -> tuple[Conflict, ...]:
    rated = max(project.construction.runners.load_classes_kg)
    return tuple(
        Conflict(
            kind=LimitKind.LOAD,
            message=f"“{box.label}” has a loaded mass of {box.loaded_mass_kg:g} kg; the strongest runners in the list "
            f"are rated for {rated:g} kg a pair.",
            mend="Make the box lighter, or add a stronger load class that the runners' maker states.",
            box_ids=(box.id,), needed=box.loaded_mass_kg, available=rated, unit="kg",
        )
        for box in project.boxes
        if box.loaded_mass_kg is not None and box.loaded_mass_kg > rated
    )  # fmt: skip


def _length(project: Project) -> Callable[[float], str]:
    return lambda length_mm: format_length(length_mm, project.unit)


def _at_least(project: Project) -> Callable[[float], str]:
    """Shows a length that something must have: what is shown can be typed and is enough."""
    return lambda length_mm: format_length(shown_up(length_mm, project.unit), project.unit)
