"""Packing pieces on boards: what is placed, what it costs, what is kept, and how the search behaves."""

from dataclasses import replace
from random import Random

import pytest

from baywright.making.cutting.packing import Board, Layout, Node, Packing, Piece, Rules, pack
from baywright.making.cutting.sheets.trees import cuts, rests, stages


def _job(seed: int, count: int = 30) -> list[Piece]:
    chance = Random(seed)
    return [
        Piece(number, chance.randint(100, 900), chance.randint(60, 500), chance.random() < 0.3)
        for number in range(count)
    ]


def _is_whole(node: Node) -> bool:
    """Children fill their parent, one behind the other, and none is cut in its parent's direction."""
    if not node.children:
        return True
    x, y = node.x, node.y
    for child in node.children:
        if (child.x, child.y) != (x, y) or (child.children and child.across == node.across):
            return False
        if node.across:
            x += child.length
        else:
            y += child.width
        if (child.width if node.across else child.length) != (node.width if node.across else node.length):
            return False
    end = (node.x + node.length, node.y) if node.across else (node.x, node.y + node.width)
    return (x, y) == end and all(_is_whole(child) for child in node.children)


def _leaves(node: Node) -> list[tuple[int, int, int, int, int]]:
    if node.piece is not None:
        return [(node.piece, node.x, node.y, node.length, node.width)]
    return [leaf for child in node.children for leaf in _leaves(child)]


def _check(layout: Layout, board: Board) -> None:
    assert (layout.tree.x, layout.tree.y, layout.tree.length, layout.tree.width) == (0, 0, board.length, board.width)
    assert _is_whole(layout.tree)
    placed = sorted((each.piece, each.x, each.y, each.length, each.width) for each in layout.placed)
    assert sorted(_leaves(layout.tree)) == placed
    assert layout.stages == stages(layout.tree)


@pytest.mark.parametrize("limit", [None, 4, 3, 2])
def test_every_layout_has_its_tree(limit: int | None) -> None:
    boards = [Board(7, 2800, 2070, 100), Board(8, 700, 600, 1, 2)]
    packing = pack(_job(1), boards, Rules(limit), effort=400)
    assert packing.unplaced == ()
    for layout in packing.layouts:
        _check(layout, boards[layout.board - 7])
        assert limit is None or layout.stages <= limit
    placed = [each for layout in packing.layouts for each in layout.placed]
    assert sorted(each.piece for each in placed) == list(range(30))
    by_id = {piece.id: piece for piece in _job(1)}
    for each in placed:
        piece = by_id[each.piece]
        sides = (piece.width, piece.length) if each.turned else (piece.length, piece.width)
        assert (each.length, each.width) == sides
        assert piece.may_turn or not each.turned


def test_the_same_seed_and_effort_give_the_same_packing() -> None:
    boards = [Board(0, 1500, 1000, 10), Board(1, 900, 700, 3, 3)]
    rules = Rules(rest_least=(300, 200))
    first, again = (pack(_job(2), boards, rules, effort=800, seed=5) for _ in range(2))
    assert first == again


def test_each_packing_told_is_better_and_the_last_is_the_answer() -> None:
    told: list[Packing] = []
    answer = pack(
        _job(3), [Board(0, 1500, 1000, 10), Board(1, 900, 700, 3, 3)], Rules(), effort=2000, found=told.append
    )
    assert told[-1] == replace(answer, bound=told[-1].bound)
    costs = [each.cost for each in told]
    assert costs == sorted(costs, reverse=True)
    assert answer.bound <= answer.cost


def test_a_stop_ends_with_the_first_packing() -> None:
    told: list[Packing] = []
    answer = pack(_job(4), [Board(0, 1500, 1000)], Rules(), effort=None, stop=lambda: True, found=told.append)
    assert len(told) == 1
    assert answer.layouts == told[0].layouts
    assert answer.unplaced == ()


def test_what_fits_nowhere_is_told_and_the_rest_is_packed() -> None:
    pieces = [Piece(1, 50, 120), Piece(2, 120, 50), Piece(3, 50, 120, may_turn=True)]
    packing = pack(pieces, [Board(0, 130, 60)], Rules(), effort=50)
    assert packing.unplaced == packing.unplaceable == (1,)
    assert packing.cost == packing.bound == 2
    assert packing.proved


def test_nothing_to_cut_costs_nothing() -> None:
    assert pack([], [Board(0, 10, 10)], Rules(), effort=10) == Packing((), (), 0, 0)
    assert pack([Piece(4, 2, 2)], [], Rules(), effort=10).unplaced == (4,)


def test_where_the_stock_ends_as_much_as_possible_is_placed() -> None:
    pieces = [Piece(0, 6, 10), Piece(1, 6, 10), Piece(2, 4, 10), Piece(3, 4, 10), Piece(4, 3, 3)]
    packing = pack(pieces, [Board(0, 10, 10, 5, available=2)], Rules(), effort=2000)
    assert packing.unplaced == (4,)
    assert packing.unplaceable == ()
    assert not packing.proved


def test_offcuts_are_used_where_they_save_a_board() -> None:
    pieces = [Piece(number, 10, 10) for number in range(5)]
    offcut = Board(1, 12, 11, 0, available=1)
    packing = pack(pieces, [Board(0, 20, 20, 100), offcut], Rules(), effort=500)
    assert sorted(layout.board for layout in packing.layouts) == [0, 1]
    assert packing.cost == packing.bound == 100


def test_a_cheaper_size_is_taken_where_it_suffices() -> None:
    pieces = [Piece(number, 10, 10) for number in range(4)]
    boards = [Board(0, 40, 40, 100), Board(1, 20, 20, 30), Board(2, 10, 10, 9)]
    packing = pack(pieces, boards, Rules(), effort=500)
    assert packing.cost == 30
    assert [layout.board for layout in packing.layouts] == [1]


def test_the_rest_is_kept_in_one_piece_over_the_full_width() -> None:
    pieces = [Piece(number, 25, 20) for number in range(4)]
    board = Board(0, 100, 40)
    packing = pack(pieces, [board], Rules(rest_least=(10, 10)), effort=2000)
    best = max(rests(packing.layouts[0].tree), key=lambda rest: rest.length * rest.width)
    assert (best.length, best.width) == (50, 40)


def test_a_larger_rest_wins_where_full_width_does_not_matter() -> None:
    pieces = [Piece(0, 90, 10), Piece(1, 20, 10)]
    rules = Rules(rest_least=(5, 5), full_width_first=False)
    packing = pack(pieces, [Board(0, 100, 100)], rules, effort=2000)
    best = max(rests(packing.layouts[0].tree), key=lambda rest: rest.length * rest.width)
    assert best.length * best.width == 100 * 80


def test_equal_pieces_take_few_cuts() -> None:
    packing = pack([Piece(number, 10, 10) for number in range(9)], [Board(0, 30, 30)], Rules(), effort=2000)
    assert cuts(packing.layouts[0].tree) == 8
    assert packing.layouts[0].stages == 2


@pytest.mark.parametrize(
    ("pieces", "boards", "rules", "says"),
    [
        ([Piece(1, 2, 2), Piece(1, 3, 3)], [Board(0, 9, 9)], Rules(), "Two pieces"),
        ([Piece(1, 2, 2)], [Board(0, 9, 9), Board(0, 8, 8)], Rules(), "Two boards"),
        ([Piece(1, 0, 2)], [Board(0, 9, 9)], Rules(), "not above zero"),
        ([Piece(1, 1, 2)], [Board(0, 9, 9, -1)], Rules(), "less than nothing"),
        ([Piece(1, 1, 2)], [Board(0, 9, 9, 1, -1)], Rules(), "less than nothing"),
        ([Piece(1, 1, 2)], [Board(0, 9, 9)], Rules(1), "two stages"),
        ([Piece(1, 1, 2)], [Board(0, 9, 9)], Rules(rest_least=(-1, 0)), "below zero"),
    ],
)
def test_what_makes_no_sense_is_refused(
    pieces: list[Piece], boards: list[Board], rules: Rules, says: str
) -> None:  # fmt: skip
    with pytest.raises(ValueError, match=says):
        pack(pieces, boards, rules, effort=10)


def test_a_board_of_many_slivers_ends() -> None:
    packing = pack([Piece(number, 2, 90) for number in range(500)], [Board(0, 1000, 90)], Rules(), effort=5)
    assert packing.unplaced == ()
    assert packing.bound == 1
