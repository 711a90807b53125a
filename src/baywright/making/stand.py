"""What lifts the run off the floor, as far as it is cut from boards: the plinth. Feet are hardware.

Laws: the plinth is a ladder frame as high as the stand; its front board is set back, its rear board is flush with the
uprights' rear edges; a cross piece lies under every upright, and one more where the plinth is joined under one, so that
each section ends on its own. End panels stand on the floor beside it.
"""

from baywright.making.boards import Board, lettered, sectioned
from baywright.making.frame import Frame
from baywright.making.piece import piece
from baywright.model.construction import Stand
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.model.stock import BoardRole
from baywright.workings import Workings

_SAME_MM = 1e-6


def stand_parts(project: Project, workings: Workings, frame: Frame) -> list[Part]:
    """The plinth's boards; none on feet, or where the stand has no height."""
    standing, thickness = project.construction.standing, project.boards.plinth_mm
    if standing.kind is not Stand.PLINTH or standing.height_mm <= 0:
        return []
    long_parts = [
        part
        for number, name in (("P1", "Plinth, front"), ("P2", "Plinth, rear"))
        for board in lettered(
            [
                Board(BoardRole.PLINTH, number, name, left, right, standing.height_mm)
                for left, right in frame.sections_mm
            ]
        )
        for part in sectioned(board, frame.joints_mm, project, frame)
    ]
    joints = [left for part in long_parts if part.number.startswith("P1") for left in part.lefts_mm]
    # An upright over a joint gets two, one under each of the boards that meet.
    doubled = [u for u in frame.uprights if any(abs(u.left_mm + frame.upright_mm / 2 - x) < _SAME_MM for x in joints)]
    carried = sorted([*frame.uprights, *doubled], key=lambda upright: upright.left_mm)
    crossing = piece(
        project, BoardRole.PLINTH, "P3", "Plinth, cross piece", len(carried),
        workings.value("base_depth") - standing.plinth_setback_mm - 2 * thickness, standing.height_mm,
        bays=tuple(bay for upright in carried for bay in upright.bays),
        note="front to rear, one under every upright" + (", two where the plinth is joined there" if doubled else ""),
    )  # fmt: skip
    return [*long_parts, crossing]
