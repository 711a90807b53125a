"""Whether everything that is drilled and cut lies inside its part and leaves enough wood.

Laws: holes and mortises of one side leave `LEAST_APART_MM` between their edges, those of different sides and edges
`LEAST_WALL_MM`; nothing goes through that is not meant to. Both are our judgement, nearer than which plywood breaks
out between holes (dowels: a wall of at least the radius, common practice; screws into edges: 1.5 diameters from the
middle, NDS 2018, 12.5.1, from memory). Grid holes are looked at line by line, not each against each.
"""

from bisect import bisect_left
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from operator import attrgetter

from baywright.making.machining.places import LEAST_APART_MM
from baywright.making.machining.rows import LEAST_WALL_MM
from baywright.making.machining.solid import Solid, apart_mm, bored, solids, wall_mm
from baywright.model.machining import Hole, Side
from baywright.model.making import Part

_SMALL_MM = 1e-6
_MOST_TOLD = 3


def spacing_remarks(parts: Iterable[Part]) -> list[str]:
    """What is too near to an edge or to each other, part by part, with what to do."""
    return [remark for part in parts if (remark := _remark(part, list(_troubles(part))))]


def _remark(part: Part, troubles: Sequence[str]) -> str:
    if not troubles:
        return ""
    shown = [*troubles[:_MOST_TOLD], *([f"{len(troubles) - _MOST_TOLD} more like it"] * (len(troubles) > _MOST_TOLD))]
    return (
        f"{part.name} ({part.number}): {'; '.join(shown)}. Move what lies there (set-backs, offsets, pitch), or take a "
        "thicker or wider board."
    )


def _troubles(part: Part) -> Iterator[str]:
    others = list(solids(part))
    grid = _Grid(part)
    for solid in [*others, *grid.outermost()]:
        if not solid.is_groove and wall_mm(part, solid) < LEAST_WALL_MM - _SMALL_MM:
            yield f"{solid.words} leaves less than {LEAST_WALL_MM:g} mm of wood at an edge or under it"
    yield from grid.troubles()
    for one, other in _neighbours(others):
        yield from _near(one, other)
    for other in others:
        for solid in grid.beside(other):
            yield from _near(solid, other)


def _neighbours(solids: Sequence[Solid]) -> list[tuple[Solid, Solid]]:
    """The pairs that may be too near to each other along the part, in the order in which they are given."""
    along = sorted(range(len(solids)), key=lambda index: solids[index].low[0])
    near = []
    for place, one in enumerate(along):
        end = solids[one].high[0] + max(LEAST_APART_MM, LEAST_WALL_MM)
        for other in along[place + 1 :]:
            if solids[other].low[0] >= end:
                break
            near.append((min(one, other), max(one, other)))
    return [(solids[one], solids[other]) for one, other in sorted(near)]


def _near(one: Solid, other: Solid) -> Iterator[str]:
    least = LEAST_APART_MM if one.side is other.side else LEAST_WALL_MM
    if _begins_in(one, other) or _begins_in(other, one):
        return
    if apart_mm(one, other) < least - _SMALL_MM:
        yield f"{one.words} and {other.words} leave less than {least:g} mm of wood between them"


def _begins_in(solid: Solid, notch: Solid) -> bool:
    """Whether something was bored from the ground of a notch."""
    return notch.is_notch and solid.side is Side.REAR and abs(solid.high[1] - notch.low[1]) < _SMALL_MM


class _Grid:
    """The holes of the rows, line by line; all of one part have one diameter."""

    def __init__(self, part: Part) -> None:
        self._part = part
        self._lines: dict[tuple[Side, float], list[Hole]] = defaultdict(list)
        for hole in part.machining.holes:
            if hole.row is not None:
                self._lines[hole.side, hole.y_mm].append(hole)
        for line in self._lines.values():
            line.sort(key=attrgetter("x_mm"))

    def outermost(self) -> Iterator[Solid]:
        """The first, the last and the deepest hole of every line."""
        for line in self._lines.values():
            deepest = max(line, key=lambda hole: hole.depth_mm or 0.0)
            yield from (bored(self._part, hole) for hole in {id(h): h for h in (line[0], line[-1], deepest)}.values())

    def troubles(self) -> Iterator[str]:
        """Lines of one side, and holes of one line, that are too near to each other."""
        for side in (Side.FACE, Side.REVERSE):
            lines = sorted(y for of, y in self._lines if of is side)
            if any(b - a < self._least(side, a) for a, b in pairwise(lines)):
                yield f"two hole lines leave less than {LEAST_APART_MM:g} mm of wood between them"
            rows = [[hole.x_mm for hole in line] for (of, _), line in self._lines.items() if of is side]
            if any(b - a < self._least(side, lines[0]) for line in rows for a, b in pairwise(line)):
                yield f"two hole rows leave less than {LEAST_APART_MM:g} mm of wood between them"

    def _least(self, side: Side, line: float) -> float:
        return self._lines[side, line][0].diameter_mm + LEAST_APART_MM - _SMALL_MM

    def beside(self, solid: Solid) -> Iterator[Solid]:
        """The holes of the rows that may be too near to something else."""
        for (_, y), line in self._lines.items():
            reach = line[0].diameter_mm / 2 + LEAST_APART_MM
            if not solid.low[1] - reach < y < solid.high[1] + reach:
                continue
            first = bisect_left(line, solid.low[0] - reach, key=attrgetter("x_mm"))
            last = bisect_left(line, solid.high[0] + reach, key=attrgetter("x_mm"))
            yield from (bored(self._part, hole) for hole in line[first:last])
