"""What closes or stiffens the rear: a full back, two braces, or the rail by which the run is fixed to a wall.

Laws: a full back lies on the rear edges of base and uprights, under the top; its joints lie over uprights. Braces and
fixing rail are let into notches in the uprights' rear edges, so that they run through and lie flush with them.
"""

from baywright.making.boards import Board, over_carcasses
from baywright.making.frame import Frame
from baywright.model.construction import Back
from baywright.model.length import format_length
from baywright.model.making import Grain, Part
from baywright.model.project import Project
from baywright.workings import Workings

_NOTCHED = "let into notches in the uprights' rear edges, flush"


def rear_parts(project: Project, workings: Workings, frame: Frame) -> list[Part]:
    """The boards of the rear, as chosen."""
    boards, rear = project.construction.boards, project.construction.rear
    end = frame.length_mm
    match rear.kind:
        case Back.FULL_BACK:
            height = boards.base_mm + workings.value("upright_height")
            note = "on the rear edges of base and uprights, under the top"
            chosen = [Board("R1", "Back", 0.0, end, height, boards.back_mm, grain=Grain.ANY, note=note)]
        case Back.TWO_BRACES:
            chosen = [
                Board("R2", "Upper brace", 0.0, end, rear.brace_width_mm, boards.brace_mm,
                      note=f"under the top; {_NOTCHED}"),
                Board("R3", "Lower brace", 0.0, end, rear.brace_width_mm, boards.brace_mm,
                      note=f"on the base; {_NOTCHED}"),
            ]  # fmt: skip
        case Back.EXISTING_WALL:
            chosen = [
                Board("R4", "Fixing rail", 0.0, end, rear.brace_width_mm, boards.brace_mm,
                      note=f"under the top, screwed to the wall; {_NOTCHED}"),
            ]  # fmt: skip
    return [part for board in chosen for part in over_carcasses(board, project, frame)]


def rear_remarks(project: Project, workings: Workings) -> list[str]:
    """What does not go together at the rear."""
    boards, rear = project.construction.boards, project.construction.rear
    remarks = []
    if rear.kind is Back.EXISTING_WALL and not project.space.existing_wall:
        remarks.append(
            "The rear is left to an existing wall, but the space has none: choose a full back or two braces, "
            "or a free-standing run will rack sideways."
        )
    return remarks + _clash(project, workings, boards.brace_mm)


def _clash(project: Project, workings: Workings, brace_mm: float) -> list[str]:
    if project.construction.rear.kind is Back.FULL_BACK or workings.value("runner_length") <= 0:
        return []
    room = workings.value("upright_depth") - workings.value("drawer_outside_depth")
    if room >= brace_mm:
        return []
    return [
        f"Behind the closed drawers are {format_length(room, project.unit)}, but the rail at the rear is "
        f"{format_length(brace_mm, project.unit)} thick and would stop the drawers in front of it: "
        "take a greater rear gap, a thinner rail or a full back."
    ]
