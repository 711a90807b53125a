"""Edits of what the owner wishes: for single bays, and the order in which the goals count."""

from dataclasses import dataclass

from baywright.app.commands import EditRefused, checked
from baywright.model.goals import USUAL_ORDER, Goal
from baywright.model.limits import MOST_BAYS, BayWish
from baywright.model.project import Project

_PLAIN = {"box_width_mm": "box width"}


@dataclass(frozen=True)
class SetBayWish:
    """Sets one field of the wish for a bay (0 is leftmost); None leaves it as the other bays are.

    With None, wishes at the end that ask for nothing go, so that they hold no bay there.
    """

    bay: int
    field: str
    value: object

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Change {_PLAIN.get(self.field, self.field)} of bay {self.bay + 1}"

    def apply(self, project: Project) -> Project:
        """The project with the wish; EditRefused where the value is not allowed or there cannot be such a bay."""
        if not 0 <= self.bay < MOST_BAYS:
            raise EditRefused(f"There can be no bay {self.bay + 1}.")
        wishes = list(project.limits.bays)
        wishes += [BayWish()] * (self.bay + 1 - len(wishes))
        wishes[self.bay] = checked(lambda: wishes[self.bay].replace(**{self.field: self.value}), self.field)
        return _with_wishes(project, _without_empty_end(wishes) if self.value is None else wishes)


@dataclass(frozen=True)
class WishForBay:
    """Asks for one more bay than there are now."""

    bay: int
    """The number of the new bay, from 0."""

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Ask for bay {self.bay + 1}"

    def apply(self, project: Project) -> Project:
        """The project with an empty wish for that bay; EditRefused where the number of bays is fixed below."""
        wishes = list(project.limits.bays)
        wishes += [BayWish()] * (self.bay + 1 - len(wishes))
        return _with_wishes(project, wishes)


@dataclass(frozen=True)
class ClearBayWishes:
    """Leaves these bays as the others are; wishes at the end that ask for nothing go."""

    bays: tuple[int, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Clear wishes for bay {self.bays[0] + 1}" if len(self.bays) == 1 else "Clear wishes for bays"

    def apply(self, project: Project) -> Project:
        """The project without those wishes."""
        wishes = [BayWish() if bay in self.bays else wish for bay, wish in enumerate(project.limits.bays)]
        return _with_wishes(project, _without_empty_end(wishes))


@dataclass(frozen=True)
class MoveGoal:
    """Makes a goal count earlier (`by` under 0) or later among those that can be put in another order."""

    goal: Goal
    by: int

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Let “{self.goal.value.replace('_', ' ')}” count {'more' if self.by < 0 else 'less'}"

    def apply(self, project: Project) -> Project:
        """The project with the goal moved; at the end of the order it stays there. EditRefused for a fixed goal."""
        if self.goal not in USUAL_ORDER:
            raise EditRefused("Fewest bays and lowest run always come first.")
        order = [goal for goal in project.goals if goal is not self.goal]
        place = max(0, min(len(order), project.goals.index(self.goal) + self.by))
        order.insert(place, self.goal)
        return project.replace(goals=tuple(order))


def _without_empty_end(wishes: list[BayWish]) -> list[BayWish]:
    while wishes and wishes[-1] == BayWish():
        wishes = wishes[:-1]
    return wishes


def _with_wishes(project: Project, wishes: list[BayWish]) -> Project:
    if len(wishes) > MOST_BAYS:
        raise EditRefused(f"A run can have at most {MOST_BAYS} bays.")
    return project.replace(limits=checked(lambda: project.limits.replace(bays=tuple(wishes))))
