"""Whether a run that is not fixed tips over when drawers are open, and what the fixing to the wall must hold.

Laws: masses turn about the line of the front feet, or of the plinth's front board; the worst set of n open drawers is
the n that take most off the righting moment; while the run is being filled only what is open may be loaded, which is
worse; the floor may make it lean. Carcasses that meet are assumed to be bolted together, as the hardware order has it;
how the worst of them stands before that is told too. Sections with a gap between them each stand alone. Anchoring is
always advised, whatever the figures say.
"""

from baywright.checks.beam import GRAVITY_M_S2
from baywright.checks.judging import no_density, no_runner, not_weighed
from baywright.checks.statics import force_at_n
from baywright.checks.threshold import SOURCE as THRESHOLD_SOURCE
from baywright.checks.threshold import scope, threshold_nm
from baywright.checks.weighing import Scales, Weighed, weigh
from baywright.making.drawers import drawers_to_make
from baywright.model.caution import FIX_FIRST
from baywright.model.finding import CheckKind, Finding, Given, Mend, Severity
from baywright.model.project import Project
from baywright.model.repair import FieldChange
from baywright.workings import Workings

SOURCE = "Plain statics about the front feet"


def tipping_findings(project: Project, workings: Workings) -> list[Finding]:
    """How many drawers may be open, filled and while it is being filled; what the wall fixing must hold."""
    weighed = weigh(project, workings)
    sections = [(weighed.worst_section(filled=filled), filled) for filled in (True, False)]
    advice = (Mend(text=FIX_FIRST),)
    if not weighed.drawers:
        return []
    if not weighed.is_weighed:
        told = no_density(CheckKind.TIPPING, "The run", SOURCE)
        return [told.replace(mends=(*told.mends, *advice))]
    if not weighed.is_known:
        told = no_runner(CheckKind.TIPPING, "The run", SOURCE)
        return [told.replace(mends=(*told.mends, *advice))]
    found = [
        _section(project, workings, weighed, section, filled=filled)
        for section, filled in sections
        if section is not None
    ]
    if (alone := weighed.worst_carcass) is not None:
        found.append(_alone(project, alone, len(weighed.carcasses)))
    boxes = project.boxes_by_id
    there = [boxes[p.box_id] for placements in drawers_to_make(project).values() for p in placements]
    if unweighed := [box.label for box in there if box.loaded_mass_kg is None]:
        told = not_weighed(CheckKind.TIPPING, "The run", unweighed, SOURCE)
        message = f"{told.message} They count as nothing in the other figures of tipping, which is not the safe side."
        found.append(told.replace(message=message))
    return found


def _section(project: Project, workings: Workings, weighed: Weighed, scales: Scales, *, filled: bool) -> Finding:
    """The section that tips soonest; with the carcasses of a section bolted together."""
    everything, most = len(scales.drawers), scales.most_open(filled=filled)
    is_fixed = project.space.existing_wall
    several, is_bolted = len(weighed.sections) > 1, len(weighed.carcasses) > len(weighed.sections)
    what = f"{scales.words()}, the section that tips soonest," if several else "The run"
    what += " bolted together," if is_bolted and len(scales.bays) > 1 else "" if several else ","
    severity = Severity.KEPT if most >= everything else Severity.NEAR if is_fixed else Severity.BROKEN
    mends: tuple[Mend, ...] = ()
    if severity is Severity.BROKEN:
        fix = FieldChange(path="space.existing_wall", value=True)
        mends = (Mend(text="Stand it against a wall and fix it there.", changes=(fix,)),)
    others = [other for other in weighed.sections if other is not scales and other.drawers]
    return Finding(
        kind=CheckKind.TIPPING, severity=severity,
        subject=f"{what.removesuffix(',')}, {'unfixed' if is_fixed else 'standing free'}, "
        f"{'filled' if filled else 'being filled'}",
        message=_judgement(scales, filled=filled) + _edge(scales, filled=filled)
        + (" It is to be fixed to the wall, which is what holds it." if is_fixed else ""),
        value=float(most), limit=float(everything), unit="drawers open",
        formula="Σ m·x behind the front line > Σ m·x before it, turned by the lean of the floor",
        given=(
            *_given(scales, filled=filled),
            *((Given(name="assumed", value="carcasses that meet are bolted together, as the order has it"),)
              if is_bolted else ()),
            *((Given(name="other sections", value=_others(others, filled=filled)),) if others else ()),
            Given(name="scope", value=scope(
                workings.value("unit_height"), scales.boards_kg + sum(d.empty_kg for d in scales.drawers),
                is_fixed=is_fixed,
            )),
        ),
        source=f"{SOURCE}; {THRESHOLD_SOURCE}", drawer=_heaviest(scales, filled=filled),
        box_ids=_inside(project, _heaviest(scales, filled=filled)),
        mends=(*mends, Mend(text=FIX_FIRST)),
    )  # fmt: skip


def _alone(project: Project, scales: Scales, carcasses: int) -> Finding:
    """The worst carcass before it is bolted to its neighbours."""
    everything, most = len(scales.drawers), scales.most_open(filled=False)
    filled = scales.most_open(filled=True)
    is_fixed = project.space.existing_wall
    stands = most >= everything
    bolt = Mend(
        text=f"Bolt {scales.words(capital=False)} to its neighbours before its drawers are hung in"
        + (", and fix it to the wall." if is_fixed else ", and fix the run to a wall.")
    )
    more = "" if stands else f" Once filled it tips {_when(scales, filled=True)}." if filled != most else ""
    return Finding(
        kind=CheckKind.TIPPING, severity=Severity.KEPT if stands else Severity.NEAR,
        subject=f"{scales.words()} by itself, the worst of {carcasses} carcasses",
        message=_judgement(scales, filled=False) + more + _edge(scales, filled=False),
        value=float(most), limit=float(everything), unit="drawers open",
        formula="Σ m·x behind the front line > Σ m·x before it, turned by the lean of the floor",
        given=(
            *_given(scales, filled=False),
            Given(name="assumed", value="nothing holds it, neither a neighbour nor a wall"),
        ),
        source=f"{SOURCE}; {THRESHOLD_SOURCE}", drawer=_heaviest(scales, filled=False),
        box_ids=_inside(project, _heaviest(scales, filled=False)),
        mends=(bolt, Mend(text=FIX_FIRST)),
    )  # fmt: skip


def _judgement(scales: Scales, *, filled: bool) -> str:
    state = "Not fixed and filled" if filled else "Not fixed, while it is being filled (only what is open is loaded)"
    everything, most = len(scales.drawers), scales.most_open(filled=filled)
    if scales.net_kgm(0, filled=filled) <= 0:
        return f"{state}, it tips by itself, with every drawer closed, on a floor that leans so."
    if most >= everything:
        return f"{state}, it stands with {_all(everything)} open."
    return f"{state}, it tips {_when(scales, filled=filled)}."


def _all(count: int) -> str:
    return "its drawer" if count == 1 else "both its drawers" if count == 2 else f"any and all of its {count} drawers"


def _when(scales: Scales, *, filled: bool) -> str:
    everything, most = len(scales.drawers), scales.most_open(filled=filled)
    if most >= everything:
        return "with none open"
    if everything == 1:
        return "as soon as its drawer is open"
    return f"when the {most + 1} heaviest of its {everything} drawers are open" if most else (
        "as soon as its heaviest drawer is open"
    )  # fmt: skip


def _edge(scales: Scales, *, filled: bool) -> str:
    """How much more on the front edge of one open drawer makes it tip."""
    force = _edge_n(scales, filled=filled)
    if force <= 0:
        return ""
    which = "it" if len(scales.drawers) == 1 else "the heaviest one"
    return f" With {which} open, {force / GRAVITY_M_S2:.0f} kg more on its front edge ({force:.0f} N) tip it."


def _edge_n(scales: Scales, *, filled: bool) -> float:
    closed_kgm, takes = scales.moments(filled=filled)
    worst_kgm, worst = takes[0]
    return force_at_n((closed_kgm - worst_kgm) * GRAVITY_M_S2, worst.front_mm)


def _heaviest(scales: Scales, *, filled: bool) -> tuple[int, int]:
    return scales.moments(filled=filled)[1][0][1].place


def _inside(project: Project, place: tuple[int, int]) -> tuple[str, ...]:
    """The boxes in a drawer, so that a finding can be seen on the elevation."""
    return tuple(placement.box_id for placement in drawers_to_make(project)[place])


def _given(scales: Scales, *, filled: bool) -> tuple[Given, ...]:
    one, everything = (
        scales.net_kgm(count, filled=filled) * GRAVITY_M_S2 for count in (1, len(scales.drawers))
    )  # fmt: skip
    front, highest = (max(getattr(d, name) for d in scales.drawers) for name in ("front_mm", "height_mm"))
    return (
        Given(name="boards", value=f"{scales.boards_kg:.0f} kg, shelves and top empty"),
        Given(name="drawers with boxes", value=f"{scales.drawers_kg:.0f} kg"),
        Given(name="front line to rear", value=f"{scales.depth_mm:.0f} mm"),
        Given(name="floor leans forward", value=f"{scales.leaning_mm:g} mm over the depth"),
        Given(name="leans, filled and closed, before it tips", value=f"{scales.lean_degrees:.1f}°"),
        Given(name="left with one open", value=_moment(one)),
        Given(name="left with all open", value=_moment(everything)),
        Given(name="threshold of the 2022 method, for comparison", value=f"{threshold_nm(front, highest):.0f} N·m"),
    )


def _moment(newton_metres: float) -> str:
    return f"{newton_metres:.0f} N·m".replace("-", "−")


def _others(others: list[Scales], *, filled: bool) -> str:
    return "; ".join(
        f"{other.words(capital=False)}: {other.most_open(filled=filled)} of {len(other.drawers)} may be open"
        for other in others
    )
