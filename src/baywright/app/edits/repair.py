"""Taking in a repair that the planner offers: its changes of the document as one edit."""

from dataclasses import dataclass

from baywright.app.commands import EditRefused, checked
from baywright.model.change import NoSuchFieldError, changed
from baywright.model.project import Project
from baywright.model.repair import Repair


@dataclass(frozen=True)
class ApplyRepair:
    """Makes all changes of one repair; one undo takes them back."""

    repair: Repair

    @property
    def title(self) -> str:
        """The undo menu's name of the edit: what the repair says it does."""
        return self.repair.text.rstrip(".")

    def apply(self, project: Project) -> Project:
        """The project with the changes made; EditRefused where the document no longer has what they change."""
        field = self.repair.changes[0].path if self.repair.changes else ""
        try:
            return checked(lambda: changed(project, self.repair.changes), field)
        except NoSuchFieldError as trouble:
            raise EditRefused(
                f"The document has changed since this was offered: {trouble} Plan again.", field
            ) from None
