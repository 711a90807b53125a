"""Which load class of runner each drawer needs.

Laws: what a runner pair carries is the boxes with their contents and the drawer itself; the class is the least one to
be had that is not under that. A drawer with a box that was not weighed, or of boards whose density is not known, gets
the highest class, the safe side, until that is known. A rated load is the maker's, for a pair, at the maker's test
length and width: the data sheet decides.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from baywright.making.drawers import Drawers, Kinds, empty_drawer_kg
from baywright.model.construction import Runners
from baywright.model.project import Project
from baywright.workings import Workings


@dataclass(frozen=True)
class RunnerLoad:
    """What one drawer's runner pair must carry; None where it is not known, or where no class is high enough."""

    carried_kg: float | None
    class_kg: float | None


Loads = Mapping[tuple[int, int], RunnerLoad]
"""The load on the runner pair of each drawer, by its bay and row."""


def runner_load(runners: Runners, loaded_masses_kg: Sequence[float | None], drawer_kg: float | None) -> RunnerLoad:
    """The load of boxes with those masses (None: not weighed) in a drawer that itself weighs `drawer_kg` (None: not
    known).
    """
    classes = sorted(runners.load_classes_kg)
    weighed = [mass for mass in loaded_masses_kg if mass is not None]
    if drawer_kg is None or len(weighed) < len(loaded_masses_kg):
        return RunnerLoad(None, classes[-1])
    carried = sum(weighed) + drawer_kg
    return RunnerLoad(carried, next((rated for rated in classes if rated >= carried - 1e-9), None))


def runner_loads(project: Project, workings: Workings, drawers: Drawers, kinds: Kinds) -> Loads:
    """The load on the runner pair of every drawer."""
    masses = {box.id: box.loaded_mass_kg for box in project.boxes}
    empty_kg = {kind: empty_drawer_kg(workings, kind) for kind in set(kinds.values())}
    runners = project.construction.runners
    return {
        place: runner_load(runners, [masses[p.box_id] for p in placements], empty_kg[kinds[place]])
        for place, placements in drawers.items()
    }


def load_remarks(project: Project, drawers: Drawers, loads: Loads) -> list[str]:
    """What to say of boxes that were not weighed or are too heavy."""
    highest = max(project.construction.runners.load_classes_kg)
    boxes = project.boxes_by_id
    placed = [boxes[p.box_id] for placements in drawers.values() for p in placements]
    unweighed = [box.label for box in placed if box.loaded_mass_kg is None]
    remarks = []
    if unweighed:
        remarks.append(
            f"{_listed(unweighed)} {'has' if len(unweighed) == 1 else 'have'} no loaded mass: the highest load class, "
            f"{highest:g} kg, is taken for safety. Weigh the full box and enter its mass to order the right runner."
        )
    for place, load in loads.items():
        if load.class_kg is None:
            labels = [boxes[p.box_id].label for p in drawers[place]]
            with_drawer = "with its drawer is" if len(labels) == 1 else "with their drawer are"
            remarks.append(
                f"{_listed(labels)} {with_drawer} {load.carried_kg:.1f} kg, over the highest load class of "
                f"{highest:g} kg: take a stronger runner, or divide the contents."
            )
    return remarks


def _listed(labels: list[str], most: int = 4) -> str:
    shown = [f"“{label}”" for label in labels[:most]]
    if len(labels) > most:
        shown.append(f"{len(labels) - most} more")
    return shown[0] if len(shown) == 1 else f"{', '.join(shown[:-1])} and {shown[-1]}"
