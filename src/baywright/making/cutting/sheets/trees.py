"""Filled places as trees: choosing one below, exchanging it, and turning a board's places into its cutting tree.

Laws: children fill their parent without gaps; no node with children has a child with children cut in its direction;
every piece of the place's mask is one leaf.
"""

from __future__ import annotations

import random
from typing import TypeAlias

from baywright.making.cutting.packing import Board, Layout, Node, Placed
from baywright.making.cutting.sheets.filling import Place
from baywright.making.cutting.sheets.table import Table

Way: TypeAlias = list[tuple[Place, bool]]
"""From the top down: each place passed, and whether the way went on beyond its cut (else beside its piece)."""

GOES_BEYOND = 0.6
"""How often the way down goes beyond the first cut where both sides hold pieces."""


def below(place: Place, chance: random.Random, ending: float) -> tuple[Way, Place]:
    """A place at random in the tree under `place`, each step ending there with the given chance, and the way to it."""
    way: Way = []
    draw = chance.random
    while draw() >= ending:
        beyond, beside = place[5], place[6]
        if beyond is None:
            if beside is None:
                break
            way.append((place, False))
            place = beside
        elif beside is None or draw() < GOES_BEYOND:
            way.append((place, True))
            place = beyond
        else:
            way.append((place, False))
            place = beside
    return way, place


def exchanged(way: Way, place: Place | None) -> Place | None:
    """The tree at the top of the way with another place at its end."""
    for (length, width, _, code, across, beyond, beside, state), is_beyond in reversed(way):
        if is_beyond:
            beyond = place
        else:
            beside = place
        mask = 1 << (code if code >= 0 else ~code)
        if beyond:
            mask |= beyond[2]
        if beside:
            mask |= beside[2]
        place = (length, width, mask, code, across, beyond, beside, state)
    return place


def layout(board: Board, place: Place, table: Table) -> Layout:
    """The layout of one board from its filled place, which may be smaller than the board."""
    placed: list[Placed] = []
    tree = _framed(_Drawing(table, placed).node(0, 0, place), board.length, board.width)
    return Layout(board.id, tuple(placed), tree, stages(tree))


class _Drawing:
    def __init__(self, table: Table, placed: list[Placed]) -> None:
        self._table = table
        self._placed = placed

    def node(self, x: int, y: int, place: Place) -> Node:
        length, width, _, code, across, beyond, beside, _ = place
        number = code if code >= 0 else ~code
        piece_length, piece_width = self._table.lengths[number], self._table.widths[number]
        if code < 0:
            piece_length, piece_width = piece_width, piece_length
        piece = self._table.pieces[number].id
        self._placed.append(Placed(piece, x, y, piece_length, piece_width, code < 0))
        leaf = Node(x, y, piece_length, piece_width, piece)
        if across:
            inner = self._parted(x, y, piece_length, width, False, leaf, beside)
            return self._parted(x, y, length, width, True, inner, beyond)
        inner = self._parted(x, y, length, piece_width, True, leaf, beside)
        return self._parted(x, y, length, width, False, inner, beyond)

    def _parted(self, x: int, y: int, length: int, width: int, across: bool, first: Node, rest: Place | None) -> Node:
        """A rectangle cut into `first` and what lies behind it."""
        if first.length == length and first.width == width:
            return first
        at_x, at_y = (x + first.length, y) if across else (x, y + first.width)
        second = self.node(at_x, at_y, rest) if rest else Node(at_x, at_y, x + length - at_x, y + width - at_y)
        return joined(x, y, length, width, across, (first, second))


def _framed(tree: Node, length: int, width: int) -> Node:
    """The tree of a part of a board, with the strips cut off first so that the part is left."""
    if tree.width < width:
        strip = Node(0, tree.width, tree.length, width - tree.width)
        tree = joined(0, 0, tree.length, width, False, (tree, strip))
    if tree.length < length:
        strip = Node(tree.length, 0, length - tree.length, width)
        tree = joined(0, 0, length, width, True, (tree, strip))
    return tree


def joined(x: int, y: int, length: int, width: int, across: bool, children: tuple[Node, ...]) -> Node:
    """A node of the children: those cut in its direction hand up their own, rests side by side become one."""
    flat: list[Node] = []
    for child in children:
        for each in child.children if child.children and child.across == across else (child,):
            if flat and _is_rest(flat[-1]) and _is_rest(each):
                last = flat.pop()
                each = (
                    Node(last.x, y, last.length + each.length, width)
                    if across
                    else Node(x, last.y, length, last.width + each.width)
                )
            flat.append(each)
    return Node(x, y, length, width, None, across, tuple(flat))


def _is_rest(node: Node) -> bool:
    return node.piece is None and not node.children


def stages(node: Node) -> int:
    """The stages of a tree, as `Layout` counts them."""
    filled = [child for child in node.children if not _is_rest(child)]
    if not filled or (len(filled) == 1 and filled[0].piece is not None):
        return 0
    return 1 + max(stages(child) for child in filled)


def cuts(node: Node) -> int:
    """How many cuts the tree takes."""
    return max(0, len(node.children) - 1) + sum(cuts(child) for child in node.children)


def rests(node: Node) -> list[Node]:
    """All the rests of a tree."""
    if _is_rest(node):
        return [node]
    return [rest for child in node.children for rest in rests(child)]
