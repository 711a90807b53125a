"""Where the bays of an arrangement stand along the wall and how high they are, with a tape measure.

Law: every x is in mm from the space's left end. Shares no code with the program's workings, only the document.
"""

import math
from dataclasses import dataclass

from baywright.model.construction import Back, FirstRowRule, Fronts, Uprights
from baywright.model.project import Project
from baywright.model.space import Zone, ZoneEffect

TINY_MM = 1e-6


@dataclass(frozen=True)
class Bay:
    """A drawer bay: outer faces of its two uprights, its clear opening, the boxes it is made for, its hole rows."""

    number: int
    left_mm: float
    right_mm: float
    clear_left_mm: float
    clear_right_mm: float
    box_width_mm: float
    rows: int
    zones: tuple[Zone, ...]
    """What stands out from the wall behind its opening."""


def first_row_mm(project: Project) -> float:
    rows = project.construction.hole_rows
    if rows.first_row_rule is FirstRowRule.HALF_PITCH:
        return rows.pitch_mm / 2
    if rows.first_row_rule is FirstRowRule.HALF_BASE_THICKNESS:
        return project.construction.boards.base_mm / 2
    return rows.first_row_mm


def upright_mm(project: Project, rows: int) -> float:
    """An upright with that many hole rows, as far from the lowest row down as from the highest one up."""
    return project.construction.hole_rows.pitch_mm * (rows - 1) + 2 * first_row_mm(project)


def base_mm(project: Project) -> float:
    """The base's upper side over the floor."""
    return project.construction.standing.height_mm + project.construction.boards.base_mm


def run_height_mm(project: Project, rows: int) -> float:
    """From the floor to the top's upper side."""
    return base_mm(project) + upright_mm(project, rows) + project.construction.boards.top_mm


def ordinary_width_mm(project: Project) -> float:
    """Width of box that a bay is made for where nothing else is said."""
    if project.limits.bay_box_width_mm is not None:
        return project.limits.bay_box_width_mm
    placed = {box.size_id for box in project.boxes_to_place}
    return max(size.width_mm for size in project.box_sizes if size.id in placed)


def width_mm(project: Project, bay: int) -> float:
    """Width of box that this bay of the present arrangement is made for."""
    chosen = project.arrangement.box_widths_mm
    if bay < len(chosen):
        return chosen[bay]
    return project.limits.wish(bay).box_width_mm or ordinary_width_mm(project)


def clear_mm(project: Project, box_width_mm: float) -> float:
    made = project.construction
    drawer = box_width_mm + 2 * made.drawers.lateral_play_mm + 2 * made.boards.drawer_side_mm
    return drawer + 2 * made.runners.thickness_mm


def beyond_mm(project: Project) -> tuple[float, float]:
    """What stands beyond the outer uprights of a piece of the run, left and right: end panel, and the top over it."""
    made = project.construction
    over, panel = made.top.overhang_side_mm, made.boards.end_panel_mm
    return over + (panel if made.end_panels.left else 0.0), over + (panel if made.end_panels.right else 0.0)


def bays(project: Project) -> list[Bay]:
    """The bays of the present arrangement, each as far left as it can stand clear of what must be kept clear."""
    found: list[Bay] = []
    post = project.construction.boards.upright_mm
    before, behind_it = beyond_mm(project)
    shared = project.construction.uprights is Uprights.SHARED
    for number in range(project.arrangement.bay_count):
        box_width = width_mm(project, number)
        length = clear_mm(project, box_width) + 2 * post
        begin = before if not found else found[-1].right_mm - (post if shared else 0)
        left = _leftmost(project, begin, length)
        clear_left, clear_right = left + post, left + length - post
        behind = tuple(
            zone
            for zone in project.space.zones
            if zone.effect is ZoneEffect.STAY_IN_FRONT and _cross(zone, clear_left, clear_right)
        )
        rows = _rows(project, number, left - before, left + length + behind_it)
        found.append(Bay(number, left, left + length, clear_left, clear_right, box_width, rows, behind))
    return found


def _cross(zone: Zone, left: float, right: float) -> bool:
    return zone.left_mm < right - TINY_MM and left + TINY_MM < zone.right_mm


def _leftmost(project: Project, begin: float, length: float) -> float:
    """The least place from `begin` on where a carcass of that length and the top over it are clear of all zones."""
    before, after = beyond_mm(project)
    shut = [zone for zone in project.space.zones if zone.effect is ZoneEffect.KEEP_CLEAR]
    tries = [begin, *(zone.right_mm + before for zone in shut)]
    return min(
        left
        for left in tries
        if left >= begin and not any(_cross(zone, left - before, left + length + after) for zone in shut)
    )


def _rows(project: Project, bay: int, left: float, right: float) -> int:
    """As many rows as are asked for, or as many as go under what hangs or slopes over this stretch of the wall."""
    wish = project.limits.wish(bay).rows
    wanted = project.arrangement.upright_rows if wish is None else wish
    over = lowest_over_mm(project, left, right)
    if over >= project.space.height_limit_mm:
        return wanted
    while wanted > 0 and run_height_mm(project, wanted) > over + TINY_MM:
        wanted -= 1
    return wanted


def lowest_over_mm(project: Project, left: float, right: float) -> float:
    """Height over the floor of the lowest thing over a stretch of wall: ceiling or a zone that bays must end below."""
    points = project.space.ceiling
    heights = [math.inf]
    if points:
        inside = [p.height_mm for p in points if left <= p.along_mm <= right]
        heights += [*inside, _ceiling_mm(project, left), _ceiling_mm(project, right)]
    for zone in project.space.zones:
        if zone.effect is ZoneEffect.END_BELOW and zone.left_mm < right and left < zone.right_mm:
            heights.append(zone.bottom_mm)
    return min(heights)


def _ceiling_mm(project: Project, x: float) -> float:
    points = project.space.ceiling
    before = [p for p in points if p.along_mm <= x]
    after = [p for p in points if p.along_mm >= x]
    if not before:
        return after[0].height_mm
    if not after or after[0] is before[-1]:
        return before[-1].height_mm
    low, high = before[-1], after[0]
    slope = (high.height_mm - low.height_mm) / (high.along_mm - low.along_mm)
    return low.height_mm + slope * (x - low.along_mm)


def shelf_mm(project: Project) -> float:
    """Length of wall that must stay to the right of the drawer bays for the shelf bay that is wished for."""
    wished = project.limits.shelf_bay_clear_width_mm
    if not project.limits.shelf_bay or wished is None:
        return 0.0
    posts = 2 if project.construction.uprights is Uprights.OWN else 1
    return wished + posts * project.construction.boards.upright_mm


def upright_depth_mm(project: Project) -> float:
    made = project.construction
    back = made.boards.back_mm if made.rear.kind is Back.FULL_BACK else 0.0
    front = made.boards.front_mm if made.drawers.fronts is Fronts.OVERLAY else 0.0
    return project.space.depth_mm - max(front, made.top.overhang_front_mm) - back
