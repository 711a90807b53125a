"""Witnesses for cutting bars: the saw's own sums in true measures, and the least cost of tiny cases by trying all.

Shares no code with the engine. A piece is cut with the kerf behind it; behind the last piece of a bar the blade may run
out into the air.
"""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Stick:
    """A kind of bar as bought: true length, cost, and how many there are (None: no limit)."""

    length: int
    cost: int
    available: int | None = None


Sawn = tuple[int, Sequence[int]]
"""A bar cut: the place of its kind, and the true lengths of its pieces."""


def check_sticks(wanted: Mapping[int, int], sticks: Sequence[Stick], sawn: Iterable[Sawn], kerf: int) -> Counter[int]:
    """What is missing of the wanted pieces (length: count); asserts that no bar is overrun and nothing else is cut."""
    missing, taken = Counter(wanted), Counter[int]()
    for kind, pieces in sawn:
        assert pieces, "a bar is taken and nothing is cut from it"
        taken[kind] += 1
        assert sum(pieces) + kerf * (len(pieces) - 1) <= sticks[kind].length, f"{pieces} do not come out of a bar"
        missing.subtract(pieces)
    assert all(count >= 0 for count in missing.values()), "a piece is cut more often than it is wanted"
    for kind, count in taken.items():
        available = sticks[kind].available
        assert available is None or count <= available, f"{count} bars of kind {kind} are taken"
    return +missing


def least_cost(pieces: Sequence[int], sticks: Sequence[Stick], kerf: int = 0) -> int | None:
    """The least that bars for all pieces cost; None: there is no way."""
    ordered = sorted(pieces, reverse=True)
    best: list[int | None] = [None]
    left = [len(pieces) if stick.available is None else stick.available for stick in sticks]

    def place(number: int, rooms: list[int], cost: int) -> None:
        if best[0] is not None and cost >= best[0]:
            return
        if number == len(ordered):
            best[0] = cost
            return
        piece = ordered[number]
        for bar, room in enumerate(rooms):
            if room >= piece and room not in rooms[:bar]:
                place(number + 1, [*rooms[:bar], room - piece - kerf, *rooms[bar + 1 :]], cost)
        for kind, stick in enumerate(sticks):
            if left[kind] and stick.length >= piece:
                left[kind] -= 1
                place(number + 1, [*rooms, stick.length - piece - kerf], cost + stick.cost)
                left[kind] += 1

    place(0, [], 0)
    return best[0]
