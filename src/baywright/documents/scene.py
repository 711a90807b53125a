"""What every part of a drawing of the run needs: the document, its frame, the sheet, and millimetres made points."""

from collections.abc import Mapping
from dataclasses import dataclass

from baywright.documents.lengths import plain_length
from baywright.documents.pattern import Pattern
from baywright.documents.sketch import Scale, Sketch
from baywright.making.frame import Frame
from baywright.model.arrangement import Placement
from baywright.model.inventory import BoxSize
from baywright.model.making import ScheduleLine
from baywright.model.project import Project
from baywright.workings import Workings

WOOD = "#f1ece2"


@dataclass(frozen=True)
class Scene:
    """What every part of the drawing needs."""

    project: Project
    workings: Workings
    frame: Frame
    sheet: Sketch
    scale: Scale
    schedule: tuple[ScheduleLine, ...]
    patterns: dict[str, Pattern]
    sizes: dict[str, BoxSize]
    """Size of each box, by box id."""
    placements: Mapping[str, Placement]

    def mm(self, length: float) -> float:
        """A length of the run in points."""
        return length * self.scale.points_per_mm

    def shown(self, length_mm: float) -> str:
        """A length as written beside a dimension line."""
        return plain_length(length_mm, self.project.unit)

    def block(self, left_mm: float, lower_mm: float, width_mm: float, height_mm: float, fill: str = WOOD) -> None:
        """A rectangle given in millimetres of the run."""
        if width_mm > 0 and height_mm > 0:
            self.sheet.rectangle(
                self.scale.x(left_mm), self.scale.y(lower_mm), self.mm(width_mm), self.mm(height_mm), fill=fill
            )
