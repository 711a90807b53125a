"""The pieces as the search sees them: numbers in order of area, and masks of those that fit a length or a width.

Laws: piece number b is bit b of every mask, the largest has the highest bit, so that the largest of a mask is found
by its `bit_length`; `fits_length[x]` holds the pieces no longer than x as they lie, `turned_length[x]` those of the
pieces that may turn whose width is no more than x.
"""

from bisect import bisect_right
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import accumulate
from operator import or_

from baywright.making.cutting.packing import Piece

TOLERANCES = (0.0, 0.05, 0.1, 0.2)
"""How much narrower than its place a piece may be, as a share of the place, and still count as filling it."""

MOST_LISTED = 1_000
"""Masks are listed beforehand up to this measure; boards in tenths of a mm have many more, few of them asked for."""


class Lookup(dict[int, int]):
    """Masks by measure, each worked out when it is first asked for."""

    def __init__(self, mask_of: Callable[[int], int]) -> None:
        super().__init__()
        self._mask_of = mask_of

    def __missing__(self, measure: int) -> int:
        mask = self[measure] = self._mask_of(measure)
        return mask


By = list[int] | Lookup
Masks = tuple[By, By, By, By]
"""By length, by width, turned by length, turned by width."""


@dataclass(frozen=True)
class Table:
    """Measures by number, masks by measure, and the masks of nearly filling pieces for each tolerance."""

    pieces: tuple[Piece, ...]
    lengths: list[int]
    widths: list[int]
    areas: list[int]
    fits: Masks
    near: tuple[Masks, ...]
    turns: bool

    @property
    def everything(self) -> int:
        """The mask of all pieces."""
        return (1 << len(self.pieces)) - 1


def table_of(pieces: Sequence[Piece], longest: int, widest: int) -> Table:
    """The table for boards no longer and no wider than given, from pieces that each fit on one of them."""
    ordered = tuple(sorted(pieces, key=lambda piece: (piece.length * piece.width, piece.length, piece.id)))
    lengths = [piece.length for piece in ordered]
    widths = [piece.width for piece in ordered]
    turning = [piece.may_turn and piece.length != piece.width for piece in ordered]
    fits = (
        _up_to(lengths, longest, [True] * len(ordered)),
        _up_to(widths, widest, [True] * len(ordered)),
        _up_to(widths, longest, turning),
        _up_to(lengths, widest, turning),
    )
    near = tuple(
        (
            _nearly(fits[0], longest, tolerance),
            _nearly(fits[1], widest, tolerance),
            _nearly(fits[2], longest, tolerance),
            _nearly(fits[3], widest, tolerance),
        )
        for tolerance in TOLERANCES
    )
    areas = [length * width for length, width in zip(lengths, widths, strict=True)]
    return Table(ordered, lengths, widths, areas, fits, near, any(turning))


def numbers(mask: int) -> list[int]:
    """The piece numbers in a mask, largest first."""
    found = []
    while mask:
        number = mask.bit_length() - 1
        found.append(number)
        mask ^= 1 << number
    return found


def _by(most: int, mask_of: Callable[[int], int]) -> By:
    """The masks of all measures from 0 to `most`."""
    return [mask_of(measure) for measure in range(most + 1)] if most <= MOST_LISTED else Lookup(mask_of)


def _up_to(measures: list[int], most: int, counted: list[bool]) -> By:
    """The counted pieces whose measure is no more."""
    rising = sorted((measure, 1 << number) for number, measure in enumerate(measures) if counted[number])
    steps = [measure for measure, _ in rising]
    masks = [0, *accumulate((bit for _, bit in rising), or_)]
    return _by(most, lambda measure: masks[bisect_right(steps, measure)])


def _nearly(fits: By, most: int, tolerance: float) -> By:
    """Those of them whose measure is not much less."""

    def nearly(measure: int) -> int:
        under = measure - 1 - int(tolerance * measure)
        return fits[measure] & ~(fits[under] if under >= 0 else 0)

    return _by(most, nearly)
