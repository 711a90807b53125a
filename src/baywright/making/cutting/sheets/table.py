"""The pieces as the search sees them: numbers in order of area, and masks of those that fit a length or a width.

Laws: piece number b is bit b of every mask, the largest has the highest bit, so that the largest of a mask is found
by its `bit_length`; `fits_length[x]` holds the pieces no longer than x as they lie, `turned_length[x]` those of the
pieces that may turn whose width is no more than x.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from baywright.making.cutting.packing import Piece

TOLERANCES = (0.0, 0.0, 0.02, 0.05, 0.1)
"""How much narrower than its place a piece may be, as a share of the place, and still count as filling it."""

Masks = tuple[list[int], list[int], list[int], list[int]]
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
            _nearly(fits[0], tolerance),
            _nearly(fits[1], tolerance),
            _nearly(fits[2], tolerance),
            _nearly(fits[3], tolerance),
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


def _up_to(measures: list[int], most: int, counted: list[bool]) -> list[int]:
    at = [0] * (most + 1)
    for number, measure in enumerate(measures):
        if counted[number] and measure <= most:
            at[measure] |= 1 << number
    mask = 0
    for measure in range(most + 1):
        mask |= at[measure]
        at[measure] = mask
    return at


def _nearly(fits: list[int], tolerance: float) -> list[int]:
    def under(measure: int) -> int:
        least = measure - 1 - int(tolerance * measure)
        return fits[least] if least >= 0 else 0

    return [mask & ~under(measure) for measure, mask in enumerate(fits)]
