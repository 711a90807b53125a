"""Measures an arrangement in millimetres from the project document alone; shares no code with planner or workings."""

from baywright.model.construction import FirstRowRule, Uprights
from baywright.model.project import Project

TINY_MM = 1e-6


def faults(project: Project) -> list[str]:
    """Everything that would go wrong in the workshop with the present arrangement, every box placed or not."""
    plan, limits = project.arrangement, project.limits
    boards, drawers, runners = (
        project.construction.boards,
        project.construction.drawers,
        project.construction.runners,
    )
    sizes = {size.id: size for size in project.box_sizes}
    size_of = {box.id: sizes[box.size_id] for box in project.boxes}
    found = []
    placed = {p.box_id for p in plan.placements}
    if placed != set(size_of):
        found.append(f"without a drawer: {sorted(set(size_of) - placed)}")
    if limits.bay_count is not None and plan.bay_count != limits.bay_count:
        found.append("not the fixed number of bays")
    if limits.upright_rows is not None and plan.upright_rows != limits.upright_rows:
        found.append("not the fixed number of rows")
    first = first_row_mm(project)
    upright = project.construction.hole_rows.pitch_mm * (plan.upright_rows - 1) + 2 * first
    height = project.construction.standing.height_mm + boards.base_mm + upright + boards.top_mm
    if height > project.space.height_limit_mm + TINY_MM:
        found.append(f"{height} mm high")
    widest = limits.bay_box_width_mm or max(size.width_mm for size in size_of.values())
    clear = widest + 2 * drawers.lateral_play_mm + 2 * boards.drawer_side_mm + 2 * runners.thickness_mm
    own = project.construction.uprights is Uprights.OWN
    posts = 2 * plan.bay_count if own else plan.bay_count + 1
    length = plan.bay_count * clear + posts * boards.upright_mm + 2 * project.construction.top.overhang_side_mm
    if length > project.space.length_mm + TINY_MM:
        found.append(f"{length} mm long")
    for bay in range(plan.bay_count):
        found += _bay_faults(project, bay, first, upright)
    if any(not 0 <= p.bay < plan.bay_count for p in plan.placements):
        found.append("a bay that is not there")
    return found


def first_row_mm(project: Project) -> float:
    rows = project.construction.hole_rows
    if rows.first_row_rule is FirstRowRule.HALF_PITCH:
        return rows.pitch_mm / 2
    if rows.first_row_rule is FirstRowRule.HALF_BASE_THICKNESS:
        return project.construction.boards.base_mm / 2
    return rows.first_row_mm


def _bay_faults(project: Project, bay: int, first: float, upright: float) -> list[str]:
    """Walks up one bay with a rule: every drawer's lower edge against what stands under it."""
    drawers, runners = project.construction.drawers, project.construction.runners
    heights = {size.id: size.height_mm for size in project.box_sizes}
    size_of = {box.id: box.size_id for box in project.boxes}
    stack = sorted((p for p in project.arrangement.placements if p.bay == bay), key=lambda p: p.row)
    found = []
    limit = project.limits.drawers_per_bay
    if limit is not None and len(stack) > limit:
        found.append(f"bay {bay}: {len(stack)} drawers")
    free_from = runners.gap_under_lowest_mm
    for p in stack:
        if p.row >= project.arrangement.upright_rows:
            found.append(f"{p.box_id}: no hole row {p.row}")
        edge = first + project.construction.hole_rows.pitch_mm * p.row - runners.line_offset_mm
        if edge < free_from - TINY_MM:
            found.append(f"{p.box_id}: at {edge} mm, free from {free_from} mm")
        seat = drawers.groove_offset_mm + project.construction.boards.drawer_bottom_mm
        box_top = edge + seat + heights[size_of[p.box_id]] + drawers.clearance_mm
        side_top = edge + drawers.side_height_mm + drawers.gap_over_side_mm
        free_from = max(box_top, side_top)
    if free_from > upright + TINY_MM and stack:
        found.append(f"bay {bay}: reaches {free_from} mm under a top at {upright} mm")
    return found
