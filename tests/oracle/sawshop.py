"""Small sawing jobs for tests: parts made by hand, and a stock to cut them from."""

from collections.abc import Iterable

from baywright.model.construction import Construction, Edging, EdgingKind
from baywright.model.machining import Side
from baywright.model.making import Grain, Manufacture, Part
from baywright.model.project import Project
from baywright.model.stock import Bar, BoardRole, CuttingRules, Material, Sheet, Stock

PLY = Material(id="ply", name="Plywood 18 mm", roles=(BoardRole.UPRIGHT,))


def part(
    number: str,
    length_mm: float,
    width_mm: float,
    quantity: int = 1,
    *,
    grain: Grain = Grain.LENGTH,
    material: str = "ply",
    role: BoardRole = BoardRole.UPRIGHT,
    banded: tuple[Side, ...] = (),
    thickness_mm: float = 18.0,
) -> Part:
    """A part whose size to cut is its finished size."""
    return Part(
        number=number, name=number, quantity=quantity, length_mm=length_mm, width_mm=width_mm,
        thickness_mm=thickness_mm, material=material, grain=grain, role=role, material_id=material,
        cut_length_mm=length_mm, cut_width_mm=width_mm, banded=banded,
    )  # fmt: skip


def made(*parts: Part) -> Manufacture:
    """What is to be made of these parts."""
    return Manufacture(parts=parts, hardware=(), schedule=())


def shop(
    *sheets: Sheet,
    materials: Iterable[Material] = (PLY,),
    bars: tuple[Bar, ...] = (),
    rules: CuttingRules | None = None,
    edging: EdgingKind = EdgingKind.BAND,
) -> Project:
    """A project with that stock."""
    rules = rules or CuttingRules(kerf_mm=3, trim_mm=10)
    return Project(
        construction=Construction(edging=Edging(kind=edging)),
        stock=Stock(materials=tuple(materials), sheets=sheets, bars=bars, rules=rules),
    )


def sheet(identifier: str = "full", **fields: object) -> Sheet:
    """A line of sheets of plywood."""
    return Sheet.model_validate({"id": identifier, "material_id": "ply", **fields})
