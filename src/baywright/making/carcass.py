"""The carcass: uprights, the base they stand on, the top that lies on them, the panels that cover its ends.

Laws: uprights stand on the base and the top lies on the uprights, so an upright's length is the workings' upright
height, whole rows; the sizes of base and top are the workings' too. End panels stand on the floor and reach under the
top; base, back and plinth lie between them.
"""

from baywright.making.boards import Board, lettered, over_carcasses, sectioned
from baywright.making.frame import SHELF_BAY, Frame, Role, StandingUpright
from baywright.making.piece import edging_mm, piece
from baywright.model.construction import FrontEdge
from baywright.model.length import format_length
from baywright.model.machining import Side
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.model.stock import BoardRole
from baywright.workings import Stretch, Workings


def carcass_parts(project: Project, workings: Workings, frame: Frame) -> list[Part]:
    """Uprights, base and top."""
    return [
        *_uprights(project, workings, frame),
        *_base(project, workings, frame),
        *_top(project, workings, frame),
    ]


def _uprights(project: Project, workings: Workings, frame: Frame) -> list[Part]:
    usual = round(workings.value("upright_rows"))
    alike: dict[tuple[Role, int], list[StandingUpright]] = {}
    for upright in frame.uprights:
        alike.setdefault((upright.role, upright.rows), []).append(upright)
    parts = []
    for (role, rows), same in sorted(alike.items(), key=lambda item: (item[0][0].number, -item[0][1])):
        number = role.number if rows == usual else f"{role.number}-{rows}"
        parts.append(piece(
            project, BoardRole.UPRIGHT, number, role.title, len(same), workings.upright_height(rows),
            workings.value("upright_depth"), banded=(Side.FRONT,), bays=tuple(b for one in same for b in one.bays),
            note=f"{role.drilling}; {rows} rows high",
        ))  # fmt: skip
    return parts


def _base(project: Project, workings: Workings, frame: Frame) -> list[Part]:
    depth = workings.value("base_depth")
    boards = [
        Board(BoardRole.BASE, "B1", "Base", left, right, depth, banded=(Side.FRONT,))
        for left, right in frame.carcasses_mm
    ]
    return over_carcasses(boards, project, frame)


def _top(project: Project, workings: Workings, frame: Frame) -> list[Part]:
    side, front = project.construction.top.overhang_side_mm, project.construction.top.overhang_front_mm
    left_end, right_end = workings.value("left_end"), workings.value("right_end")
    lefts, rights = zip(*frame.sections_mm, strict=True) if frame.sections_mm else ((), ())
    boards = []
    for stretch in frame.stretches:
        at_left, at_right = stretch.left_mm in lefts, stretch.right_mm in rights
        ends = {2: "at each end", 1: "at the left end" if at_left else "at the right end"}.get(at_left + at_right, "")
        overhang = [
            f"stands out {format_length(length, project.unit)} {where}"
            for length, where in ((front, "in front"), (side, ends))
            if length > 0 and where
        ]
        over = f"over {_named(stretch)}" if len(frame.stretches) > 1 else ""
        banded = (Side.FRONT, *[Side.START] * at_left, *[Side.END] * at_right)
        boards.append(Board(
            BoardRole.TOP, "T1", "Top", stretch.left_mm - left_end * at_left, stretch.right_mm + right_end * at_right,
            workings.value("top_depth"), banded=banded, note=", ".join(filter(None, (over, *overhang))),
        ))  # fmt: skip
    return [part for board in lettered(boards) for part in sectioned(board, frame.joints_mm, project, frame)]


def _named(stretch: Stretch) -> str:
    """Which bays a top lies over, in words."""
    bays = [str(bay + 1) for bay in stretch.bays]
    words = f"bay {bays[0]}" if len(bays) == 1 else f"bays {bays[0]} to {bays[-1]}" if bays else ""
    return " and ".join(filter(None, (words, "the shelf bay" if stretch.has_shelf else "")))


def end_panel_parts(project: Project, workings: Workings) -> list[Part]:
    """The panels that cover the outer uprights, from the floor to under the top."""
    usual, bays = round(workings.value("upright_rows")), len(workings.layout.bays)
    alike: dict[tuple[bool, int], list[int]] = {}
    for panel in workings.layout.end_panels:
        beside = panel.bay if panel.bay < bays else SHELF_BAY
        alike.setdefault((panel.is_left, panel.rows), []).append(beside)
    return [
        piece(
            project, BoardRole.END_PANEL, ("E1L" if is_left else "E1R") + (f"-{rows}" if rows != usual else ""),
            f"End panel, {'left' if is_left else 'right'}", len(beside),
            workings.value("base_upper_height") + workings.upright_height(rows), workings.value("end_panel_depth"),
            banded=(Side.FRONT,), bays=tuple(beside),
            note="floor to under the top, over the outer face of the end upright, front edges flush",
        )
        for (is_left, rows), beside in alike.items()
    ]  # fmt: skip


def edge_remarks(project: Project) -> list[str]:
    """What does not go together at the top's front edge."""
    top, thickness = project.construction.top, project.boards.top_mm
    if top.front_edge is FrontEdge.SQUARE:
        return []
    what = "rounding" if top.front_edge is FrontEdge.ROUNDED else "chamfer"
    size = format_length(top.front_edge_size_mm, project.unit)
    if 2 * top.front_edge_size_mm > thickness:
        return [
            f"A {what} of {size} at both corners does not fit on a top {format_length(thickness, project.unit)} thick: "
            "make it at most half as large as the top is thick."
        ]
    edging = edging_mm(project)
    if 0 < edging < top.front_edge_size_mm:
        return [
            f"The {what} of {size} at the top's front edge goes through the edging, which is "
            f"{format_length(edging, project.unit)} thick, into the board: take a thicker lipping, none, or a smaller "
            f"{what}."
        ]
    return []


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
