"""One bar is filled as far as whole numbers allow."""

from itertools import combinations
from random import Random

import pytest

from baywright.making.cutting.bars.filling import fullest, greatest_sum


def sums(pieces: list[int]) -> set[int]:
    return {sum(some) for n in range(len(pieces) + 1) for some in combinations(pieces, n)}


@pytest.mark.parametrize("seed", range(40))
def test_nothing_fills_more(seed: int) -> None:
    chance = Random(seed)
    pieces = [chance.randint(1, 40) for _ in range(chance.randint(0, 9))]
    room = chance.randint(0, 120)
    chosen = fullest(pieces, room)
    assert chosen == sorted(set(chosen))
    most = max(s for s in sums(pieces) if s <= room)
    assert sum(pieces[place] for place in chosen) == most
    assert greatest_sum(pieces, room) == most


def test_with_slack_the_earliest_pieces_are_taken() -> None:
    pieces = [60, 55, 25, 20]
    assert fullest(pieces, 100) == [1, 2, 3]
    assert fullest(pieces, 100, slack=15) == [0, 2]
    assert fullest(pieces, 100, slack=14) == [1, 2, 3]
