"""Which parts a change of the run asks for that are not cut yet, and which lie idle afterwards.

Laws: parts are the same where name, material and finished size are; what is as built counts as cut, nothing else; where
no bay is marked as built, the run before counts as it was arranged. Of a run of which only some bays stand, their
drawers with their fronts, the uprights beside them and with own uprights their own boards count, and the boards that
run through and the end panels, for they carry and close what stands; the shelves count once all bays stand. An idle
piece is named for one new piece at most.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from typing import TypeVar

from baywright.making.frame import frame_of
from baywright.making.listing import parts_to_cut
from baywright.model.difference import PartChange
from baywright.model.length import format_length
from baywright.model.making import Grain, Part
from baywright.model.project import Built, Project
from baywright.workings import derive

_SAME_MM = 1e-3

_T = TypeVar("_T")

_Key = tuple[str, str, float, float, float]
_Counted = Mapping[_Key, tuple[Part, int]]


def part_changes(before: Project, after: Project) -> tuple[tuple[PartChange, ...], tuple[PartChange, ...]]:
    """The parts to cut that were not cut before, and the parts that lie idle, in the order of the parts list."""
    there = _counted(_cut_before(before, after.built))
    then = _counted(parts_to_cut(after))
    lacking, idle = _more(then, there), _more(there, then)
    return tuple(_served(lacking, idle, after)), tuple(_change(part, count) for part, count in idle)


def _counted(parts: Iterable[Part]) -> dict[_Key, tuple[Part, int]]:
    found: dict[_Key, tuple[Part, int]] = {}
    for part in parts:
        length, width, thickness = (round(mm, 2) for mm in (part.length_mm, part.width_mm, part.thickness_mm))
        key = part.name, part.material, length, width, thickness
        first, count = found.get(key, (part, 0))
        found[key] = first, count + part.quantity
    return found


def _more(those: _Counted, than: _Counted) -> list[tuple[Part, int]]:
    """The parts of which there are more, and how many more."""
    counts = [(part, count - than[key][1] if key in than else count) for key, (part, count) in those.items()]
    return [(part, count) for part, count in counts if count > 0]


def _change(part: Part, quantity: int, note: str = "") -> PartChange:
    return PartChange(
        name=part.name, material=part.material, length_mm=part.length_mm, width_mm=part.width_mm,
        thickness_mm=part.thickness_mm, quantity=quantity, note=note,
    )  # fmt: skip


# What is cut already


def _cut_before(before: Project, built: Built | None) -> tuple[Part, ...]:
    if built is None:
        return parts_to_cut(before)
    project = built.project
    parts = parts_to_cut(project)
    if len(built.bays) == project.arrangement.bay_count:
        return parts
    return tuple(_of_bays(project, set(built.bays), parts))


def _of_bays(project: Project, bays: set[int], parts: Iterable[Part]) -> Iterator[Part]:
    """The parts of a run that count as cut when only those bays of it stand."""
    frame = frame_of(project, derive(project))
    here = [span for span in frame.spans if span.bay in bays]
    edges = [x for span in here for x in (span.left_mm - frame.upright_mm, span.left_mm + span.width_mm)]
    beside = Counter(
        upright.role.title for upright in frame.uprights if any(abs(upright.left_mm - x) < _SAME_MM for x in edges)
    )
    carcasses = Counter(round(span.width_mm + 2 * frame.upright_mm, 2) for span in here)
    for part in parts:
        count = part.quantity
        match part.number[:1]:
            case "U":
                count = _taken(beside, part.name, count)
            case "D" | "F" | "S":
                count = 0
            case "B" | "R" if frame.own_uprights:
                count = 0 if part.number.endswith("s") else _taken(carcasses, round(part.length_mm, 2), count)
        if count:
            yield part.replace(quantity=count)
    yield from (part for part in parts_to_cut(_only(project, bays)) if part.number[0] in "DF")


def _taken(counts: Counter[_T], key: _T, most: int) -> int:
    """Takes up to `most` off a count; how many were there."""
    count = min(most, counts[key])
    counts[key] -= count
    return count


def _only(project: Project, bays: set[int]) -> Project:
    """The project with the boxes of those bays alone."""
    kept = tuple(p for p in project.arrangement.placements if p.bay in bays)
    return project.replace(arrangement=project.arrangement.replace(placements=kept))


# What idle pieces are good for


def _served(lacking: list[tuple[Part, int]], idle: list[tuple[Part, int]], project: Project) -> list[PartChange]:
    """The parts to cut, with a note where they can come out of idle pieces; large parts choose first."""
    left = [count for _, count in idle]
    notes: list[str] = [""] * len(lacking)
    for i in sorted(range(len(lacking)), key=lambda i: (-_area(lacking[i][0]), i)):
        part, wanted = lacking[i]
        fitting = [j for j, (piece, _) in enumerate(idle) if _could_be_cut_from(part, piece)]
        told = []
        for j in sorted(fitting, key=lambda j: (_area(idle[j][0]), j)):
            if taken := min(wanted, left[j]):
                left[j] -= taken
                wanted -= taken
                told.append(_note(taken, idle[j][0], project))
        notes[i] = "; ".join(told)
    return [_change(part, count, notes[i]) for i, (part, count) in enumerate(lacking)]


def _area(part: Part) -> float:
    return part.length_mm * part.width_mm


def _could_be_cut_from(part: Part, piece: Part) -> bool:
    """Whether the part comes out of the piece with its grain the right way."""
    if part.material != piece.material or abs(part.thickness_mm - piece.thickness_mm) > _SAME_MM:
        return False
    size = part.length_mm, part.width_mm
    loose = Grain.ANY in (part.grain, piece.grain)
    ways = [size] if loose or part.grain is piece.grain else []
    if part.grain is Grain.ANY or (not loose and part.grain is not piece.grain):
        ways.append(size[::-1])
    return any(piece.length_mm >= a - _SAME_MM and piece.width_mm >= b - _SAME_MM for a, b in ways)


def _note(count: int, piece: Part, project: Project) -> str:
    size = " × ".join(format_length(mm, project.unit) for mm in (piece.length_mm, piece.width_mm))
    pieces = "an idle piece" if count == 1 else f"{count} idle pieces"
    return f"{count} can come out of {pieces} “{piece.name}” ({size}), where holes and grooves do not matter"
