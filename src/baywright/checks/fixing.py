"""Whether the screws hold: those that fix the run to the wall, and those of the runners in the drawer sides.

Laws: withdrawal by the reference value of NDS 2018 (see `baywright.checks.withdrawal`), which needs six diameters of
thread in the wood; where there is less, no value exists and the finding says so. What the wall is made of is not known
here: the figure is for softwood studs, any other wall is for its fixing's data sheet and who is licensed for it.
"""

from baywright.checks.beam import GRAVITY_M_S2
from baywright.checks.judging import judged, no_runner
from baywright.checks.statics import anchor_n
from baywright.checks.tipping import FIXING_UNDER_TOP_MM, Scales, weigh
from baywright.checks.withdrawal import LEAST_DIAMETERS, reference_n, ultimate_n
from baywright.making import manufacture
from baywright.making.hardware.fasteners import WOOD_SCREW_LENGTHS_MM, face_screw
from baywright.model.finding import CheckKind, Finding, Given, Mend, Severity
from baywright.model.project import Project
from baywright.workings import Workings

STUD_GRAVITY = 0.42
"""Specific gravity of common softwood (spruce, pine, fir)."""
WALL_SCREW_MM, WALL_THREAD_MM = 6.0, 50.0
RUNNER_SCREW_MM = 4.0
SAFETY = 2.0
"""How many times the computed pull a fixing should hold; common practice."""
SOURCE = "NDS 2018, eq. 12.2-2, reference withdrawal value; read second-hand"
CODES = "Which fixing holds depends on the wall: its data sheet, local code and a licensed tradesperson come first."


def fixing_findings(project: Project, workings: Workings) -> list[Finding]:
    """The pull on the wall's fixings, and the runners' screws."""
    scales = weigh(project, workings)
    if not scales.drawers:
        return []
    if not scales.is_known:
        fixed = Mend(text=f"Fix every run, before the first loaded drawer is opened. {CODES}")
        return [no_runner(CheckKind.FIXING, "Fixing of the run", SOURCE).replace(mends=(fixed,))]
    return [_wall(project, workings, scales), *_runner_screws(project)]


def _wall(project: Project, workings: Workings, scales: Scales) -> Finding:
    height = workings.value("unit_height") - workings.value("top_thickness") - FIXING_UNDER_TOP_MM
    moment_nm = scales.net_kgm(len(scales.drawers), filled=True) * GRAVITY_M_S2
    pull = anchor_n(moment_nm, max(height, 1.0))
    count = sum(item.needed for item in manufacture(project, workings).hardware if item.number == "WF")
    torn = ultimate_n(STUD_GRAVITY, WALL_SCREW_MM, WALL_THREAD_MM)
    each = reference_n(STUD_GRAVITY, WALL_SCREW_MM, WALL_THREAD_MM)
    given = (
        Given(name="moment with all drawers open", value=f"{moment_nm:.0f} N·m"),
        Given(name="height of the fixing", value=f"{height:.0f} mm"),
        Given(name="fixings in the order", value=f"{count:.0f}"),
        Given(name="one 6 mm screw, 50 mm of thread in a softwood stud", value=f"{each:.0f} N"),
        Given(name="it would tear out at about", value=f"{torn:.0f} N"),
    )
    advice = Mend(text=f"Fix every run, before the first loaded drawer is opened. {CODES}")
    if not count:
        return Finding(
            kind=CheckKind.FIXING,
            severity=Severity.BROKEN if pull else Severity.NEAR,
            subject="Fixing of the run",
            message=f"Nothing holds the run; with all drawers open it takes {pull:.0f} N at the top to keep it up."
            if pull
            else "Nothing holds the run; it stands by itself with all drawers open, but people lean on it.",
            value=pull,
            unit="N",
            given=given,
            source=SOURCE,
            mends=(advice,),
        )
    needed, there = SAFETY * pull, each * count
    return Finding(
        kind=CheckKind.FIXING,
        severity=judged(needed, there),
        subject="Fixing to the wall",
        message=f"With all drawers open the wall must hold {pull:.0f} N, twice that for safety; {count:.0f} screws "
        f"into softwood studs hold {there:.0f} N. {CODES}",
        value=needed,
        limit=there,
        unit="N",
        formula="2 × tipping moment ÷ height; n × 2850·G²·D × thread",
        given=given,
        source=SOURCE,
        mends=(advice,),
    )


def _runner_screws(project: Project) -> list[Finding]:
    """The runner's screws go into the thin face of a drawer side."""
    side = project.boards.drawer_side_mm
    length = face_screw(side, WOOD_SCREW_LENGTHS_MM)
    least = LEAST_DIAMETERS * RUNNER_SCREW_MM
    if length >= least:
        return []
    return [
        Finding(
            kind=CheckKind.FIXING,
            severity=Severity.UNCHECKED,
            subject="Screws of the runners in the drawer sides",
            message=f"Not checked: {length:g} mm of thread in a {side:g} mm side are less than six diameters "
            f"({least:g} mm), so there is no reference value for pulling them out; they mostly carry across, not out. "
            "The runner maker's data sheet decides.",
            value=float(length),
            limit=least,
            unit="mm",
            given=(Given(name="screw", value=f"{RUNNER_SCREW_MM:g} × {length:g} mm"),),
            source=SOURCE,
            mends=(Mend(text="Use the screws that the maker names, or small bolts through the side."),),
        )
    ]
