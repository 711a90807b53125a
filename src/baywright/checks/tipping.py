"""Whether a run that is not fixed tips over when drawers are open, and what the fixing to the wall must hold.

Laws: masses turn about the line of the front feet, or of the plinth's front board; the worst set of n open drawers is
the n that take most off the righting moment; while the run is being filled only what is open may be loaded, which is
worse; the floor may make it lean. Anchoring is always advised, whatever the figures say.

Furniture that stands free is tested to ASTM F2057-23 (clothing storage, 16 CFR 1261) or EN 14749 and ISO 7170; what is
built in and fixed is outside some of them, and a workshop wall outside most: their principle is used, not their test.
"""

from dataclasses import dataclass

from baywright.checks.beam import GRAVITY_M_S2
from baywright.checks.judging import no_density, no_runner, not_weighed
from baywright.checks.statics import Balance, Mass, balance, force_at_n, tilted, tip_angle_degrees
from baywright.making import manufacture
from baywright.making.drawers import drawer_kinds, drawers_to_make, empty_drawer_kg
from baywright.making.material import mass_kg
from baywright.model.construction import Stand
from baywright.model.finding import CheckKind, Finding, Given, Mend, Severity
from baywright.model.project import Project
from baywright.model.repair import FieldChange
from baywright.workings import Workings

FOOT_SETBACK_MM = 50.0
"""How far behind the front edge the front feet stand; common practice."""
FIXING_UNDER_TOP_MM = 50.0
"""How far under the top the wall fixing sits: the middle of a rail 100 mm wide."""
SOURCE = "plain statics about the front feet; scope of ASTM F2057-23, EN 14749, ISO 7170 noted, their tests not applied"
ADVICE = (
    "Fix every run to the wall or the floor before the first loaded drawer is opened, fill it from below, and open one "
    "drawer at a time until then."
)


@dataclass(frozen=True)
class Drawer:
    """One drawer as the scales see it."""

    place: tuple[int, int]
    empty_kg: float
    loaded_kg: float
    closed_mm: float
    open_mm: float
    height_mm: float

    def mass(self, *, loaded: bool, opened: bool) -> Mass:
        """It as one mass."""
        return Mass(
            self.empty_kg + (self.loaded_kg if loaded else 0.0), self.open_mm if opened else self.closed_mm,
            self.height_mm,
        )  # fmt: skip


@dataclass(frozen=True)
class Scales:
    """The run as masses about its front line."""

    carcass: Mass
    drawers: tuple[Drawer, ...]
    depth_mm: float
    leaning_mm: float
    is_weighed: bool = True
    """Whether the density of all boards is known."""

    @property
    def is_known(self) -> bool:
        """Whether it is known how far every drawer comes out; not so where no runner fits."""
        return all(drawer.open_mm < drawer.closed_mm for drawer in self.drawers)

    @property
    def lean_degrees(self) -> float:
        """By how many degrees it can lean with every drawer loaded and closed before it goes over."""
        masses = [self.carcass, *(drawer.mass(loaded=True, opened=False) for drawer in self.drawers)]
        found: Balance = balance(masses)
        centre_mm = sum(mass.kg * mass.z_mm for mass in masses) / found.kg if found.kg else 0.0
        return tip_angle_degrees(found, centre_mm)

    def moments(self, *, filled: bool) -> tuple[float, list[tuple[float, Drawer]]]:
        """The net moment with every drawer closed, and what opening each takes off it, the worst first; in kg·m. All
        drawers are loaded, or (not `filled`) only those that are open.
        """
        closed_kgm = self._moment(self.carcass)
        takes = []
        for drawer in self.drawers:
            before = self._moment(drawer.mass(loaded=filled, opened=False))
            takes.append((before - self._moment(drawer.mass(loaded=True, opened=True)), drawer))
            closed_kgm += before
        return closed_kgm, sorted(takes, key=lambda take: (-take[0], take[1].place))

    def _moment(self, mass: Mass) -> float:
        return balance(tilted([mass], self.leaning_mm, self.depth_mm)).net_kgm

    def net_kgm(self, opened: int, *, filled: bool) -> float:
        """The net moment with the worst `opened` drawers open; under 0 the run tips."""
        closed_kgm, takes = self.moments(filled=filled)
        return closed_kgm - sum(take for take, _ in takes[:opened])

    def most_open(self, *, filled: bool) -> int:
        """How many drawers may be open at once, whichever they are, without the run tipping."""
        left_kgm, takes = self.moments(filled=filled)
        for number, (take, _) in enumerate(takes):
            left_kgm -= take
            if left_kgm <= 0:
                return number
        return len(takes)


def weigh(project: Project, workings: Workings) -> Scales:
    """The run on the scales; boxes that were not weighed count nothing."""
    made = manufacture(project, workings)
    drawers = drawers_to_make(project)
    kinds = drawer_kinds(project, workings, drawers)
    empty = {kind: empty_drawer_kg(workings, kind) for kind in set(kinds.values())}
    depth = workings.value("upright_depth")
    setback = _setback_mm(project)
    boards = mass_kg(part for part in made.parts if part.number[0] not in "DF")
    boxes, allowance = project.boxes_by_id, project.safety.load_allowance_kg
    base, first = workings.value("base_upper_height"), workings.value("first_row")
    found = []
    for (bay, row), placements in sorted(drawers.items()):
        kind = kinds[bay, row]
        length = workings.at_kind("drawer_outside_depth", kind)
        loaded = sum(
            mass + allowance for p in placements if (mass := boxes[p.box_id].loaded_mass_kg) is not None
        )  # fmt: skip
        height = base + first + workings.value("pitch") * row
        found.append(
            Drawer((bay, row), empty[kind] or 0.0, loaded, length / 2 - setback, -length / 2 - setback, height)
        )
    carcass = Mass(boards or 0.0, depth / 2 - setback, workings.value("unit_height") / 2)
    is_weighed = boards is not None and None not in empty.values()
    return Scales(carcass, tuple(found), max(1.0, depth - setback), project.safety.raised_rear_mm, is_weighed)


def _setback_mm(project: Project) -> float:
    """How far the line about which the run would tip lies behind its front edge."""
    standing = project.construction.standing
    if standing.height_mm <= 0:
        return 0.0
    return standing.plinth_setback_mm if standing.kind is Stand.PLINTH else FOOT_SETBACK_MM


def tipping_findings(project: Project, workings: Workings) -> list[Finding]:
    """How many drawers may be open, filled and while it is being filled; what the wall fixing must hold."""
    scales = weigh(project, workings)
    if not scales.drawers:
        return []
    if not scales.is_weighed:
        return [no_density(CheckKind.TIPPING, "The run", SOURCE)]
    if not scales.is_known:
        return [no_runner(CheckKind.TIPPING, "The run", SOURCE).replace(mends=(Mend(text=ADVICE),))]
    found = [_open(project, scales, filled=filled) for filled in (True, False)]
    if (pieces := len(workings.layout.carcasses_mm)) > 1:
        found.append(_pieces(pieces))
    boxes = project.boxes_by_id
    there = [boxes[p.box_id] for placements in drawers_to_make(project).values() for p in placements]
    unweighed = [box.label for box in there if box.loaded_mass_kg is None]
    if unweighed:
        told = not_weighed(CheckKind.TIPPING, "The run", unweighed, SOURCE)
        found.append(told.replace(message=f"{told.message} They count as nothing above, which is not the safe side."))
    return found


def _pieces(number: int) -> Finding:
    """Carcasses that nothing holds together may each tip by themselves."""
    return Finding(
        kind=CheckKind.TIPPING, severity=Severity.UNCHECKED, subject=f"Each of the {number} carcasses by itself",
        message="Not checked: the figures above hold for all carcasses screwed together; one that stands alone tips "
        "sooner.",
        source=SOURCE, mends=(Mend(text=f"Screw neighbours together and fix each carcass to the wall. {ADVICE}"),),
    )  # fmt: skip


def _open(project: Project, scales: Scales, *, filled: bool) -> Finding:
    everything, most = len(scales.drawers), scales.most_open(filled=filled)
    closed_kgm, takes = scales.moments(filled=filled)
    worst_kgm, worst = takes[0]
    one_nm = (closed_kgm - worst_kgm) * GRAVITY_M_S2
    is_fixed = project.space.existing_wall
    when = "filled" if filled else "while it is being filled (only what is open is loaded)"
    if closed_kgm <= 0:
        message = f"Not fixed and {when}, it tips by itself, with every drawer closed, on a floor that leans so."
    elif most >= everything:
        message = f"Not fixed and {when}, it stands with any and all of its {everything} drawers open."
    else:
        message = (
            f"Not fixed and {when}, it tips when the {most + 1} heaviest of its {everything} drawers are open."
            if most
            else f"Not fixed and {when}, it tips as soon as its heaviest drawer is open."
        )
    # An open drawer's front edge lies as far before its middle as its rear lies behind it.
    front_mm = -worst.open_mm + (worst.closed_mm - worst.open_mm) / 2
    if one_nm > 0:
        more_kg = force_at_n(one_nm, front_mm) / GRAVITY_M_S2
        message += f" With the heaviest one open, {more_kg:.0f} kg more on its front edge tip the run."
    if is_fixed:
        message += " It is to be fixed to the wall, which is what holds it."
    severity = Severity.KEPT if most >= everything else Severity.NEAR if is_fixed else Severity.BROKEN
    mends: tuple[Mend, ...] = ()
    if severity is Severity.BROKEN:
        fix = FieldChange(path="space.existing_wall", value=True)
        mends = (Mend(text="Stand it against a wall and fix it there.", changes=(fix,)),)
    return Finding(
        kind=CheckKind.TIPPING, severity=severity, subject="The run, unfixed" if is_fixed else "The run, standing free",
        message=message, value=float(most), limit=float(everything), unit="drawers open",
        formula="Σ m·x behind the front line > Σ m·x before it, turned by the lean of the floor",
        given=(
            Given(name="boards", value=f"{scales.carcass.kg:.0f} kg, {scales.carcass.x_mm:.0f} mm behind the line"),
            Given(name="drawers with boxes", value=f"{sum(d.empty_kg + d.loaded_kg for d in scales.drawers):.0f} kg"),
            Given(name="floor leans forward", value=f"{scales.leaning_mm:g} mm over the depth"),
            Given(name="leans, all closed, before it tips", value=f"{scales.lean_degrees:.1f}°"),
            Given(name="left with one open", value=f"{one_nm:.0f} N·m"),
        ),
        source=SOURCE, drawer=worst.place,
        mends=(*mends, Mend(text=ADVICE)),
    )  # fmt: skip
