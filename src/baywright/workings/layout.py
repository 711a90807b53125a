"""Where every bay and upright stands along the wall: the one place that lays them side by side.

Laws: all x in mm from where the leftmost upright's outer face stands when nothing is in its way, growing to the right;
the space's left end lies one run's end to the left of it: the top's side overhang, and an end panel where there is
one. Each section of the run has such ends. Bays stand as far left as they can; a zone that is to be
kept clear interrupts the run, and the bays go on behind it as a section with end uprights of its own. With shared
uprights two bays of a section share the one between them, which is as high as the higher of the two. A bay under a low
ceiling, or under a zone that bays must end below, has as many rows as fit there.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise

from baywright.model.space import Space, Zone, ZoneEffect


@dataclass(frozen=True)
class BayShape:
    """What a bay is to be: made for boxes so wide, with a clear width, and with rows of its own (None: the run's)."""

    box_width_mm: float
    clear_mm: float
    own_rows: int | None = None


@dataclass(frozen=True)
class Place:
    """The clear room of a bay between two uprights."""

    left_mm: float
    clear_mm: float
    rows: int

    @property
    def right_mm(self) -> float:
        """Its right end."""
        return self.left_mm + self.clear_mm


@dataclass(frozen=True)
class BayPlace(Place):
    """A drawer bay; `number` counts from 0 at the left. `has_own_rows` where they are not the run's."""

    number: int
    box_width_mm: float
    section: int
    has_own_rows: bool = False
    zones: tuple[Zone, ...] = ()
    """Zones behind this bay that its drawers must stay in front of."""


@dataclass(frozen=True)
class UprightPlace:
    """An upright by its left face, and its hole rows."""

    left_mm: float
    rows: int


@dataclass(frozen=True)
class PanelPlace:
    """An end panel: its two faces, the hole rows of the upright that it covers, and the bay beside that (the number of
    drawer bays for a shelf bay).
    """

    left_mm: float
    right_mm: float
    rows: int
    bay: int
    is_left: bool


@dataclass(frozen=True)
class Stretch:
    """Neighbouring bays of one height: what one top lies on. `bays` are their numbers; a shelf bay may belong to it."""

    left_mm: float
    right_mm: float
    rows: int
    bays: tuple[int, ...]
    has_shelf: bool = False


@dataclass(frozen=True)
class Layout:
    """Bays, uprights and what they carry, from left to right."""

    bays: tuple[BayPlace, ...]
    shelf: Place | None
    uprights: tuple[UprightPlace, ...]
    carcasses_mm: tuple[tuple[float, float], ...]
    """Left and right end of each carcass: a section, or with own uprights a bay."""
    stretches: tuple[Stretch, ...]
    sections: int
    gaps_mm: float
    """Wall that is left out to the left of bays, all together."""
    bays_end_mm: float
    """The outer face of the last drawer bay's right upright."""
    closed_mm: float
    """Wall to the right of the bays that a zone to be kept clear closes to them."""
    wall_left_mm: float
    """The left end of the space."""
    end_panels: tuple[PanelPlace, ...] = ()

    @property
    def length_mm(self) -> float:
        """From x = 0 to the outer face of the last upright."""
        return self.carcasses_mm[-1][1] if self.carcasses_mm else 0.0


@dataclass(frozen=True)
class Rules:
    """What a layout is made by; `rows_under` tells how many rows fit under a height over the floor, in mm."""

    space: Space
    upright_mm: float
    left_end_mm: float
    """How far end panel and top reach beyond the left upright of a section."""
    right_end_mm: float
    left_panel_mm: float
    """Thickness of the end panel at the left of a section; 0 where there is none."""
    right_panel_mm: float
    own_uprights: bool
    room_mm: float
    """Length that the run may have at most."""
    rows: int
    rows_under: Callable[[float], int]

    def keep_clear(self) -> list[tuple[float, float]]:
        """The stretches of x that no carcass or top may reach into."""
        return [
            (zone.left_mm - self.left_end_mm, zone.right_mm - self.left_end_mm)
            for zone in self.space.zones
            if zone.effect is ZoneEffect.KEEP_CLEAR
        ]


@dataclass
class _Standing:
    """A clear room with its carcass: outer faces of its uprights."""

    left_mm: float
    right_mm: float
    clear_left_mm: float
    clear_mm: float
    section: int
    rows: int


def lay_out(shapes: Sequence[BayShape], rules: Rules, shelf_clear_mm: float = 0.0) -> Layout:
    """The layout of those drawer bays and, where `shelf_clear_mm` is over 0, a shelf bay after them."""
    standing: list[_Standing] = []
    gaps = 0.0
    for shape in shapes:
        gaps += _stand(standing, shape.clear_mm, rules)
        standing[-1].rows = _rows(standing[-1], rules, shape.own_rows)
    bays_end = standing[-1].right_mm if standing else 0.0
    drawers = [_bay(number, s, shape, rules) for number, (s, shape) in enumerate(zip(standing, shapes, strict=True))]
    shelf = None
    if shelf_clear_mm > 0:
        _stand(standing, shelf_clear_mm, rules)
        last = standing[-1]
        last.rows = _rows(last, rules, None)
        shelf = Place(last.clear_left_mm, last.clear_mm, last.rows)
    return Layout(
        bays=tuple(drawers),
        shelf=shelf,
        uprights=_uprights(standing, rules),
        carcasses_mm=_carcasses(standing, rules),
        stretches=_stretches(standing, rules, len(drawers)),
        sections=standing[-1].section + 1 if standing else 0,
        gaps_mm=gaps,
        closed_mm=rules.room_mm - _closed_from(bays_end, rules),
        bays_end_mm=bays_end,
        wall_left_mm=-rules.left_end_mm,
        end_panels=_end_panels(standing, rules),
    )


def bays_that_fit(shapes: Sequence[BayShape], rules: Rules, kept_mm: float, most: int) -> int:
    """How many bays of those shapes, going on with the last one, the wall holds when `kept_mm` stay free at the right
    end of the room; at most `most`.
    """
    standing: list[_Standing] = []
    for number in range(most):
        _stand(standing, shapes[min(number, len(shapes) - 1)].clear_mm, rules)
        if standing[-1].right_mm > rules.room_mm - kept_mm + 1e-9:
            return number
    return most


def _closed_from(x_mm: float, rules: Rules) -> float:
    """Where, right of `x_mm`, the wall is closed to the run: the next zone to be kept clear, else the room's end."""
    lefts = [left - rules.right_end_mm for left, _ in rules.keep_clear()]
    return min([rules.room_mm, *(left for left in lefts if left >= x_mm - 1e-9)])


def _stand(standing: list[_Standing], clear_mm: float, rules: Rules) -> float:
    """Stand one more bay as far left as it can; returns the gap that this leaves before it."""
    upright = rules.upright_mm
    before = standing[-1] if standing else None
    start = before.right_mm if before else 0.0
    left = start - (upright if before and not rules.own_uprights else 0.0)
    section = before.section if before else 0
    moved = True
    joins = before is not None
    while moved:
        moved = False
        right = left + clear_mm + 2 * upright
        for zone_left, zone_right in rules.keep_clear():
            if zone_left < right + rules.right_end_mm - 1e-9 and left - rules.left_end_mm + 1e-9 < zone_right:
                left = zone_right + rules.left_end_mm
                joins, moved = False, True
    if before is not None and not joins:
        section += 1
    gap = 0.0 if joins else left - start
    standing.append(_Standing(left, left + clear_mm + 2 * upright, left + upright, clear_mm, section, rules.rows))
    return gap


def _rows(standing: _Standing, rules: Rules, own: int | None) -> int:
    wanted = rules.rows if own is None else own
    space = rules.space
    if not space.ceiling and not any(zone.effect is ZoneEffect.END_BELOW for zone in space.zones):
        return wanted
    # The top lies over uprights and end panels and stands out beyond them by the overhang at most.
    limit = space.height_limit_between(standing.left_mm, standing.right_mm + rules.left_end_mm + rules.right_end_mm)
    return min(wanted, rules.rows_under(limit)) if limit < space.height_limit_mm else wanted


def _bay(number: int, standing: _Standing, shape: BayShape, rules: Rules) -> BayPlace:
    left = standing.clear_left_mm + rules.left_end_mm
    right = left + standing.clear_mm
    zones = tuple(
        zone
        for zone in rules.space.zones
        if zone.effect is ZoneEffect.STAY_IN_FRONT and zone.left_mm < right - 1e-9 and left + 1e-9 < zone.right_mm
    )
    return BayPlace(
        left_mm=standing.clear_left_mm,
        clear_mm=standing.clear_mm,
        rows=standing.rows,
        number=number,
        box_width_mm=shape.box_width_mm,
        section=standing.section,
        has_own_rows=standing.rows != rules.rows,
        zones=zones,
    )


def _sections(standing: list[_Standing]) -> list[list[_Standing]]:
    return [list(members) for _, members in groupby(standing, key=lambda s: s.section)]


def _uprights(standing: list[_Standing], rules: Rules) -> tuple[UprightPlace, ...]:
    upright = rules.upright_mm
    found: list[UprightPlace] = []
    for section in _sections(standing):
        if rules.own_uprights:
            for s in section:
                found += [UprightPlace(s.left_mm, s.rows), UprightPlace(s.right_mm - upright, s.rows)]
            continue
        found.append(UprightPlace(section[0].left_mm, section[0].rows))
        found += [UprightPlace(b.left_mm, max(a.rows, b.rows)) for a, b in pairwise(section)]
        found.append(UprightPlace(section[-1].right_mm - upright, section[-1].rows))
    return tuple(found)


def _end_panels(standing: list[_Standing], rules: Rules) -> tuple[PanelPlace, ...]:
    found, done = [], 0
    for section in _sections(standing):
        first, last = section[0], section[-1]
        if left := rules.left_panel_mm:
            found.append(PanelPlace(first.left_mm - left, first.left_mm, first.rows, done, is_left=True))
        done += len(section)
        if right := rules.right_panel_mm:
            found.append(PanelPlace(last.right_mm, last.right_mm + right, last.rows, done - 1, is_left=False))
    return tuple(found)


def _carcasses(standing: list[_Standing], rules: Rules) -> tuple[tuple[float, float], ...]:
    if rules.own_uprights:
        return tuple((s.left_mm, s.right_mm) for s in standing)
    return tuple((section[0].left_mm, section[-1].right_mm) for section in _sections(standing))


def _stretches(standing: list[_Standing], rules: Rules, drawer_bays: int) -> tuple[Stretch, ...]:
    numbers = {id(s): number for number, s in enumerate(standing)}
    found: list[Stretch] = []
    for section in _sections(standing):
        pieces = [list(members) for _, members in groupby(section, key=lambda s: s.rows)]
        for index, members in enumerate(pieces):
            left, right = members[0].left_mm, members[-1].right_mm
            if not rules.own_uprights:
                # The upright at a step carries the higher top; the lower one ends at its face.
                if index and pieces[index - 1][0].rows > members[0].rows:
                    left += rules.upright_mm
                if index + 1 < len(pieces) and pieces[index + 1][0].rows > members[0].rows:
                    right -= rules.upright_mm
            bays = tuple(numbers[id(s)] for s in members if numbers[id(s)] < drawer_bays)
            found.append(Stretch(left, right, members[0].rows, bays, len(bays) < len(members)))
    return tuple(found)
