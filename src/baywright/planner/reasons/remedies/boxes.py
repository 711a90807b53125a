"""Changes about boxes: more room in their drawers, turned or shared drawers, unlocked, kept elsewhere."""

from collections.abc import Collection, Iterator
from dataclasses import replace
from itertools import count

from baywright.model.arrangement import Lock, Placement
from baywright.model.inventory import Box, BoxSize, BoxStatus, Use
from baywright.model.project import Project
from baywright.model.repair import Repair
from baywright.planner.framing.fitting import most_together
from baywright.planner.framing.grid import TOLERANCE, Grid
from baywright.planner.reasons import limits as paths
from baywright.planner.reasons.question import Reading
from baywright.planner.reasons.remedies.ladder import Kind, Lengths, choices, single
from baywright.planner.reasons.remedies.weight import Weight

WIDEST_OFFSET_MM = 64.0
"""Line offsets are tried up to this."""
MOST_UNLOCKED = 6
"""So many locks are offered that alone would do."""
MOST_SHARING = 3
MOST_TOLD_APART = 100
"""Of more boxes, those of one size count as alike even where drawers may be shared."""
_USE = {Use.DAILY: 2.0, Use.WEEKLY: 1.0, Use.SELDOM: 0.0}


def box_changes(reading: Reading, lengths: Lengths, common: Collection[str], named: Collection[str]) -> Iterator[Kind]:
    """All changes about boxes. `common` are the paths of limits that are part of every clash (of locks only such are
    undone), `named` of those that are part of any.
    """
    project = reading.project
    now = project.construction.drawers.clearance_mm
    yield lengths.downwards(
        "clearance", "construction.drawers.clearance_mm", now, 0.0, Weight.CLEARANCE_MM,
        lambda mm: f"Lower the clearance from {lengths.shown(now)} to {lengths.shown(mm)}.",
    )  # fmt: skip
    yield choices("line offset", None, list(_line_offsets(reading, lengths)))
    yield choices("turning", None, list(_turned(project)))
    yield choices("sharing", None, list(_shared(project)))
    yield choices("lock", None, list(_unlocked(project, common)), MOST_UNLOCKED)
    yield choices("elsewhere", None, list(_elsewhere(project, reading.grid, named)))


def _line_offsets(reading: Reading, lengths: Lengths) -> Iterator[Repair]:
    """Of all line offsets that leave the same rows to the same boxes, the nearest."""
    runners = reading.project.construction.runners
    now, gap = runners.line_offset_mm, runners.gap_under_lowest_mm
    seen = {_signature(reading.grid, reading.rows, gap)}
    for value in lengths.around(now, WIDEST_OFFSET_MM):
        signature = _signature(replace(reading.grid, line_offset_mm=value), reading.rows, gap)
        if signature in seen:
            continue
        seen.add(signature)
        text = (
            f"Put the runner line {lengths.shown(value)} over the drawer's lower edge instead of {lengths.shown(now)}."
        )
        yield single(text, "construction.runners.line_offset_mm", value, Weight.LINE_OFFSET_MM.of(value - now))


def _signature(grid: Grid, rows: int, gap_mm: float) -> tuple[int, ...]:
    """What of a line offset matters: the lowest row of any drawer, and the highest of each size."""
    lowest = next(row for row in count() if grid.lower_edge_mm(row) >= gap_mm - TOLERANCE)
    return (lowest, *(grid.highest(size_id, rows) for size_id in sorted(grid.sizes)))


def _used(project: Project) -> list[BoxSize]:
    used = {box.size_id for box in project.boxes_to_place}
    return [size for size in project.box_sizes if size.id in used]


def _turned(project: Project) -> Iterator[Repair]:
    for size in _used(project):
        if not size.may_turn and size.width_mm != size.depth_mm:
            text = f"Let boxes “{size.name}” stand turned by a quarter."
            yield single(text, f"box_sizes[{size.id}].may_turn", value=True, weight=Weight.TURNING.of(0))


def _shared(project: Project) -> Iterator[Repair]:
    for size in _used(project):
        for number in range(size.most_abreast + 1, MOST_SHARING + 1):
            text = f"Let {number} boxes “{size.name}” stand side by side in a drawer."
            yield single(text, f"box_sizes[{size.id}].most_abreast", number, Weight.SHARING_BOX.of(number))
        for number in range(size.most_behind + 1, MOST_SHARING + 1):
            text = f"Let {number} boxes “{size.name}” stand one behind another in a drawer."
            yield single(text, f"box_sizes[{size.id}].most_behind", number, Weight.SHARING_BOX.of(number))


def _unlocked(project: Project, clash: Collection[str]) -> Iterator[Repair]:
    """Each lock of the clash undone: a box free within its bay, or wholly; the lighter box first."""
    for p in project.arrangement.placements:
        if p.lock is Lock.NONE or paths.lock_path(p.box_id) not in clash:
            continue
        box = project.box(p.box_id)
        path, mass = paths.lock_path(box.id), box.loaded_mass_kg or 0.0
        if p.lock is Lock.DRAWER:
            text = f"Let “{box.label}” stand at any row of bay {p.bay + 1}."
            yield single(text, path, Lock.BAY.value, Weight.ROW_UNLOCKED_KG.of(mass))
        yield single(f"Unlock “{box.label}”.", path, Lock.NONE.value, Weight.BAY_UNLOCKED_KG.of(mass))


def _elsewhere(project: Project, grid: Grid, named: Collection[str]) -> Iterator[Repair]:
    """One box kept elsewhere: of all that are alike for planning, the one that is missed least. Where drawers may be
    shared, boxes of other mass are not alike; a box that is itself part of a clash is like no other.
    """
    is_small = len(project.boxes_to_place) <= MOST_TOLD_APART
    shares = is_small and any(most_together(size) > 1 for size in project.box_sizes)
    alike: dict[tuple[object, ...], tuple[float, Box]] = {}
    for box in project.boxes_to_place:
        placement = project.arrangement.placement_of(box.id)
        weight = _missed(box, grid.sizes[box.size_id].rows)
        key = (box.size_id, *_lock_key(placement))
        if shares or paths.status_path(box.id) in named:
            key = (*key, box.id)
        if key not in alike or weight < alike[key][0]:
            alike[key] = (weight, box)
    for weight, box in alike.values():
        text = f"Keep “{box.label}” elsewhere."
        if box.status is BoxStatus.WISHED:
            text = f"Keep no room for “{box.label}”."
        yield single(text, paths.status_path(box.id), BoxStatus.ELSEWHERE.value, weight)


def _missed(box: Box, rows: int) -> float:
    if box.status is BoxStatus.WISHED:
        return Weight.WISHED_BOX_ROW.of(rows)
    return Weight.BOX_ROW.of(rows) + _USE[box.use]


def _lock_key(placement: Placement | None) -> tuple[object, ...]:
    if placement is None or placement.lock is Lock.NONE:
        return ()
    return placement.lock, placement.bay, placement.row if placement.lock is Lock.DRAWER else -1
