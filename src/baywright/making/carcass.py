"""The carcass: uprights, the base they stand on, the top that lies on them.

Laws: uprights stand on the base and the top lies on the uprights, so an upright's length is the workings' upright
height, whole rows; the sizes of base and top are the workings' too.
"""

from baywright.making.boards import Board, lettered, over_carcasses, sectioned
from baywright.making.frame import Frame, Role, StandingUpright
from baywright.making.piece import piece
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
    first = format_length(workings.value("first_row"), project.unit)
    front, rear = (
        format_length(length, project.unit)
        for length in (project.construction.hole_rows.front_setback_mm, project.construction.hole_rows.rear_setback_mm)
    )
    lines = f"hole lines {front} from the front edge and {rear} from the rear edge"
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
            note=f"{role.drilling}; {rows} rows, first {first} over the lower end; {lines}",
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
            BoardRole.TOP, "T1", "Top", stretch.left_mm - side * at_left, stretch.right_mm + side * at_right,
            workings.value("top_depth"), banded=banded, note=", ".join(filter(None, (over, *overhang))),
        ))  # fmt: skip
    return [part for board in lettered(boards) for part in sectioned(board, frame.joints_mm, project, frame)]


def _named(stretch: Stretch) -> str:
    """Which bays a top lies over, in words."""
    bays = [str(bay + 1) for bay in stretch.bays]
    words = f"bay {bays[0]}" if len(bays) == 1 else f"bays {bays[0]} to {bays[-1]}" if bays else ""
    return " and ".join(filter(None, (words, "the shelf bay" if stretch.has_shelf else "")))


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
