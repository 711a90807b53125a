"""The fewest bays and the lowest uprights of a small project by trying everything, in millimetres.

Shares no code with planner or workings: drawers are stacked from the base up, each at the first hole row that lets
its lower edge clear what stands under it.
"""

import math
from collections.abc import Iterator
from itertools import permutations

from baywright.model.construction import Boards, Drawers
from baywright.model.inventory import Box
from baywright.model.project import Project
from tests.oracle.wall import TINY_MM, first_row_mm


def least_shape(project: Project, most_bays: int, most_rows: int) -> tuple[int, int] | None:
    """The fewest bays at `most_rows` rows and then the fewest rows for so many; None where no shape will do."""
    for bays in range(1, most_bays + 1):
        lowest = _least_rows(project, bays)
        if lowest is not None and lowest <= most_rows:
            return bays, lowest
    return None


def _least_rows(project: Project, bays: int) -> int | None:
    """The rows of the lowest uprights with which all boxes go into so many bays."""
    limit = project.limits.drawers_per_bay
    known: dict[tuple[str, ...], int] = {}

    def alone(group: tuple[Box, ...]) -> int:
        key = tuple(sorted(box.size_id for box in group))
        if key not in known:
            known[key] = min(_rows_of_stack(project, order) for order in set(permutations(key)))
        return known[key]

    needs = [
        max(alone(group) for group in groups)
        for groups in _partitions(list(project.boxes), bays)
        if limit is None or all(len(group) <= limit for group in groups)
    ]
    return min(needs, default=None)


def _partitions(boxes: list[Box], most: int) -> Iterator[list[tuple[Box, ...]]]:
    """Every way to put boxes into at most `most` bays that are alike."""
    if not boxes:
        yield []
        return
    first, rest = boxes[0], boxes[1:]
    for groups in _partitions(rest, most):
        for number, group in enumerate(groups):
            yield [*groups[:number], (first, *group), *groups[number + 1 :]]
        if len(groups) < most:
            yield [*groups, (first,)]


def _rows_of_stack(project: Project, sizes: tuple[str, ...]) -> int:
    """The least number of rows of uprights that take these sizes in this order from the bottom."""
    rows, runners = project.construction.hole_rows, project.construction.runners
    first = first_row_mm(project)
    free, row = runners.gap_under_lowest_mm, -1
    for size_id in sizes:
        row = max(row + 1, math.ceil((free + runners.line_offset_mm - first - TINY_MM) / rows.pitch_mm))
        edge = first + rows.pitch_mm * row - runners.line_offset_mm
        free = edge + _needed(
            project.construction.boards, project.construction.drawers, project.size(size_id).height_mm
        )
    upright = row + 1
    while rows.pitch_mm * (upright - 1) + 2 * first < free - TINY_MM:
        upright += 1
    return upright


def _needed(boards: Boards, drawers: Drawers, height: float) -> float:
    seat = drawers.groove_offset_mm + boards.drawer_bottom_mm
    return max(seat + height + drawers.clearance_mm, drawers.side_height_mm + drawers.gap_over_side_mm)
