"""Edits of what stands as built, on which every re-plan rests."""

from dataclasses import dataclass

from baywright.app.commands import EditRefused, checked
from baywright.model.project import Built, Project
from baywright.planner import disagreements


@dataclass(frozen=True)
class MarkBuilt:
    """Marks bays (0-based) as cut, drilled and put up, just as the document has them now; what stands already still
    does. With no bays named it tells that the boxes and runners of the bays that stand are now as the document says.
    """

    bays: tuple[int, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Mark as built"

    def apply(self, project: Project) -> Project:
        """The project with those bays as built; EditRefused where they are not there or contradict what stands."""
        there = project.arrangement.bay_count
        if not there:
            raise EditRefused("Nothing is arranged yet: plan the run first, then mark what is built.")
        if unknown := [bay + 1 for bay in sorted(self.bays) if not 0 <= bay < there]:
            raise EditRefused(f"There is no bay {unknown[0]}: the run has {there} {'bay' if there == 1 else 'bays'}.")
        earlier = () if project.built is None else project.built.bays
        bays = tuple(sorted({*earlier, *self.bays}))
        if not bays:
            raise EditRefused("Choose the bays that are built.")
        if clashes := disagreements(project):
            more = f" (and {len(clashes) - 1} more)" if len(clashes) > 1 else ""
            raise EditRefused(f"This contradicts the bays that stand already. {clashes[0].text}{more}", "built")
        return checked(lambda: project.replace(built=Built(bays=bays, project=project.replace(built=None))))


@dataclass(frozen=True)
class ForgetBuilt:
    """Forgets that anything is as built, so that planning is free again."""

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Forget what is built"

    def apply(self, project: Project) -> Project:
        """The project with nothing as built."""
        return project.replace(built=None)
