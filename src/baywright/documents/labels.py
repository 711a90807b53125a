"""Labels to stick on the pieces as they come off the saw: three by eight on an A4 sheet, 70 × 37 mm each.

Laws: one label a piece, in the order of the cutting plan where there is one, else of the parts list; the number on it
is the part's number everywhere else. The size of the labels is common practice, from memory.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from baywright.documents.book import book
from baywright.documents.lengths import plain_length
from baywright.documents.sketch import FAINT, Sketch
from baywright.model.cutting import CuttingPlan
from baywright.model.making import Manufacture, Part
from baywright.model.project import Project

_MM = 72.0 / 25.4
_PAGE_WIDTH, _PAGE_HEIGHT = 210.0 * _MM, 297.0 * _MM
_COLUMNS, _ROWS, _WIDTH, _HEIGHT = 3, 8, 70.0 * _MM, 37.0 * _MM
_AIR = 4.5 * _MM
_NUMBER, _TEXT, _PITCH = 15.0, 7.5, 10.5


@dataclass(frozen=True)
class Label:
    """One piece: its part, which of the pieces it is, and the sheet that it is cut from."""

    part: Part
    piece: int
    sheet: str = ""


def labels(project: Project, manufacture: Manufacture, plan: CuttingPlan | None = None) -> bytes:
    """All labels as the content of a PDF file; ValueError where there is nothing to label."""
    wanted = list(_pieces(manufacture, plan))
    sheets = [
        _sheet(project, wanted[first : first + _COLUMNS * _ROWS]) for first in range(0, len(wanted), _COLUMNS * _ROWS)
    ]
    return book(sheets, f"{project.name}: labels")


def _pieces(manufacture: Manufacture, plan: CuttingPlan | None) -> Iterator[Label]:
    parts = {part.number: part for part in manufacture.parts}
    done: set[tuple[str, int]] = set()
    for layout in plan.sheet_layouts if plan else ():
        for piece in layout.pieces:
            if piece.part_number in parts:
                done.add((piece.part_number, piece.piece))
                yield Label(parts[piece.part_number], piece.piece, layout.number)
    for part in manufacture.parts:
        for number in range(1, part.quantity + 1):
            if (part.number, number) not in done:
                yield Label(part, number)


def _sheet(project: Project, pieces: Sequence[Label]) -> Sketch:
    sheet = Sketch(_PAGE_WIDTH, _PAGE_HEIGHT)
    for index, label in enumerate(pieces):
        row, column = divmod(index, _COLUMNS)
        _draw(sheet, project, label, column * _WIDTH, _PAGE_HEIGHT - (row + 1) * _HEIGHT)
    return sheet


def _draw(sheet: Sketch, project: Project, label: Label, left: float, lower: float) -> None:
    part, room = label.part, _WIDTH - 2 * _AIR
    x, y = left + _AIR, lower + _HEIGHT - _AIR - _NUMBER / 2
    sheet.text(x, y, part.number, _NUMBER, room=room * 0.62, bold=True)
    count = f"{label.piece} of {part.quantity}" + (f", {label.sheet}" if label.sheet else "")
    sheet.text(left + _WIDTH - _AIR, y, count, _TEXT, room=room * 0.36, across="right")
    sheet.line((x, y - _NUMBER * 0.75), (x + room, y - _NUMBER * 0.75), 0.4, FAINT)
    for index, line in enumerate(_lines(project, label)):
        sheet.text(x, y - _NUMBER * 0.75 - 8.0 - index * _PITCH, line, _TEXT, room=room, bold=index == 0)


def _lines(project: Project, label: Label) -> list[str]:
    part = label.part
    size = " × ".join(plain_length(side, project.unit) for side in (part.length_mm, part.width_mm))
    edged = f"edged: {', '.join(side.value for side in part.banded)}" if part.banded else "no edging"
    mirrored = "mirrored" if label.piece > part.quantity - part.mirrored else ""
    where = _where(part)
    return [part.name, f"{size} {'in' if project.unit == 'in' else 'mm'}, finished", part.material, edged,
            "; ".join(filter(None, (mirrored, where, project.name)))]  # fmt: skip


def _where(part: Part) -> str:
    bays = set(part.bays)
    if len(bays) != 1:
        return ""
    (bay,) = bays
    return "shelf bay" if bay < 0 else f"bay {bay + 1}"
