"""The whole elevation as plain values: one document and its workings in, every place on the drawing out.

Law: pure; equal documents give equal layouts, so that a view can tell what has changed and redraw only that.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property

from baywright.gui.elevation.drawers import Drawer, DrawerMeasures, drawer_areas, drawer_measures
from baywright.gui.elevation.frame import Frame, build_frame
from baywright.gui.elevation.team import Team, spans_of
from baywright.model.arrangement import Placement
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.plan import ArrangementReport, Conflict, LimitKind
from baywright.model.project import Project
from baywright.workings import Workings

NO_INDICES: Mapping[str, float] = {}
_OF_BOXES = frozenset({LimitKind.PLACE, LimitKind.LOCK, LimitKind.BOX_WIDTH, LimitKind.BOX_HEIGHT, LimitKind.LOAD})
"""Kinds of conflict that are always about the boxes they name; others only where they name one or two."""


@dataclass(frozen=True)
class Layout:
    """What the elevation shows of one document."""

    project: Project
    frame: Frame | None
    drawers: tuple[Drawer, ...]
    unplaced: tuple[str, ...]
    """Ids of boxes without a drawer, or whose place the run no longer has; in the inventory's order."""
    measures: Mapping[str, DrawerMeasures] = field(default_factory=dict)
    """What the drawers of each box size measure, by the size's id."""

    def drawer(self, box_id: str) -> Drawer | None:
        """The drawer of a box, or None where it has none."""
        return self.drawers_by_box.get(box_id)

    @cached_property
    def drawers_by_box(self) -> Mapping[str, Drawer]:
        """Every drawer by the id of its box."""
        return {drawer.box.id: drawer for drawer in self.drawers}


def lay_out(
    project: Project,
    workings: Workings,
    report: ArrangementReport,
    before: Layout | None = None,
    lifting_indices: Mapping[str, float] = NO_INDICES,
) -> Layout:
    """Lay out the elevation of a document with its workings, the report on its arrangement and how hard its boxes are
    to lift. Drawers of the layout `before` that are still the same are taken over as they are: an edit changes few.
    """
    frame = build_frame(project, workings)
    measures = measures_by_size(project, workings)
    known: Mapping[str, Drawer] = {}
    if before is not None and (frame, measures) == (before.frame, before.measures):
        known = before.drawers_by_box
    drawers = _drawers(project, frame, measures, _troubles(report.conflicts), known) if frame else ()
    drawers = tuple(_lifted(drawer, lifting_indices.get(drawer.box.id)) for drawer in drawers)
    placed = {drawer.box.id for drawer in drawers}
    unplaced = tuple(box.id for box in project.boxes_to_place if box.id not in placed)
    return Layout(project, frame, drawers, unplaced, measures)


def _lifted(drawer: Drawer, index: float | None) -> Drawer:
    return drawer if drawer.lifting_index == index else replace(drawer, lifting_index=index)


def measures_by_size(project: Project, workings: Workings) -> dict[str, DrawerMeasures]:
    """The drawer measures of every box size in use."""
    used = {box.size_id for box in project.boxes}
    return {size.id: drawer_measures(project, workings, size) for size in project.box_sizes if size.id in used}


def _troubles(conflicts: Iterable[Conflict]) -> dict[str, tuple[str, ...]]:
    troubles: defaultdict[str, tuple[str, ...]] = defaultdict(tuple)
    for conflict in conflicts:
        if conflict.kind in _OF_BOXES or len(conflict.box_ids) <= 2:
            for box_id in conflict.box_ids:
                troubles[box_id] = (*troubles[box_id], conflict.message)
    return troubles


def _drawers(
    project: Project,
    frame: Frame,
    measures: Mapping[str, DrawerMeasures],
    troubles: Mapping[str, tuple[str, ...]],
    known: Mapping[str, Drawer],
) -> tuple[Drawer, ...]:
    stacks: defaultdict[int, list[Team]] = defaultdict(list)
    for (bay, _), team in project.arrangement.drawers.items():
        if bay < len(frame.bays):
            stacks[bay].append(team)
    built = frozenset(project.built.bays) if project.built else frozenset[int]()
    drawers = []
    for bay, stack in stacks.items():
        for number, team in enumerate(stack, start=1):
            boxes = [project.boxes_by_id[p.box_id] for p in team]
            is_made = any(box.status is not BoxStatus.WISHED for box in boxes)
            for index, (placement, box) in enumerate(zip(team, boxes, strict=True)):
                size, before = project.sizes_by_id[box.size_id], known.get(box.id)
                state = (number, number == len(stack), troubles.get(box.id, ()), is_made and not index, bay in built)
                if before is not None and _is_as_before(before, box, size, team, state):
                    drawers.append(before)
                else:
                    place = _Place(box, size, placement, team, *state)
                    drawers.append(place.drawer(frame, [measures[each.size_id] for each in boxes], index))
    return tuple(drawers)


def _is_as_before(
    before: Drawer, box: Box, size: BoxSize, team: Team, state: tuple[int, bool, tuple[str, ...], bool, bool]
) -> bool:
    """Whether a drawer was made from the same; values that were not edited stay the same objects."""
    return (
        before.box is box
        and before.size is size
        and before.team == team
        and (before.number, before.is_top, before.troubles, before.has_tray, before.is_built) == state
    )


@dataclass(frozen=True)
class _Place:
    """What a drawer is made from, beside frame and measures."""

    box: Box
    size: BoxSize
    placement: Placement
    team: Team
    number: int
    is_top: bool
    troubles: tuple[str, ...]
    has_tray: bool
    is_built: bool

    def drawer(self, frame: Frame, measures: Sequence[DrawerMeasures], index: int) -> Drawer:
        """The drawer in its place; `measures` are those of the whole team, of which this box is number `index`."""
        bay, row = self.placement.bay, self.placement.row
        opening = max(each.opening_height for each in measures)
        return Drawer(
            box=self.box,
            size=self.size,
            bay=bay,
            row=row,
            number=self.number,
            is_top=self.is_top,
            lock=self.placement.lock,
            areas=drawer_areas(
                frame,
                measures[index],
                bay,
                row,
                is_top=self.is_top,
                span=spans_of(self.team, measures)[index],
                opening_height=opening,
            ),
            opening_rows=max(each.opening_rows for each in measures),
            troubles=self.troubles,
            team=self.team,
            has_tray=self.has_tray,
            is_built=self.is_built,
        )
