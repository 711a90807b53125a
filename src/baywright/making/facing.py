"""Runners that face each other across a shared upright: their screws come from both sides into the same row.

Laws: only neighbouring bays with a drawer at the same row count; own uprights have no such pairs.
"""

from baywright.making.fasteners import SYSTEM_SCREW_LENGTHS_MM, face_screw
from baywright.model.construction import Uprights
from baywright.model.project import Project


def facing_runners(project: Project) -> int:
    """Runners that have another one at the same row on the other side of their upright, counted in twos."""
    if project.construction.uprights is Uprights.OWN:
        return 0
    places = {(placement.bay, placement.row) for placement in project.arrangement.placements}
    return sum((bay + 1, row) in places for bay, row in places)


def facing_remarks(project: Project) -> list[str]:
    """What to do where screws from both sides would meet in the upright."""
    upright = project.construction.boards.upright_mm
    count = facing_runners(project)
    if count == 0 or 2 * face_screw(upright, SYSTEM_SCREW_LENGTHS_MM) <= upright:
        return []
    return [
        f"At {count} {'place' if count == 1 else 'places'} two runners face each other at one row of a shared upright "
        f"{upright:g} mm thick, and screws from both sides would meet: use different holes of the runner on both "
        "sides, or bolts that go through."
    ]
