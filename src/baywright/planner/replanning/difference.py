"""What changes from how a run stands to how it is planned: boxes, runners, drawers, and the steps to go.

Laws: a box has moved where it has a drawer before and after and the bay or the row differs; a drawer that several
boxes share counts once; a drawer made for another width or depth is no drawer for a place, so one is made and one lies
idle. A bay that is not put up yet has no drawers, whatever was planned for it. Where the document contradicts the
panels of a bay that stands, boxes are told but no runner, drawer or step, and the remarks say how to mend it.
"""

from baywright.model.difference import BoxMove, Difference, Place, RunnerMove
from baywright.model.project import Project
from baywright.planner.legality.agreement import disagreements
from baywright.planner.replanning.pairing import pair_up
from baywright.planner.replanning.steps import preparations, steps
from baywright.planner.replanning.wall import Spot, Wall, read_wall


def difference(before: Project, after: Project) -> Difference:
    """Everything that leads from the arrangement of `before` to that of `after`; the parts are left to `making`."""
    is_snapshot = _is_snapshot(before, after)
    there, then = read_wall(before, leaving_count=not is_snapshot), read_wall(after)
    boxes = _boxes(there, then)
    found = disagreements(after)
    remarks = tuple(each.text for each in found)
    if any(each.about_panels for each in found):
        return boxes.replace(remarks=remarks)
    standing = after.built.bays if is_snapshot and after.built else range(before.arrangement.bay_count)
    there = there.only(standing)
    given_up = {spot: make for spot, make in there.drawers.items() if then.drawers.get(spot) != make}
    wanted = {spot: make for spot, make in then.drawers.items() if there.drawers.get(spot) != make}
    runners = pair_up(given_up, wanted)
    served = set(runners.values())
    new = tuple(spot for spot in sorted(wanted) if spot not in served)
    idle = tuple(spot for spot in sorted(given_up) if spot not in runners)
    to_put_up = tuple(bay for bay in range(after.arrangement.bay_count) if bay not in standing)
    labels = {box.id: box.label for project in (before, after) for box in project.boxes}
    return boxes.replace(
        runners=tuple(RunnerMove(before=_place(old), after=_place(to)) for old, to in sorted(runners.items())),
        new_drawers=tuple(map(_place, new)),
        idle_drawers=tuple(map(_place, idle)),
        steps=(*preparations(new, to_put_up), *steps(there, then, runners, new, idle, labels)),
        remarks=remarks,
    )


def _is_snapshot(before: Project, after: Project) -> bool:
    """Whether `before` is what the bays of `after` were built from: then what was elsewhere never had a drawer."""
    return after.built is not None and (before is after.built.project or before == after.built.project)


def _boxes(there: Wall, then: Wall) -> Difference:
    order = [*there.boxes, *(box_id for box_id in then.boxes if box_id not in there.boxes)]
    moves = [BoxMove(box_id=i, before=_place_in(there, i), after=_place_in(then, i)) for i in order]
    return Difference(
        moves=tuple(m for m in moves if m.before is not None and m.after is not None and m.before != m.after),
        new_boxes=tuple(m for m in moves if m.before is None),
        gone_boxes=tuple(m for m in moves if m.after is None),
    )


def _place_in(wall: Wall, box_id: str) -> Place | None:
    placement = wall.boxes.get(box_id)
    return None if placement is None else Place(bay=placement.bay, row=placement.row)


def _place(spot: Spot) -> Place:
    return Place(bay=spot[0], row=spot[1])
