"""Which load class of runner each drawer needs.

Laws: what a runner pair carries is the box with its contents and the drawer itself; the class is the least one to be
had that is not under that. A box that was not weighed gets the highest class, the safe side, until it is weighed.
A rated load is the maker's, for a pair, at the maker's test length and width: the data sheet decides.
"""

from dataclasses import dataclass

from baywright.model.construction import Runners
from baywright.model.project import Project


@dataclass(frozen=True)
class RunnerLoad:
    """What one drawer's runner pair must carry; None where it is not known, or where no class is high enough."""

    carried_kg: float | None
    class_kg: float | None


def runner_load(runners: Runners, loaded_mass_kg: float | None, drawer_kg: float) -> RunnerLoad:
    """The load on the runner pair of a box with that mass (None: not weighed) in a drawer that weighs `drawer_kg`."""
    classes = sorted(runners.load_classes_kg)
    if loaded_mass_kg is None:
        return RunnerLoad(None, classes[-1])
    carried = loaded_mass_kg + drawer_kg
    return RunnerLoad(carried, next((rated for rated in classes if rated >= carried - 1e-9), None))


def runner_loads(project: Project, drawer_kg: float) -> dict[str, RunnerLoad]:
    """The load on the runner pair of every placed box, by box id."""
    masses = {box.id: box.loaded_mass_kg for box in project.boxes}
    runners = project.construction.runners
    return {
        placement.box_id: runner_load(runners, masses[placement.box_id], drawer_kg)
        for placement in project.arrangement.placements
    }


def load_remarks(project: Project, loads: dict[str, RunnerLoad]) -> list[str]:
    """What to say of boxes that were not weighed or are too heavy; `loads` by box id."""
    highest = max(project.construction.runners.load_classes_kg)
    unweighed = [project.box(box_id).label for box_id, load in loads.items() if load.carried_kg is None]
    remarks = []
    if unweighed:
        remarks.append(
            f"{_listed(unweighed)} {'has' if len(unweighed) == 1 else 'have'} no loaded mass: the highest load class, "
            f"{highest:g} kg, is taken for safety. Weigh the full box and enter its mass to order the right runner."
        )
    remarks.extend(
        f"“{project.box(box_id).label}” with its drawer is {load.carried_kg:.1f} kg, over the highest load class of "
        f"{highest:g} kg: take a stronger runner, or divide the contents."
        for box_id, load in loads.items()
        if load.class_kg is None
    )
    return remarks


def _listed(labels: list[str], most: int = 4) -> str:
    shown = [f"“{label}”" for label in labels[:most]]
    if len(labels) > most:
        shown.append(f"{len(labels) - most} more")
    return shown[0] if len(shown) == 1 else f"{', '.join(shown[:-1])} and {shown[-1]}"
