"""Why a piece could not be cut, in words for its owner.

Laws: every piece that is left over is told once, with its part's number and the first reason that holds; the others
are cut all the same.
"""

from collections.abc import Iterable, Mapping, Sequence

from baywright.making.cutting.pieces import Wanted
from baywright.making.cutting.stock import Kind
from baywright.making.cutting.units import millimetres
from baywright.model.construction import Uprights
from baywright.model.cutting import Unplaced
from baywright.model.length import LengthUnit, format_length
from baywright.model.project import Project
from baywright.model.stock import BoardRole

_JOINED = (BoardRole.BASE, BoardRole.TOP, BoardRole.BACK, BoardRole.BRACE, BoardRole.PLINTH)
"""Boards that run through over several uprights and are divided over them."""
_FINE_MM = 1e-6


def size_words(length: int, width: int, unit: LengthUnit) -> str:
    """A size as people read it; measures in hundredths of a mm."""
    return f"{format_length(millimetres(length), unit)} × {format_length(millimetres(width), unit)}"


def no_size(piece: Wanted, kerf: int, unit: LengthUnit) -> str | None:
    """Why a piece cannot be sawn from any sheet however large; None where it can."""
    least = min(piece.length, piece.width)
    if least <= 0:
        return "nothing is left of it once the edging is taken off; make the edging thinner or the part larger."
    if least <= kerf:
        return (
            f"it is {format_length(millimetres(least), unit)} wide, no more than the blade takes "
            f"({format_length(millimetres(kerf), unit)}); cut it by hand, or with a thinner blade."
        )
    return None


def no_sheet(piece: Wanted, kinds: Sequence[Kind], material: str, project: Project) -> str:
    """Why a piece was left over though a saw could cut it."""
    unit = project.unit
    if any(_fits(piece, kind, piece.may_turn) for kind in kinds):
        return f"the sheets of {material} are used up; add sheets to buy, or more of those that there are."
    if not kinds:
        return f"no sheet of {material} is large enough to be trimmed; enter larger ones."
    if any(_fits(piece, kind, True) for kind in kinds):
        return (
            f"it would fit only with its grain across: {_size(piece, unit)} along the grain, on sheets of {material} "
            f"that give {_largest(kinds, unit)}; enter a sheet that is long enough, or a material without grain."
        )
    return f"{_over(piece, kinds, unit)}; {_mend(piece, kinds, project)}."


def _mend(piece: Wanted, kinds: Sequence[Kind], project: Project) -> str:
    """What can be done about a piece that is too large for every sheet."""
    part = piece.part
    longest = max(max(kind.length, kind.width) if piece.may_turn else kind.length for kind in kinds)
    if max(piece.length, piece.width) <= longest or part.role not in (*_JOINED, BoardRole.SHELF):
        return "enter a larger sheet, or divide the part"
    most_mm, unit = project.boards.longest_mm, project.unit
    is_joined = part.role in _JOINED and project.construction.uprights is Uprights.SHARED
    if is_joined and part.length_mm <= most_mm + _FINE_MM:
        return (
            f"enter a longer sheet, or set the longest board, which is {format_length(most_mm, unit)}, to "
            f"{format_length(millimetres(longest) // 1, unit)} or less, so that it is joined over an upright"
        )
    return (
        "enter a longer sheet, or make the bay that it spans narrower; without an upright to join it over, it can only "
        "be joined over a support of its own"
    )


def _size(piece: Wanted, unit: LengthUnit) -> str:
    return size_words(piece.length, piece.width, unit)


def _fits(piece: Wanted, kind: Kind, may_turn: bool) -> bool:
    as_it_lies = piece.length <= kind.length and piece.width <= kind.width
    return as_it_lies or (may_turn and piece.width <= kind.length and piece.length <= kind.width)


def _largest(kinds: Sequence[Kind], unit: LengthUnit) -> str:
    largest = max(kinds, key=lambda kind: kind.length * kind.width)
    trimmed = " after trimming" if largest.trim else ""
    return f"{size_words(largest.length, largest.width, unit)}{trimmed}"


def _over(piece: Wanted, kinds: Sequence[Kind], unit: LengthUnit) -> str:
    """By how much a piece is larger than the sheet that comes nearest."""
    ways = [(piece.length, piece.width)] + ([(piece.width, piece.length)] if piece.may_turn else [])
    over, kind = min(
        (((length - kind.length, width - kind.width), kind) for kind in kinds for length, width in ways),
        key=lambda found: (sum(max(0, each) for each in found[0]), found[1].sheet.id),
    )
    named = [
        f"{format_length(millimetres(each), unit)} too {what}"
        for each, what in zip(over, ("long", "wide"), strict=True)
        if each > 0
    ]
    trimmed = " after trimming" if kind.trim else ""
    return (
        f"it is {_size(piece, unit)}, {' and '.join(named)} for the sheet that comes nearest, which gives "
        f"{size_words(kind.length, kind.width, unit)}{trimmed}"
    )


def gathered_reasons(left: Iterable[tuple[str, str]]) -> tuple[Unplaced, ...]:
    """One line for each part's number and reason, with how many pieces they are."""
    counts: dict[tuple[str, str], int] = {}
    for part_number, reason in left:
        key = part_number, reason[:1].upper() + reason[1:]
        counts[key] = counts.get(key, 0) + 1
    return tuple(
        Unplaced(part_number=number, pieces=count, reason=reason) for (number, reason), count in counts.items()
    )


def assumed_remarks(assumed: Mapping[str, str]) -> list[str]:
    """What nothing is in stock of, by what was assumed for it: a line for each size."""
    names: dict[str, list[str]] = {}
    for name, size in assumed.items():
        names.setdefault(size, []).append(f"“{name}”")
    return [
        f"Nothing is in stock to cut {_listed(of_size)} from: {size} was assumed. Enter what you can get, with prices."
        for size, of_size in names.items()
    ]


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
