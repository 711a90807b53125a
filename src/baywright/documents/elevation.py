"""The front elevation to scale: stand, base, uprights with their hole rows, drawers with their boxes and front panels,
shelves, top.

Laws: every height and width comes from the workings, the frame and the drawer schedule, nothing is measured here;
text never runs over its neighbour; sizes are told apart without colour too; the same document gives the same bytes.
matplotlib is heavy, so import this module only where a drawing is really made.
"""

from collections.abc import Sequence
from itertools import groupby, pairwise

from baywright.documents.drawer import draw_drawer
from baywright.documents.key import draw_key, key_height
from baywright.documents.lettering import width_of
from baywright.documents.pattern import patterns
from baywright.documents.scene import Scene
from baywright.documents.sketch import FAINT, INK, Format, Scale, Sketch
from baywright.making.frame import Frame, Span, frame_of
from baywright.making.machining.rows import shelf_rows
from baywright.making.shelves import shelf_count
from baywright.model.construction import Stand
from baywright.model.making import FrontPanel, ScheduleLine
from baywright.model.project import Project
from baywright.workings import Workings

_LEFT, _RIGHT, _ABOVE, _DIMENSIONS = 34.0, 66.0, 46.0, 46.0
_USUAL_WIDTH, _MOST_WIDTH, _MOST_RUN_HEIGHT, _LEAST_BAY = 790.0, 2400.0, 430.0, 92.0
_LEAST_HEIGHT = 40.0
"""Points of upright height under which only the total height is dimensioned."""


def elevation(
    project: Project, workings: Workings, schedule: tuple[ScheduleLine, ...], kind: Format, dots_per_inch: int = 150, *,
    fronts: Sequence[FrontPanel] = (),
) -> bytes:  # fmt: skip
    """The front elevation of the present arrangement as PNG, SVG or PDF; `fronts` are its drawers' front panels."""
    return _draw(project, workings, schedule, fronts).to_bytes(kind, dots_per_inch)


def _draw(
    project: Project, workings: Workings, schedule: tuple[ScheduleLine, ...], fronts: Sequence[FrontPanel] = ()
) -> Sketch:
    frame = frame_of(project, workings)
    if not frame.spans:
        return _nothing(project)
    scene = _scene(project, workings, frame, schedule)
    _heading(scene)
    _stand(scene)
    _carcass(scene)
    _rows(scene)
    for span in frame.spans:
        if span.bay is None:
            _shelves(scene, span)
    _drawers(scene, fronts)
    _widths(scene)
    _heights(scene)
    draw_key(scene.sheet, project, schedule, scene.patterns, _key_room(scene.sheet), has_fronts=bool(fronts))
    return scene.sheet


def _drawers(scene: Scene, fronts: Sequence[FrontPanel]) -> None:
    spans = {span.bay: span for span in scene.frame.spans}
    of_drawer = {(front.bay, front.row): front for front in fronts}
    for (bay, _), lines in groupby(scene.schedule, key=lambda line: (line.bay - 1, line.drawer)):
        if bay in spans:
            boxes = list(lines)
            draw_drawer(scene, spans[bay], boxes, of_drawer.get((bay, boxes[0].runner_row - 1)))


def _nothing(project: Project) -> Sketch:
    sheet = Sketch(_USUAL_WIDTH, 120.0)
    sheet.text(20.0, 80.0, project.name, 12.0, room=_USUAL_WIDTH - 40.0, bold=True)
    sheet.text(20.0, 50.0, "There are no bays to draw yet.", 9.0)
    return sheet


def _scene(project: Project, workings: Workings, frame: Frame, schedule: tuple[ScheduleLine, ...]) -> Scene:
    scale = _points_per_mm(workings, frame)
    left_end, right_end = workings.value("left_end") * scale, workings.value("right_end") * scale
    run = left_end + frame.length_mm * scale + right_end
    width = max(_USUAL_WIDTH, run + _LEFT + _RIGHT)
    sizes = {size.id: size for size in project.box_sizes}
    of_box = {box.id: sizes[box.size_id] for box in project.boxes}
    below = _DIMENSIONS + key_height(project, schedule, width - 2 * 20.0)
    height = _highest(workings, frame) * scale + _ABOVE + below
    left = _LEFT + left_end + max(0.0, (width - run - _LEFT - _RIGHT) / 2)
    sheet = Sketch(width, height)
    return Scene(
        project,
        workings,
        frame,
        sheet,
        Scale(scale, left, below),
        schedule,
        patterns([*sizes]),
        of_box,
        project.arrangement.placements_by_box,
    )


def _points_per_mm(workings: Workings, frame: Frame) -> float:
    """As large as the sheet allows; on long runs the sheet grows rather than that bays become unreadable."""
    length = workings.value("left_end") + frame.length_mm + workings.value("right_end")
    fits = (_USUAL_WIDTH - _LEFT - _RIGHT) / length
    readable = _LEAST_BAY / min(span.width_mm for span in frame.spans)
    lowest_of_all = min(max(fits, readable), _MOST_RUN_HEIGHT / max(_highest(workings, frame), 1.0))
    return min(lowest_of_all, _MOST_WIDTH / length)


def _under_top(workings: Workings, rows: int) -> float:
    """Height over the floor of a top's underside, in mm."""
    return workings.value("base_upper_height") + workings.upright_height(rows)


def _highest(workings: Workings, frame: Frame) -> float:
    """Height over the floor of the highest top's upper side, in mm."""
    return workings.value("top_thickness") + max(_under_top(workings, stretch.rows) for stretch in frame.stretches)


def _key_room(sheet: Sketch) -> float:
    return sheet.width - 2 * 20.0


def _heading(scene: Scene) -> None:
    sheet, top = scene.sheet, scene.sheet.height
    sheet.text(20.0, top - 13.0, scene.project.name, 11.0, room=sheet.width * 0.6, bold=True)
    unit = "mm" if scene.project.unit == "mm" else "inches, to the nearest 1/32"
    sheet.text(sheet.width - 20.0, top - 13.0, f"front elevation; dimensions in {unit}", 7.5, across="right")
    y = scene.scale.y(_highest(scene.workings, scene.frame)) + 9.0
    for span in scene.frame.spans:
        number = "" if span.bay is None else str(span.bay + 1)
        choices = ("shelves",) if span.bay is None else (f"bay {number}", number)
        room = scene.mm(span.width_mm + scene.frame.upright_mm) - 2.0
        words = next((words for words in choices if width_of(words, 8.0, bold=True) <= room), "")
        middle = scene.scale.x(span.left_mm + span.width_mm / 2)
        sheet.text(middle, y, words, 8.0, bold=True, across="center")


def _stand(scene: Scene) -> None:
    standing, frame = scene.project.construction.standing, scene.frame
    scene.sheet.line(
        (scene.scale.x(0.0) - 22.0, scene.scale.floor), (scene.scale.x(frame.length_mm) + 60.0, scene.scale.floor), 1.6
    )
    if standing.kind is Stand.PLINTH:
        for left, right in frame.sections_mm:
            scene.block(left, 0.0, right - left, standing.height_mm, "#dcd6ca")
        return
    width = min(40.0, frame.upright_mm * 2)
    for least, most in frame.sections_mm:
        for middle in frame.middles_mm:
            if least < middle < most:
                left = min(max(middle - width / 2, least), most - width)
                scene.block(left, 0.0, width, standing.height_mm, FAINT)


def _carcass(scene: Scene) -> None:
    workings, boards = scene.workings, scene.project.boards
    base_upper = workings.value("base_upper_height")
    for left, right in scene.frame.carcasses_mm:
        scene.block(left, base_upper - boards.base_mm, right - left, boards.base_mm)
    for upright in scene.frame.uprights:
        scene.block(upright.left_mm, base_upper, scene.frame.upright_mm, workings.upright_height(upright.rows))
    for panel in workings.layout.end_panels:
        scene.block(panel.left_mm, 0.0, panel.right_mm - panel.left_mm, _under_top(workings, panel.rows))
    left_end, right_end = workings.value("left_end"), workings.value("right_end")
    lefts, rights = zip(*scene.frame.sections_mm, strict=True)
    for stretch in scene.frame.stretches:
        left = stretch.left_mm - left_end * (stretch.left_mm in lefts)
        right = stretch.right_mm + right_end * (stretch.right_mm in rights)
        scene.block(left, _under_top(workings, stretch.rows), right - left, boards.top_mm, "#e6dfd0")


def _rows(scene: Scene) -> None:
    """A dot for every hole row on every upright, and the number of every fifth row at the left."""
    workings = scene.workings
    lowest = workings.value("base_upper_height") + workings.value("first_row")
    uprights = scene.frame.uprights
    rows = [lowest + workings.value("pitch") * row for row in range(max(upright.rows for upright in uprights))]
    spacing = scene.mm(workings.value("pitch"))
    dot = min(1.4, spacing * 0.3)
    middles = zip(scene.frame.middles_mm, uprights, strict=True)
    scene.sheet.dots(
        [(scene.scale.x(x), scene.scale.y(y)) for x, upright in middles for y in rows[: upright.rows]], dot
    )
    step = next(step for step in (1, 5, 10, 20, 50, 100, 1000) if step * spacing >= 18.0 or step == 1000)
    left = scene.scale.x(-workings.value("left_end")) - 4.0
    for number, height in enumerate(rows, 1):
        if number == 1 or number % step == 0:
            scene.sheet.text(left, scene.scale.y(height), str(number), 6.0, colour=INK, across="right")
    middle = scene.scale.y((rows[0] + rows[-1]) / 2) if rows else 0.0
    scene.sheet.text(left - 17.0, middle, "hole rows", 6.5, across="center", upright=True)


def _shelves(scene: Scene, span: Span) -> None:
    workings, count = scene.workings, shelf_count(scene.project, scene.workings)
    play = workings.value("shelf_play")
    lowest = workings.value("base_upper_height") + workings.value("first_row")
    for row in shelf_rows(span.rows, count):
        height = lowest + workings.value("pitch") * row
        scene.block(
            span.left_mm + play, height, span.width_mm - 2 * play, scene.project.boards.shelf_mm
        )  # fmt: skip


def _widths(scene: Scene) -> None:
    y = scene.scale.floor - 18.0
    for span in scene.frame.spans:
        left, right = scene.scale.x(span.left_mm), scene.scale.x(span.left_mm + span.width_mm)
        scene.sheet.level_dimension(left, right, y, scene.shown(span.width_mm))
    ends = scene.scale.x(0.0), scene.scale.x(scene.frame.length_mm)
    for x in ends:
        scene.sheet.line((x, scene.scale.floor - 4.0), (x, y - 22.0), 0.4, FAINT)
    scene.sheet.level_dimension(*ends, y - 18.0, scene.shown(scene.frame.length_mm))


def _heights(scene: Scene) -> None:
    workings = scene.workings
    _lower_tops(scene)
    levels = [0.0, workings.value("base_upper_height")]
    levels.append(_highest(workings, scene.frame) - workings.value("top_thickness"))
    levels.append(_highest(workings, scene.frame))
    side = scene.scale.x(scene.frame.length_mm + workings.value("right_end"))
    inner, outer = side + 18.0, side + 54.0
    if scene.mm(levels[2] - levels[1]) < _LEAST_HEIGHT:
        total = scene.shown(levels[-1])
        scene.sheet.height_dimension(inner, scene.scale.y(0.0), scene.scale.y(levels[-1]), total)
        return
    for level in levels[1:]:
        y = scene.scale.y(level)
        scene.sheet.line((side + 4.0, y), ((outer if level == levels[-1] else inner) + 3.0, y), 0.4, FAINT)
    for lower, upper in pairwise(levels):
        scene.sheet.height_dimension(inner, scene.scale.y(lower), scene.scale.y(upper), scene.shown(upper - lower))
    scene.sheet.height_dimension(outer, scene.scale.y(0.0), scene.scale.y(levels[-1]), scene.shown(levels[-1]))


def _lower_tops(scene: Scene) -> None:
    """Where the run steps down, the height of the lower top is written over it."""
    highest = _highest(scene.workings, scene.frame)
    for stretch in scene.frame.stretches:
        height = _under_top(scene.workings, stretch.rows) + scene.workings.value("top_thickness")
        if height < highest:
            middle = scene.scale.x((stretch.left_mm + stretch.right_mm) / 2)
            words = f"{scene.shown(height)} high"
            scene.sheet.text(middle, scene.scale.y(height) + 7.0, words, 7.0, colour=INK, across="center")
