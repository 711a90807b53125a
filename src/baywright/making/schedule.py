"""The drawer schedule: for each drawer where it is, where its runners are screwed, and how high everything lies.

Laws: one line for each box that is there, bay by bay from the left, each bay from the bottom; boxes that share a
drawer have its number and say where in it they stand; heights follow from the row alone (lower edge = base's upper
side + first row + pitch × row − line offset), so a wrong row shows in every column.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from operator import itemgetter

from baywright.making.drawers import Drawers
from baywright.making.loads import Loads
from baywright.model.arrangement import Lock, Placement
from baywright.model.making import ScheduleLine
from baywright.model.project import Project
from baywright.workings import Workings


def schedule(
    project: Project, workings: Workings, drawers: Drawers, loads: Loads, stops: Mapping[tuple[int, int], float],
    fixings: Mapping[tuple[int, int], Sequence[tuple[float, ...]]],
) -> tuple[ScheduleLine, ...]:  # fmt: skip
    """One line for each box in a drawer of the present arrangement; `stops` are the places of box stops, `fixings`
    those of the runners' screws in the uprights on both sides.
    """
    lines: list[ScheduleLine] = []
    for bay, places in groupby(sorted(drawers), key=itemgetter(0)):
        rows = [row for _, row in places]
        edges = [lower_edge_mm(workings, row) for row in rows]
        openings = [upper - lower for lower, upper in pairwise([*edges, under_top_mm(workings, bay)])]
        for number, (row, opening_mm) in enumerate(zip(rows, openings, strict=True), 1):
            drawer = _Drawer(
                number, opening_mm, loads[bay, row].class_kg, stops.get((bay, row)),
                next(iter(fixings.get((bay, row), ())), ()), drawers[bay, row],
            )  # fmt: skip
            lines += [_line(project, workings, placement, drawer) for placement in drawer.together]
    return tuple(lines)


@dataclass(frozen=True)
class _Drawer:
    """What the boxes of one drawer have in common."""

    number: int
    opening_mm: float
    class_kg: float | None
    stop_mm: float | None
    holes_mm: tuple[float, ...]
    together: tuple[Placement, ...]


def under_top_mm(workings: Workings, bay: int) -> float:
    """Height over the floor of the top's underside over a bay, in mm."""
    bays = workings.layout.bays
    kind = workings.kind_of(bays[bay]) if bay < len(bays) else ""
    return workings.value("base_upper_height") + workings.at_kind("upright_height", kind)


def lower_edge_mm(workings: Workings, row: int) -> float:
    """Height of a drawer's lower edge over the floor, in mm."""
    return workings.value("base_upper_height") + _runner_line(workings, row) - workings.value("line_offset")


def _runner_line(workings: Workings, row: int) -> float:
    """Height of a row over the upright's lower end, in mm."""
    return workings.value("first_row") + workings.value("pitch") * row


def _place(placement: Placement, together: tuple[Placement, ...]) -> str:
    """Where in its drawer a box stands; empty where it has the drawer to itself and stands as usual."""
    words = []
    if any(p.abreast for p in together):
        words.append(f"{placement.abreast + 1} from the left")
    if any(p.behind for p in together):
        words.append(f"{placement.behind + 1} from the front")
    if placement.turned:
        words.append("turned crosswise")
    return ", ".join(words)


def _line(project: Project, workings: Workings, placement: Placement, drawer: _Drawer) -> ScheduleLine:
    box = project.box(placement.box_id)
    size = project.size_of(box)
    lower_edge = lower_edge_mm(workings, placement.row)
    bays = workings.layout.bays
    rows = bays[placement.bay].rows if placement.bay < len(bays) else round(workings.value("upright_rows"))
    return ScheduleLine(
        bay=placement.bay + 1, drawer=drawer.number, box_id=box.id, box_label=box.label, size_name=size.name,
        contents=box.contents, loaded_mass_kg=box.loaded_mass_kg, runner_row=placement.row + 1,
        rows_taken=min(round(workings.value("opening_rows", size.id)), max(rows - placement.row, 0)),
        lower_edge_mm=lower_edge, runner_line_mm=_runner_line(workings, placement.row),
        box_top_mm=lower_edge + workings.value("seat") + workings.value("box_height", size.id),
        opening_mm=drawer.opening_mm, load_class_kg=drawer.class_kg, locked=placement.lock is not Lock.NONE,
        place_in_drawer=_place(placement, drawer.together), box_stop_mm=drawer.stop_mm,
        runner_holes_mm=drawer.holes_mm,
    )  # fmt: skip
