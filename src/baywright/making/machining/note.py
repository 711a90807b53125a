"""What the parts list says of an upright's hole rows, in words: what is drilled, and nothing else.

Law: rows and lines are read from the part's own holes, so that who drills after the list drills what the drawing shows;
where there is too much to say, the note sends people to the drawing.
"""

from baywright.model.length import LengthUnit, format_length
from baywright.model.machining import Hole, Side
from baywright.model.making import Part

_MOST_LINES = 6
"""More hole lines of one face are left to the drawing."""
_AS_DRAWN = "drilled only where holes are used: rows and lines as in the drawing"


def with_rows_told(part: Part, unit: LengthUnit) -> Part:
    """The part, with its hole rows in the note; as it was where it has none."""
    rows = [hole for hole in part.machining.holes if hole.row is not None]
    if not rows:
        return part
    return part.replace(note="; ".join(filter(None, (part.note, _told(part, rows, unit)))))


def _told(part: Part, holes: list[Hole], unit: LengthUnit) -> str:
    of_face = {
        side: found for side in (Side.FACE, Side.REVERSE) if (found := [hole for hole in holes if hole.side is side])
    }
    if not all(_is_whole(found) for found in of_face.values()):
        return _AS_DRAWN
    numbers = sorted({hole.row or 0 for hole in holes})
    first = format_length(min(hole.x_mm for hole in holes), unit)
    rows = f"rows {numbers[0]} to {numbers[-1]} are drilled, the first {first} over the lower end"
    return f"{rows}; {_lines_told(part, of_face, unit)}"


def _is_whole(holes: list[Hole]) -> bool:
    """Whether every line of a face goes through rows that follow each other."""
    numbers, lines = {hole.row or 0 for hole in holes}, {hole.y_mm for hole in holes}
    return len(holes) == len(numbers) * len(lines) and max(numbers) - min(numbers) == len(numbers) - 1


def _lines_told(part: Part, of_face: dict[Side, list[Hole]], unit: LengthUnit) -> str:
    lines = {side: tuple(sorted({hole.y_mm for hole in holes})) for side, holes in of_face.items()}
    if max(map(len, lines.values())) > _MOST_LINES:
        return "hole lines as in the drawing"
    if len(set(lines.values())) == 1:
        return f"hole lines {_listed(next(iter(lines.values())), unit)} behind the front edge"
    told = ", ".join(f"{_listed(at, unit)} on the {_face(part, side)}" for side, at in lines.items())
    return f"hole lines behind the front edge: {told}"


def _face(part: Part, side: Side) -> str:
    """The face of an upright as people find it; as the drawing calls it where pieces are of both hands."""
    if part.mirrored:
        return "face" if side is Side.FACE else "reverse"
    return "right face" if (side is Side.FACE) == part.machining.is_front_far else "left face"


def _listed(lengths_mm: tuple[float, ...], unit: LengthUnit) -> str:
    """Lengths in words, mm named once."""
    *most, last = (format_length(length, unit) for length in lengths_mm)
    if not most:
        return last
    if unit is LengthUnit.MILLIMETRE:
        most = [length.removesuffix(" mm") for length in most]
    return f"{', '.join(most)} and {last}"
