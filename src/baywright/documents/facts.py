"""What the summary says, as pairs of a word and a sentence, section by section.

Laws: nothing is worked out here; a goal is called proved only where the planner proved it; what is missing or in
conflict is named, not left out.
"""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from baywright.making.drawers import drawer_count
from baywright.making.material import mass_kg
from baywright.model.construction import Back, Stand, Uprights
from baywright.model.goals import MORE_IS_BETTER, Goal
from baywright.model.inventory import Box, BoxStatus
from baywright.model.length import format_length
from baywright.model.making import Manufacture, Part
from baywright.model.plan import ArrangementReport, Conflict, GoalValue, PlanResult, PlanStatus
from baywright.model.project import Project
from baywright.workings import Workings

_UPRIGHTS = {Uprights.SHARED: "shared between neighbouring bays", Uprights.OWN: "each bay its own two"}
_STANDS = {Stand.PLINTH: "plinth", Stand.FEET: "adjustable feet"}
_BACKS = {
    Back.EXISTING_WALL: "the existing wall, with a fixing rail",
    Back.FULL_BACK: "a full back",
    Back.TWO_BRACES: "two braces",
}
_GOALS = {
    Goal.BAYS: "Drawer bays",
    Goal.ROWS: "Hole rows in an upright",
    Goal.MOVES: "Boxes that change their drawer",
    Goal.RESCREWS: "Runner pairs to be screwed on elsewhere",
    Goal.HANDLING: "Handling: heavy and much-used boxes out of easy reach",
    Goal.GROUPS: "Bays more than one that groups are spread over",
    Goal.FREE_PIECE: "Largest stretch of free rows in one bay",
}
_STATUS = {
    PlanStatus.PROVED_BEST: "Proved best: no arrangement is better by the goals in their order.",
    PlanStatus.FEASIBLE: "Keeps every limit; not proved best. The goals say how much better any arrangement could be.",
    PlanStatus.IMPOSSIBLE: "No arrangement keeps every limit; what is shown is the arrangement as it stands.",
    PlanStatus.STOPPED: "Planning was stopped; what is shown is the arrangement as it stands.",
    PlanStatus.EMPTY: "There are no boxes to plan.",
}
_BY_HAND = "Arranged or changed by hand, or planned before this workbook was written: nothing is proved about it."
MOST_NAMED = 20


@dataclass(frozen=True)
class Fact:
    """A word and what is said about it."""

    what: str
    words: str


def facts(
    project: Project,
    workings: Workings,
    report: ArrangementReport,
    plan: PlanResult | None,
    manufacture: Manufacture,
) -> list[tuple[str, list[Fact]]]:
    """The sections of the summary with their facts."""
    return [
        ("The run", _run(project, workings, manufacture)),
        ("The plan", _plan(plan)),
        ("Still open", _open(project, report, manufacture)),
        ("Material, without waste", _material(manufacture)),
    ]


def _run(project: Project, workings: Workings, manufacture: Manufacture) -> list[Fact]:
    def shown(name: str) -> str:
        return format_length(workings.value(name), project.unit)

    construction = project.construction
    standing, rear = _STANDS[construction.standing.kind], _BACKS[construction.rear.kind]
    owned = _boxes(project, BoxStatus.OWNED)
    weighed = [box.loaded_mass_kg for box in owned if box.loaded_mass_kg is not None]
    size = f"{shown('upright_height')} high, {shown('upright_depth')} deep"
    shelf = workings.value("shelf_bay_clear_width")
    noted = [Fact("Note", project.note)] if project.note else []
    return [
        *noted,
        Fact("Space", f"{shown('wall_length')} long, {shown('space_depth')} deep, up to {shown('height_limit')} high"),
        Fact("Run", f"{shown('run_length')} long, {shown('unit_height')} high; wall left free: {shown('wall_left')}"),
        Fact("Drawer bays", _bays(project, workings)),
        Fact("Shelf bay", f"{shown('shelf_bay_clear_width')} clear" if shelf > 0 else "none"),
        Fact("Uprights", f"{_UPRIGHTS[construction.uprights]}; {size}"),
        Fact("Stand and rear", f"{standing}, {shown('stand_height')} high; {rear}"),
        Fact("Drawers", f"{drawer_count(manufacture.parts)}; runners {shown('runner_length')} long"),
        Fact("Boxes", f"{len(owned)}, of which {len(weighed)} are weighed: {sum(weighed):.1f} kg together"),
        *_other_boxes(project),
        Fact("Boards", _heavy(manufacture.parts)),
    ]  # fmt: skip


def _bays(project: Project, workings: Workings) -> str:
    """How many bays, and how wide and high: of each kind, where they are not alike."""
    counts = Counter((bay.clear_mm, bay.rows) for bay in workings.layout.bays)
    kinds = [
        f"{count} with {format_length(clear, project.unit)} clear and {rows} hole rows"
        for (clear, rows), count in counts.items()
    ]
    if len(kinds) == 1:
        return kinds[0].replace(" with ", ", each ").replace(" clear and ", " clear, with ") + " in an upright"
    return "; ".join(kinds)


def _boxes(project: Project, status: BoxStatus) -> list[Box]:
    return [box for box in project.boxes if box.status is status]


def _other_boxes(project: Project) -> list[Fact]:
    """Boxes that are only wished, or kept elsewhere."""
    named = (
        (BoxStatus.WISHED, "Room kept", "for boxes that are not there yet; no drawers are made for them"),
        (BoxStatus.ELSEWHERE, "Kept elsewhere", "get no drawer here"),
    )
    return [
        Fact(what, f"{', '.join(f'“{box.label}”' for box in boxes[:MOST_NAMED])}: {words}")
        for status, what, words in named
        if (boxes := _boxes(project, status))
    ]


def _plan(plan: PlanResult | None) -> list[Fact]:
    if plan is None:
        return [Fact("Proof", _BY_HAND)]
    rests_on = [Fact("The plan rests on", remark) for remark in plan.remarks]
    return [Fact("Proof", _STATUS[plan.status]), *(_goal(goal) for goal in plan.goals), *rests_on]


def _goal(goal: GoalValue) -> Fact:
    value = f"{goal.value:,g} {goal.unit}".strip()
    better = "higher" if goal.goal in MORE_IS_BETTER else "lower"
    proof = f"proved: none is {better}" if goal.is_proved else f"not proved; at best {goal.bound:,g}"
    return Fact(_GOALS[goal.goal], f"{value} ({proof})")


def _material(manufacture: Manufacture) -> list[Fact]:
    """How much of each board the parts are; cutting waste is not in it."""
    found = []
    for thickness, material in sorted({(part.thickness_mm, part.material) for part in manufacture.parts}):
        parts = [part for part in manufacture.parts if (part.thickness_mm, part.material) == (thickness, material)]
        area = sum(part.quantity * part.length_mm * part.width_mm for part in parts) / 1e6
        pieces = sum(part.quantity for part in parts)
        found.append(Fact(material, f"{area:.2f} m² in {pieces} pieces, {_heavy(parts)}"))
    return [*found, Fact("Waste", "add 10 to 20 % for cuts (common practice)")] if found else []


def _heavy(parts: Iterable[Part]) -> str:
    mass = mass_kg(parts)
    return "mass not known" if mass is None else f"about {mass:.0f} kg"


def _open(project: Project, report: ArrangementReport, manufacture: Manufacture) -> list[Fact]:
    found = [Fact("Conflict", _words(conflict)) for conflict in report.conflicts[:MOST_NAMED]]
    if len(report.conflicts) > MOST_NAMED:
        found.append(Fact("Conflict", f"and {len(report.conflicts) - MOST_NAMED} more"))
    if report.unplaced:
        labels = [f"“{project.box(box_id).label}”" for box_id in report.unplaced[:MOST_NAMED]]
        more = f" and {len(report.unplaced) - MOST_NAMED} more" if len(report.unplaced) > MOST_NAMED else ""
        found.append(Fact("Boxes without a drawer", ", ".join(labels) + more))
    found.extend(Fact("Mind", remark) for remark in manufacture.remarks)
    return found or [Fact("Nothing", "No conflicts, and every box has a drawer.")]


def _words(conflict: Conflict) -> str:
    return " ".join(filter(None, (conflict.message, conflict.mend)))
