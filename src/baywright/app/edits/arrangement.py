"""Edits of which box stands where, and of locks."""

from dataclasses import dataclass

from baywright.app.commands import EditRefused, checked
from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.project import Project
from baywright.planner import closed_up, seated

PLAN, REPLAN = "Plan", "Re-plan"
"""The undo menu's names of taking in a plan: made afresh, or with the fewest changes."""


@dataclass(frozen=True)
class PlaceBox:
    """Puts a box into a drawer at a bay and row (0-based), wherever it stood before; its lock goes with it.

    In a drawer with other boxes it stands beside or behind them, as they may and as they fit.
    """

    box_id: str
    bay: int
    row: int

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Move box"

    def apply(self, project: Project) -> Project:
        """The project with the box there; EditRefused where there is no such box or place at all.

        Whether the place is a legal one is the planner's to say, not this command's.
        """
        before = project.arrangement.placement_of(self.box_id)
        lock = before.lock if before else Lock.NONE
        if self.box_id not in project.boxes_by_id:
            raise EditRefused(f"The box “{self.box_id}” is not in the inventory any more.")
        placement = checked(lambda: Placement(box_id=self.box_id, bay=self.bay, row=self.row, lock=lock))
        placements = seated(project, placement)
        return checked(lambda: project.replace(arrangement=project.arrangement.replace(placements=placements)))


@dataclass(frozen=True)
class UnplaceBoxes:
    """Takes boxes out of their drawers; they stay in the inventory."""

    box_ids: tuple[str, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Take out of drawer"

    def apply(self, project: Project) -> Project:
        """The project with those boxes without a place."""
        gone = set(self.box_ids)
        placements = closed_up(p for p in project.arrangement.placements if p.box_id not in gone)
        return project.replace(arrangement=project.arrangement.replace(placements=placements))


@dataclass(frozen=True)
class SetLock:
    """Locks boxes in their drawer or bay, or unlocks them."""

    box_ids: tuple[str, ...]
    lock: Lock

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Unlock" if self.lock is Lock.NONE else f"Lock in {self.lock.value}"

    def apply(self, project: Project) -> Project:
        """The project with the locks set; EditRefused where a box has no place that could be locked."""
        wanted = set(self.box_ids)
        homeless = wanted - {p.box_id for p in project.arrangement.placements}
        if homeless and self.lock is not Lock.NONE:
            label = next((box.label for box in project.boxes if box.id in homeless), "")
            raise EditRefused(f"“{label}” has no drawer yet; give it a place first, then lock it.")
        placements = tuple(
            p.replace(lock=self.lock) if p.box_id in wanted else p for p in project.arrangement.placements
        )
        return project.replace(arrangement=project.arrangement.replace(placements=placements))


@dataclass(frozen=True)
class ApplyPlan:
    """Takes in an arrangement that the planner found."""

    arrangement: Arrangement

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return PLAN

    def apply(self, project: Project) -> Project:
        """The project in that arrangement; EditRefused where it names boxes that are gone."""
        return checked(lambda: project.replace(arrangement=self.arrangement))


@dataclass(frozen=True)
class ClearArrangement:
    """Takes every box out of its drawer and forgets the planned shape; locked boxes stay where they are."""

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Clear arrangement"

    def apply(self, project: Project) -> Project:
        """The project with nothing placed but what is locked."""
        kept = tuple(p for p in project.arrangement.placements if p.lock is not Lock.NONE)
        shape = project.arrangement if kept else Arrangement()
        return project.replace(arrangement=shape.replace(placements=kept))
