"""Box stops: a strip across a drawer's bottom that keeps the box from sliding back where the drawer is deeper.

Laws: a strip's front face lies behind the front rail by the depth of what stands in the drawer and its air; there is a
strip only where there is room for one between that place and the rear rail, else the rail itself is the stop.
"""

from collections import Counter
from collections.abc import Iterable, Mapping

from baywright.making.drawers import Drawers, Kinds
from baywright.making.piece import piece
from baywright.model.arrangement import Placement
from baywright.model.length import format_length
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.model.stock import BoardRole
from baywright.workings import Workings

Stops = Mapping[tuple[int, int], float]
"""Of the drawers that have one: how far the stop lies behind the front rail, in mm, by bay and row."""


def box_stops(project: Project, workings: Workings, drawers: Drawers, kinds: Kinds) -> Stops:
    """Where the stops lie; none where the construction has none."""
    if not project.construction.drawers.has_box_stop:
        return {}
    found = {}
    for place, placements in drawers.items():
        kind = kinds[place]
        taken = depth_taken_mm(project, workings, placements)
        room = workings.at_kind("drawer_inside_depth", kind) - taken
        if workings.at_kind("runner_length", kind) > 0 and room >= project.boards.drawer_side_mm - 1e-9:
            found[place] = taken
    return found


def depth_taken_mm(project: Project, workings: Workings, placements: Iterable[Placement]) -> float:
    """Depth that the boxes of a drawer take from the front rail on, each with its air, in mm."""
    behind: dict[int, float] = {}
    for placement in placements:
        size = project.size_of(project.box(placement.box_id))
        turned_mm = size.width_mm + workings.value("stop")
        deep = turned_mm if placement.turned else workings.value("box_stop_place", size.id)
        behind[placement.behind] = max(behind.get(placement.behind, 0.0), deep)
    return sum(behind.values())


def stop_parts(project: Project, workings: Workings, kinds: Kinds, stops: Stops) -> list[Part]:
    """The strips, one line for each kind of bay."""
    height, parts = workings.value("box_stop_height"), []
    for kind in sorted({kinds[place] for place in stops}):
        here = sorted(place for place in stops if kinds[place] == kind)
        places = Counter(round(stops[place], 6) for place in here)
        told = ", ".join(f"{count} at {format_length(mm, project.unit)}" for mm, count in sorted(places.items()))
        parts.append(piece(
            project, BoardRole.DRAWER_SIDE, f"D4{kind.removeprefix('bay')}", "Box stop", len(here),
            workings.at_kind("box_stop_length", kind), height, bays=tuple(bay for bay, _ in here),
            note=f"on edge on the drawer's bottom, across; front face behind the front rail: {told}",
        ))  # fmt: skip
    return parts
