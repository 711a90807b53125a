"""The run on the scales: what stands by itself, with its boards and drawers as masses about its front line.

Laws: a carcass stands by itself until it is bolted to its neighbours; carcasses that meet are then one section, and
sections with a gap between them never hold each other. Boards count where they lie: the top over everything and as far
forward as it stands out, back and rails at the rear; what stands on shelves and on the top, and the hardware, is left
out, for it would hold the run down. Boxes that were not weighed count nothing.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from baywright.checks.statics import Balance, Mass, balance, tilted, tip_angle_degrees
from baywright.making.drawers import drawer_kinds, drawers_to_make, empty_drawer_kg
from baywright.making.frame import SHELF_BAY, Frame, frame_of
from baywright.making.listing import listing_of
from baywright.making.shares import pieces_in, reaches
from baywright.model.construction import Stand
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.model.stock import BoardRole
from baywright.workings import Workings

FOOT_SETBACK_MM = 50.0
"""How far behind the front edge the front feet stand; common practice."""
_IN_DRAWERS = frozenset({BoardRole.DRAWER_SIDE, BoardRole.DRAWER_BOTTOM, BoardRole.FRONT})
_AT_THE_REAR = frozenset({BoardRole.BACK, BoardRole.BRACE})


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

    @property
    def front_mm(self) -> float:
        """How far before the feet's line its front edge is when it is open: as far before its middle as its rear lies
        behind it.
        """
        return -self.open_mm + (self.closed_mm - self.open_mm) / 2


Moments = tuple[float, tuple[tuple[float, Drawer], ...]]
"""A net moment in kg·m with every drawer closed, and what opening each takes off it, the worst first."""


@dataclass(frozen=True)
class Scales:
    """What stands in one piece, as masses about its front line."""

    bays: tuple[int, ...]
    """Its bays from 0; the shelf bay is -1."""
    boards: tuple[Mass, ...]
    drawers: tuple[Drawer, ...]
    depth_mm: float
    """From the front line to the rear."""
    leaning_mm: float

    def words(self, *, capital: bool = True) -> str:
        """Its drawer bays for people."""
        numbers = [bay + 1 for bay in self.bays if bay != SHELF_BAY]
        joined = " and " if len(numbers) == 2 else " to "
        words = (
            f"bays {numbers[0]}{joined}{numbers[-1]}" if len(numbers) > 1 else f"bay {numbers[0]}" if numbers else ""
        )
        return words.capitalize() if capital else words

    @property
    def boards_kg(self) -> float:
        """Mass of its boards without the drawers."""
        return sum(mass.kg for mass in self.boards)

    @property
    def drawers_kg(self) -> float:
        """Mass of its drawers with what is in them."""
        return sum(drawer.empty_kg + drawer.loaded_kg for drawer in self.drawers)

    @property
    def is_known(self) -> bool:
        """Whether it is known how far every drawer comes out; not so where no runner fits."""
        return all(drawer.open_mm < drawer.closed_mm for drawer in self.drawers)

    @property
    def lean_degrees(self) -> float:
        """By how many degrees it can lean with every drawer loaded and closed before it goes over."""
        masses = [*self.boards, *(drawer.mass(loaded=True, opened=False) for drawer in self.drawers)]
        found: Balance = balance(masses)
        centre_mm = sum(mass.kg * mass.z_mm for mass in masses) / found.kg if found.kg else 0.0
        return tip_angle_degrees(found, centre_mm)

    def moments(self, *, filled: bool) -> Moments:
        """The net moment with every drawer closed, and what opening each takes off it, the worst first; in kg·m. All
        drawers are loaded, or (not `filled`) only those that are open.
        """
        return self._all_filled if filled else self._being_filled

    @cached_property
    def _all_filled(self) -> Moments:
        return self._moments(filled=True)

    @cached_property
    def _being_filled(self) -> Moments:
        return self._moments(filled=False)

    def _moments(self, *, filled: bool) -> Moments:
        closed_kgm = sum(self._moment(mass) for mass in self.boards)
        takes = []
        for drawer in self.drawers:
            before = self._moment(drawer.mass(loaded=filled, opened=False))
            takes.append((before - self._moment(drawer.mass(loaded=True, opened=True)), drawer))
            closed_kgm += before
        return closed_kgm, tuple(sorted(takes, key=lambda take: (-take[0], take[1].place)))

    def _moment(self, mass: Mass) -> float:
        return balance(tilted([mass], self.leaning_mm, self.depth_mm)).net_kgm

    def net_kgm(self, opened: int, *, filled: bool) -> float:
        """The net moment with the worst `opened` drawers open; under 0 it tips."""
        closed_kgm, takes = self.moments(filled=filled)
        return closed_kgm - sum(take for take, _ in takes[:opened])

    def most_open(self, *, filled: bool) -> int:
        """How many drawers may be open at once, whichever they are, without its tipping."""
        left_kgm, takes = self.moments(filled=filled)
        for number, (take, _) in enumerate(takes):
            left_kgm -= take
            if left_kgm <= 0:
                return number
        return len(takes)

    def standing(self, *, filled: bool) -> tuple[float, float]:
        """How well it stands; what tips soonest is least: how many drawers may be open, endless where all may; then
        what is left with one open.
        """
        most = self.most_open(filled=filled)
        return (float("inf") if most >= len(self.drawers) else most), self.net_kgm(1, filled=filled)


@dataclass(frozen=True)
class Weighed:
    """The whole run: each carcass as it stands alone, and each section with its carcasses bolted together."""

    carcasses: tuple[Scales, ...]
    sections: tuple[Scales, ...]
    is_weighed: bool
    """Whether the density of all its boards is known."""

    @property
    def drawers(self) -> int:
        """How many drawers there are."""
        return sum(len(section.drawers) for section in self.sections)

    @property
    def is_known(self) -> bool:
        """Whether it is known how far every drawer comes out."""
        return all(section.is_known for section in self.sections)

    @property
    def worst_carcass(self) -> Scales | None:
        """The carcass with drawers that tips soonest, alone and being filled; None where each is a section."""
        alone = [carcass for carcass in self.carcasses if carcass.drawers]
        if len(self.carcasses) == len(self.sections) or not alone:
            return None
        return min(alone, key=lambda carcass: carcass.standing(filled=False))

    def worst_section(self, *, filled: bool) -> Scales | None:
        """The section with drawers that tips soonest; None without drawers."""
        return min((s for s in self.sections if s.drawers), key=lambda s: s.standing(filled=filled), default=None)


def weigh(project: Project, workings: Workings) -> Weighed:
    """The run on the scales."""
    frame = frame_of(project, workings)
    kinds = drawer_kinds(project, workings, drawers_to_make(project))
    empty = {kind: empty_drawer_kg(workings, kind) for kind in set(kinds.values())}
    drawers = _drawers(project, workings, {kind: kg or 0.0 for kind, kg in empty.items()})
    parts = [part for part in listing_of(project, workings).parts if part.role not in _IN_DRAWERS]
    boards = _boards(project, workings, frame, parts)
    carcasses, sections = (
        tuple(
            _scales(project, workings, tuple(bay for bay in boards if bay in _within(frame, ends)), boards, drawers)
            for ends in pieces
        )
        for pieces in (frame.carcasses_mm, frame.sections_mm)
    )
    is_weighed = None not in empty.values() and all(part.mass_kg is not None for part in parts)
    return Weighed(carcasses, sections, is_weighed)


def _within(frame: Frame, ends: tuple[float, float]) -> tuple[int, ...]:
    return frame.bays_over(*ends)


def _scales(
    project: Project, workings: Workings, bays: tuple[int, ...], boards: dict[int, list[Mass]], drawers: list[Drawer]
) -> Scales:
    depth = max(1.0, workings.value("upright_depth") - front_line_mm(project))
    return Scales(
        bays, tuple(mass for bay in bays for mass in boards[bay]),
        tuple(drawer for drawer in drawers if drawer.place[0] in bays), depth, project.safety.raised_rear_mm,
    )  # fmt: skip


def _drawers(project: Project, workings: Workings, empty_kg: dict[str, float]) -> list[Drawer]:
    drawers = drawers_to_make(project)
    kinds = drawer_kinds(project, workings, drawers)
    boxes, allowance = project.boxes_by_id, project.safety.load_allowance_kg
    lowest, setback = workings.value("base_upper_height") + workings.value("first_row"), front_line_mm(project)
    found = []
    for (bay, row), placements in sorted(drawers.items()):
        length = workings.at_kind("drawer_outside_depth", kinds[bay, row])
        masses = [boxes[p.box_id].loaded_mass_kg for p in placements]
        loaded = sum(mass + allowance for mass in masses if mass is not None)
        height = lowest + workings.value("pitch") * row
        found.append(
            Drawer((bay, row), empty_kg[kinds[bay, row]], loaded, length / 2 - setback, -length / 2 - setback, height)
        )
    return found


def _boards(project: Project, workings: Workings, frame: Frame, parts: Sequence[Part]) -> dict[int, list[Mass]]:
    """The boards of each bay, each part as one mass at its place."""
    bays = reaches(frame)
    found: dict[int, list[Mass]] = {bay: [] for bay in bays}
    for part in parts:
        x_mm, z_mm = _place(project, workings, part)
        for bay, pieces in pieces_in(part, bays).items():
            if pieces > 0:
                found[bay].append(Mass(pieces * (part.mass_kg or 0.0), x_mm, z_mm))
    return found


def _place(project: Project, workings: Workings, part: Part) -> tuple[float, float]:
    """Where the middle of a board lies, behind the front line and over the floor."""
    depth, height = workings.value("upright_depth"), workings.value("unit_height")
    line, base = front_line_mm(project), workings.value("base_upper_height")
    if part.role is BoardRole.TOP:
        return (depth - project.construction.top.overhang_front_mm) / 2 - line, height - part.thickness_mm / 2
    if part.role is BoardRole.BASE:
        return depth / 2 - line, base - part.thickness_mm / 2
    if part.role is BoardRole.PLINTH:
        return depth / 2 - line, project.construction.standing.height_mm / 2
    if part.role in _AT_THE_REAR:
        return depth - part.thickness_mm / 2 - line, (base + height) / 2
    return depth / 2 - line, (base + height) / 2


def front_line_mm(project: Project) -> float:
    """How far behind the run's front edge the line lies about which it would tip: that of the front feet, of the
    plinth's front board, or the front edge itself.
    """
    standing = project.construction.standing
    if standing.height_mm <= 0:
        return 0.0
    return standing.plinth_setback_mm if standing.kind is Stand.PLINTH else FOOT_SETBACK_MM
