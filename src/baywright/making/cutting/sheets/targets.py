"""Which boards to try next: sets of boards that cost less than the best known, most promising first.

From the boards now used one or two are given up and up to two others taken instead, or as many as the saving buys,
as long as that costs less and could hold everything by `costs.Needs`. More spare area is more promising.
"""

from collections.abc import Iterator, Sequence
from itertools import combinations_with_replacement

from baywright.making.cutting.packing import Board
from baywright.making.cutting.sheets.costs import Needs

MOST_TARGETS = 12
"""So many sets are tried at a time."""

Counts = tuple[int, ...]


def cheaper(counts: Sequence[int], kinds: Sequence[Board], needs: Needs, bound: int) -> list[Counts]:
    """Numbers of boards of each kind that cost less than `counts` and no less than the bound."""
    cost = _cost(counts, kinds)
    found: set[Counts] = set()
    for candidate in _changed(tuple(counts), kinds):
        if bound <= _cost(candidate, kinds) < cost and needs.met_by(candidate):
            found.add(candidate)
    return sorted(found, key=lambda each: (-_area(each, kinds), _cost(each, kinds), each))[:MOST_TARGETS]


def _cost(counts: Sequence[int], kinds: Sequence[Board]) -> int:
    return sum(count * board.cost for count, board in zip(counts, kinds, strict=True))


def _area(counts: Sequence[int], kinds: Sequence[Board]) -> int:
    return sum(count * board.length * board.width for count, board in zip(counts, kinds, strict=True))


def _changed(counts: Counts, kinds: Sequence[Board]) -> Iterator[Counts]:
    used = [kind for kind, count in enumerate(counts) if count]
    cost = _cost(counts, kinds)
    given_up = [(kind,) for kind in used]
    given_up += [(a, b) for a, b in combinations_with_replacement(used, 2) if a != b or counts[a] > 1]  # type: ignore[misc]
    for out in given_up:
        fewer = list(counts)
        for kind in out:
            fewer[kind] -= 1
        yield tuple(fewer)
        for size in (1, 2):
            for taken in combinations_with_replacement(range(len(kinds)), size):
                more = list(fewer)
                for kind in taken:
                    more[kind] += 1
                if _in_stock(more, kinds):
                    yield tuple(more)
        yield _topped_up(fewer, kinds, cost)


def _topped_up(counts: list[int], kinds: Sequence[Board], cost: int) -> Counts:
    """With further boards, cheapest for their area first, while that costs less than `cost`."""
    more = list(counts)
    for kind in sorted(range(len(kinds)), key=lambda each: kinds[each].cost / (kinds[each].length * kinds[each].width)):
        board = kinds[kind]
        while board.available is not None and more[kind] < board.available and _cost(more, kinds) + board.cost < cost:
            more[kind] += 1
    return tuple(more)


def _in_stock(counts: Sequence[int], kinds: Sequence[Board]) -> bool:
    return all(board.available is None or count <= board.available for count, board in zip(counts, kinds, strict=True))
