"""The whole elevation as plain values: one document and its workings in, every place on the drawing out.

Law: pure; equal documents give equal layouts, so that a view can tell what has changed and redraw only that.
"""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from baywright.gui.elevation.drawers import Drawer, DrawerMeasures, drawer_areas, drawer_measures
from baywright.gui.elevation.frame import Frame, build_frame
from baywright.model.arrangement import Placement
from baywright.model.plan import ArrangementReport, Conflict, LimitKind
from baywright.model.project import Project
from baywright.workings import Workings

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

    def drawer(self, box_id: str) -> Drawer | None:
        """The drawer of a box, or None where it has none."""
        return next((drawer for drawer in self.drawers if drawer.box.id == box_id), None)


def lay_out(project: Project, workings: Workings, report: ArrangementReport) -> Layout:
    """Lay out the elevation of a document with its workings and the report on its arrangement."""
    frame = build_frame(project, workings)
    drawers = _drawers(project, workings, frame, _troubles(report.conflicts)) if frame else ()
    placed = {drawer.box.id for drawer in drawers}
    return Layout(project, frame, drawers, tuple(box.id for box in project.boxes_to_place if box.id not in placed))


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
    project: Project, workings: Workings, frame: Frame, troubles: dict[str, tuple[str, ...]]
) -> tuple[Drawer, ...]:
    boxes = {box.id: box for box in project.boxes}
    sizes = {size.id: size for size in project.box_sizes}
    measures = measures_by_size(project, workings)
    stacks: defaultdict[int, list[Placement]] = defaultdict(list)
    for placement in project.arrangement.placements:
        if placement.bay < len(frame.bays):
            stacks[placement.bay].append(placement)
    drawers = []
    for bay in sorted(stacks):
        stack = sorted(stacks[bay], key=lambda placement: (placement.row, placement.box_id))
        for number, placement in enumerate(stack, start=1):
            box = boxes[placement.box_id]
            is_top = number == len(stack)
            drawers.append(
                Drawer(
                    box=box,
                    size=sizes[box.size_id],
                    bay=bay,
                    row=placement.row,
                    number=number,
                    is_top=is_top,
                    lock=placement.lock,
                    areas=drawer_areas(frame, measures[box.size_id], bay, placement.row, is_top=is_top),
                    opening_rows=measures[box.size_id].opening_rows,
                    troubles=troubles.get(box.id, ()),
                )
            )
    return tuple(drawers)
