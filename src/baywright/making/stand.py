"""What lifts the run off the floor, as far as it is cut from boards: the plinth. Feet are hardware.

Laws: the plinth is a ladder frame as high as the stand; its front board is set back, its rear board is flush with the
uprights' rear edges; a cross piece lies under every upright, and one more wherever the plinth is joined, so that each
section ends on its own.
"""

from baywright.making.boards import Board, bearings, lettered, sectioned
from baywright.making.frame import Frame
from baywright.making.piece import piece
from baywright.model.construction import Stand
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.model.stock import BoardRole
from baywright.workings import Workings


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
    crossings = bearings("P1", long_parts, frame)
    doubled = ", two side by side where the plinth is joined" if crossings > len(frame.uprights) else ""
    crossing = piece(
        project, BoardRole.PLINTH, "P3", "Plinth, cross piece", crossings,
        workings.value("base_depth") - standing.plinth_setback_mm - 2 * thickness, standing.height_mm,
        bays=tuple(bay for upright in frame.uprights for bay in upright.bays),
        note=f"front to rear, one under every upright{doubled}",
    )  # fmt: skip
    return [*long_parts, crossing]
