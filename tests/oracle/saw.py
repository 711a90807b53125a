"""A saw for tests: cuts laid-out boards apart, edge to edge, and replays lists of cuts; shares no code with the engine.

Laws. Everything is plain whole numbers in one unit, in the true measures of parts and boards. A board is trimmed by
`trim` on all four sides first; a cut runs right across the piece in hand and turns a strip as wide as the blade
(`kerf`) into dust; at an outer edge the blade may run half in the air, between two parts it needs its full width.
Nothing is known of how the layout was made: the cuts are found from the rectangles alone. What cannot be sawn, or is
not what was wanted, raises `NotSawn`, an `AssertionError` with the reason.
"""

from collections import Counter
from collections.abc import Hashable, Iterable, Sequence
from dataclasses import dataclass


class NotSawn(AssertionError):
    """The layout or the list of cuts does not give what it promises; the message says where."""


@dataclass(frozen=True)
class Wanted:
    """A part to be cut: length along the grain of the board, width over it, unless it may be turned."""

    name: Hashable
    length: int
    width: int
    may_turn: bool = False


@dataclass(frozen=True)
class Lying:
    """Where a part is said to lie: from (x, y), measured from the board's corner before trimming."""

    name: Hashable
    x: int
    y: int
    length: int
    width: int


@dataclass(frozen=True)
class Plank:
    """A board as bought, with what the blade takes and what is trimmed off every side."""

    length: int
    width: int
    kerf: int = 0
    trim: int = 0


@dataclass(frozen=True)
class Sawn:
    """What came off the saw.

    `stages` counts how often the direction of all cuts changes, at the best choice of the first direction; `stages` of
    the literature on cutting do not count the last cut that frees a single part from waste at one side:
    `stages_before_trimming`. `cuts` is without those that trim the board's edges.
    """

    parts: tuple[tuple[Hashable, int, int], ...]
    cuts: int
    stages: int
    stages_before_trimming: int


@dataclass(frozen=True)
class _Slab:
    """A piece in hand, from `low` to `high` in both directions, and the parts that are still in it."""

    low: tuple[int, int]
    high: tuple[int, int]
    parts: tuple[Lying, ...]

    def span(self, part: Lying, way: int) -> tuple[int, int]:
        return (part.x, part.x + part.length) if way == 0 else (part.y, part.y + part.width)

    def fills(self, way: int) -> bool:
        """Whether the slab holds one part, which is as long as the slab that way."""
        return len(self.parts) == 1 and self.span(self.parts[0], way) == (self.low[way], self.high[way])

    @property
    def is_part(self) -> bool:
        return self.fills(0) and self.fills(1)

    def between(self, start: int, end: int, way: int, parts: Iterable[Lying]) -> "_Slab":
        other_low, other_high = self.low[1 - way], self.high[1 - way]
        low = (start, other_low) if way == 0 else (other_low, start)
        high = (end, other_high) if way == 0 else (other_high, end)
        return _Slab(low, high, tuple(parts))


def cut_apart(plank: Plank, lying: Sequence[Lying]) -> Sawn:
    """Cut a board into the parts that lie on it; `NotSawn` where a saw cannot."""
    board = _Slab((plank.trim, plank.trim), (plank.length - plank.trim, plank.width - plank.trim), tuple(lying))
    for part in lying:
        for way, direction in enumerate(("length", "width")):
            start, end = board.span(part, way)
            if start >= end:
                raise NotSawn(f"part {part.name} has no {direction}")
            if start < board.low[way] or end > board.high[way]:
                raise NotSawn(f"part {part.name} lies over the edge of the trimmed board in its {direction}")
    if not lying:
        return Sawn((), 0, 0, 0)
    parts: list[tuple[Hashable, int, int]] = []
    cuts = _saw(board, plank.kerf, parts)
    return Sawn(
        tuple(parts),
        cuts,
        min(_stages(board, plank.kerf, way, False) for way in (0, 1)),
        min(_stages(board, plank.kerf, way, True) for way in (0, 1)),
    )


def _divided(slab: _Slab, kerf: int, way: int) -> tuple[list[_Slab], int]:
    """All cuts through a slab one way: the slabs that still hold parts, and the number of cuts."""
    ordered = sorted(slab.parts, key=lambda part: slab.span(part, way))
    groups: list[tuple[int, int, list[Lying]]] = []
    start, end, held = *slab.span(ordered[0], way), [ordered[0]]
    for part in ordered[1:]:
        near, far = slab.span(part, way)
        if near >= end + kerf:
            groups.append((start, end, held))
            start, end, held = near, far, [part]
        else:
            end = max(end, far)
            held.append(part)
    groups.append((start, end, held))
    cuts, at = 0, slab.low[way]
    for start, end, _ in groups:
        cuts += start > at + (kerf if at != slab.low[way] else 0)  # what stands over before the part
        cuts += end < slab.high[way]
        at = end
    return [slab.between(start, end, way, held) for start, end, held in groups], cuts


def _saw(slab: _Slab, kerf: int, parts: list[tuple[Hashable, int, int]]) -> int:
    """Cut a slab until only parts are left, and add them to `parts`; the number of cuts."""
    if slab.is_part:
        parts.append((slab.parts[0].name, slab.high[0] - slab.low[0], slab.high[1] - slab.low[1]))
        return 0
    for way in (0, 1):
        slabs, cuts = _divided(slab, kerf, way)
        if cuts:
            return cuts + sum(_saw(each, kerf, parts) for each in slabs)
    names = ", ".join(str(part.name) for part in slab.parts[:8])
    raise NotSawn(f"no cut goes from edge to edge between the parts {names}, with {kerf} for the blade")


def _stages(slab: _Slab, kerf: int, way: int, free_trimming: bool) -> int:
    """The stages that a slab needs when the next stage cuts `way`. It is known that it can be sawn."""
    if slab.is_part or (free_trimming and (slab.fills(0) or slab.fills(1))):
        return 0
    slabs, cuts = _divided(slab, kerf, way)
    if not cuts:
        return 1 + _stages(slab, kerf, 1 - way, free_trimming)
    return 1 + max(_stages(each, kerf, 1 - way, free_trimming) for each in slabs)


def check_parts(wanted: Sequence[Wanted], got: Iterable[tuple[Hashable, int, int]]) -> None:
    """Every wanted part once and nothing else, each in its measures, turned only where it may be."""
    by_name = {part.name: part for part in wanted}
    if len(by_name) != len(wanted):
        raise NotSawn("two wanted parts have one name")
    counted = Counter[Hashable]()
    for name, length, width in got:
        counted[name] += 1
        part = by_name.get(name)
        if part is None:
            raise NotSawn(f"part {name} was cut and nobody wants it")
        if (length, width) == (part.length, part.width):
            continue
        if (length, width) != (part.width, part.length):
            raise NotSawn(f"part {name} is {length} × {width} and not {part.length} × {part.width}")
        if not part.may_turn:
            raise NotSawn(f"part {name} lies across the grain")
    wrong = {name: counted[name] for name in by_name if counted[name] != 1}
    if wrong:
        raise NotSawn(f"parts not cut exactly once, with how often they were: {wrong}")


@dataclass(frozen=True)
class Stroke:
    """One line of an ordered list of cuts.

    The piece in hand called `piece` is sawn right across: where `across`, the blade's near side runs at x = `at` of the
    board before trimming (the cut goes along its width), else at y = `at`. What lies before the cut goes on as `first`,
    what is behind the blade as `second`; None: it is waste. A piece is gone under its old name, unless a result gets
    it again.
    """

    piece: Hashable
    across: bool
    at: int
    first: Hashable | None
    second: Hashable | None


def replayed(plank: Plank, board: Hashable, strokes: Sequence[Stroke]) -> dict[Hashable, Lying]:
    """The pieces in hand, and where they lay, after sawing a trimmed board called `board` as the list says."""
    length, width = plank.length - 2 * plank.trim, plank.width - 2 * plank.trim
    in_hand = {board: Lying(board, plank.trim, plank.trim, length, width)}
    for number, stroke in enumerate(strokes, start=1):
        piece = in_hand.pop(stroke.piece, None)
        if piece is None:
            raise NotSawn(f"cut {number}: there is no piece {stroke.piece}")
        for name, result in zip((stroke.first, stroke.second), _halves(piece, stroke, plank.kerf), strict=True):
            if name is None:
                continue
            if result is None:
                raise NotSawn(f"cut {number}: nothing is left for {name}")
            if name in in_hand:
                raise NotSawn(f"cut {number}: a piece {name} is in hand already")
            in_hand[name] = result
    return in_hand


def _halves(piece: Lying, stroke: Stroke, kerf: int) -> tuple[Lying | None, Lying | None]:
    """What a cut leaves before and behind the blade; None: nothing."""
    start, size = (piece.x, piece.length) if stroke.across else (piece.y, piece.width)
    before, behind = stroke.at - start, start + size - stroke.at - kerf
    if before < 0 or before >= size:
        raise NotSawn(f"the cut at {stroke.at} does not go through {piece.name}, from {start} to {start + size}")
    if stroke.across:
        near = Lying(stroke.first, piece.x, piece.y, before, piece.width)
        far = Lying(stroke.second, stroke.at + kerf, piece.y, behind, piece.width)
    else:
        near = Lying(stroke.first, piece.x, piece.y, piece.length, before)
        far = Lying(stroke.second, piece.x, stroke.at + kerf, piece.length, behind)
    return near if before > 0 else None, far if behind > 0 else None
