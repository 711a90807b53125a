"""The materials that parts are cut from: the owner's, and those that are taken for granted."""

from collections.abc import Iterable

from baywright.model.making import Part
from baywright.model.project import Project
from baywright.model.stock import Material
from baywright.workings.material import material_of


def materials_of(project: Project, parts: Iterable[Part]) -> list[Material]:
    """Every material that parts are of, in the order of the parts list."""
    known = {material.id: material for material in project.stock.materials}
    for role in dict.fromkeys(part.role for part in parts if part.role is not None):
        material = material_of(project, role)
        known.setdefault(material.id, material)
    return list(known.values())
