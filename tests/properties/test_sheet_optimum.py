"""Tiny cutting jobs, drawn by chance, against a search through everything; every layout is sawn apart."""

from random import Random

import pytest

from baywright.making.cutting.packing import Board, Packing, Piece, Rules, pack
from tests.oracle import panels
from tests.oracle.saw import Lying, Plank, Sawn, Wanted, check_parts, cut_apart

EFFORT = 600


def drawn(seed: int) -> tuple[list[Piece], list[Board]]:
    """Up to five pieces and up to three kinds of board, some few in number, some free of charge."""
    chance = Random(seed)
    pieces = [
        Piece(number, chance.randint(1, 6), chance.randint(1, 6), chance.random() < 0.4)
        for number in range(chance.randint(2, 5))
    ]
    boards = [Board(0, chance.randint(6, 8), chance.randint(6, 8), chance.randint(3, 9))]
    for number in range(1, chance.randint(1, 3)):
        available = chance.choice((1, 1, 2, None))
        boards.append(Board(number, chance.randint(2, 7), chance.randint(2, 7), chance.randint(0, 4), available))
    return pieces, boards


def sawn(packing: Packing, pieces: list[Piece], boards: list[Board]) -> list[Sawn]:
    """Every board of the packing cut apart; each piece must come off once."""
    kinds = {board.id: board for board in boards}
    results = [
        cut_apart(
            Plank(kinds[layout.board].length, kinds[layout.board].width),
            [Lying(placed.piece, placed.x, placed.y, placed.length, placed.width) for placed in layout.placed],
        )
        for layout in packing.layouts
    ]
    wanted = [Wanted(each.id, each.length, each.width, each.may_turn) for each in pieces]
    check_parts(wanted, [part for result in results for part in result.parts])
    return results


@pytest.mark.parametrize("stages", [None, 3, 2])
def test_tiny_jobs_cost_the_least(stages: int | None) -> None:
    for seed in range(60):
        pieces, boards = drawn(seed)
        packing = pack(pieces, boards, Rules(stages), effort=EFFORT, seed=seed)
        least = panels.least_cost(
            [(each.length, each.width, each.may_turn) for each in pieces],
            [(board.length, board.width, board.cost, board.available) for board in boards],
            stages,
        )
        assert packing.unplaced == ()
        assert packing.cost == least, (seed, pieces, boards)
        assert packing.bound <= least
        kinds = {board.id: board for board in boards}
        assert packing.cost == sum(kinds[layout.board].cost for layout in packing.layouts)
        for board in boards:
            used = sum(layout.board == board.id for layout in packing.layouts)
            assert board.available is None or used <= board.available
        results = sawn(packing, pieces, boards)
        if stages is not None:
            assert max(layout.stages for layout in packing.layouts) <= stages
            assert max(result.stages_before_trimming for result in results) <= stages


def test_the_exhaustive_search_knows_stages() -> None:
    """A pinwheel cannot be cut at all; strips within strips take as many stages as there are strips."""
    board = [(3, 3, 1, 1)]
    pinwheel = [(2, 1, False), (1, 2, False), (2, 1, False), (1, 2, False), (1, 1, False)]
    assert panels.least_cost(pinwheel, board) is None
    thrice = [(3, 1, False), (1, 2, False), (2, 1, False), (2, 1, False)]
    assert [panels.least_cost(thrice, board, stages) for stages in (2, 3, None)] == [None, 1, 1]
    again = [*thrice[:3], (1, 1, False), (1, 1, False)]
    assert [panels.least_cost(again, board, stages) for stages in (3, 4, None)] == [None, 1, 1]
