"""A drawer in the elevation: its tray, its runners, and the boxes that stand in it.

Laws: of boxes one behind another only the front one is seen, and its words say how many stand behind it.
"""

from dataclasses import replace

from baywright.documents.caption import Field, caption
from baywright.documents.front import Tag, draw_front, tag_of
from baywright.documents.scene import Scene
from baywright.documents.sketch import INK
from baywright.making.frame import Span
from baywright.model.making import FrontPanel, ScheduleLine

_BAND, _TRAY = 7.0, "#d8d4cc"


def draw_drawer(scene: Scene, span: Span, lines: list[ScheduleLine], front: FrontPanel | None = None) -> None:
    """A drawer with the boxes in it and its front panel; of boxes one behind another only the front one is seen."""
    workings, drawers, line = scene.workings, scene.project.construction.drawers, lines[0]
    width = workings.at_kind("drawer_outside_width", span.kind)
    thickness = workings.value("runner_thickness")
    runner = line.lower_edge_mm + workings.value("line_offset")
    for x in (span.left_mm, span.left_mm + span.width_mm - thickness):
        scene.block(x, runner - 8.0, thickness, 16.0, INK)
    scene.block(span.left_mm + (span.width_mm - width) / 2, line.lower_edge_mm, width, drawers.side_height_mm, _TRAY)
    seen = [line for line in lines if scene.placements[line.box_id].behind == 0]
    widths = [_width_across(scene, line) for line in seen]
    play = workings.value("lateral_play")
    left = span.left_mm + (span.width_mm - sum(widths) - play * (len(widths) - 1)) / 2
    for box, across in zip(seen, widths, strict=True):
        _box(scene, box, left, across, len(lines) - len(seen), tag_of(scene, front) if front else None)
        left += across + play
    if front is not None:
        draw_front(scene, front)


def _width_across(scene: Scene, line: ScheduleLine) -> float:
    """Width of a box as it stands in its drawer, in mm."""
    size = scene.sizes[line.box_id]
    return size.depth_mm if scene.placements[line.box_id].turned else size.width_mm


def _box(scene: Scene, line: ScheduleLine, left_mm: float, width_mm: float, hidden: int, tag: Tag | None) -> None:
    size = scene.sizes[line.box_id]
    lower = line.box_top_mm - size.height_mm
    scene.block(left_mm, lower, width_mm, size.height_mm, "white")
    pattern, band = scene.patterns[size.id], min(_BAND, scene.mm(width_mm) / 5)
    x, y = scene.scale.x(left_mm), scene.scale.y(lower)
    scene.sheet.rectangle(x, y, band, scene.mm(size.height_mm), fill=pattern.shade, hatch=pattern.hatch)
    more = f", {hidden} behind" if hidden else ""
    left, room = x + band + 3.0, scene.mm(width_mm) - band - 5.0
    field = Field(left, y, room, scene.mm(size.height_mm))
    if tag is not None:
        field = replace(field, taken_width=tag.room_taken(left + room), taken_from=tag.lower)
    _caption(scene, line, field, more)


def _caption(scene: Scene, line: ScheduleLine, field: Field, more: str) -> None:
    mass = "not weighed" if line.loaded_mass_kg is None else f"{line.loaded_mass_kg:g} kg"
    details = [mass, f"{scene.shown(line.lower_edge_mm)} over floor"]
    caption(scene.sheet, field, line.box_label + more, f"row {line.runner_row}", details)
