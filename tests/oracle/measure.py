"""Measures an arrangement in millimetres from the project document alone; shares no code with planner or workings.

What a drawer may hold is measured in `tests.oracle.drawer`, where bays stand in `tests.oracle.wall`; here a rule goes
up every bay and along the wall.
"""

from collections.abc import Iterable

from baywright.model.arrangement import Lock
from baywright.model.inventory import BoxStatus
from baywright.model.project import Project
from tests.oracle.drawer import drawer_faults, lower_edge_mm, need_mm, rows_taken, standing
from tests.oracle.wall import TINY_MM, Bay, bays, beyond_mm, first_row_mm, run_height_mm, shelf_mm, upright_mm

__all__ = ["TINY_MM", "broken_locks", "faults", "first_row_mm", "free_pieces", "spare"]


def faults(project: Project) -> list[str]:
    """Everything that would go wrong in the workshop with the present arrangement, every box placed or not."""
    plan = project.arrangement
    found = _unplaced(project)
    if not plan.bay_count:
        return [*found, "no bays"]
    standing_bays = bays(project)
    found += shape_faults(project, standing_bays)
    for bay in standing_bays:
        found += _bay_faults(project, bay)
    if any(not 0 <= p.bay < plan.bay_count for p in plan.placements):
        found.append("a bay that is not there")
    if spare(project, standing_bays) < project.limits.spare_rows:
        found.append(f"{spare(project, standing_bays)} rows to spare")
    return found


def _unplaced(project: Project) -> list[str]:
    wanted = {box.id for box in project.boxes if box.status is not BoxStatus.ELSEWHERE}
    placed = {p.box_id for p in project.arrangement.placements}
    return [] if placed == wanted else [f"without a drawer: {sorted(wanted - placed)}, with: {sorted(placed - wanted)}"]


def shape_faults(project: Project, standing_bays: list[Bay]) -> list[str]:
    """What is wrong with the run, whatever stands in it: numbers of bays and rows, heights, the wall, what is built."""
    return _number_faults(project) + _wall_faults(project, standing_bays) + _built_faults(project, standing_bays)


def _number_faults(project: Project) -> list[str]:
    """Numbers of bays and rows, heights."""
    plan, limits = project.arrangement, project.limits
    height = run_height_mm(project, plan.upright_rows)
    checks = {
        "not the fixed number of bays": limits.bay_count not in (None, plan.bay_count),
        "not the fixed number of rows": limits.upright_rows not in (None, plan.upright_rows),
        "fewer bays than are wished for": plan.bay_count < len(limits.bays),
        f"{height} mm high": height > project.space.height_limit_mm + TINY_MM,
        "worktop too low": height < (limits.worktop_least_mm or 0) - TINY_MM,
        "worktop too high": limits.worktop_most_mm is not None and height > limits.worktop_most_mm + TINY_MM,
    }
    widths = plan.box_widths_mm
    if widths and len(widths) != plan.bay_count:
        checks["not a width for each bay"] = True
    return [text for text, is_wrong in checks.items() if is_wrong]


def _wall_faults(project: Project, standing_bays: list[Bay]) -> list[str]:
    end = project.space.length_mm - beyond_mm(project)[1] - shelf_mm(project)
    found = []
    if standing_bays[-1].right_mm > end + TINY_MM:
        found.append(f"ends at {standing_bays[-1].right_mm} mm, the wall at {end} mm")
    for bay in standing_bays:
        wish = project.limits.wish(bay.number)
        if wish.box_width_mm is not None and abs(bay.box_width_mm - wish.box_width_mm) > TINY_MM:
            found.append(f"bay {bay.number}: {bay.box_width_mm} mm, wished {wish.box_width_mm}")
        height = run_height_mm(project, bay.rows)
        if bay.rows > 0 and height > project.space.height_limit_mm + TINY_MM:
            found.append(f"bay {bay.number}: {height} mm high")
    return found


def _bay_faults(project: Project, bay: Bay) -> list[str]:
    """Walks up one bay with a rule: every drawer's lower edge against what stands under it."""
    found = []
    drawers = [(row, boxes) for (number, row), boxes in project.arrangement.drawers.items() if number == bay.number]
    limit = project.limits.drawers_in(bay.number)
    if limit is not None and len(drawers) > limit:
        found.append(f"bay {bay.number}: {len(drawers)} drawers, allowed {limit}")
    free_from = project.construction.runners.gap_under_lowest_mm
    for row, boxes in drawers:
        name = "+".join(p.box_id for p in boxes)
        if row >= bay.rows:
            found.append(f"{name}: no hole row {row}")
        edge = lower_edge_mm(project, row)
        if edge < free_from - TINY_MM:
            found.append(f"{name}: at {edge} mm, free from {free_from} mm")
        free_from = edge + max(need_mm(project, standing(project, p).high_mm) for p in boxes)
        found += drawer_faults(project, bay, boxes)
    if drawers and free_from > upright_mm(project, bay.rows) + TINY_MM:
        found.append(f"bay {bay.number}: reaches {free_from} mm under a top at {upright_mm(project, bay.rows)} mm")
    return found


def usable(project: Project, rows: int) -> range:
    """The rows of a bay that whole openings can use: from the lowest drawer's to the last whole one under the top."""
    lowest = 0
    while lower_edge_mm(project, lowest) < project.construction.runners.gap_under_lowest_mm - TINY_MM:
        lowest += 1
    end = lowest
    while lower_edge_mm(project, end + 1) <= upright_mm(project, rows) + TINY_MM:
        end += 1
    return range(lowest, end if rows > 0 else lowest)


def _free_rows(project: Project, bay: Bay) -> list[bool]:
    """For each usable row of a bay whether it is free."""
    free = dict.fromkeys(usable(project, bay.rows), True)
    for (number, row), boxes in project.arrangement.drawers.items():
        if number == bay.number:
            rows = rows_taken(project, max(standing(project, p).high_mm for p in boxes))
            free.update({taken: False for taken in range(row, row + rows) if taken in free})
    return list(free.values())


def spare(project: Project, standing_bays: Iterable[Bay]) -> int:
    """The usable rows of all bays that no drawer takes."""
    return sum(sum(_free_rows(project, bay)) for bay in standing_bays)


def free_pieces(project: Project) -> list[int]:
    """For each bay of the arrangement the longest stretch of free usable rows."""
    found = []
    for bay in bays(project):
        text = "".join("-" if free else " " for free in _free_rows(project, bay))
        found.append(max((len(piece) for piece in text.split()), default=0))
    return found


def _built_faults(project: Project, standing_bays: list[Bay]) -> list[str]:
    """Bays that stand keep their place, their width and their rows."""
    if project.built is None:
        return []
    before = {bay.number: bay for bay in bays(project.built.project)}
    now = {bay.number: bay for bay in standing_bays}
    found = []
    for number in project.built.bays:
        old, new = before[number], now.get(number)
        if new is None:
            found.append(f"bay {number} stands, but is no longer there")
        elif abs(old.left_mm - new.left_mm) > TINY_MM or abs(old.right_mm - new.right_mm) > TINY_MM:
            found.append(f"bay {number} stands elsewhere")
        elif old.rows != new.rows:
            found.append(f"bay {number} has {old.rows} rows as built, {new.rows} now")
    return found


def broken_locks(before: Project, after: Project) -> list[str]:
    """Boxes that were locked before and do not stand there any more."""
    found = []
    for p in before.arrangement.placements:
        now = after.arrangement.placement_of(p.box_id)
        if before.box(p.box_id).status is BoxStatus.ELSEWHERE or p.lock is Lock.NONE:
            continue
        if now is None or now.bay != p.bay or (p.lock is Lock.DRAWER and now.row != p.row):
            found.append(f"{p.box_id} was locked at {p.bay}, {p.row}; now {now}")
        elif now.lock is not p.lock:
            found.append(f"{p.box_id} lost its lock")
    return found
