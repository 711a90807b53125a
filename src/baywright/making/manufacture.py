"""From the present arrangement to everything that must be cut, bought and fitted.

Laws: pure; sizes come from the workings and from nowhere else; what cannot be made is left out and said in a remark,
never listed with a size that no board can have.
"""

from baywright.making.carcass import carcass_parts, carcass_remarks, edge_remarks, end_panel_parts
from baywright.making.drawers import Kinds, drawer_kinds, drawer_parts, drawer_remarks, drawers_to_make
from baywright.making.facing import facing_remarks
from baywright.making.frame import frame_of
from baywright.making.fronts import front_parts, panels_of
from baywright.making.hardware.order import hardware_order
from baywright.making.loads import load_remarks, runner_loads
from baywright.making.machining import machined
from baywright.making.material import material_remarks
from baywright.making.rear import rear_parts, rear_remarks
from baywright.making.schedule import schedule
from baywright.making.shelves import shelf_parts, shelf_remarks
from baywright.making.stand import stand_parts
from baywright.making.stops import box_stops, stop_parts
from baywright.model.length import format_length
from baywright.model.making import Manufacture, Part
from baywright.model.project import Project
from baywright.workings import Workings, derive

NOTHING_ARRANGED = "Nothing is arranged yet: plan the run first."


def manufacture(project: Project, workings: Workings | None = None) -> Manufacture:
    """Parts, hardware and schedule of the project's present arrangement.

    `workings` are the project's own, if the caller has them already. Before anything is arranged the answer is empty
    and says so.
    """
    if project.arrangement.bay_count == 0:
        return Manufacture(parts=(), hardware=(), schedule=(), remarks=(NOTHING_ARRANGED,))
    workings = workings or derive(project)
    frame = frame_of(project, workings)
    drawers = drawers_to_make(project)
    kinds = drawer_kinds(project, workings, drawers)
    stops = box_stops(project, workings, drawers, kinds)
    fronts = panels_of(project, workings, drawers, kinds)
    cut = [
        *carcass_parts(project, workings, frame),
        *end_panel_parts(project, workings),
        *stand_parts(project, workings, frame),
        *rear_parts(project, workings, frame),
        *drawer_parts(project, workings, kinds),
        *stop_parts(project, workings, kinds, stops),
        *front_parts(project, fronts),
        *shelf_parts(project, workings),
    ]
    parts = [part for part in cut if _can_exist(part)]
    loads = runner_loads(project, workings, drawers, kinds)
    worked = machined(project, workings, frame, parts, kinds, fronts, stops)
    hardware, hardware_remarks = hardware_order(project, workings, frame, parts, worked.parts, loads, kinds)
    remarks = [
        *_impossible_remarks(cut),
        *_runner_remarks(workings, kinds),
        *_length_remarks(project, parts),
        *carcass_remarks(project, workings),
        *edge_remarks(project),
        *drawer_remarks(project, workings),
        *load_remarks(project, drawers, loads),
        *facing_remarks(project, workings, drawers),
        *rear_remarks(project, workings),
        *shelf_remarks(project, workings),
        *material_remarks(parts),
        *worked.remarks,
        *hardware_remarks,
    ]
    return Manufacture(
        parts=worked.parts,
        hardware=tuple(hardware),
        schedule=schedule(project, workings, drawers, loads, stops),
        remarks=tuple(remarks),
        fronts=worked.fronts,
    )


def _can_exist(part: Part) -> bool:
    return min(part.cut_length_mm, part.cut_width_mm, part.thickness_mm) > 0


def _impossible_remarks(parts: list[Part]) -> list[str]:
    return [
        f"{part.name} ({part.number}) would have no size left and is not listed: check the construction's dimensions."
        for part in parts
        if not _can_exist(part)
    ]


def _runner_remarks(workings: Workings, kinds: Kinds) -> list[str]:
    if all(workings.at_kind("runner_length", kind) > 0 for kind in kinds.values()):
        return []
    return ["No runner fits the depth, so drawers and runners are not listed: see the runner length in the workings."]


def _length_remarks(project: Project, parts: list[Part]) -> list[str]:
    longest = project.boards.longest_mm
    return [
        f"{part.name} ({part.number}) is {format_length(part.length_mm, project.unit)} long, but the longest board is "
        f"{format_length(longest, project.unit)} and there is no upright nearer to join it over."
        for part in parts
        if part.length_mm > longest + 1e-6
    ]
