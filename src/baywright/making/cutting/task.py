"""What a cutting plan depends on, and nothing else: two documents with the same task have the same plan."""

from collections.abc import Sequence
from dataclasses import dataclass

from baywright.making.cutting.materials import materials_of
from baywright.model.construction import Edging, Uprights
from baywright.model.length import LengthUnit
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.model.stock import Material, Stock


@dataclass(frozen=True)
class CuttingTask:
    """The pieces, what they are cut from, and how."""

    pieces: tuple[tuple[object, ...], ...]
    materials: tuple[Material, ...]
    stock: Stock
    edging: Edging
    longest_mm: float
    uprights: Uprights
    """Whether boards can be joined over them."""
    unit: LengthUnit
    """Reasons and remarks name lengths."""


def cutting_task(project: Project, parts: Sequence[Part]) -> CuttingTask:
    """What the cutting plan of a project depends on."""
    return CuttingTask(
        pieces=tuple(map(_piece, parts)),
        materials=tuple(materials_of(project, parts)),
        stock=project.stock,
        edging=project.construction.edging,
        longest_mm=project.boards.longest_mm,
        uprights=project.construction.uprights,
        unit=project.unit,
    )


def _piece(part: Part) -> tuple[object, ...]:
    """A part without what does not matter to the saw: its name, note, machining and place."""
    return (
        *(part.number, part.quantity, part.role, part.material_id, part.grain, part.banded),
        *(part.length_mm, part.width_mm, part.thickness_mm, part.cut_length_mm, part.cut_width_mm),
    )
