"""What hangs on the uprights and what stands in it, read from a document: the ground on which a change is planned.

Laws: only drawers that are made count, so a box that is only wished for has none; a drawer that several boxes share is
one drawer; two drawers can stand for each other where they measure the same. Heights are whole rows, counted as the
drawer takes them in an inner place.
"""

import math
from collections.abc import Callable, Container, Iterable, Mapping
from dataclasses import dataclass, replace

from baywright.model.arrangement import Placement
from baywright.model.inventory import BoxStatus
from baywright.model.project import Project
from baywright.planner.framing.fitting import MOST_TOGETHER, Fitting
from baywright.workings import Workings, derive

Spot = tuple[int, int]
"""A drawer's bay and row, both from 0."""

Make = tuple[float, ...]
"""What a drawer measures, in mm; drawers of the same make can stand for each other."""

_MAKE = (
    "drawer_outside_width",
    "drawer_outside_depth",
    "drawer_side_height",
    "drawer_rail_height",
    "drawer_side_thickness",
    "drawer_bottom_thickness",
)


@dataclass(frozen=True)
class Wall:
    """Drawers and boxes by place, and the rows that they take from their row on."""

    drawers: Mapping[Spot, Make]
    boxes: Mapping[str, Placement]
    """The boxes that stand in a drawer, by id."""
    rows: Mapping[str, int]
    """Rows that the drawer takes with that box in it."""
    empty_rows: int
    """Rows that an empty drawer takes."""
    takes: Callable[[Spot, Iterable[str]], bool]
    """Whether all those boxes go into the drawer at a place at once."""

    def only(self, bays: Container[int]) -> "Wall":
        """The same with nothing in other bays than those."""
        drawers = {spot: make for spot, make in self.drawers.items() if spot[0] in bays}
        return replace(self, drawers=drawers, boxes={i: p for i, p in self.boxes.items() if p.bay in bays})

    @property
    def contents(self) -> dict[Spot, list[str]]:
        """The boxes of every drawer, in the order of their places in it."""
        found: dict[Spot, list[str]] = {spot: [] for spot in self.drawers}
        for placement in sorted(self.boxes.values(), key=lambda p: (p.abreast, p.behind, p.box_id)):
            found[placement.bay, placement.row].append(placement.box_id)
        return found


def read_wall(project: Project, leaving_count: bool = False) -> Wall:
    """The wall of a document's arrangement. With `leaving_count` a box that is kept elsewhere from now on, but still
    has its place in the arrangement, counts as standing there.
    """
    workings = derive(project)
    statuses = {BoxStatus.OWNED, BoxStatus.ELSEWHERE} if leaving_count else {BoxStatus.OWNED}
    there = {box.id: box for box in project.boxes if box.status in statuses}
    boxes = {p.box_id: p for p in project.arrangement.placements if p.box_id in there}
    rows = {i: max(1, round(workings.value("opening_rows", there[i].size_id))) for i in boxes}
    takes = _Capacity(project, workings).takes
    return Wall(_drawers(workings, boxes.values(), rows), boxes, rows, _empty_rows(workings), takes)


class _Capacity:
    """What the drawers of a document can take beside what stands in them."""

    def __init__(self, project: Project, workings: Workings) -> None:
        self._project, self._workings = project, workings
        self._fitting = Fitting(project, workings)

    def takes(self, spot: Spot, box_ids: Iterable[str]) -> bool:
        """Whether they all go into a drawer there, by measure and by mass."""
        together = sorted(box_ids)
        bays = self._workings.layout.bays
        if len(together) > MOST_TOGETHER or spot[0] >= len(bays):
            return False
        if any(box_id not in self._project.boxes_by_id for box_id in together):
            return False
        boxes = [self._project.box(box_id) for box_id in together]
        rows = max((round(self._workings.value("opening_rows", box.size_id)) for box in boxes), default=1)
        bay = bays[spot[0]]
        room = self._fitting.room(bay.box_width_mm, self._workings.zone_depth(bay, spot[1], rows))
        fits = self._fitting.stands([self._project.size_of(box) for box in boxes], room) is not None
        return fits and all(self._fitting.share(box.loaded_mass_kg, room) >= len(boxes) for box in boxes)


def _drawers(workings: Workings, placements: Iterable[Placement], rows: Mapping[str, int]) -> dict[Spot, Make]:
    highest: dict[Spot, int] = {}
    for p in placements:
        highest[p.bay, p.row] = max(rows[p.box_id], highest.get((p.bay, p.row), 0))
    bays = len(workings.layout.bays)
    makes: dict[str, Make] = {}
    found = {}
    for (bay, row), high in sorted(highest.items()):
        kind = workings.drawer_kind(bay, row, high) if bay < bays else ""
        if kind not in makes:
            makes[kind] = tuple(round(workings.at_kind(name, kind), 3) for name in _MAKE)
        found[bay, row] = makes[kind]
    return found


def _empty_rows(workings: Workings) -> int:
    """Rows of a drawer without a box: its sides and the air over them."""
    high = workings.value("drawer_side_height") + workings.value("gap_over_side")
    return max(1, math.ceil(high / workings.value("pitch") - 1e-9))
