"""Filling one bar with whole numbers that add up as far as they can, by sets of sums kept as bits of one number.

Bit s of a number says that the sum s can be reached; adding a piece is one shift. So all sums of two hundred pieces
up to some ten thousand are known within a fraction of a millisecond, and nothing is rounded.
"""

from collections.abc import Sequence

MOST_BITS = 1 << 26
"""Bits of sums kept for one bar."""


def fullest(pieces: Sequence[int], room: int, slack: int = 0) -> list[int]:
    """The places of some of the pieces whose sum is as great as `room` allows, or at most `slack` under `room`.

    Of all such choices the one that takes the earliest pieces, one after the other.
    """
    mask = (1 << (room + 1)) - 1
    sums = 1
    behind = [1]
    for piece in reversed(pieces):
        sums = (sums | (sums << piece)) & mask
        behind.append(sums)
    least = max(0, min(sums.bit_length() - 1, room - slack))
    chosen: list[int] = []
    filled, last = 0, len(pieces) - 1
    for place, piece in enumerate(pieces):
        most = room - filled - piece
        if most < 0:
            continue
        lower = max(0, least - filled - piece)
        if (behind[last - place] >> lower) & ((2 << (most - lower)) - 1):
            chosen.append(place)
            filled += piece
    return chosen


def fullest_of_many(pieces: Sequence[int], room: int, slack: int = 0, most_bits: int = MOST_BITS) -> list[int]:
    """As `fullest`, where the first pieces are taken as they come until what is left is little enough to go into."""
    taken: list[int] = []
    first = 0
    while (len(pieces) - first) * room > most_bits:
        if pieces[first] <= room:
            taken.append(first)
            room -= pieces[first]
        first += 1
    return taken + [first + place for place in fullest(pieces[first:], room, slack)]


def greatest_sum(pieces: Sequence[int], room: int) -> int:
    """The greatest sum of some of the pieces that `room` allows."""
    mask = (1 << (room + 1)) - 1
    sums = 1
    for piece in pieces:
        sums = (sums | (sums << piece)) & mask
        if sums >> room:
            return room
    return sums.bit_length() - 1


def steps(pieces: int, room: int) -> float:
    """The effort of filling one bar so."""
    return 0.0005 * (pieces + 1) + 4e-8 * min(MOST_BITS, pieces * room)
