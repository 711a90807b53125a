"""Changes of the run's shape: rows and height, drawers, bays and wall, shared uprights, depth, widths."""

from collections.abc import Iterator

from baywright.model.change import changed
from baywright.model.construction import Uprights
from baywright.model.limits import MOST_BAY_WIDTHS, MOST_ROWS
from baywright.model.project import Project
from baywright.model.repair import Repair
from baywright.model.space import HIGHEST_LIMIT_MM, LONGEST_WALL_MM
from baywright.planner.reasons import limits as paths
from baywright.planner.reasons.limits import count
from baywright.planner.reasons.question import Reading
from baywright.planner.reasons.relaxation import DEEPEST_MM
from baywright.planner.reasons.remedies.ladder import Choices, Kind, Ladder, Lengths, choices, single
from baywright.planner.reasons.remedies.weight import Weight

MOST_STEPS = 40
"""How many rows, drawers or bays more are tried at most."""
MOST_OWN_BAYS = 8
"""In so many bays a number of drawers of their own is tried."""


def shapes(reading: Reading, lengths: Lengths) -> Iterator[Kind]:
    """All changes of the shape."""
    yield from _rows(reading, lengths)
    yield from _drawers(reading)
    yield from _bays(reading, lengths)
    yield from _widths(reading.project, reading, lengths)
    yield from _depth(reading, lengths)


def _rows(reading: Reading, lengths: Lengths) -> Iterator[Kind]:
    project, grid = reading.project, reading.grid
    fixed = project.limits.upright_rows
    if fixed is not None:

        def more(step: int) -> Repair:
            text = f"Give the uprights {_more(step, 'row')} ({fixed + step})."
            return single(text, paths.ROWS, fixed + step, Weight.ROW.of(step))

        yield Ladder("rows", paths.ROWS, max(0, min(MOST_STEPS, grid.rows_that_fit - fixed)), more)
        yield choices("fewer rows", paths.ROWS, _fewer(fixed, grid.rows_that_fit, "row", paths.ROWS, Weight.ROW))
    now = project.space.height_limit_mm

    def raised(height_mm: float) -> str:
        rows = _with(project, paths.HEIGHT, height_mm).grid.rows_that_fit
        return f"Allow {lengths.shown(height_mm)} of height, for {count(rows, 'row')}."

    most = min(HIGHEST_LIMIT_MM, now + MOST_STEPS * grid.pitch_mm)
    yield lengths.upwards("height", paths.HEIGHT, now, most, Weight.HEIGHT_MM, raised, paths.HEIGHT)


def _drawers(reading: Reading) -> Iterator[Kind]:
    project = reading.project
    now = project.limits.drawers_per_bay
    for bay, wish in enumerate(project.limits.bays):
        if wish.drawers is not None:
            path = paths.bay_path(bay, "drawers")
            yield _own_drawers(bay, wish.drawers, path)
    if now is None:
        return
    own = {bay for bay, wish in enumerate(project.limits.bays) if wish.drawers is not None}
    locked = sorted({p.bay for p in project.arrangement.placements if p.lock.value != "none"})
    bays = [bay for bay in dict.fromkeys([*locked, *range(reading.bays)]) if bay not in own and bay < reading.bays]
    for bay in bays[:MOST_OWN_BAYS]:
        yield _own_drawers(bay, now, paths.DRAWERS)

    def more(step: int) -> Repair:
        text = f"Allow {_more(step, 'drawer')} in a bay ({now + step})."
        return single(text, paths.DRAWERS, now + step, Weight.DRAWER_OF_ALL_BAYS.of(step))

    yield Ladder("drawers", paths.DRAWERS, max(0, min(MOST_STEPS, MOST_ROWS - now)), more)


def _own_drawers(bay: int, now: int, limit: str) -> Ladder:
    def more(step: int) -> Repair:
        text = f"Allow {_more(step, 'drawer')} in bay {bay + 1} ({now + step})."
        return single(text, paths.bay_path(bay, "drawers"), now + step, Weight.DRAWER_OF_A_BAY.of(step))

    return Ladder("drawers of a bay", limit, max(0, min(MOST_STEPS, MOST_ROWS - now)), more)


def _bays(reading: Reading, lengths: Lengths) -> Iterator[Kind]:
    project, w = reading.project, reading.workings
    fixed = project.limits.bay_count
    if fixed is not None:

        def more(step: int) -> Repair:
            text = f"Take {_more(step, 'bay')} ({fixed + step})."
            return single(text, paths.BAYS, fixed + step, Weight.BAY.of(step))

        fit = reading.grid.bays_that_fit
        yield Ladder("bays", paths.BAYS, max(0, min(MOST_STEPS, fit - fixed)), more)
        yield choices("fewer bays", paths.BAYS, _fewer(fixed, fit, "bay", paths.BAYS, Weight.BAY))
    now = project.space.length_mm

    def longer(length_mm: float) -> str:
        bays = _with(project, paths.WALL, length_mm).grid.bays_that_fit
        return f"Allow {lengths.shown(length_mm)} of wall, for {count(bays, 'bay')}."

    zones = max((zone.right_mm for zone in project.space.zones if zone.right_mm < LONGEST_WALL_MM), default=0.0)
    most = min(LONGEST_WALL_MM, max(now, zones) + MOST_STEPS * w.value("bay_pitch"))
    yield lengths.upwards("wall", paths.WALL, now, most, Weight.WALL_MM, longer, paths.WALL)
    if project.construction.uprights is Uprights.OWN:
        text = "Let neighbouring bays share the upright between them."
        offer = single(text, "construction.uprights", Uprights.SHARED.value, Weight.SHARED_UPRIGHTS.of(0))
        yield choices("uprights", None, [offer])


def _widths(project: Project, reading: Reading, lengths: Lengths) -> Iterator[Kind]:
    limits = project.limits
    now = reading.workings.value("bay_box_width")
    used = sorted({project.size_of(box).width_mm for box in project.boxes_to_place})
    if limits.bay_box_width_mm is not None:
        offers = [
            single(
                f"Make the bays for boxes {lengths.shown(width)} wide.", paths.WIDTH, width,
                Weight.WIDTH_MM.of(width - now),
            )
            for width in used
            if width != now
        ]  # fmt: skip
        yield choices("width", paths.WIDTH, offers)
    number = len(limits.other_box_widths_mm)
    named = {now, *limits.other_box_widths_mm}
    if number < MOST_BAY_WIDTHS:
        path = f"limits.other_box_widths_mm[{number}]"
        offers = [
            single(
                f"Let some bays be made for boxes {lengths.shown(width)} wide.", path, width,
                Weight.MORE_WIDTHS.of(0),
            )
            for width in used
            if width not in named
        ]  # fmt: skip
        yield choices("more widths", None, offers)


def _depth(reading: Reading, lengths: Lengths) -> Iterator[Kind]:
    project = reading.project
    runners = project.construction.runners
    now = project.space.depth_mm

    def deeper(depth_mm: float) -> str:
        runner = _with(project, paths.DEPTH, depth_mm).workings.value("runner_length")
        return f"Allow {lengths.shown(depth_mm)} of depth, for runners {lengths.shown(runner)} long."

    most = min(DEEPEST_MM, now + max(runners.lengths_mm))
    yield lengths.upwards("depth", paths.DEPTH, now, most, Weight.DEPTH_MM, deeper, paths.DEPTH)
    if runners.length_mm is not None:
        set_now = runners.length_mm
        offers = [
            single(
                f"Take runners {lengths.shown(length)} long.", paths.RUNNER, length,
                Weight.RUNNER_MM.of(length - set_now),
            )
            for length in runners.lengths_mm
            if length != set_now
        ]  # fmt: skip
        yield Choices("runners", paths.RUNNER, choices("", None, offers).offers)


def _with(project: Project, path: str, value: float) -> Reading:
    """The document with one length changed, read anew for the words of a repair."""
    return Reading(changed(project, single("", path, value, 0.0).changes))


def _fewer(now: int, fit: int, noun: str, path: str, weight: Weight) -> list[Repair]:
    """Fewer rows or bays than are fixed, from as many as fit down: for where too many are fixed."""
    numbers = range(min(now - 1, fit), max(0, min(now - 1, fit) - MOST_STEPS), -1)
    return [single(f"Have {count(n, noun)} instead of {now}.", path, n, weight.of(now - n)) for n in numbers]


def _more(step: int, noun: str) -> str:
    return f"one more {noun}" if step == 1 else f"{step} more {noun}s"
