"""What a drawer takes: one box, or a row or a file of two or three, turned or not, and how heavy they may be.

Laws: a shared drawer is a row (side by side) or a file (one behind another), never a grid, and every box in it must be
allowed as many. A box is turned only where it does not go in otherwise. So that the load is a rule for each box alone,
a box in a drawer of n may weigh at most one n-th of what the strongest runners carry beside the drawer itself; a box
that was not weighed is no heavier than that, until it is weighed.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

from baywright.model.arrangement import Arrangement
from baywright.model.construction import Fronts
from baywright.model.inventory import BoxSize
from baywright.model.project import Project
from baywright.workings import Workings, derive
from baywright.workings.inputs import sizes_in_use

TOLERANCE_MM = 1e-9
"""What a measure may lack and still be enough, so that noise in the last digit never keeps a box out."""
MOST_TOGETHER = 3
"""Most boxes in one drawer."""


@dataclass(frozen=True, slots=True)
class Room:
    """What a drawer offers: width of box it is made for, depth inside (0: there is no runner), and what its runners
    can carry beside it, in kg.
    """

    box_width_mm: float
    inside_mm: float
    runner_mm: float
    left_kg: float


@dataclass(frozen=True, slots=True)
class Stand:
    """How a box stands in its drawer: its place from the left and from the front, and whether it is turned."""

    abreast: int = 0
    behind: int = 0
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Extent:
    """What boxes in one drawer measure together, with the air between them and before the rail, in mm."""

    across_mm: float
    along_mm: float


class Fitting:
    """What goes into the drawers of one project; each width of bay and depth of zone is worked out once."""

    def __init__(self, project: Project, workings: Workings | None = None) -> None:
        self.project = project
        self._workings = workings if workings is not None else derive(project)
        self.play_mm = self._workings.value("lateral_play")
        self.stop_mm = self._workings.value("stop")
        self.strongest_kg = max(project.construction.runners.load_classes_kg)
        # What fronts weigh follows from the boxes' heights; nothing else about a drawer's room does.
        has_fronts = project.construction.drawers.fronts is not Fronts.NONE
        self._weighed_sizes = sizes_in_use(project) if has_fronts else ()
        self._rooms: dict[tuple[float, float], Room] = {}
        self._stands: dict[tuple[tuple[str, ...], Room], tuple[Stand, ...] | None] = {}

    def room(self, box_width_mm: float, zone_mm: float = 0.0) -> Room:
        """The room of a drawer in a bay for boxes of that width, where a zone of the wall takes so much depth."""
        key = box_width_mm, zone_mm
        if key not in self._rooms:
            self._rooms[key] = self._measured(box_width_mm, zone_mm)
        return self._rooms[key]

    def _measured(self, box_width_mm: float, zone_mm: float) -> Room:
        project, workings = self.project, self._workings
        if zone_mm >= project.space.depth_mm:
            return Room(box_width_mm, 0.0, 0.0, self.strongest_kg)
        if zone_mm or box_width_mm != workings.value("bay_box_width"):
            # A zone behind a bay is to its drawers as if the whole space were so much shallower.
            space = project.space.replace(depth_mm=project.space.depth_mm - zone_mm, zones=(), ceiling=())
            limits = project.limits.replace(bay_box_width_mm=box_width_mm, bays=(), other_box_widths_mm=())
            bare = project.replace(
                space=space,
                limits=limits,
                boxes=(),
                box_sizes=self._weighed_sizes,
                arrangement=Arrangement(),
                built=None,
            )
            workings = derive(bare)
        runner = workings.value("runner_length")
        inside = workings.value("drawer_inside_depth") if runner > 0 else 0.0
        return Room(box_width_mm, inside, max(0.0, runner), self.strongest_kg - workings.value("drawer_mass"))

    def extent(self, sizes: Sequence[BoxSize], stands: Sequence[Stand]) -> Extent:
        """What those boxes measure as they stand: in a file where any stands behind another, else in a row."""
        wide = [s.depth_mm if t.turned else s.width_mm for s, t in zip(sizes, stands, strict=True)]
        deep = [s.width_mm if t.turned else s.depth_mm for s, t in zip(sizes, stands, strict=True)]
        if any(stand.behind for stand in stands):
            return Extent(max(wide), sum(deep) + len(deep) * self.stop_mm)
        return Extent(sum(wide) + (len(wide) - 1) * self.play_mm, max(deep) + self.stop_mm)

    def goes_in(self, extent: Extent, room: Room) -> bool:
        """Whether boxes that measure so much go into a drawer."""
        return (
            room.inside_mm > 0
            and extent.across_mm <= room.box_width_mm + TOLERANCE_MM
            and extent.along_mm <= room.inside_mm + TOLERANCE_MM
        )

    def stands(self, sizes: Sequence[BoxSize], room: Room) -> tuple[Stand, ...] | None:
        """How boxes of those sizes stand in one drawer, as few turned as can be, rather side by side than one behind
        another; None where they do not all go in or may not.
        """
        key = tuple(size.id for size in sizes), room
        if key not in self._stands:
            self._stands[key] = next(
                (found for found in possible_stands(sizes) if self.goes_in(self.extent(sizes, found), room)), None
            )
        return self._stands[key]

    def share(self, mass_kg: float | None, room: Room) -> int:
        """With how many in a drawer, itself included, a box of that mass may stand at most; 0: not even alone."""
        if mass_kg is None:
            return MOST_TOGETHER
        return next((n for n in range(MOST_TOGETHER, 0, -1) if mass_kg <= room.left_kg / n + TOLERANCE_MM), 0)


def possible_stands(sizes: Sequence[BoxSize]) -> list[tuple[Stand, ...]]:
    """The ways in which the owner allows boxes to stand in one drawer, the least turned first."""
    count = len(sizes)
    if count > MOST_TOGETHER:  # a file may heap any number on one place; nobody allows more than that
        return []
    turns = sorted(product(*((False, True) if size.may_turn else (False,) for size in sizes)), key=sum)
    found: list[tuple[Stand, ...]] = []
    for turned in turns:
        if count == 1 or may_abreast(sizes):
            found.append(tuple(Stand(place, 0, turn) for place, turn in enumerate(turned)))
        if count > 1 and may_behind(sizes):
            found.append(tuple(Stand(0, place, turn) for place, turn in enumerate(turned)))
    return found


def is_orderly(sizes: Sequence[BoxSize], stands: Sequence[Stand]) -> bool:
    """Whether boxes stand in a row or in a file, one at each place, and none is turned that may not be."""
    count = len(stands)
    places = sorted((stand.abreast, stand.behind) for stand in stands)
    in_row = places == [(place, 0) for place in range(count)] and (count == 1 or may_abreast(sizes))
    in_file = places == [(0, place) for place in range(count)] and (count == 1 or may_behind(sizes))
    turned = all(size.may_turn or not stand.turned for size, stand in zip(sizes, stands, strict=True))
    return (in_row or in_file) and turned


def may_abreast(sizes: Sequence[BoxSize]) -> bool:
    """Whether the owner allows so many side by side for every one of them."""
    return len(sizes) <= min(size.most_abreast for size in sizes)


def may_behind(sizes: Sequence[BoxSize]) -> bool:
    """Whether the owner allows so many one behind another for every one of them."""
    return len(sizes) <= min(size.most_behind for size in sizes)


def most_together(size: BoxSize) -> int:
    """So many boxes may be in a drawer with one of that size at most."""
    return max(size.most_abreast, size.most_behind)
