"""Whether the screws hold: those that fix the run to the wall, and those of the runners in the drawer sides.

Laws: withdrawal by the reference value of NDS 2018 (see `baywright.checks.withdrawal`), which needs six diameters of
thread in the wood; where there is less, no value exists and the finding says so. What the wall is made of is not known
here: the figure is for softwood studs, any other wall is for its fixing's data sheet and who is licensed for it. Each
section hangs on its own fixings: one that stands by itself holds no other.
"""

from math import ceil

from baywright.checks.beam import GRAVITY_M_S2
from baywright.checks.judging import judged, no_density, no_runner
from baywright.checks.statics import anchor_n
from baywright.checks.weighing import Scales, Weighed, weigh
from baywright.checks.withdrawal import LEAST_DIAMETERS, lag_n_per_mm, reference_n, ultimate_n
from baywright.making.frame import frame_of
from baywright.making.hardware.fasteners import RUNNER_SCREW_MM, runner_screw
from baywright.making.hardware.fittings import wall_fixing_count
from baywright.making.material import material_of
from baywright.making.shares import along, reaches
from baywright.model.caution import FIX_FIRST
from baywright.model.finding import CheckKind, Finding, Given, Mend, Severity
from baywright.model.material import MATERIALS
from baywright.model.project import Project
from baywright.model.repair import FieldChange
from baywright.model.stock import BoardRole
from baywright.workings import Workings

STUD_GRAVITY = 0.42
"""Specific gravity of common softwood (spruce, pine, fir)."""
WALL_SCREW_MM, WALL_THREAD_MM = 6.0, 50.0
COACH_SCREW_MM, COACH_THREAD_MM = 8.0, 60.0
"""What is proposed where wood screws are not enough."""
FIXING_UNDER_TOP_MM = 50.0
"""How far under the top the wall fixing sits: the middle of a rail 100 mm wide."""
LEVER_MM = 22.0
"""From a runner's lower edge to its line of screws: half of about 45 mm; from memory, 80 %."""
SCREWS_THAT_COUNT = 2
"""Of the screws of one runner those that are taken to carry; common practice."""
SAFETY = 2.0
"""How many times the computed pull a fixing should hold; common practice."""
SOURCE = "NDS 2018, eq. 12.2-2, reference withdrawal value; read second-hand"
CODES = "Which fixing holds depends on the wall: its data sheet, local code and a licensed tradesperson come first."


def fixing_findings(project: Project, workings: Workings) -> list[Finding]:
    """The pull on the wall's fixings, and the runners' screws."""
    weighed = weigh(project, workings)
    if not weighed.drawers:
        return []
    advice = Mend(text=f"{FIX_FIRST} {CODES}")
    if not weighed.is_weighed:
        told = no_density(CheckKind.FIXING, "Fixing of the run", SOURCE)
        return [told.replace(mends=(*told.mends, advice)), *_runner_screws(project)]
    if not weighed.is_known:
        told = no_runner(CheckKind.FIXING, "Fixing of the run", SOURCE)
        return [told.replace(mends=(*told.mends, advice))]
    return [_wall(project, workings, weighed), *_runner_screws(project)]


def _wall(project: Project, workings: Workings, weighed: Weighed) -> Finding:
    """The section whose fixings are loaded most, with all its drawers open."""
    height = max(1.0, workings.value("unit_height") - workings.value("top_thickness") - FIXING_UNDER_TOP_MM)
    counts = _fixings(project, workings, weighed)
    pulls = {section: _pull_n(section, height) for section in weighed.sections if section.drawers}
    worst = max(pulls, key=lambda section: pulls[section] / max(counts[section], 0.5))
    pull, count = pulls[worst], counts[worst]
    of = f" of {worst.words(capital=False)}" if len(weighed.sections) > 1 else ""
    each = reference_n(STUD_GRAVITY, WALL_SCREW_MM, WALL_THREAD_MM)
    given = (
        Given(name="moment with all drawers open", value=f"{_moment_nm(worst):.0f} N·m".replace("-", "−")),
        Given(name="height of the fixing", value=f"{height:.0f} mm"),
        Given(name="fixings in the order", value=f"{count:.0f}"),
        Given(name="one 6 mm screw, 50 mm of thread in a softwood stud", value=f"{each:.0f} N"),
        Given(name="it would tear out at about",
              value=f"{ultimate_n(STUD_GRAVITY, WALL_SCREW_MM, WALL_THREAD_MM):.0f} N"),
    )  # fmt: skip
    if not count:
        return _not_fixed(project, f"Fixing{of or ' of the run'}", pull, given)
    needed, there = SAFETY * pull, each * count
    coach = lag_n_per_mm(STUD_GRAVITY, COACH_SCREW_MM) * COACH_THREAD_MM
    stronger = Mend(
        text=f"Take coach screws of {COACH_SCREW_MM:g} mm with {COACH_THREAD_MM:g} mm of thread in the stud: each "
        f"holds {coach:.0f} N, so {ceil(needed / coach)} are needed; or more fixings."
    )
    return Finding(
        kind=CheckKind.FIXING, severity=judged(needed, there), subject=f"Fixing{of} to the wall",
        message=f"With all drawers open the wall must hold {pull:.0f} N, twice that for safety; {count:.0f} screws "
        f"into softwood studs hold {there:.0f} N. {CODES}",
        value=needed, limit=there, unit="N", formula="2 × tipping moment ÷ height; n × 2850·G²·D × thread",
        given=given, source=SOURCE,
        mends=(*((stronger,) if needed > there else ()), Mend(text=f"{FIX_FIRST} {CODES}")),
    )  # fmt: skip


def _not_fixed(project: Project, subject: str, pull_n: float, given: tuple[Given, ...]) -> Finding:
    wall = FieldChange(path="space.existing_wall", value=True)
    fix = Mend(text="Stand it against a wall and fix it there.", changes=() if project.space.existing_wall else (wall,))
    return Finding(
        kind=CheckKind.FIXING, severity=Severity.BROKEN if pull_n else Severity.NEAR, subject=subject,
        message=f"Nothing holds the run; with all drawers open it takes {pull_n:.0f} N at the top to keep it up."
        if pull_n else "Nothing holds the run; it stands by itself with all drawers open, but people lean on it.",
        value=pull_n, limit=0.0, unit="N", formula="tipping moment ÷ height of the fixing", given=given, source=SOURCE,
        mends=(fix, Mend(text=f"{FIX_FIRST} {CODES}")),
    )  # fmt: skip


def _moment_nm(scales: Scales) -> float:
    return scales.net_kgm(len(scales.drawers), filled=True) * GRAVITY_M_S2


def _pull_n(scales: Scales, height_mm: float) -> float:
    return anchor_n(_moment_nm(scales), height_mm)


def _fixings(project: Project, workings: Workings, weighed: Weighed) -> dict[Scales, float]:
    """How many wall fixings of the hardware order each section has."""
    frame = frame_of(project, workings)
    count, shares = wall_fixing_count(project, workings, frame), along(reaches(frame))
    total = sum(shares.values())
    return {
        section: float(round(count * sum(shares.get(bay, 0.0) for bay in section.bays) / total)) if count else 0.0
        for section in weighed.sections
    }


def _runner_screws(project: Project) -> list[Finding]:
    """The runner's screws go into the thin face of a drawer side. The runner carries beside it, so half the drawer's
    load turns about the runner's lower edge by the runner's thickness and pulls at the screws over it.
    """
    side, subject = project.boards.drawer_side_mm, "Screws of the runners in the drawer sides"
    length = float(runner_screw(side))
    least = LEAST_DIAMETERS * RUNNER_SCREW_MM
    material = MATERIALS.get(material_of(project, BoardRole.DRAWER_SIDE).kind)
    given = (Given(name="screw", value=f"{RUNNER_SCREW_MM:g} × {length:g} mm"),)
    mends = (Mend(text="Use the screws that the maker names, or small bolts through the side."),)
    if length < least or material is None:
        why = (
            f"{length:g} mm of thread in a {side:g} mm side are less than six diameters ({least:g} mm), so there is no "
            "reference value for pulling them out"
            if length < least
            else "How dense the drawer sides are is not known, so there is no value for pulling screws out of them"
        )
        return [Finding(
            kind=CheckKind.FIXING, severity=Severity.UNCHECKED, subject=subject, value=length, limit=least, unit="mm",
            message=f"{why}; they mostly carry across, not out. The runner maker's data sheet decides.",
            given=given, source=SOURCE, mends=mends,
        )]  # fmt: skip
    runners = project.construction.runners
    load_n = max(runners.load_classes_kg) * GRAVITY_M_S2 / 2
    needed = SAFETY * load_n * runners.thickness_mm / LEVER_MM / SCREWS_THAT_COUNT
    there = reference_n(material.specific_gravity, RUNNER_SCREW_MM, length)
    return [Finding(
        kind=CheckKind.FIXING, severity=judged(needed, there), subject=subject,
        message=f"With the rated load each is pulled by {needed / SAFETY:.0f} N, twice that for safety; it holds "
        f"{there:.0f} N.",
        value=needed, limit=there, unit="N", formula="2 × half the load × runner thickness ÷ lever ÷ screws",
        given=(
            *given, Given(name="rated load", value=f"{max(runners.load_classes_kg):g} kg a pair"),
            Given(name="lever", value=f"{LEVER_MM:g} mm, half a usual runner's height"),
            Given(name="screws that count", value=f"{SCREWS_THAT_COUNT} a side"),
        ),
        source=f"{SOURCE}; height of runners about 45 mm, from memory, 80 %", mends=mends if needed > there else (),
    )]  # fmt: skip
