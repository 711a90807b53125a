"""Edits of the run's shape: taking over an option, fixing the numbers of bays and rows, leaving them free again."""

from dataclasses import dataclass

from baywright.app.commands import EditRefused, checked
from baywright.model.change import NoSuchFieldError, changed
from baywright.model.option import Option
from baywright.model.project import Project


@dataclass(frozen=True)
class ChooseOption:
    """Puts the run in the shape of an option, with its plan, and fixes that shape; one undo takes all of it back."""

    option: Option

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Use another shape"

    def apply(self, project: Project) -> Project:
        """The project in that shape; EditRefused where boxes came or went since the option was found."""
        if {p.box_id for p in self.option.arrangement.placements} != {box.id for box in project.boxes_to_place}:
            raise EditRefused("The boxes are others than when this shape was found. Look for options again.")
        try:
            return checked(lambda: changed(project, self.option.changes).replace(arrangement=self.option.arrangement))
        except NoSuchFieldError as trouble:
            raise EditRefused(f"This shape cannot be used any more: {trouble} Look for options again.") from None


@dataclass(frozen=True)
class PinShape:
    """Fixes the numbers of bays and rows that the run has now, so that planning keeps them."""

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Pin the shape"

    def apply(self, project: Project) -> Project:
        """The project with the present shape fixed; EditRefused where nothing is planned yet."""
        shape = project.arrangement
        if not shape.bay_count:
            raise EditRefused("There is no shape to pin yet: plan the bays first.")
        limits = project.limits
        return checked(
            lambda: project.replace(limits=limits.replace(bay_count=shape.bay_count, upright_rows=shape.upright_rows))
        )


@dataclass(frozen=True)
class FreeShape:
    """Leaves the numbers of bays and rows to the planner again; nothing moves by that."""

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Free the shape"

    def apply(self, project: Project) -> Project:
        """The project with neither number fixed."""
        return project.replace(limits=project.limits.replace(bay_count=None, upright_rows=None))


def is_pinned(project: Project) -> bool:
    """Whether the limits fix just the shape that the run has."""
    shape, limits = project.arrangement, project.limits
    return bool(shape.bay_count) and (limits.bay_count, limits.upright_rows) == (shape.bay_count, shape.upright_rows)
