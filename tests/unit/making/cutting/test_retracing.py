"""Cutting trees drawn anew: pieces stay, strips are ripped first, nothing gets worse."""

from collections.abc import Callable
from itertools import product
from random import Random

import pytest

from baywright.making.cutting.packing import Node
from baywright.making.cutting.retracing import Merit, retraced
from baywright.making.cutting.sheets.trees import cuts, joined, rests, stages


def _area(rest: Node) -> Merit:
    return False, rest.length * rest.width


def _nothing(_rest: Node) -> Merit:
    return False, 0


def _pieces(node: Node) -> set[tuple[int, int, int, int, int]]:
    if node.piece is not None:
        return {(node.piece, node.x, node.y, node.length, node.width)}
    return {each for child in node.children for each in _pieces(child)}


def _leaves(node: Node) -> list[Node]:
    return [leaf for child in node.children for leaf in _leaves(child)] if node.children else [node]


def _peeled(x: int, y: int, columns: int, rows: int, number: int = 0) -> Node:
    """A grid of pieces 10 × 4, peeled a column and a row in turn."""
    if columns == 1 and rows == 1:
        return Node(x, y, 10, 4, number)
    across = columns > rows
    if across:
        first = joined(x, y, 10, 4 * rows, False, tuple(Node(x, y + 4 * k, 10, 4, number + k) for k in range(rows)))
        rest = _peeled(x + 10, y, columns - 1, rows, number + rows)
    else:
        first = joined(
            x, y, 10 * columns, 4, True, tuple(Node(x + 10 * k, y, 10, 4, number + k) for k in range(columns))
        )
        rest = _peeled(x, y + 4, columns, rows - 1, number + columns)
    return Node(x, y, 10 * columns, 4 * rows, None, across, (first, rest))


def test_a_grid_that_was_peeled_is_ripped_into_strips_and_these_cut_to_length() -> None:
    peeled = _peeled(0, 0, 5, 4)
    assert stages(peeled) > 4
    anew = retraced(peeled, _nothing)
    assert stages(anew) == 2
    assert _pieces(anew) == _pieces(peeled)
    assert cuts(anew) == 19


def test_a_single_piece_and_a_whole_rest_stay_as_they_are() -> None:
    piece, rest = Node(0, 0, 10, 4, 1), Node(0, 0, 10, 4)
    assert retraced(piece, _area) == piece
    assert retraced(rest, _area) == rest


def test_a_larger_rest_goes_before_fewer_stages() -> None:
    """Two low pieces beside a high one: cut along first, the rest over the low ones is long."""
    pieces = (Node(0, 0, 10, 10, 0), Node(10, 0, 10, 4, 1), Node(20, 0, 10, 4, 2))
    columns = tuple(Node(p.x, 0, 10, 10, None, False, (p, Node(p.x, 4, 10, 6))) if p.width < 10 else p for p in pieces)
    tree = joined(0, 0, 30, 10, True, columns)
    anew = retraced(tree, _area)
    assert max(rest.length * rest.width for rest in rests(anew)) >= 60
    assert _pieces(anew) == _pieces(tree)


def _random_tree(random: Random, x: int, y: int, length: int, width: int, depth: int, number: list[int]) -> Node:
    if depth == 0 or min(length, width) < 4 or random.random() < 0.2:
        if random.random() < 0.25:
            return Node(x, y, length, width)
        number[0] += 1
        return Node(x, y, length, width, number[0])
    across = random.random() < 0.5
    at = random.randrange(1, length if across else width)
    sides = (
        ((x, y, at, width), (x + at, y, length - at, width))
        if across
        else ((x, y, length, at), (x, y + at, length, width - at))
    )
    children = tuple(_random_tree(random, *side, depth - 1, number) for side in sides)
    return joined(x, y, length, width, across, children)


@pytest.mark.parametrize(("seed", "merit"), list(product(range(60), (_area, _nothing))))
def test_no_tree_gets_worse_and_no_piece_moves(seed: int, merit: Callable[[Node], Merit]) -> None:
    tree = _random_tree(Random(seed), 0, 0, 60, 40, 6, [0])
    anew = retraced(tree, merit)
    assert _pieces(anew) == _pieces(tree)
    assert sum(leaf.length * leaf.width for leaf in _leaves(anew)) == 60 * 40
    best = [max((merit(rest) for rest in rests(each)), default=(False, 0)) for each in (anew, tree)]
    assert (best[0], -stages(anew), -cuts(anew)) >= (best[1], -stages(tree), -cuts(tree))
    _check(anew)


def _check(node: Node) -> None:
    """Children fill their parent from edge to edge and are not cut the same way again."""
    if not node.children:
        return
    at = node.x if node.across else node.y
    for child in node.children:
        assert (child.x if node.across else child.y) == at
        assert (child.width if node.across else child.length) == (node.width if node.across else node.length)
        assert not (child.children and child.across == node.across)
        at += child.length if node.across else child.width
        _check(child)
    assert at == (node.x + node.length if node.across else node.y + node.width)
