"""The grid that pieces are packed on, and the way back to hundredths of a mm."""

from baywright.making.cutting.grid import COARSEST, grid_of, refined, stretched
from baywright.making.cutting.packing import Node


def test_the_step_divides_every_measure_and_is_no_coarser_than_a_mm() -> None:
    assert grid_of([40320, 38320, 6320]) == 80
    assert grid_of([40325, 38320]) == 5
    assert grid_of([30000, 60000]) == COARSEST
    assert grid_of([30001]) == 19  # the largest divisor that is no coarser
    assert grid_of([]) == 1


def test_a_tree_in_steps_is_told_in_single_units() -> None:
    tree = Node(0, 0, 10, 4, across=True, children=(Node(0, 0, 6, 4, piece=1), Node(6, 0, 4, 4)))
    assert refined(tree, 20).children == (Node(0, 0, 120, 80, piece=1), Node(120, 0, 80, 80))


def test_what_the_grid_leaves_over_goes_to_the_rests_at_the_far_edges() -> None:
    tree = Node(0, 0, 100, 40, across=True, children=(Node(0, 0, 60, 40, piece=1), Node(60, 0, 40, 40)))
    longer = stretched(tree, 7, 0)
    assert (longer.length, longer.children[1]) == (107, Node(60, 0, 47, 40))
    wider = stretched(tree, 0, 3)
    assert wider.width == 43
    piece, rest = wider.children
    assert piece.children == (Node(0, 0, 60, 40, piece=1), Node(0, 40, 60, 3))
    assert rest == Node(60, 0, 40, 43)


def test_a_piece_that_filled_its_board_is_cut_free_from_what_is_more() -> None:
    whole = Node(0, 0, 100, 40, piece=1)
    assert stretched(whole, 0, 0) is whole
    tree = stretched(whole, 5, 2)
    assert (tree.length, tree.width, tree.across) == (105, 42, True)
    assert tree.children[1] == Node(100, 0, 5, 42)
    assert tree.children[0].children == (whole, Node(0, 40, 100, 2))
    full = Node(0, 0, 100, 40, across=True, children=(Node(0, 0, 60, 40, piece=1), Node(60, 0, 40, 40, piece=2)))
    assert stretched(full, 5, 0).children[2] == Node(100, 0, 5, 40)
