"""The bound on boards and on their cost: known small cases, and never above a packing that exists."""

from random import Random

from baywright.making.cutting.packing import Board, Piece
from baywright.making.cutting.sheets.bound import enlarged, shares
from baywright.making.cutting.sheets.costs import least_cost, needs_of


def _bound(pieces: list[Piece], boards: list[Board]) -> int:
    return least_cost(needs_of(pieces, boards), boards, len(pieces))


def test_pieces_over_half_need_a_board_each() -> None:
    pieces = [Piece(number, 6, 6) for number in range(7)]
    assert sum(36 for _ in pieces) <= 3 * 100
    assert _bound(pieces, [Board(0, 10, 10)]) == 7
    assert _bound([Piece(piece.id, 6, 6, True) for piece in pieces], [Board(0, 10, 10)]) == 7


def test_a_piece_takes_the_length_that_no_other_can_use() -> None:
    assert enlarged([(6, 10), (7, 10)], 10, 10) == ([10, 10], [10, 10])
    assert enlarged([(6, 10), (3, 10)], 10, 10) == ([7, 3], [10, 10])


def test_the_shares_of_pieces_cut_from_one_board_add_up_to_one_at_most() -> None:
    chance = Random(1)
    for _ in range(40):
        length, width = chance.randint(20, 60), chance.randint(20, 60)
        pieces = _cut_up(chance, length, width)
        for turning in (False, True):
            given = [
                Piece(number, *((side[1], side[0]) if turning and number % 2 else side), turning)
                for number, side in enumerate(pieces)
            ]
            assert shares(given, length, width).sum(axis=1).max() <= 1 + 1e-9
            square = max(length, width)
            assert shares(given, square, square).sum(axis=1).max() <= 1 + 1e-9
            assert _bound(given, [Board(0, length, width)]) == 1


def test_the_cost_of_boards_that_were_cut_up_is_not_below_the_bound() -> None:
    chance = Random(2)
    for _ in range(25):
        boards = [
            Board(number, chance.randint(20, 60), chance.randint(20, 60), chance.randint(0, 9), 3)
            for number in range(3)
        ]
        used = [chance.choice(boards) for _ in range(3)]
        sides = [side for board in used for side in _cut_up(chance, board.length, board.width)]
        pieces = [Piece(number, *side, chance.random() < 0.5) for number, side in enumerate(sides)]
        assert _bound(pieces, boards) <= sum(board.cost for board in used)


def test_what_fits_on_the_dear_board_alone_costs_as_much() -> None:
    boards = [Board(0, 100, 100, 50), Board(1, 40, 40, 1)]
    pieces = [Piece(0, 60, 60), Piece(1, 70, 70), Piece(2, 30, 30), Piece(3, 35, 35)]
    assert _bound(pieces, boards) >= 100


def _cut_up(chance: Random, length: int, width: int) -> list[tuple[int, int]]:
    """A board cut at random until pieces are small."""
    if length * width < 120 or chance.random() < 0.1 or length < 2 or width < 2:
        return [(length, width)]
    if chance.random() < 0.5:
        at = chance.randint(1, length - 1)
        return [*_cut_up(chance, at, width), *_cut_up(chance, length - at, width)]
    at = chance.randint(1, width - 1)
    return [*_cut_up(chance, length, at), *_cut_up(chance, length, width - at)]
