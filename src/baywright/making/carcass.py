"""The carcass: uprights, the base they stand on, the top that lies on them.

Laws: uprights stand on the base and the top lies on the uprights, so an upright's length is the workings' upright
height, whole rows; the sizes of base and top are the workings' too.
"""

from baywright.making.boards import Board, over_carcasses, sectioned
from baywright.making.frame import Frame, Role
from baywright.making.material import plywood
from baywright.model.length import format_length
from baywright.model.making import Grain, Part
from baywright.model.project import Project
from baywright.workings import Workings


def carcass_parts(project: Project, workings: Workings, frame: Frame) -> list[Part]:
    """Uprights, base and top."""
    return [
        *_uprights(project, workings, frame),
        *_base(project, workings, frame),
        *_top(project, workings, frame),
    ]


def _uprights(project: Project, workings: Workings, frame: Frame) -> list[Part]:
    thickness = project.construction.boards.upright_mm
    first = format_length(workings.value("first_row"), project.unit)
    rows = f"{round(workings.value('upright_rows'))} rows, first {first} over the lower end"
    front, rear = (
        format_length(length, project.unit)
        for length in (project.construction.hole_rows.front_setback_mm, project.construction.hole_rows.rear_setback_mm)
    )
    lines = f"hole lines {front} from the front edge and {rear} from the rear edge"
    roles = [upright.role for upright in frame.uprights]
    return [
        Part(
            number=role.number, name=role.title, quantity=roles.count(role),
            length_mm=workings.value("upright_height"), width_mm=workings.value("upright_depth"),
            thickness_mm=thickness, material=plywood(thickness), grain=Grain.LENGTH,
            edged_length_mm=workings.value("upright_height"), edging_strips=1,
            note=f"{role.drilling}; {rows}; {lines}",
        )
        for role in Role
        if role in roles
    ]  # fmt: skip


def _base(project: Project, workings: Workings, frame: Frame) -> list[Part]:
    board = Board(
        "B1", "Base", 0.0, frame.length_mm, workings.value("base_depth"), project.construction.boards.base_mm,
        edged_front=True,
    )  # fmt: skip
    return over_carcasses(board, project, frame)


def _top(project: Project, workings: Workings, frame: Frame) -> list[Part]:
    side, front = project.construction.top.overhang_side_mm, project.construction.top.overhang_front_mm
    overhang = [
        f"stands out {format_length(length, project.unit)} {where}"
        for length, where in ((front, "in front"), (side, "at each end"))
        if length > 0
    ]
    board = Board(
        "T1", "Top", -side, frame.length_mm + side, workings.value("top_depth"), project.construction.boards.top_mm,
        edged_front=True, edged_ends=True, note=", ".join(overhang),
    )  # fmt: skip
    return sectioned(board, frame.joints_mm, project, frame)


def carcass_remarks(project: Project, workings: Workings) -> list[str]:
    """What cannot be drilled: hole lines that would meet or lie beside the upright."""
    if workings.value("hole_columns_apart") > 0:
        return []
    rows = project.construction.hole_rows
    return [
        f"The hole lines lie {format_length(rows.front_setback_mm, project.unit)} from the front and "
        f"{format_length(rows.rear_setback_mm, project.unit)} from the rear edge, but the uprights are only "
        f"{format_length(workings.value('upright_depth'), project.unit)} deep: make the row set-backs smaller."
    ]
