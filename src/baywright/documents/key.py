"""The key under the elevation: which shade and hatching is which box size, and what the marks mean."""

from collections import Counter

from baywright.documents.lengths import plain_length
from baywright.documents.lettering import width_of
from baywright.documents.pattern import Pattern
from baywright.documents.sketch import Sketch
from baywright.model.caution import ON_DRAWINGS
from baywright.model.inventory import BoxSize
from baywright.model.making import ScheduleLine
from baywright.model.project import Project

_LINE, _SWATCH, _GAP, _TEXT, _MARGIN = 13.0, 16.0, 18.0, 7.0, 20.0
_MARKS = "Dots are hole rows, numbered at the left; the dark blocks beside a drawer are its runners, on their row."
_FRONTS = " Thick outlines are front panels, with their part numbers."


def _sizes_shown(project: Project, schedule: tuple[ScheduleLine, ...]) -> list[tuple[BoxSize, int]]:
    size_ids = {box.id: box.size_id for box in project.boxes}
    counts = Counter(size_ids[line.box_id] for line in schedule)
    return [(size, counts[size.id]) for size in project.box_sizes if counts[size.id]]


def _words(project: Project, size: BoxSize, count: int) -> str:
    lengths = (plain_length(length, project.unit) for length in (size.width_mm, size.depth_mm, size.height_mm))
    return f"{count} × {size.name} ({' × '.join(lengths)})"


def _rows(project: Project, schedule: tuple[ScheduleLine, ...], room: float) -> list[list[tuple[BoxSize, str, float]]]:
    """The entries of the key in lines that are not wider than `room`: size, words, and where each begins."""
    rows: list[list[tuple[BoxSize, str, float]]] = [[]]
    x = 0.0
    for size, count in _sizes_shown(project, schedule):
        words = _words(project, size, count)
        width = _SWATCH + 4.0 + min(width_of(words, _TEXT), room - _SWATCH - 4.0)
        if rows[-1] and x + width > room:
            rows.append([])
            x = 0.0
        rows[-1].append((size, words, x))
        x += width + _GAP
    return rows


def key_height(project: Project, schedule: tuple[ScheduleLine, ...], room: float) -> float:
    """Height in points that the key takes when it may be `room` points wide."""
    return _LINE * (len(_rows(project, schedule, room)) + 1 + len(ON_DRAWINGS)) + 10.0


def draw_key(
    sheet: Sketch, project: Project, schedule: tuple[ScheduleLine, ...], patterns: dict[str, Pattern], room: float, *,
    has_fronts: bool = False,
) -> None:  # fmt: skip
    """Draw the key at the foot of the sheet."""
    rows = _rows(project, schedule, room)
    y = 8.0 + _LINE * (len(rows) + len(ON_DRAWINGS)) + _LINE / 2 - 4.0
    for row in rows:
        for size, words, x in row:
            pattern = patterns[size.id]
            sheet.rectangle(_MARGIN + x, y - 4.0, _SWATCH, 8.0, fill=pattern.shade, hatch=pattern.hatch)
            sheet.text(_MARGIN + x + _SWATCH + 4.0, y, words, _TEXT, room=room - _SWATCH - 4.0)
        y -= _LINE
    sheet.text(_MARGIN, y, _MARKS + _FRONTS * has_fronts, 6.5, room=room)
    for line, caution in enumerate(ON_DRAWINGS, 1):
        sheet.text(_MARGIN, y - line * _LINE, caution, 6.5, room=room, bold=True)
