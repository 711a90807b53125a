"""Which rests count, and which of two is the better."""

from baywright.making.cutting.packing import Board, Layout, Node, Rules
from baywright.making.cutting.sheets.rests import NOTHING, best_rest, merit, quality

BOARD = Board(0, 100, 60)


def test_a_rest_counts_from_the_least_sides_turned_or_not() -> None:
    rules = Rules(rest_least=(30, 20))
    assert merit(Node(0, 0, 29, 29), BOARD, rules) == NOTHING
    assert merit(Node(0, 0, 40, 19), BOARD, rules) == NOTHING
    assert merit(Node(0, 0, 30, 20), BOARD, rules) == (False, 600)
    assert merit(Node(0, 0, 20, 30), BOARD, rules) == (False, 600)
    assert merit(Node(0, 0, 90, 60), BOARD, Rules()) == NOTHING


def test_full_width_goes_before_area_where_it_is_preferred() -> None:
    narrow, large = Node(0, 0, 30, 60), Node(0, 0, 90, 50)
    rules = Rules(rest_least=(30, 20))
    assert merit(narrow, BOARD, rules) > merit(large, BOARD, rules)
    freely = Rules(rest_least=(30, 20), full_width_first=False)
    assert merit(narrow, BOARD, freely) < merit(large, BOARD, freely)


def test_the_best_rest_goes_before_cuts_and_cuts_before_stages() -> None:
    rules = Rules(rest_least=(10, 10))
    piece, rest = Node(0, 0, 60, 60, 1), Node(60, 0, 40, 60)
    one = Layout(0, (), Node(0, 0, 100, 60, None, True, (piece, rest)), 1)
    halves = (Node(60, 0, 20, 60), Node(80, 0, 20, 60))
    other = Layout(0, (), Node(0, 0, 100, 60, None, True, (piece, *halves)), 1)
    assert best_rest(one, BOARD, rules) == (True, 2400)
    assert quality([(one, BOARD)], rules) > quality([(other, BOARD)], rules)
    assert quality([(one, BOARD)], Rules()) == (NOTHING, -1, -1)
