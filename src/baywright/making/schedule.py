"""The drawer schedule: for each drawer where it is, where its runners are screwed, and how high everything lies.

Laws: one line for each placed box, bay by bay from the left, each bay from the bottom; heights follow from the row
alone (lower edge = base's upper side + first row + pitch × row − line offset), so a wrong row shows in every column.
"""

from itertools import groupby, pairwise

from baywright.making.loads import RunnerLoad
from baywright.model.arrangement import Lock, Placement
from baywright.model.inventory import Box
from baywright.model.making import ScheduleLine
from baywright.model.project import Project
from baywright.workings import Workings


def schedule(project: Project, workings: Workings, loads: dict[str, RunnerLoad]) -> tuple[ScheduleLine, ...]:
    """One line for each drawer of the present arrangement; `loads` by box id."""
    lines: list[ScheduleLine] = []
    boxes = {box.id: box for box in project.boxes}
    in_order = sorted(
        project.arrangement.placements, key=lambda placement: (placement.bay, placement.row, placement.box_id)
    )
    for _, in_bay in groupby(in_order, key=lambda placement: placement.bay):
        placements = list(in_bay)
        edges = [_lower_edge(workings, placement.row) for placement in placements]
        ceiling = workings.value("base_upper_height") + workings.value("upright_height")
        openings = [upper - lower for lower, upper in pairwise([*edges, ceiling])]
        lines.extend(
            _line(project, workings, boxes[placement.box_id], placement, number, opening, loads[placement.box_id])
            for number, (placement, opening) in enumerate(zip(placements, openings, strict=True), 1)
        )
    return tuple(lines)


def _lower_edge(workings: Workings, row: int) -> float:
    """Height of a drawer's lower edge over the floor, in mm."""
    return workings.value("base_upper_height") + _runner_line(workings, row) - workings.value("line_offset")


def _runner_line(workings: Workings, row: int) -> float:
    """Height of a row over the upright's lower end, in mm."""
    return workings.value("first_row") + workings.value("pitch") * row


def _line(
    project: Project,
    workings: Workings,
    box: Box,
    placement: Placement,
    number: int,
    opening_mm: float,
    load: RunnerLoad,
) -> ScheduleLine:
    size = project.size_of(box)
    lower_edge = _lower_edge(workings, placement.row)
    rows_left = round(workings.value("upright_rows")) - placement.row
    return ScheduleLine(
        bay=placement.bay + 1, drawer=number, box_id=box.id, box_label=box.label, size_name=size.name,
        contents=box.contents, loaded_mass_kg=box.loaded_mass_kg, runner_row=placement.row + 1,
        rows_taken=min(round(workings.value("opening_rows", size.id)), max(rows_left, 0)), lower_edge_mm=lower_edge,
        runner_line_mm=_runner_line(workings, placement.row),
        box_top_mm=lower_edge + workings.value("seat") + workings.value("box_height", size.id),
        opening_mm=opening_mm, load_class_kg=load.class_kg, locked=placement.lock is not Lock.NONE,
    )  # fmt: skip
