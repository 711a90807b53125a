"""What stands on a box in the elevation: as much as the box has room for, the label before everything else."""

from dataclasses import dataclass

from baywright.documents.lettering import printable, width_of
from baywright.documents.sketch import Sketch

_SIZES, _LESS, _PITCH, _HALF = (7.0, 6.2, 5.5), 0.6, 1.22, 0.6


@dataclass(frozen=True)
class Field:
    """The room for a caption, in points: lower left corner, width and height, and what is taken of its upper right
    corner: how wide, and from which height on.
    """

    left: float
    lower: float
    width: float
    height: float
    taken_width: float = 0.0
    taken_from: float = float("inf")

    def room_at(self, middle: float, size: float) -> float:
        """How wide a line of that size may be that is centred on a height."""
        return self.width - (self.taken_width if middle + _HALF * size > self.taken_from else 0.0)


def caption(sheet: Sketch, field: Field, label: str, row: str, details: list[str]) -> None:
    """Write a box's label, its row with the first detail, and the further details, each on a line of its own.

    A flat box has the row beside its label; a long label takes a second line before the further details get theirs.
    """
    size = next((size for size in _SIZES if field.height - 1.0 >= 2 * size * _PITCH), _SIZES[-1])
    pitch = size * _PITCH
    lines = int((field.height - 1.0) // pitch)
    middle = field.lower + field.height / 2
    if lines == 1:
        beside, room = width_of(row, size - _LESS), field.room_at(middle, size)
        sheet.text(field.left + room, middle, row, size - _LESS, across="right")
        sheet.text(field.left, middle, label, size, room=room - beside - 4.0, bold=True)
        return
    upper = middle + pitch * (min(lines, 2 + len(details)) - 1) / 2
    heading = _wrapped(label, field.room_at(upper, size), size) if lines >= 3 else [label]
    plain = [" · ".join([row, *details[:1]]), *details[1:]]
    shown = [*((words, True) for words in heading), *((words, False) for words in plain)][:lines]
    y = middle + pitch * (len(shown) - 1) / 2
    for index, (words, bold) in enumerate(shown):
        line_size, at = size if bold else size - _LESS, y - index * pitch
        sheet.text(field.left, at, words, line_size, room=field.room_at(at, line_size), bold=bold)


def _wrapped(label: str, room: float, size: float) -> list[str]:
    """The label on one line where it fits, else on two, broken between words."""
    words = printable(label).split()
    first = len(words)
    while first > 1 and width_of(" ".join(words[:first]), size, True) > room:
        first -= 1
    return [line for line in (" ".join(words[:first]), " ".join(words[first:])) if line]
