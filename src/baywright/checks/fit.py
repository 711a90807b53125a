"""Whether drawers still go into their bays when boards are not quite as thick as they should be.

Laws: a bay's clear width is set when the run is put together; what differs from drawer to drawer is the thickness of
its two sides and its rails' length, and the runner's permitted side clearance takes up only so much. Worst case adds
all deviations; the likely case is their root-sum-square. A measured batch deviates by its own readings; of a board that
nothing is known of, nothing is claimed.
"""

from baywright.checks.thickness import thickness
from baywright.checks.tolerance import Deviation, Range, likely_case, worst_case
from baywright.making.material import material_of
from baywright.model.finding import CheckKind, Finding, Given, Mend, Severity
from baywright.model.project import Project
from baywright.model.stock import BoardRole
from baywright.workings import Workings

CUT_MM = 0.5
"""How exactly a rail or a base is cut to length in a small workshop; common practice."""
CLEARANCE_OVER_MM, CLEARANCE_UNDER_MM = 0.8, 0.0
"""What side-mounted runners permit over and under their nominal side clearance, a side; from memory, 90 %."""
HOW_TO_MEASURE = (
    "Measure the sides' thickness with a calliper, at eight places about 50 mm from the edges (EN 324-1), and enter "
    "the readings; measure each bay's clear width at front and rear once it stands, and cut the rails to that; thin "
    "shims behind a runner take up what is over."
)
NOT_ALL_AT_ONCE = " Even the likely case is outside: do not cut all drawers at once."
CLEARANCE = "clearance of side-mounted runners +0.8/−0 mm a side; from memory, 90 %"
SUBJECT = "Drawers in their bays"


def deviations(project: Project) -> tuple[list[Deviation], str] | None:
    """What makes the room beside a drawer differ from its nominal (clear width less the drawer's outside width), and
    where the boards' tolerance comes from; None where it is not known.
    """
    side = thickness(project, BoardRole.DRAWER_SIDE)
    if side is None:
        return None
    found = [
        Deviation("clear width of the bay", CUT_MM, CUT_MM),
        Deviation("length of the drawer's rails", CUT_MM, CUT_MM, times=-1),
        Deviation("thickness of a drawer side", side.under_mm, side.over_mm, times=-2),
    ]
    return found, side.source


def tolerance_findings(project: Project, workings: Workings) -> list[Finding]:
    """Whether worst and likely case stay within what the runners permit."""
    if workings.value("runner_length") <= 0:
        return []
    known = deviations(project)
    if known is None:
        name = material_of(project, BoardRole.DRAWER_SIDE).name
        return [Finding(
            kind=CheckKind.TOLERANCE, severity=Severity.UNCHECKED, subject=SUBJECT, source=CLEARANCE,
            message=f"It is not known how exactly “{name}” keeps to its thickness.", mends=(Mend(text=HOW_TO_MEASURE),),
        )]  # fmt: skip
    found, source = known
    worst, likely = worst_case(found), likely_case(found)
    least, most = 0.0 - 2 * CLEARANCE_UNDER_MM, 2 * CLEARANCE_OVER_MM
    fits_worst = least <= worst.least_mm and worst.most_mm <= most
    fits_likely = least <= likely.least_mm and likely.most_mm <= most
    message = (
        f"Beside the drawers the room may differ by {worst.least_mm:+.1f} to {worst.most_mm:+.1f} mm at worst, likely "
        f"by {likely.least_mm:+.1f} to {likely.most_mm:+.1f} mm; the runners permit {least:g} to {most:+.1f} mm over "
        f"both sides. {'All is within.' if fits_worst else 'Measure before the rails are cut.'}"
    ).replace("-", "−")
    return [Finding(
        kind=CheckKind.TOLERANCE, severity=Severity.KEPT if fits_worst else Severity.NEAR, subject=SUBJECT,
        message=message, value=worst.most_mm - worst.least_mm, limit=most - least, unit="mm",
        formula="worst: Σ|d|; likely: √Σd²",
        given=(
            _room(workings, worst),
            *(Given(name=d.name, value=f"−{d.under_mm:.2f}/+{d.over_mm:.2f} mm, {d.times:+g} ×") for d in found),
        ),
        source=f"{source}; {CLEARANCE}",
        mends=(Mend(text=HOW_TO_MEASURE + ("" if fits_likely else NOT_ALL_AT_ONCE)),),
    )]  # fmt: skip


def _room(workings: Workings, worst: Range) -> Given:
    """What is left for both runners, from the least to the most."""
    nominal = 2 * workings.value("runner_thickness")
    least, most = nominal + worst.least_mm, nominal + worst.most_mm
    return Given(name="room for both runners", value=f"{least:.1f} to {most:.1f} mm, nominal {nominal:.1f} mm")
