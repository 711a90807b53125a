"""What an import would bring: the boxes and sizes it would add, and every refused row with its reasons.

Law: nothing is taken over by looking; `apply_to` is the one way in, and only into the inventory that was looked at.
"""

from dataclasses import dataclass

from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project
from baywright.storage.trouble import StorageError


class StalePreviewError(StorageError):
    """The inventory has changed since the preview was made."""


@dataclass(frozen=True, slots=True)
class CellFault:
    """One cell that cannot be taken over: where, what stands there, why not and what to do."""

    cell: str
    """Its address, e.g. `C5`; empty where the fault is of something that has no column."""
    heading: str
    text: str
    why: str
    mend: str = ""


@dataclass(frozen=True, slots=True)
class AcceptedRow:
    """A row that would be taken over, with the boxes it makes (several where it has a quantity)."""

    number: int
    boxes: tuple[Box, ...]


@dataclass(frozen=True, slots=True)
class RefusedRow:
    """A row that would not be taken over."""

    number: int
    faults: tuple[CellFault, ...]


@dataclass(frozen=True)
class ImportPreview:
    """The outcome of reading an inventory table against a project, before anything is taken over."""

    project: Project
    accepted: tuple[AcceptedRow, ...]
    refused: tuple[RefusedRow, ...]
    new_sizes: tuple[BoxSize, ...]
    remarks: tuple[str, ...] = ()

    @property
    def boxes(self) -> tuple[Box, ...]:
        """All boxes that would be added."""
        return tuple(box for row in self.accepted for box in row.boxes)

    @property
    def count(self) -> int:
        """How many boxes would be added."""
        return len(self.boxes)

    def apply_to(self, project: Project) -> Project:
        """The project with the accepted boxes and their new sizes added.

        Raises `StalePreviewError` where the project's boxes or sizes are not those of the preview any more.
        """
        if project.boxes != self.project.boxes or project.box_sizes != self.project.box_sizes:
            raise StalePreviewError("The inventory has changed since this preview; make the preview anew.")
        return project.replace(box_sizes=project.box_sizes + self.new_sizes, boxes=project.boxes + self.boxes)
