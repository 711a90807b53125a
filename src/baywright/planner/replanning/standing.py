"""How the run stands now: the places that boxes have, and the drawers that are screwed on.

Laws: where bays are as built, the document they were built from says what stands, else the present arrangement does.
A box that is only wished for has no drawer; it is neither moved nor does its room count as one.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from baywright.model.arrangement import Arrangement
from baywright.model.inventory import BoxStatus
from baywright.model.project import Project

Spot = tuple[int, int]
"""Bay and row, both from 0."""


@dataclass(frozen=True)
class Standing:
    """What stands before anything is changed."""

    places: Mapping[str, Spot]
    """Boxes that are there, have a drawer now and are to have one: their bay and row."""
    drawers: frozenset[Spot]
    """Every bay and row at which a runner pair is screwed on."""


def standing_of(project: Project, arrangement: Arrangement | None = None) -> Standing:
    """What stands: `arrangement` where it is given, else what was built, else the present arrangement."""
    before = project
    if arrangement is None and project.built is not None:
        before = project.built.project
    placements = (before.arrangement if arrangement is None else arrangement).placements
    without_drawer = {box.id for box in before.boxes if box.status is BoxStatus.WISHED}
    if before is not project:
        without_drawer |= {box.id for box in before.boxes if box.status is BoxStatus.ELSEWHERE}
    stay = {box.id for box in project.boxes if box.status is BoxStatus.OWNED}
    there = [p for p in placements if p.box_id not in without_drawer]
    return Standing(
        places={p.box_id: (p.bay, p.row) for p in there if p.box_id in stay},
        drawers=frozenset((p.bay, p.row) for p in there),
    )
