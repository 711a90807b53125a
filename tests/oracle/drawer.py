"""One drawer with what stands in it, measured and weighed: width, depth, height, load.

Shares no code with the program's workings, planner or making, only the document.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from baywright.model.arrangement import Placement
from baywright.model.construction import DrawerForm, Fronts
from baywright.model.project import Project
from tests.oracle.wall import TINY_MM, Bay, base_mm, clear_mm, first_row_mm, upright_depth_mm

PLYWOOD_KG_PER_MM3 = 680e-9
"""The board that the program reckons with, told as an assumption in its material list."""


@dataclass(frozen=True)
class Standing:
    """A box as it stands in a drawer: across the front, front to back, and up."""

    box_id: str
    wide_mm: float
    deep_mm: float
    high_mm: float
    kg: float


def standing(project: Project, p: Placement) -> Standing:
    box = project.box(p.box_id)
    size = project.size_of(box)
    wide, deep = (size.depth_mm, size.width_mm) if p.turned else (size.width_mm, size.depth_mm)
    return Standing(p.box_id, wide, deep, size.height_mm, box.loaded_mass_kg or 0.0)


def lower_edge_mm(project: Project, row: int) -> float:
    """A drawer's lower edge over the base, its runners at that row."""
    made = project.construction
    return first_row_mm(project) + made.hole_rows.pitch_mm * row - made.runners.line_offset_mm


def need_mm(project: Project, high_mm: float) -> float:
    """From the drawer's lower edge to where the next thing may begin, with a box so high in it."""
    made = project.construction
    over_box = made.drawers.groove_offset_mm + made.boards.drawer_bottom_mm + high_mm + made.drawers.clearance_mm
    return max(over_box, made.drawers.side_height_mm + made.drawers.gap_over_side_mm)


def rows_taken(project: Project, high_mm: float) -> int:
    """Whole rows of a drawer with a box so high in it."""
    pitch, rows = project.construction.hole_rows.pitch_mm, 1
    while rows * pitch < need_mm(project, high_mm) - TINY_MM:
        rows += 1
    return rows


def runner_mm(project: Project, zone_mm: float) -> float:
    """The longest runner behind which everything stays free; 0 where none is short enough."""
    runners = project.construction.runners
    made = project.construction
    panel = made.boards.front_mm if made.drawers.fronts is Fronts.INSET else 0.0
    room = upright_depth_mm(project) - panel - runners.rear_gap_mm - zone_mm
    there = runners.lengths_mm if runners.length_mm is None else (runners.length_mm,)
    return max((length for length in there if length <= room + TINY_MM), default=0.0)


def zone_mm(project: Project, bay: Bay, row: int, rows: int) -> float:
    """How far what stands out from the wall reaches into the room of a drawer of so many rows."""
    bottom = base_mm(project) + lower_edge_mm(project, row)
    top = bottom + rows * project.construction.hole_rows.pitch_mm
    crossed = [z.depth_mm for z in bay.zones if z.bottom_mm < top - TINY_MM and bottom + TINY_MM < z.top_mm]
    return max(crossed, default=0.0)


def drawer_kg(project: Project, box_width_mm: float, runner: float) -> float:
    """Two sides, two rails between them, a bottom in grooves, a stop on it, and the largest front there can be."""
    boards, made = project.construction.boards, project.construction.drawers
    inside = box_width_mm + 2 * made.lateral_play_mm
    grooves = 2 * made.groove_depth_mm - made.bottom_play_mm
    rail = made.rail_height_mm if made.form is DrawerForm.TRAY else made.side_height_mm
    stop = (inside - 1) * 20 if made.has_box_stop else 0.0
    rim = (2 * runner * made.side_height_mm + 2 * inside * rail + stop) * boards.drawer_side_mm
    deep = max(0.0, runner - 2 * boards.drawer_side_mm)
    bottom = (inside + grooves) * max(0.0, deep + grooves) * boards.drawer_bottom_mm
    return (rim + bottom + _largest_front_mm3(project, box_width_mm)) * PLYWOOD_KG_PER_MM3


def _largest_front_mm3(project: Project, box_width_mm: float) -> float:
    """Before the highest box, in an opening that lacks nothing but a hair for one more drawer over it."""
    made = project.construction
    if made.drawers.fronts is Fronts.NONE:
        return 0.0
    heights = [project.size_of(box).height_mm for box in project.boxes_to_place]
    pitch, lowest = made.hole_rows.pitch_mm, 0
    while lower_edge_mm(project, lowest) < made.runners.gap_under_lowest_mm - TINY_MM:
        lowest += 1
    rows = rows_taken(project, max(heights)) + rows_taken(project, min(heights))
    high = rows * pitch + max(0.0, lower_edge_mm(project, lowest)) - 2 * made.drawers.reveal_mm
    over = 2 * made.boards.upright_mm if made.drawers.fronts is Fronts.OVERLAY else 0.0
    wide = clear_mm(project, box_width_mm) + over - 2 * made.drawers.reveal_mm
    return wide * high * made.boards.front_mm


def drawer_faults(project: Project, bay: Bay, boxes: Sequence[Placement]) -> list[str]:
    """What is wrong with what stands in one drawer of a bay, wherever else boxes stand."""
    inside = [standing(project, p) for p in boxes]
    found = _order_faults(boxes)
    for p in boxes:
        if p.turned and not project.size_of(project.box(p.box_id)).may_turn:
            found.append(f"{p.box_id}: must not be turned")
    zone = zone_mm(project, bay, boxes[0].row, rows_taken(project, max(b.high_mm for b in inside)))
    is_file = any(p.behind for p in boxes)
    return found + content_faults(project, bay.box_width_mm, zone, inside, is_file=is_file)


def _order_faults(boxes: Sequence[Placement]) -> list[str]:
    """Boxes in one drawer stand in a row or in a file, one at each place."""
    places = sorted((p.abreast, p.behind) for p in boxes)
    if places in ([(n, 0) for n in range(len(boxes))], [(0, n) for n in range(len(boxes))]):
        return []
    return [f"{'+'.join(p.box_id for p in boxes)}: neither in a row nor in a file: {places}"]


def content_faults(
    project: Project, box_width_mm: float, zone: float, inside: Sequence[Standing], *, is_file: bool
) -> list[str]:
    """What is wrong with these boxes, in a row or in a file, in a drawer so wide and so far in front of the wall."""
    made, count, name = project.construction, len(inside), "+".join(b.box_id for b in inside)
    runner = runner_mm(project, zone)
    room = runner - 2 * made.boards.drawer_side_mm
    play, stop = made.drawers.lateral_play_mm, made.drawers.stop_mm
    wide, deep = [b.wide_mm for b in inside], [b.deep_mm for b in inside]
    across = max(wide) if is_file else sum(wide) + (count - 1) * play
    along = sum(deep) + (count - 1) * stop if is_file else max(deep)
    found = []
    if across > box_width_mm + TINY_MM:
        found.append(f"{name}: {across} mm across in a bay for {box_width_mm} mm")
    if runner <= 0 or along + stop > room + TINY_MM:
        found.append(f"{name}: {along} mm deep in {room} mm")
    sizes = [project.size_of(project.box(b.box_id)) for b in inside]
    most = min(size.most_behind if is_file else size.most_abreast for size in sizes)
    if count > max(1, most):
        found.append(f"{name}: {count} in a drawer, allowed {most}")
    left = max(made.runners.load_classes_kg) - drawer_kg(project, box_width_mm, runner)
    heavy = [b for b in inside if b.kg > left / count + 1e-9]
    return found + [f"{b.box_id}: {b.kg} kg, {left / count} kg left" for b in heavy]
