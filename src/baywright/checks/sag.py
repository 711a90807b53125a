"""Whether shelves, top, base and drawer bottoms bend too far, after years.

Laws: each board is a beam between its supports: shelves on their pins, the top and the base over the uprights, a drawer
bottom in its grooves. Only bending and, where the shear modulus is known, shear count; a board that runs through over
several equal bays is taken over two of them, loaded in one; over unequal ones as simply supported, the safe side. What
stays for years creeps. Every board is of the material of its role; of one that is not known nothing is computed.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import floor

from baywright.checks.beam import Case, Section, deflection_mm, weight_n
from baywright.checks.creep import ServiceClass, deformation_factor, final_deflection_mm
from baywright.checks.judging import judged, not_weighed
from baywright.checks.span import allowed_mm, origin
from baywright.making.carcass import carcass_parts
from baywright.making.drawers import drawer_kinds, drawers_to_make
from baywright.making.frame import SHELF_BAY, frame_of
from baywright.making.material import material_of
from baywright.making.shelves import shelf_parts
from baywright.model.construction import Stand
from baywright.model.finding import CheckKind, Finding, Given, Mend, Severity
from baywright.model.length import format_length
from baywright.model.making import Part
from baywright.model.material import MATERIALS, Stiffness
from baywright.model.project import Project
from baywright.model.repair import FieldChange
from baywright.model.safety import Climate
from baywright.model.stock import BoardRole
from baywright.workings import Workings

STANDARD_THICKNESSES_MM = (6.0, 9.0, 12.0, 15.0, 18.0, 21.0, 24.0, 27.0, 30.0, 35.0, 40.0, 45.0, 50.0)
"""Thicknesses that boards are sold in; common practice."""
SOURCE = "Wood Handbook, structural analysis equations (GTR-113, eq. 8-2); creep EN 1995-1-1, table 3.2"
_SERVICE = {
    Climate.HEATED: ServiceClass.HEATED, Climate.ROOFED: ServiceClass.ROOFED, Climate.OUTDOORS: ServiceClass.OUTDOORS,
}  # fmt: skip


@dataclass(frozen=True)
class Board:
    """A board between two supports: its part, span and section, and what lies on it in kg."""

    subject: str
    part_number: str
    role: BoardRole
    span_mm: float
    depth_mm: float
    thickness_mm: float
    uniform_kg: float
    point_kg: float = 0.0
    runs_through: bool = False
    """Whether it runs on over a neighbouring bay of the same width."""


def sag_findings(project: Project, workings: Workings) -> list[Finding]:
    """One finding for each kind of board."""
    return [*(_judge(project, board) for board in _boards(project, workings)), *_bottoms(project, workings)]


def _boards(project: Project, workings: Workings) -> Iterator[Board]:
    safety, boards = project.safety, project.boards
    for shelf in shelf_parts(project, workings):
        area_m2 = shelf.length_mm * shelf.width_mm / 1e6
        yield Board(
            "Shelf", shelf.number, BoardRole.SHELF, shelf.length_mm, shelf.width_mm, boards.shelf_mm,
            safety.shelf_load_kg_m2 * area_m2, safety.point_load_kg,
        )  # fmt: skip
    frame, layout = frame_of(project, workings), workings.layout
    if not frame.spans:
        return
    widest = max(frame.spans, key=lambda span: span.width_mm)
    span, depth = widest.width_mm, workings.value("top_depth")
    where = "the shelf bay" if widest.bay is None else f"bay {widest.bay + 1}"
    carcass = carcass_parts(project, workings, frame)
    runs_through = sum(abs(s.width_mm - span) < 1.0 for s in frame.spans) > 1 and len(layout.stretches) == 1
    yield Board(
        f"Top over {where}", _number(carcass, BoardRole.TOP, widest.number), BoardRole.TOP, span, depth, boards.top_mm,
        safety.top_load_kg_m2 * span * depth / 1e6, runs_through=runs_through,
    )  # fmt: skip
    standing = project.construction.standing
    if standing.kind is Stand.FEET and layout.shelf is not None:
        depth = workings.value("base_depth")
        load = safety.shelf_load_kg_m2 * layout.shelf.clear_mm * depth / 1e6
        yield Board(
            "Base under the shelf bay, between its feet", _number(carcass, BoardRole.BASE, SHELF_BAY), BoardRole.BASE,
            layout.shelf.clear_mm, depth, boards.base_mm, load,
        )  # fmt: skip


def _number(parts: Sequence[Part], role: BoardRole, bay: int) -> str:
    """The number of the board of a role that lies over or under a bay."""
    return next((part.number for part in parts if part.role is role and bay in part.bays), "")


def _bottoms(project: Project, workings: Workings) -> list[Finding]:
    """The drawer bottom that bends furthest: the one with the heaviest boxes of each kind of bay."""
    drawers = drawers_to_make(project)
    kinds = drawer_kinds(project, workings, drawers)
    boxes = project.boxes_by_id
    heaviest: dict[str, tuple[float, tuple[int, int]]] = {}
    unweighed: list[str] = []
    for place, placements in drawers.items():
        masses = [boxes[p.box_id].loaded_mass_kg for p in placements]
        unweighed += [boxes[p.box_id].label for p in placements if boxes[p.box_id].loaded_mass_kg is None]
        known = sum(mass + project.safety.load_allowance_kg for mass in masses if mass is not None)
        heaviest[kinds[place]] = max(heaviest.get(kinds[place], (0.0, place)), (known, place))
    found = []
    for kind, (load_kg, place) in sorted(heaviest.items()):
        width, depth = workings.at_kind("bottom_width", kind), workings.at_kind("bottom_depth", kind)
        groove = 2 * project.construction.drawers.groove_depth_mm
        board = Board(
            f"Drawer bottom, bay {place[0] + 1}, row {place[1] + 1}", f"D3{kind.removeprefix('bay')}",
            BoardRole.DRAWER_BOTTOM, min(width, depth) - groove, max(width, depth),
            project.boards.drawer_bottom_mm, load_kg,
        )  # fmt: skip
        found.append(_judge(project, board).replace(drawer=place))
    if unweighed:
        found.append(not_weighed(CheckKind.SAG, "Drawer bottoms", unweighed, SOURCE))
    return found


def _judge(project: Project, board: Board) -> Finding:
    safety, subject = project.safety, f"{board.subject} ({board.part_number})" if board.part_number else board.subject
    named = material_of(project, board.role)
    material = MATERIALS.get(named.kind)
    factor = deformation_factor(material.creep, _SERVICE[safety.climate]) if material is not None else None
    if min(board.span_mm, board.depth_mm) <= 0:
        return _unknown(
            board, subject, "With these measures nothing is left of the board's length or width.",
            "Mend the measures first; “Workings” shows how they come about.",
        )  # fmt: skip
    if material is None:
        return _unknown(
            board, subject, f"Nothing is known of the stiffness of “{named.name}”.",
            f"Choose a known material: {', '.join(kind.value for kind in MATERIALS)}.",
        )  # fmt: skip
    if factor is None:
        return _unknown(
            board, subject, f"{named.name.capitalize()} is not meant for this climate (EN 1995-1-1, table 3.2).",
            "Choose another material, or keep the run in the dry.",
        )  # fmt: skip
    sag = _sag_mm(project, board, board.thickness_mm, material, factor)
    limit = allowed_mm(board.span_mm, safety.span_ratio)
    length = format_length(board.span_mm, project.unit)
    return Finding(
        kind=CheckKind.SAG, severity=judged(sag, limit), subject=subject, part_number=board.part_number,
        message=f"Over {length} it sags {sag:.1f} mm in the long run; {limit:.1f} mm are allowed (span ÷ "
        f"{safety.span_ratio:g}).",
        value=sag, limit=limit, unit="mm",
        formula="(k_b·W·L³/(E·I) + k_s·W·L/(G·A′)) × (1 + lasting share × k_def)",
        given=(
            Given(name="span L", value=length), Given(name="load W", value=f"{board.uniform_kg:.1f} kg spread"),
            *((Given(name="point load", value=f"{board.point_kg:g} kg"),) if board.point_kg else ()),
            Given(name="supports", value="runs through over two bays" if board.runs_through else "simple"),
            Given(name="section", value=f"{board.depth_mm:g} × {board.thickness_mm:g} mm"),
            Given(name="material", value=named.name),
            Given(name="E", value=f"{material.elastic_n_mm2:,.0f} N/mm²: {material.source}"),
            Given(name="k_def", value=f"{factor:g}"),
        ),
        source=f"{SOURCE}; span ÷ {safety.span_ratio:g}: {origin(safety.span_ratio)}",
        mends=_mends(project, board, material, factor) if sag > limit else (),
    )  # fmt: skip


def _unknown(board: Board, subject: str, message: str, mend: str) -> Finding:
    return Finding(
        kind=CheckKind.SAG, severity=Severity.UNCHECKED, subject=subject, part_number=board.part_number,
        message=message, source=SOURCE, mends=(Mend(text=mend),),
    )  # fmt: skip


def _sag_mm(
    project: Project, board: Board, thickness_mm: float, material: Stiffness, factor: float
) -> float:  # fmt: skip
    section = Section(board.depth_mm, thickness_mm)
    spread = Case.UNIFORM_TWO_SPANS if board.runs_through else Case.UNIFORM_SIMPLE
    at_once = sum(
        deflection_mm(case, weight_n(kg), board.span_mm, section, material.elastic_n_mm2, material.shear_n_mm2)
        for case, kg in ((spread, board.uniform_kg), (Case.POINT_SIMPLE, board.point_kg))
    )
    return final_deflection_mm(at_once, factor * project.safety.lasting_share)


def _mends(project: Project, board: Board, material: Stiffness, factor: float) -> tuple[Mend, ...]:
    limit = allowed_mm(board.span_mm, project.safety.span_ratio)
    named = project.stock.material_of(board.role)
    is_measured = named is not None and named.batch is not None  # then the construction's thickness is not in force
    mends = []
    for thickness in STANDARD_THICKNESSES_MM:
        if thickness > board.thickness_mm and _sag_mm(project, board, thickness, material, factor) <= limit:
            change = FieldChange(path=f"construction.boards.{board.role.value}_mm", value=thickness)
            mends.append(Mend(text=f"Take boards {thickness:g} mm thick.", changes=() if is_measured else (change,)))
            break
    longest = board.span_mm * (limit / _sag_mm(project, board, board.thickness_mm, material, factor)) ** (1 / 3)
    shorten = "Or shorten" if mends else "Shorten"
    shown = format_length(floor(longest), project.unit)  # down, so that it is enough
    mends.append(Mend(text=f"{shorten} the span to {shown}, or load it less."))
    return tuple(mends)
