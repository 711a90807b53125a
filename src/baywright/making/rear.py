"""What closes or stiffens the rear: a full back, two braces, or the rail by which the run is fixed to a wall.

Laws: a full back lies on the rear edges of base and uprights, under the top; its joints lie over uprights. Braces and
fixing rail are let into notches in the uprights' rear edges, so that they run through and lie flush with them.
"""

from baywright.making.boards import Board, over_carcasses
from baywright.making.frame import Frame
from baywright.model.construction import Back, Fronts
from baywright.model.length import format_length
from baywright.model.making import Grain, Part
from baywright.model.project import Project
from baywright.model.stock import BoardRole
from baywright.workings import Workings

_NOTCHED = "let into notches in the uprights' rear edges, flush"


def rear_parts(project: Project, workings: Workings, frame: Frame) -> list[Part]:
    """The boards of the rear, as chosen."""
    boards, rear = project.boards, project.construction.rear
    under_top, brace = _under_tops(frame), rear.brace_width_mm
    match rear.kind:
        case Back.FULL_BACK:
            note = "on the rear edges of base and uprights, under the top"
            chosen = [[
                Board(BoardRole.BACK, "R1", "Back", left, right, boards.base_mm + workings.upright_height(rows),
                      grain=Grain.ANY, note=note)
                for left, right, rows in under_top
            ]]  # fmt: skip
        case Back.TWO_BRACES:
            chosen = [
                _rails("R2", "Upper brace", under_top, brace, f"under the top; {_NOTCHED}"),
                _rails(
                    "R3", "Lower brace", [(*ends, 0) for ends in frame.carcasses_mm], brace, f"on the base; {_NOTCHED}"
                ),
            ]
        case Back.EXISTING_WALL:
            note = f"under the top, screwed to the wall; {_NOTCHED}"
            chosen = [_rails("R4", "Fixing rail", under_top, brace, note)]
    return [part for same in chosen for part in over_carcasses(same, project, frame)]


def _under_tops(frame: Frame) -> list[tuple[float, float, int]]:
    """Ends and rows of each stretch of one height; with own uprights of each carcass."""
    if frame.own_uprights:
        return [(*ends, span.rows) for ends, span in zip(frame.carcasses_mm, frame.spans, strict=True)]
    return [(stretch.left_mm, stretch.right_mm, stretch.rows) for stretch in frame.stretches]


def _rails(number: str, name: str, ends: list[tuple[float, float, int]], width_mm: float, note: str) -> list[Board]:
    return [Board(BoardRole.BRACE, number, name, left, right, width_mm, note=note) for left, right, _ in ends]


def rear_remarks(project: Project, workings: Workings) -> list[str]:
    """What does not go together at the rear."""
    boards, rear = project.boards, project.construction.rear
    remarks = []
    if rear.kind is Back.EXISTING_WALL and not project.space.existing_wall:
        remarks.append(
            "The rear is left to an existing wall, but the space has none: choose a full back or two braces, "
            "or a free-standing run will rack sideways."
        )
    return [*remarks, *_too_high(project, workings), *_clash(project, workings, boards.brace_mm)]


def _too_high(project: Project, workings: Workings) -> list[str]:
    """Rails that reach beyond the lowest uprights, or into each other."""
    rear, unit = project.construction.rear, project.unit
    if rear.kind is Back.FULL_BACK or not workings.layout.uprights:
        return []
    lowest = min(workings.upright_height(upright.rows) for upright in workings.layout.uprights)
    count = 2 if rear.kind is Back.TWO_BRACES else 1
    if count * rear.brace_width_mm <= lowest:
        return []
    what, does = ("Two braces", "do") if count == 2 else ("A fixing rail", "does")
    return [
        f"{what} of {format_length(rear.brace_width_mm, unit)} width {does} not fit on uprights that are only "
        f"{format_length(lowest, unit)} high: make the width of braces and rail at most "
        f"{format_length(lowest / count, unit)}."
    ]


def _clash(project: Project, workings: Workings, brace_mm: float) -> list[str]:
    if project.construction.rear.kind is Back.FULL_BACK or workings.value("runner_length") <= 0:
        return []
    inset = project.boards.front_mm if project.construction.drawers.fronts is Fronts.INSET else 0.0
    room = workings.value("upright_depth") - inset - workings.value("drawer_outside_depth")
    if room >= brace_mm:
        return []
    return [
        f"Behind the closed drawers are {format_length(room, project.unit)}, but the rail at the rear is "
        f"{format_length(brace_mm, project.unit)} thick and would stop the drawers in front of it: "
        "take a greater rear gap, a thinner rail or a full back."
    ]
