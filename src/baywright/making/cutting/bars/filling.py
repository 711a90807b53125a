"""Filling one bar with whole numbers that add up as far as they can, by sets of sums kept as bits of one number.

Bit s of a number says that the sum s can be reached; adding a piece is one shift. So all sums of two hundred pieces
up to some ten thousand are known within a fraction of a millisecond, and nothing is rounded.
"""

from collections.abc import Sequence


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


def steps(pieces: int, room: int) -> float:
    """The effort of filling one bar so."""
    return (pieces + 1) * (0.0003 + room * 2.5e-8)
