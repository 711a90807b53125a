"""Filled places, their exchange, and the cutting trees made of them."""

from random import Random

from baywright.making.cutting.packing import Board, Node, Piece
from baywright.making.cutting.sheets.filling import STAGES, Place, filler
from baywright.making.cutting.sheets.table import Table, numbers, table_of
from baywright.making.cutting.sheets.trees import below, cuts, exchanged, joined, layout, rests, stages


def _table(seed: int = 1) -> Table:
    chance = Random(seed)
    pieces = [Piece(n, chance.randint(5, 40), chance.randint(5, 40), chance.random() < 0.5) for n in range(25)]
    return table_of(pieces, 100, 80)


def _filled(table: Table, seed: int, state: int = 0) -> Place:
    draw, fill = filler(table, Random(seed))
    draw()
    place = fill(100, 80, table.everything, state)
    assert place is not None
    return place


def test_masks_hold_what_fits() -> None:
    table = _table()
    for measure in range(81):
        lying = {n for n in range(25) if table.lengths[n] <= measure}
        assert set(numbers(table.fits[0][measure])) == lying
        turned = {n for n in range(25) if table.pieces[n].may_turn and table.lengths[n] <= measure}
        assert set(numbers(table.fits[3][measure])) == turned - {
            n for n in turned if table.lengths[n] == table.widths[n]
        }
    assert table.areas == sorted(table.areas)


def test_a_filled_place_holds_each_piece_once_and_the_area_adds_up() -> None:
    table = _table()
    for seed in range(30):
        place = _filled(table, seed)
        made = layout(Board(3, 100, 80), place, table)
        ids = sorted(each.piece for each in made.placed)
        assert ids == sorted(table.pieces[number].id for number in numbers(place[2]))
        used = sum(each.length * each.width for each in made.placed)
        assert used + sum(rest.length * rest.width for rest in rests(made.tree)) == 8000


def test_a_limit_of_stages_is_kept_by_every_filling() -> None:
    table = _table(2)
    for limit in (2, 3, 4):
        for seed in range(40):
            for first in (0, 1):
                made = layout(Board(0, 100, 80), _filled(table, seed, limit * STAGES + first), table)
                assert made.stages <= limit
                assert not made.tree.children or made.tree.across != bool(first) or made.stages < limit


def test_exchanging_a_place_keeps_all_others() -> None:
    table = _table(3)
    for seed in range(30):
        top = _filled(table, seed)
        way, place = below(top, Random(seed), 0.3)
        emptied = exchanged(way, None)
        if way:
            assert emptied is not None
            assert emptied[2] == top[2] & ~place[2]
            assert exchanged(way, place) == top
        else:
            assert place is top
            assert emptied is None


def test_a_place_smaller_than_its_board_leaves_strips() -> None:
    table = table_of([Piece(0, 30, 20)], 30, 20)
    place = filler(table, Random(1))[1](30, 20, 1, 0)
    assert place is not None
    made = layout(Board(0, 100, 20), place, table)
    assert [(rest.x, rest.length, rest.width) for rest in rests(made.tree)] == [(30, 70, 20)]
    both = layout(Board(0, 100, 50), place, table)
    assert cuts(both.tree) == 2
    assert both.stages == 1


def test_children_cut_in_one_direction_are_one_row() -> None:
    a, b, rest = Node(0, 0, 5, 9, 1), Node(5, 0, 5, 9, 2), Node(10, 0, 2, 9)
    inner = joined(5, 0, 7, 9, True, (b, rest))
    row = joined(0, 0, 14, 9, True, (a, inner, Node(12, 0, 2, 9)))
    assert row.children == (a, b, Node(10, 0, 4, 9))
    assert cuts(row) == 2
    assert stages(row) == 1


def test_freeing_a_piece_from_its_cell_is_no_stage() -> None:
    cell = joined(0, 0, 5, 9, False, (Node(0, 0, 5, 7, 1), Node(0, 7, 5, 2)))
    assert stages(cell) == 0
    row = joined(0, 0, 10, 9, True, (cell, Node(5, 0, 5, 9, 2)))
    assert stages(row) == 1
