"""What a bay is to drawers: its rows, its width, the zones behind it, read from the layout along the wall.

Law: nothing is measured here; where all bays are alike and nothing is in their way, they are not even laid out.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from baywright.model.project import Project
from baywright.workings import Workings
from baywright.workings.layout import BayPlace


@dataclass(frozen=True)
class Face:
    """What a bay is to drawers: its rows, the boxes it is made for, and the zones of the wall behind it."""

    rows: int
    box_width_mm: float
    place: BayPlace | None = None
    """The bay along the wall, where zones of the wall stand behind it."""

    @property
    def likeness(self) -> tuple[object, ...]:
        """What faces share that are the same to every drawer."""
        zones = () if self.place is None else self.place.zones
        return self.rows, self.box_width_mm, tuple(sorted((z.bottom_mm, z.top_mm, z.depth_mm) for z in zones))


def is_plain(project: Project) -> bool:
    """Whether no bay differs from the others in rows, nor must go around anything."""
    return not project.space.ceiling and not project.space.zones and not project.limits.bays


def faces(project: Project, workings: Workings, box_widths_mm: Sequence[float], rows: int) -> list[Face]:
    """The faces of bays for boxes of those widths, from the left, in a run of `rows` rows."""
    if is_plain(project):
        return [Face(rows, width) for width in box_widths_mm]
    layout = workings.lay_out(box_widths_mm, rows)
    return [Face(bay.rows, bay.box_width_mm, bay if bay.zones else None) for bay in layout.bays]


def zone_depth(workings: Workings, face: Face, row: int, rows: int) -> float:
    """The depth in mm that zones of the wall take from a drawer of `rows` rows at that row of a bay."""
    return 0.0 if face.place is None else workings.zone_depth(face.place, row, rows)
