"""From the present arrangement to everything that must be cut, bought and fitted.

Laws: pure; sizes come from the workings and from nowhere else; what cannot be made is left out and said in a remark,
never listed with a size that no board can have.
"""

from collections.abc import Sequence

from baywright.making.carcass import carcass_remarks, edge_remarks
from baywright.making.drawers import Kinds, drawer_remarks
from baywright.making.facing import facing_remarks
from baywright.making.hardware.order import hardware_order
from baywright.making.listing import can_exist, listing_of
from baywright.making.loads import load_remarks, runner_loads
from baywright.making.machining import machined
from baywright.making.material import material_remarks
from baywright.making.rear import rear_remarks
from baywright.making.schedule import schedule
from baywright.making.shelves import shelf_remarks
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
    listing = listing_of(project, workings)
    frame, drawers, kinds, parts = listing.frame, listing.drawers, listing.kinds, listing.parts
    loads = runner_loads(project, workings, drawers, kinds)
    worked = machined(project, workings, frame, parts, kinds, listing.fronts, listing.stops)
    hardware, hardware_remarks = hardware_order(
        project, workings, frame, parts, worked.parts, loads, kinds, worked.fixings
    )
    remarks = [
        *_impossible_remarks(listing.listed),
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
        schedule=schedule(project, workings, drawers, loads, listing.stops, worked.fixings),
        remarks=tuple(remarks),
        fronts=worked.fronts,
    )


def _impossible_remarks(parts: Sequence[Part]) -> list[str]:
    return [
        f"{part.name} ({part.number}) would have no size left and is not listed: check the construction's dimensions."
        for part in parts
        if not can_exist(part)
    ]


def _runner_remarks(workings: Workings, kinds: Kinds) -> list[str]:
    if all(workings.at_kind("runner_length", kind) > 0 for kind in kinds.values()):
        return []
    return ["No runner fits the depth, so drawers and runners are not listed: see the runner length in the workings."]


def _length_remarks(project: Project, parts: list[Part]) -> list[str]:
    longest = project.boards.longest_mm
    return [
        f"{part.name} ({part.number}) is {format_length(part.length_mm, project.unit)} long, but the longest board is "
        f"{format_length(longest, project.unit)} and there is no upright nearer to join it over: get a longer board, "
        "make the bay that it spans narrower, or join it over a support of its own."
        for part in parts
        if part.length_mm > longest + 1e-6
    ]
