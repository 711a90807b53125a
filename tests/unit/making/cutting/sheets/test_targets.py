"""Which boards are tried next: cheaper, in stock, and able to hold everything as far as the needs tell."""

from random import Random

from baywright.making.cutting.packing import Board, Piece
from baywright.making.cutting.sheets.costs import needs_of
from baywright.making.cutting.sheets.targets import MOST_TARGETS, cheaper

BOARDS = [Board(0, 100, 60, 50), Board(1, 60, 40, 5, 1), Board(2, 50, 50, 0, 2)]


def _cost(counts: tuple[int, ...]) -> int:
    return sum(count * board.cost for count, board in zip(counts, BOARDS, strict=True))


def test_every_target_is_cheaper_and_in_stock() -> None:
    for seed in range(20):
        chance = Random(seed)
        pieces = [Piece(n, chance.randint(5, 50), chance.randint(5, 40)) for n in range(20)]
        needs = needs_of(pieces, BOARDS)
        used = (chance.randint(2, 6), chance.randint(0, 1), chance.randint(0, 2))
        targets = cheaper(used, BOARDS, needs, 0)
        assert len(set(targets)) == len(targets) <= MOST_TARGETS
        for target in targets:
            assert _cost(target) < _cost(used)
            assert needs.met_by(target)
            assert target[1] <= 1
            assert target[2] <= 2


def test_one_board_less_and_offcuts_instead_is_among_them() -> None:
    needs = needs_of([Piece(n, 20, 20) for n in range(15)], BOARDS)
    targets = cheaper((2, 0, 0), BOARDS, needs, 0)
    assert targets[0] == (1, 1, 2)
    assert (1, 0, 0) in targets


def test_nothing_below_the_bound_is_tried() -> None:
    needs = needs_of([Piece(n, 20, 20) for n in range(15)], BOARDS)
    assert cheaper((2, 0, 0), BOARDS, needs, 100) == []
