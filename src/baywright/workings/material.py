"""Which material each board of the run is cut from, and how dense it is.

Laws: what the owner named for a role is taken; where nothing is named, a material of the kind that all boards are said
to be of is taken for granted, in the thickness in force. Boards of one thickness that nobody named are one material. A
density that is not known is None, never 0.
"""

from baywright.model.material import MATERIALS
from baywright.model.project import Project
from baywright.model.safety import BoardMaterial
from baywright.model.stock import BoardRole, Material

DENSEST_KG_M3 = max(material.density_kg_m3 for material in MATERIALS.values())
"""What a drawer's own mass is reckoned with where its boards' density is not known: the safe side for the runners."""
_WITHOUT_GRAIN = frozenset({BoardMaterial.FIBREBOARD, BoardMaterial.PARTICLEBOARD})


def material_of(project: Project, role: BoardRole) -> Material:
    """The owner's material for a role, else the one that is taken for granted."""
    return project.stock.material_of(role) or _granted(project, role)


def density_kg_m3(material: Material) -> float | None:
    """The density that the owner entered, else the usual one of its kind; None where that is not known."""
    if material.density_kg_m3 is not None:
        return material.density_kg_m3
    known = MATERIALS.get(material.kind)
    return None if known is None else known.density_kg_m3


def reckoned_kg_m3(project: Project, role: BoardRole) -> float:
    """The density that boards of a role are reckoned with: their own, else the densest known."""
    known = density_kg_m3(material_of(project, role))
    return DENSEST_KG_M3 if known is None else known


def told_density(project: Project, role: BoardRole) -> str:
    """Where the density of a role's boards comes from, in words."""
    material = material_of(project, role)
    if material.density_kg_m3 is not None:
        return f"As entered for {material.name}."
    known = MATERIALS.get(material.kind)
    if known is None:
        return f"Not known for {material.name}; the densest board known is reckoned with. Enter the material's density."
    return f"Usual for {material.kind.value}. {known.density_source}."


def told_thickness(project: Project, role: BoardRole) -> str:
    """Where the thickness of a role's boards comes from, in words; empty where it was simply entered. In mm in every
    project, as boards are sold and measured.
    """
    material = project.stock.material_of(role)
    if material is None or material.batch is None:
        return ""
    batch, count = material.batch, len(material.batch.readings_mm)
    readings = "one reading" if count == 1 else f"{count} readings from {batch.least_mm:g} to {batch.most_mm:g} mm"
    entered = getattr(project.construction.boards, f"{role.value}_mm")
    return (
        f"Mean of {readings} of batch “{batch.name}” of “{material.name}”, nominal {material.nominal_mm:g} mm; the "
        f"{entered:g} mm of the construction are not used."
    )


def board_name(kind: BoardMaterial, thickness_mm: float) -> str:
    """A board's name as ordered, e.g. “birch plywood 18 mm”; thickness as measured, in mm.

    Thickness stays in mm in every project, because that is how the boards are sold and measured.
    """
    words = "board of another material" if kind is BoardMaterial.OTHER else kind.value
    return f"{words} {round(thickness_mm, 2):g} mm"


def _granted(project: Project, role: BoardRole) -> Material:
    thickness_mm = round(getattr(project.boards, f"{role.value}_mm"), 2)
    kind = project.safety.board_material
    words = kind.value.partition(",")[0] if kind is not BoardMaterial.OTHER else "board"
    identifier = f"{words} {thickness_mm:g}".replace(" ", "-").replace(".", "-")
    taken = {material.id for material in project.stock.materials}
    while identifier in taken:  # what the owner named for other roles is not meant
        identifier += "-x"
    return Material(
        id=identifier, name=board_name(kind, thickness_mm), kind=kind, nominal_mm=thickness_mm,
        has_grain=kind not in _WITHOUT_GRAIN,
    )  # fmt: skip
