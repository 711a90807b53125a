"""Whether people get at what is stored: reach, lids, room before the run, neighbours that are in the way.

Laws: a drawer runs out by its runner's length; a lid that stands upright needs the drawer far enough out that nothing
is over it; all figures of people are common practice unless a source stands beside them.
"""

from baywright.checks.handling import grip_height_mm
from baywright.checks.judging import judged
from baywright.making.drawers import drawer_kinds, drawers_to_make
from baywright.model.change import changed
from baywright.model.finding import CheckKind, Finding, Given, Mend, Severity
from baywright.model.length import format_length
from baywright.model.limits import MOST_ROWS
from baywright.model.project import Project
from baywright.model.repair import FieldChange
from baywright.model.space import ZoneEffect
from baywright.workings import Workings, derive

STANDING_MM = 600.0
"""Floor that a person needs before an open drawer; common practice."""
SOURCE = "common practice"


def access_findings(project: Project, workings: Workings) -> list[Finding]:
    """Reach, walkway, lids, and zones at the ends of the run."""
    parts = (_reach, _walkway, _lids, _depth, _ends)
    return [finding for part in parts for finding in part(project, workings)]


def _reach(project: Project, workings: Workings) -> list[Finding]:
    boxes, limit = project.boxes_by_id, project.safety.reach_height_mm
    heights = {
        p.box_id: grip_height_mm(project, workings, boxes[p.box_id], p.row) for p in project.arrangement.placements
    }  # fmt: skip
    if not heights:
        return []
    highest = max(heights, key=lambda box_id: heights[box_id])
    over = tuple(box_id for box_id, height in heights.items() if height > limit)
    placement = project.arrangement.placements_by_box[highest]
    shown, allowed = (format_length(length, project.unit) for length in (heights[highest], limit))
    lower = FieldChange(path="limits.upright_rows", value=_rows_within_reach(project, workings, limit))
    return [Finding(
        kind=CheckKind.ACCESS, severity=judged(heights[highest], limit) if over else Severity.KEPT,
        subject=f"“{boxes[highest].label}”, the highest box",
        message=f"Its grips are {shown} over the floor; {allowed} can be reached and seen into."
        + (f" {len(over)} boxes are over that." if len(over) > 1 else ""),
        value=heights[highest], limit=limit, unit="mm", source=SOURCE,
        box_ids=over or (highest,), drawer=(placement.bay, placement.row),
        mends=(
            Mend(text=f"Take lower uprights ({lower.value} rows) and more bays.", changes=(lower,)),
            Mend(text="Or keep a firm step at hand and only light, seldom used boxes up there."),
        ) if over else (),
    )]  # fmt: skip


def _rows_within_reach(project: Project, workings: Workings, limit_mm: float) -> int:
    """The most rows with which no box's grips come over the limit."""
    boxes = list({box.size_id: box for box in project.boxes_to_place}.values())
    least = min((workings.value("opening_rows", box.size_id) for box in boxes), default=1.0)
    row = 0
    while row < MOST_ROWS and all(grip_height_mm(project, workings, box, row + 1) <= limit_mm for box in boxes):
        row += 1
    return min(MOST_ROWS, max(1, row + round(least)))


def _walkway(project: Project, workings: Workings) -> list[Finding]:
    travel = workings.value("runner_length")
    if travel <= 0 or not project.arrangement.placements:
        return []
    needed, there = travel + STANDING_MM, project.safety.walkway_mm
    shown = format_length(needed, project.unit)
    given = (
        Given(name="drawer runs out by", value=format_length(travel, project.unit)),
        Given(name="person", value=format_length(STANDING_MM, project.unit)),
    )
    if there is None:
        return [Finding(
            kind=CheckKind.ACCESS, severity=Severity.UNCHECKED, subject="Floor before the run", value=needed, unit="mm",
            message=f"It is not known how much floor is free before the run; {shown} are needed.",
            given=given, source=SOURCE, mends=(Mend(text="Measure it and enter it under “Measures”, “Checks”."),),
        )]  # fmt: skip
    enough = there >= needed
    return [Finding(
        kind=CheckKind.ACCESS, severity=Severity.KEPT if enough else Severity.BROKEN, subject="Floor before the run",
        message=f"{format_length(there, project.unit)} are free; {shown} are needed to stand before an open drawer.",
        value=needed, limit=there, unit="mm", formula="runner's travel + room for a person", given=given, source=SOURCE,
        mends=() if enough else (
            *_shorter(project, workings, there - STANDING_MM),
            Mend(text="Take shorter runners, or keep more floor free."),
        ),
    )]  # fmt: skip


def _shorter(project: Project, workings: Workings, most_mm: float) -> tuple[Mend, ...]:
    """The longest runners that come out no further than that and still hold the deepest box, if there are any."""
    least = workings.value("runner_length") - workings.value("depth_spare")
    fitting = [length for length in project.construction.runners.lengths_mm if least <= length <= most_mm]
    if not fitting:
        return ()
    change = FieldChange(path="construction.runners.length_mm", value=max(fitting))
    return (Mend(text=f"Take runners of {format_length(max(fitting), project.unit)}.", changes=(change,)),)


def _lids(project: Project, workings: Workings) -> list[Finding]:
    """Whether the lid of a box stands upright in the open drawer: behind its hinge nothing must reach over the box."""
    drawers = drawers_to_make(project)
    kinds = drawer_kinds(project, workings, drawers)
    boxes, rail = project.boxes_by_id, project.boards.drawer_side_mm
    overhang = workings.value("overhang_front")
    blocked: list[str] = []
    least = float("inf")
    for place, placements in drawers.items():
        for p in placements:
            size = project.size_of(boxes[p.box_id])
            deep = size.width_mm if p.turned else size.depth_mm
            # The hinge is at the box's rear; of an open drawer the rear is at the uprights' front.
            length = workings.at_kind("drawer_outside_depth", kinds[place])
            clear = length - rail - project.construction.drawers.stop_mm - deep - overhang
            least = min(least, clear)
            if clear < 0 and p.behind == 0:
                blocked.append(p.box_id)
    if least == float("inf"):
        return []
    shown = format_length(max(0.0, -least), project.unit)
    flush = FieldChange(path="construction.top.overhang_front_mm", value=0.0)
    return [Finding(
        kind=CheckKind.ACCESS, severity=Severity.NEAR if blocked else Severity.KEPT, subject="Lids",
        message=(
            f"The lids of {len(blocked)} boxes cannot stand quite upright in the open drawer: the top stands out over "
            f"their hinges by {shown}, where their drawer is the uppermost."
            if blocked else "Every lid can stand upright in its open drawer; no box has to be lifted out to be opened."
        ),
        formula="drawer length − rail − stop − box depth − front overhang of the top",
        given=(Given(name="front overhang", value=format_length(overhang, project.unit)),),
        source=SOURCE, box_ids=tuple(blocked),
        mends=(Mend(text="Let the top end with the uprights.", changes=(flush,)),) * (least + overhang >= 0 > least)
        + (Mend(text="Set the boxes to the front of their drawers, or let the top stand out less."),) * bool(blocked),
    )]  # fmt: skip


def _depth(project: Project, workings: Workings) -> list[Finding]:
    """What stands out at a box, a handle or a plug, needs room beside the box's own depth."""
    if workings.value("runner_length") <= 0 or not project.arrangement.placements:
        return []
    spare, out = workings.value("depth_spare"), project.safety.connector_mm
    there = spare + project.construction.drawers.stop_mm
    shown, standing_out = (format_length(length, project.unit) for length in (max(0.0, there), out))
    fits = spare >= 0 and there >= out - 1e-9
    what = f"handles, plugs and cables that stand out {standing_out if out else 'more'}"
    told = f"{what} {'go in' if fits and out else 'do not go in'}" if out or fits else "with its air it does not go in"
    return [Finding(
        kind=CheckKind.ACCESS, severity=Severity.KEPT if fits else Severity.BROKEN, subject="Depth of the drawers",
        message=f"Front to back the deepest box leaves {shown}; {told}.",
        value=out, limit=there, unit="mm", formula="drawer inside depth − deepest box", source=SOURCE,
        given=(
            Given(name="inside depth", value=format_length(workings.value("drawer_inside_depth"), project.unit)),
            Given(name="stands out at a box", value=standing_out if out else "nothing entered"),
        ),
        mends=() if fits else (*_deeper(project, workings, max(out - there, -spare)),
                               Mend(text="Take longer runners, or plugs and handles that stand out less.")),
    )]  # fmt: skip


def _deeper(project: Project, workings: Workings, lack_mm: float) -> tuple[Mend, ...]:
    """A deeper space, if one lets in runners that are long enough."""
    runners, now = project.construction.runners, workings.value("runner_length")
    longer = min((length for length in runners.lengths_mm if length >= now + lack_mm - 1e-9), default=None)
    if longer is None or runners.length_mm is not None:
        return ()
    depth = project.space.depth_mm + longer - now
    change = FieldChange(path="space.depth_mm", value=depth)
    if derive(changed(project, (change,))).value("runner_length") < longer:
        return ()
    shown, length = (format_length(value, project.unit) for value in (depth, longer))
    return (Mend(text=f"Make the run {shown} deep, so that runners of {length} go in.", changes=(change,)),)


def _ends(project: Project, workings: Workings) -> list[Finding]:
    """Doors and the like right beside a bay: their frame and handle may be in a drawer's way."""
    found = []
    layout = workings.layout
    shift = -layout.wall_left_mm
    for zone in project.space.zones:
        if zone.effect is not ZoneEffect.KEEP_CLEAR or zone.depth_mm <= 0:
            continue
        for bay in layout.bays:
            gap = max(zone.left_mm - bay.right_mm - shift, bay.left_mm + shift - zone.right_mm)
            if 0 <= gap < zone.depth_mm:
                found.append(Finding(
                    kind=CheckKind.ACCESS, severity=Severity.NEAR,
                    subject=f"Bay {bay.number + 1} beside “{zone.label}”",
                    message=f"“{zone.label}” stands out {format_length(zone.depth_mm, project.unit)} and is only "
                    f"{format_length(gap, project.unit)} from the bay: see whether handle or leaf hits an open drawer.",
                    value=zone.depth_mm, limit=gap, unit="mm", source=SOURCE,
                    mends=(Mend(text="Keep a wider zone clear beside it."),),
                ))  # fmt: skip
    return found
