"""Edits of the boxes and their sizes."""

from dataclasses import dataclass

from baywright.app.commands import EditRefused, checked
from baywright.model.identity import free_ids
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.project import MOST_BOXES, Project
from baywright.planner import closed_up

MOST_DUPLICATES = 500
_PLAIN = {"may_turn": "turning", "most_abreast": "boxes abreast", "most_behind": "boxes behind one another"}
"""What fields are called in the undo menu where their name is no phrase."""


@dataclass(frozen=True)
class AddBoxes:
    """Adds boxes at the end of the inventory, and before them the sizes that they bring along."""

    boxes: tuple[Box, ...]
    sizes: tuple[BoxSize, ...] = ()

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Add box" if len(self.boxes) == 1 else f"Add {len(self.boxes)} boxes"

    def apply(self, project: Project) -> Project:
        """The project with boxes and sizes added; EditRefused where an id is taken or a size is missing."""
        return checked(
            lambda: project.replace(box_sizes=(*project.box_sizes, *self.sizes), boxes=(*project.boxes, *self.boxes))
        )


@dataclass(frozen=True)
class EditBox:
    """Sets one field of a box."""

    box_id: str
    field: str
    value: object

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Change {self.field.removesuffix('_kg').removesuffix('_id').replace('_', ' ')} of box"

    def apply(self, project: Project) -> Project:
        """The project with the field changed; EditRefused where the value is not allowed.

        A box that is kept elsewhere from now on leaves its drawer.
        """
        changed = checked(lambda: _box(project, self.box_id).replace(**{self.field: self.value}), self.field)
        boxes = tuple(changed if box.id == self.box_id else box for box in project.boxes)
        arrangement = project.arrangement
        if changed.status is BoxStatus.ELSEWHERE and arrangement.placement_of(self.box_id):
            staying = closed_up(p for p in arrangement.placements if p.box_id != self.box_id)
            arrangement = arrangement.replace(placements=staying)
        return checked(lambda: project.replace(boxes=boxes, arrangement=arrangement), self.field)


@dataclass(frozen=True)
class RemoveBoxes:
    """Takes boxes out of the inventory, and out of their drawers."""

    box_ids: tuple[str, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Delete box" if len(self.box_ids) == 1 else f"Delete {len(self.box_ids)} boxes"

    def apply(self, project: Project) -> Project:
        """The project without the boxes and their places."""
        gone = set(self.box_ids)
        placements = closed_up(p for p in project.arrangement.placements if p.box_id not in gone)
        return project.replace(
            boxes=tuple(box for box in project.boxes if box.id not in gone),
            arrangement=project.arrangement.replace(placements=placements),
        )


@dataclass(frozen=True)
class DuplicateBoxes:
    """Makes `times` copies of each box, right behind it; copies have no place yet."""

    box_ids: tuple[str, ...]
    times: int = 1

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Duplicate box" if len(self.box_ids) == 1 else f"Duplicate {len(self.box_ids)} boxes"

    def apply(self, project: Project) -> Project:
        """The project with the copies; EditRefused where the number is not 1 to 500, or they are too many."""
        if not 1 <= self.times <= MOST_DUPLICATES:
            raise EditRefused(f"Give a number of copies from 1 to {MOST_DUPLICATES}.", "times")
        wanted = set(self.box_ids)
        copies = self.times * sum(box.id in wanted for box in project.boxes)
        if len(project.boxes) + copies > MOST_BOXES:  # said before thousands of copies are made in vain
            raise EditRefused(f"That would be {copies:,} more boxes; a project holds at most {MOST_BOXES:,}.", "times")
        ids = free_ids("box", [box.id for box in project.boxes])
        boxes: list[Box] = []
        for box in project.boxes:
            boxes.append(box)
            if box.id in wanted:
                boxes += [box.replace(id=next(ids)) for _ in range(self.times)]
        return checked(lambda: project.replace(boxes=tuple(boxes)))


@dataclass(frozen=True)
class AddBoxSize:
    """Adds a box size."""

    size: BoxSize

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Add box size"

    def apply(self, project: Project) -> Project:
        """The project with the size; EditRefused where its id is taken."""
        return checked(lambda: project.replace(box_sizes=(*project.box_sizes, self.size)))


@dataclass(frozen=True)
class GiveNewSize:
    """Adds a box size and gives it to a box, as one edit."""

    box_id: str
    size: BoxSize

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Give box a new size"

    def apply(self, project: Project) -> Project:
        """The project with the size added and the box having it; EditRefused where the id is taken."""
        return EditBox(self.box_id, "size_id", self.size.id).apply(AddBoxSize(self.size).apply(project))


@dataclass(frozen=True)
class EditBoxSize:
    """Sets one field of a box size."""

    size_id: str
    field: str
    value: object

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Change {_PLAIN.get(self.field, self.field.removesuffix('_mm'))} of box size"

    def apply(self, project: Project) -> Project:
        """The project with the field changed; EditRefused where the value is not allowed."""
        changed = checked(lambda: _size(project, self.size_id).replace(**{self.field: self.value}), self.field)
        sizes = tuple(changed if size.id == self.size_id else size for size in project.box_sizes)
        return checked(lambda: project.replace(box_sizes=sizes), self.field)


@dataclass(frozen=True)
class RemoveBoxSize:
    """Removes a size that no box has."""

    size_id: str

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Delete box size"

    def apply(self, project: Project) -> Project:
        """The project without the size; EditRefused while boxes have it."""
        holders = [box.label for box in project.boxes if box.size_id == self.size_id]
        if holders:
            name = _size(project, self.size_id).name
            if len(holders) == 1:
                raise EditRefused(f"The box “{holders[0]}” has the size “{name}”. Give it another size first.")
            raise EditRefused(
                f"{len(holders)} boxes have the size “{name}” (the first is “{holders[0]}”). "
                "Give those boxes another size first."
            )
        return project.replace(box_sizes=tuple(size for size in project.box_sizes if size.id != self.size_id))


def _box(project: Project, box_id: str) -> Box:
    try:
        return project.box(box_id)
    except KeyError:
        raise EditRefused(f"There is no box “{box_id}” any more.") from None


def _size(project: Project, size_id: str) -> BoxSize:
    try:
        return project.size(size_id)
    except KeyError:
        raise EditRefused(f"There is no box size “{size_id}” any more.") from None
