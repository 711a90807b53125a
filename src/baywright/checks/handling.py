"""How hard it is on the back to lift each box out of its drawer and set it down.

The revised NIOSH lifting equation (see `baywright.planner.lifting`) at both ends of the lift: at the drawer, and on the
bench. The greater index counts. The reach is taken from the box's depth, for it stands before the body in the open
drawer; the hands hold it at its grips.
"""

from dataclasses import dataclass, replace

from baywright.checks.composite import Task, composite_index
from baywright.checks.judging import judged, not_weighed
from baywright.model.arrangement import Placement
from baywright.model.finding import CheckKind, Finding, Given, Mend, Severity
from baywright.model.inventory import Box, BoxStatus
from baywright.model.project import Project
from baywright.model.repair import FieldChange
from baywright.planner.handling import ends_of_lift, grip_height_in_box, habits
from baywright.planner.lifting import HIGH_INDEX, Lift, lifting_index, multipliers, recommended_kg
from baywright.workings import Workings

SOURCE = "Revised NIOSH lifting equation, DHHS (NIOSH) 94-110; read second-hand"
GOAL = 1.0
MOST_SHARES = 10
"""Among more boxes than this nobody divides the contents of one."""
MOST_PEOPLE = 6
MINUTES = 60.0
"""How long taking out every box is given."""


@dataclass(frozen=True)
class LiftOfBox:
    """Both ends of lifting one box, and what may be lifted there."""

    box: Box
    placement: Placement
    origin: Lift
    destination: Lift
    recommended_kg: float
    """The recommended weight limit: the lower one of both ends."""

    @property
    def index(self) -> float | None:
        """The lifting index; None for a box that was not weighed."""
        mass = self.box.loaded_mass_kg
        if mass is None:
            return None
        return max(lifting_index(mass, self.origin), lifting_index(mass, self.destination))


class Ends:
    """The two ends of a lift for each size, row and turn, each worked out once."""

    def __init__(self, project: Project, workings: Workings) -> None:
        self._project = project
        self._workings = workings
        self._known: dict[tuple[str, int, bool], tuple[Lift, Lift, float]] = {}

    def of(self, box: Box, row: int, *, turned: bool) -> tuple[Lift, Lift, float]:
        """Lifting a box out at a row, setting it down, and what may be lifted at most, in kg."""
        key = (box.size_id, row, turned)
        if key not in self._known:
            self._known[key] = self._ends(box, row, turned)
        return self._known[key]

    def _ends(self, box: Box, row: int, turned: bool) -> tuple[Lift, Lift, float]:
        size = self._project.size_of(box)
        away_mm = size.width_mm if turned else size.depth_mm
        grip_mm = grip_height_mm(self._project, self._workings, box, row)
        origin, destination = ends_of_lift(away_mm, size.height_mm, grip_mm, habits(self._project.safety))
        return origin, destination, min(recommended_kg(origin), recommended_kg(destination))


def lifts(project: Project, workings: Workings, ends: Ends | None = None) -> dict[str, LiftOfBox]:
    """The lift of every box that is or shall be in the run, by its id."""
    ends = ends or Ends(project, workings)
    boxes = project.boxes_by_id
    return {
        p.box_id: LiftOfBox(boxes[p.box_id], p, *ends.of(boxes[p.box_id], p.row, turned=p.turned))
        for p in project.arrangement.placements
        if boxes[p.box_id].status is not BoxStatus.ELSEWHERE
    }


def lifting_indices(project: Project, workings: Workings) -> dict[str, float]:
    """The lifting index of every placed and weighed box, by its id."""
    return {box_id: index for box_id, lift in lifts(project, workings).items() if (index := lift.index) is not None}


def grip_height_mm(project: Project, workings: Workings, box: Box, row: int) -> float:
    """Height of a box's grips over the floor when its drawer is at a row, in mm."""
    lower = workings.value("first_row") + workings.value("pitch") * row - workings.value("line_offset")
    seat = workings.value("base_upper_height") + lower + workings.value("seat")
    return seat + grip_height_in_box(project.size_of(box).height_mm)


def lifting_findings(project: Project, workings: Workings) -> list[Finding]:
    """One finding for each weighed box over its recommended limit or near it, the worst first; the others in one."""
    found: list[Finding] = []
    unweighed: list[str] = []
    easy = 0
    ends = Ends(project, workings)
    for lift in lifts(project, workings, ends).values():
        index = lift.index
        if index is None:
            unweighed.append(lift.box.label)
        elif judged(index, GOAL) is Severity.KEPT:
            easy += 1
        else:
            found.append(_finding(lift, index, _mends(workings, lift, ends) if index > GOAL else ()))
    found.sort(key=lambda finding: -(finding.value or 0.0))
    if told := _one_after_the_other(project, workings, ends):
        found.append(told)
    if easy:
        found.append(Finding(
            kind=CheckKind.LIFTING, severity=Severity.KEPT, subject=f"{easy} boxes" if easy > 1 else "1 box",
            message="The lifting index is well under 1.", source=SOURCE,
        ))  # fmt: skip
    if unweighed:
        found.append(not_weighed(CheckKind.LIFTING, "Boxes not weighed", unweighed, SOURCE))
    return found


def _one_after_the_other(project: Project, workings: Workings, ends: Ends) -> Finding | None:
    """Taking every weighed box out in one hour, as for filling the run or for taking stock."""
    there = [lift for lift in lifts(project, workings, ends).values() if lift.box.status is BoxStatus.OWNED]
    weighed = [lift for lift in there if lift.box.loaded_mass_kg]
    if len(weighed) < 2:
        return None
    tasks = [Task(lift.box.loaded_mass_kg or 0.0, replace(lift.origin, lifts_a_minute=1 / MINUTES)) for lift in weighed]
    index = composite_index(tasks)
    severity = judged(index, GOAL)
    shown = "infinite" if index == float("inf") else f"{index:.2f}"
    return Finding(
        kind=CheckKind.LIFTING,
        severity=severity,
        subject=f"All {len(weighed)} boxes within an hour",
        message=f"Composite lifting index {shown} when every box is taken out one after the other.",
        value=min(index, 1e6),
        limit=GOAL,
        formula="STLI₁ + Σ FILI_j · (1/FM_1…j − 1/FM_1…j−1)",
        given=(Given(name="lifts", value=f"{len(weighed) / MINUTES:.2f} a minute"),),
        source=f"{SOURCE}, multi-task assessment",
        mends=(_shared(tasks),) if severity is Severity.BROKEN else (),
    )


def _finding(lift: LiftOfBox, index: float, mends: tuple[Mend, ...]) -> Finding:
    box, limit = lift.box, lift.recommended_kg
    at_bench = recommended_kg(lift.destination) < recommended_kg(lift.origin)
    end = lift.destination if at_bench else lift.origin
    found = multipliers(end)
    high = " Many people are at risk by such a load." if index > HIGH_INDEX else ""
    where = "setting it down" if at_bench else "lifting it out"
    shown = "infinite" if index == float("inf") else f"{index:.2f}"
    return Finding(
        kind=CheckKind.LIFTING, severity=judged(index, GOAL), subject=f"“{box.label}”", box_ids=(box.id,),
        drawer=(lift.placement.bay, lift.placement.row),
        message=f"Lifting index {shown}: {box.loaded_mass_kg:g} kg, recommended at most {limit:.1f} kg when {where}."
        f"{high}",
        value=min(index, 1e6), limit=GOAL, unit="", formula="mass ÷ (23 kg · HM · VM · DM · AM · FM · CM)",
        given=(
            Given(name="reach H", value=f"{end.reach_cm:.0f} cm, HM {found.horizontal:.2f}"),
            Given(name="height V", value=f"{end.height_cm:.0f} cm, VM {found.vertical:.2f}"),
            Given(name="travel D", value=f"{end.travel_cm:.0f} cm, DM {found.distance:.2f}"),
            Given(name="turn A", value=f"{end.twist_degrees:g}°, AM {found.asymmetry:.2f}"),
            Given(name="frequency", value=f"{end.lifts_a_minute:g} a minute, FM {found.frequency:.2f}"),
            Given(name="grip", value=f"{end.coupling.value}, CM {found.coupling:.2f}"),
        ),
        source=SOURCE, mends=mends,
    )  # fmt: skip


def _mends(workings: Workings, lift: LiftOfBox, ends: Ends) -> tuple[Mend, ...]:
    """Another height where that alone does, else smaller loads."""
    mass = lift.box.loaded_mass_kg or 0.0
    rows = range(round(workings.value("lowest_start_row")), round(workings.value("upright_rows")))
    better = [row for row in rows if 0 < mass <= ends.of(lift.box, row, turned=lift.placement.turned)[2]]
    mends = []
    if better:
        mends.append(Mend(text=f"Put it between rows {better[0] + 1} and {better[-1] + 1}."))
    share = next((n for n in range(2, MOST_SHARES + 1) if 0 < mass / n <= lift.recommended_kg), None)
    if share is None:
        mends.append(Mend(text="Nobody should lift it there alone: two people or a hoist, or keep it elsewhere."))
    else:
        mends.append(Mend(text=f"Divide its contents among {share} boxes, or have two people lift it."))
    elsewhere = FieldChange(path=f"boxes[{lift.box.id}].status", value=BoxStatus.ELSEWHERE.value)
    mends.append(Mend(text=f"Or keep “{lift.box.label}” elsewhere, at an easy height.", changes=(elsewhere,)))
    return tuple(mends)


def _shared(tasks: list[Task]) -> Mend:
    """Among how many people the work must be shared, the hardest boxes dealt out first. By the manual a pause as
    long as the work before it lets an hour count by itself (page 14, edition of 2021).
    """
    hardest_first = sorted(tasks, key=lambda task: -task.alone)
    if hardest_first[0].alone > GOAL:
        return Mend(text="Mend the boxes that are over their own limit first; more people or time do not help here.")
    for people in range(2, MOST_PEOPLE + 1):
        if composite_index(hardest_first[::people]) <= GOAL:
            return Mend(
                text=f"Share the work among {people} people, or do it in {people} goes with as long a pause after each."
            )
    return Mend(text="Take days for it: not even many people do it within an hour without strain.")
