"""What joins boards where an end meets a face, and pieces of one long board: loose tenons, dowels, screws, bolts.

Laws: every joint is counted once; boards that are divided are joined by tenons, or by dowels where dowels are chosen.
"""

from dataclasses import dataclass

from baywright.making.boards import joints_in, pieces_of
from baywright.making.frame import Frame
from baywright.making.hardware.fasteners import (
    POCKET_SCREW_DIAMETER_MM,
    dowel_size,
    in_joint,
    pocket_screw,
    tenon_size,
)  # fmt: skip
from baywright.making.hardware.need import Measure, Need, long, thick
from baywright.model.catalogue import HardwareKind
from baywright.model.construction import Jointing
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.workings import Workings

CONNECTORS_PER_MEETING = 4
"""Two near the front edge and two near the rear: common practice."""
_CLAMPS_MM = 5.0
"""By so much a sleeve bolt can be set longer or shorter; common practice, from memory."""


@dataclass(frozen=True)
class _Joined:
    """Fasteners of one kind of joint: board thickness in mm, how many, and where."""

    thickness_mm: float
    count: int
    where: str


def joint_needs(project: Project, workings: Workings, frame: Frame, parts: list[Part]) -> list[Need]:
    """What the joints of the carcass take besides wood screws, which are ordered together (`screws`)."""
    jointing = project.construction.jointing
    ends = _upright_ends(project, workings, frame)
    divided = _divided_boards(project, parts)
    match jointing:
        case Jointing.LOOSE_TENON:
            return _tenons([*ends, *divided])
        case Jointing.DOWEL:
            return _dowels([*ends, *divided])
        case Jointing.POCKET_SCREW:
            return [*_pocket_screws(ends), *_tenons(divided)]
        case Jointing.SCREW:
            return _tenons(divided)


def _upright_ends(project: Project, workings: Workings, frame: Frame) -> list[_Joined]:
    in_end = in_joint(workings.value("upright_depth"))
    where = f"{in_end} in each end of an upright"
    return [_Joined(project.boards.upright_mm, 2 * in_end * len(frame.uprights), where)]


def _divided_boards(project: Project, parts: list[Part]) -> list[_Joined]:
    boards = project.boards
    found = []
    for number, thickness in (("B1", boards.base_mm), ("T1", boards.top_mm)):
        if joints := joints_in(number, parts):
            board = pieces_of(number, parts)[0]
            count = joints * in_joint(board.width_mm)
            found.append(_Joined(thickness, count, f"{count} where the {board.name.lower()} is joined"))
    return found


def _tenons(joined: list[_Joined]) -> list[Need]:
    needs = []
    for thick_mm, long_mm in sorted({tenon_size(one.thickness_mm) for one in joined}):
        same = [one for one in joined if tenon_size(one.thickness_mm) == (thick_mm, long_mm)]
        note = "; ".join([*(one.where for one in same), "glued; or as many screws, the simpler way"])
        measures = (Measure("thickness_mm", thick_mm - 0.1, thick_mm + 0.1, f"of {thick_mm} mm thickness"),)
        needs.append(Need(
            number=f"LT{thick_mm}x{long_mm}", kind=HardwareKind.TENON, name="Loose tenon",
            specification=f"{thick_mm} mm thick, {long_mm} mm long", needed=sum(one.count for one in same),
            pack_size=100, note=note, measures=(*measures, long(long_mm)),
        ))  # fmt: skip
    return needs


def _dowels(joined: list[_Joined]) -> list[Need]:
    needs = []
    for diameter, length in sorted({dowel_size(one.thickness_mm) for one in joined}):
        same = [one for one in joined if dowel_size(one.thickness_mm) == (diameter, length)]
        needs.append(Need(
            number=f"DW{diameter}x{length}", kind=HardwareKind.DOWEL, name="Dowel, fluted",
            specification=f"{diameter} × {length} mm", needed=sum(one.count for one in same), pack_size=100,
            note="; ".join([*(one.where for one in same), "glued"]), measures=(thick(diameter), long(length)),
        ))  # fmt: skip
    return needs


def _pocket_screws(joined: list[_Joined]) -> list[Need]:
    needs = []
    for one in joined:
        length = pocket_screw(one.thickness_mm)
        needs.append(Need(
            number=f"PS{length}", kind=HardwareKind.POCKET_SCREW, name="Pocket screw",
            specification=f"{POCKET_SCREW_DIAMETER_MM:g} × {length} mm, flat head", needed=one.count, pack_size=100,
            note=one.where, measures=(long(length),),
        ))  # fmt: skip
    return needs


def connector_needs(frame: Frame) -> list[Need]:
    """Bolts that hold neighbouring carcasses together where each bay has its own uprights."""
    meetings = len(frame.carcasses_mm) - len(frame.sections_mm)
    through = 2 * frame.upright_mm
    return [Need(
        number="CB", kind=HardwareKind.CONNECTOR, name="Connecting bolt",
        specification=f"sleeve bolt through {through:g} mm", needed=CONNECTORS_PER_MEETING * meetings, pack_size=20,
        note=f"{CONNECTORS_PER_MEETING} through each of {meetings} pairs of uprights that stand side by side",
        measures=(Measure("length_mm", through - _CLAMPS_MM, through + _CLAMPS_MM, f"for {through:g} mm",
                          is_needed=False),),
    )]  # fmt: skip
