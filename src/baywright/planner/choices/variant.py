"""Ways to build the run that a builder would weigh: uprights shared or own, the top's overhang as it is, or
less of it where that lets in longer runners or another bay, or leaves more room.

Candidates are made by what they bring, never on a grid:

- uprights: shared and own;
- front overhang: the present one, and for every longer standard runner the largest overhang that lets it in;
- side overhang: the present one, none, and where all bays are alike for every further bay the largest overhang that
  lets it on the wall, for runs of so many bays only.

Overhangs larger than the present one are not tried: they bring nothing that this program weighs. Where bays stand
already, the run is built on as it was begun.
"""

from dataclasses import dataclass, replace
from math import floor

from baywright.model.construction import Fronts, Uprights
from baywright.model.project import Project
from baywright.model.repair import FieldChange
from baywright.planner.framing.grid import TOLERANCE
from baywright.workings import Workings, derive

MOST_FURTHER_BAYS = 3
"""So many further bays are made room for at most by a smaller overhang at the sides."""


@dataclass(frozen=True, slots=True)
class Variant:
    """One way to build the run; overhangs of the top in mm."""

    uprights: Uprights
    overhang_front_mm: float
    overhang_side_mm: float

    def of(self, project: Project) -> Project:
        """The project built that way."""
        construction = project.construction
        top = construction.top.replace(overhang_front_mm=self.overhang_front_mm, overhang_side_mm=self.overhang_side_mm)
        return project.replace(construction=construction.replace(uprights=self.uprights, top=top))

    def changes(self) -> tuple[FieldChange, ...]:
        """The fields that build it so, whatever they are now."""
        return (
            FieldChange(path="construction.uprights", value=self.uprights.value),
            FieldChange(path="construction.top.overhang_front_mm", value=self.overhang_front_mm),
            FieldChange(path="construction.top.overhang_side_mm", value=self.overhang_side_mm),
        )


def present_variant(project: Project) -> Variant:
    """How the project says that the run is built."""
    top = project.construction.top
    return Variant(project.construction.uprights, top.overhang_front_mm, top.overhang_side_mm)


@dataclass(frozen=True, slots=True)
class Candidate:
    """A way to build that is weighed, for runs of at least so many bays."""

    variant: Variant
    fewest_bays: int = 1


def candidates(project: Project) -> tuple[Candidate, ...]:
    """The ways to build it that are weighed, the present one first."""
    present = present_variant(project)
    if project.built is not None:
        return (Candidate(present),)
    kinds = (present.uprights, *(kind for kind in Uprights if kind is not present.uprights))
    fronts = _fronts(project, derive(project))
    found = []
    for uprights in kinds:
        built = replace(present, uprights=uprights).of(project)
        for side, bays in _sides(built, derive(built)).items():
            found += [Candidate(Variant(uprights, front, side), bays) for front in fronts]
    return tuple(found)


def _fronts(project: Project, workings: Workings) -> tuple[float, ...]:
    """Front overhangs in mm, the present one first, one for each runner length that can be had with less of it."""
    present = project.construction.top.overhang_front_mm
    runners = project.construction.runners
    overlay = project.construction.drawers.fronts is Fronts.OVERLAY
    least = workings.value("front_thickness") if overlay else 0.0
    found = [present]
    if runners.length_mm is None:
        room, length = workings.value("runner_room"), workings.value("runner_length")
        for longer in sorted(given for given in runners.lengths_mm if given > length + TOLERANCE):
            overhang = floor(present - (longer - room) + TOLERANCE)
            if least <= overhang < present:
                found.append(float(overhang))
    return tuple(dict.fromkeys(found))


def _sides(project: Project, workings: Workings) -> dict[float, int]:
    """Side overhangs in mm, the present one first, each with the fewest bays that it is weighed for."""
    present = project.construction.top.overhang_side_mm
    pitch = workings.value("bay_pitch")
    upright = 0.0 if workings.value("own_uprights") else workings.value("upright_thickness")
    panels = workings.value("left_end") + workings.value("right_end") - 2 * present
    found = {present: 1, 0.0: 1}
    there = max(0, round(workings.value("bays_that_fit")))
    further = 0 if workings.value("laid_out") else MOST_FURTHER_BAYS
    for bays in range(there + 1, there + 1 + further):
        overhang = float(floor((project.space.length_mm - panels - bays * pitch - upright) / 2 + TOLERANCE))
        if not 0 < overhang < present:
            break
        found.setdefault(overhang, bays)
    return found
