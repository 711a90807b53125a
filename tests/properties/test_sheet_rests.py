"""At equal sheets the best rest is kept: held against trying every rest as one piece more, on tiny jobs.

A rest of some measures can be kept at the least cost exactly where the pieces and that rest can be cut at that cost.
The rest is sought, not proved: of 600 such jobs (seeds 0 to 599) two of the 504 with a best rest over the full width
kept a smaller one, and six of the 96 others. So one miss is let pass here.
"""

import random

from baywright.making.cutting.packing import Board, Node, Packing, Piece, Rules, pack
from tests.oracle import panels

EFFORT = 400
SEEDS = range(40)
MOST_MISSED = 1

Merit = tuple[bool, int]
"""Whether a rest goes over the board's full width, and its area; the greater the better."""


def leaves(node: Node) -> list[Node]:
    """The parts of a tree that are not cut further."""
    return [leaf for child in node.children for leaf in leaves(child)] if node.children else [node]


def kept(packing: Packing, width: int) -> Merit:
    """The best rest of a packing."""
    rests = [leaf for layout in packing.layouts for leaf in leaves(layout.tree) if leaf.piece is None]
    return max(((rest.width == width, rest.length * rest.width) for rest in rests), default=(False, 0))


def best_there_is(pieces: list[panels.Piece], length: int, width: int, cost: int) -> Merit:
    """The best rest that boards of this cost can leave."""
    every = sorted(
        ((over == width, along * over), (along, over)) for along in range(1, length + 1) for over in range(1, width + 1)
    )
    for merit, (along, over) in reversed(every):
        if panels.least_cost([*pieces, (along, over, False)], [(length, width, 1, None)]) == cost:
            return merit
    return False, 0


def test_the_largest_rest_over_the_full_width_is_kept() -> None:
    full, missed = 0, []
    for seed in SEEDS:
        chance = random.Random(seed)
        length, width = chance.randint(5, 8), chance.randint(5, 8)
        pieces = [
            Piece(number, chance.randint(1, 5), chance.randint(1, 5), chance.random() < 0.4)
            for number in range(chance.randint(2, 4))
        ]
        plain = [(piece.length, piece.width, piece.may_turn) for piece in pieces]
        packing = pack(pieces, [Board(0, length, width)], Rules(rest_least=(1, 1)), effort=EFFORT, seed=seed)
        assert packing.cost == panels.least_cost(plain, [(length, width, 1, None)])
        best = best_there_is(plain, length, width, packing.cost)
        assert kept(packing, width) <= best
        full += best[0]
        if best[0] and kept(packing, width) != best:
            missed.append(seed)
    assert full > len(SEEDS) // 2
    assert len(missed) <= MOST_MISSED, missed
