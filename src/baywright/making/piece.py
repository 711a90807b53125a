"""From a finished size to a part of the cutting list: material, size to cut, edging, mass.

Laws: a part is cut smaller than it is finished by the edging's thickness at every edge that is covered, so that edging
and board together have the finished size; nothing else about a part's size is decided here.
"""

from baywright.making.material import mass_of_board_kg, material_of
from baywright.model.construction import EdgingKind
from baywright.model.machining import Side
from baywright.model.making import Grain, Part
from baywright.model.project import Project
from baywright.model.stock import BoardRole, Material

ALL_ROUND = (Side.START, Side.END, Side.FRONT, Side.REAR)


def edging_mm(project: Project) -> float:
    """What covers an edge, in mm; 0 where edges stay bare."""
    edging = project.construction.edging
    return 0.0 if edging.kind is EdgingKind.NONE else edging.thickness_mm


def thickness_mm(project: Project, role: BoardRole) -> float:
    """The thickness in force of the boards of a role."""
    return float(getattr(project.boards, f"{role.value}_mm"))


def piece(
    project: Project, role: BoardRole, number: str, name: str, quantity: int, length_mm: float, width_mm: float, *,
    grain: Grain = Grain.LENGTH, banded: tuple[Side, ...] = (), note: str = "", mirrored: int = 0,
    bays: tuple[int, ...] = (), lefts_mm: tuple[float, ...] = (),
) -> Part:  # fmt: skip
    """One line of the cutting list: `quantity` pieces of a finished size, with edging on the edges of `banded`."""
    material, thickness, edging = material_of(project, role), thickness_mm(project, role), edging_mm(project)
    covered = banded if edging > 0 else ()
    return Part(
        number=number, name=name, quantity=quantity, length_mm=length_mm, width_mm=width_mm, thickness_mm=thickness,
        material=material.name, grain=grain if material.has_grain else Grain.ANY,
        note="; ".join(filter(None, (note, _measured(material, thickness)))),
        role=role, material_id=material.id, nominal_mm=material.nominal_mm, banded=covered, mirrored=mirrored,
        cut_length_mm=length_mm - edging * sum(side in covered for side in (Side.START, Side.END)),
        cut_width_mm=width_mm - edging * sum(side in covered for side in (Side.FRONT, Side.REAR)),
        mass_kg=mass_of_board_kg(material, length_mm, width_mm, thickness), bays=bays, lefts_mm=lefts_mm,
    )  # fmt: skip


def _measured(material: Material, thickness: float) -> str:
    """That a board is not as thick as it is called; empty where it is."""
    if round(thickness, 2) == round(material.nominal_mm, 2):
        return ""
    return f"{thickness:g} mm thick, called {material.nominal_mm:g} mm"
