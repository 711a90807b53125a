"""Runners that face each other across a shared upright: their screws come from both sides into the same row.

Laws: only bays that share an upright count, with a drawer at the same row; own uprights have no such pairs.
"""

from baywright.making.drawers import Drawers
from baywright.making.frame import neighbours
from baywright.making.hardware.fasteners import RUNNER_SHEET_MM, system_screw
from baywright.making.machining.rows import SYSTEM_MARGIN_MM
from baywright.model.construction import Uprights
from baywright.model.project import Project
from baywright.workings import Workings


def facing_runners(project: Project, workings: Workings, drawers: Drawers) -> int:
    """Runners that have another one at the same row on the other side of their upright, counted in twos."""
    if project.construction.uprights is Uprights.OWN:
        return 0
    right_of = dict(neighbours(workings.layout))
    return sum(bay in right_of and (right_of[bay], row) in drawers for bay, row in drawers)


def facing_remarks(project: Project, workings: Workings, drawers: Drawers) -> list[str]:
    """What to do where screws from both sides would meet in the upright."""
    upright = project.boards.upright_mm
    count = facing_runners(project, workings, drawers)
    deep = min(project.construction.hole_rows.hole_depth_mm, (upright - SYSTEM_MARGIN_MM) / 2)
    if count == 0 or 2 * (system_screw(deep) - RUNNER_SHEET_MM) <= upright:
        return []
    return [
        f"At {count} {'place' if count == 1 else 'places'} two runners face each other at one row of a shared upright "
        f"{upright:g} mm thick, and screws from both sides would meet: use different holes of the runner on both "
        "sides, or bolts that go through."
    ]
