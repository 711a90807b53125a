"""The same places, cut in another order: the cutting tree drawn anew over pieces that stay where they are.

A search that fills boards leaves trees that peel off strips in turn, first one way, then the other, where whoever
stands at the saw would rip a board into strips and cut these to length. So every panel is tried both ways, each time
with all the cuts that go through, and the better one is kept.

Laws: no piece moves; the new tree is taken only where its best rest is no worse, its stages and its cuts no more.
"""

from collections.abc import Callable
from typing import TypeAlias

from baywright.making.cutting.packing import Node
from baywright.making.cutting.sheets.trees import joined

Merit: TypeAlias = tuple[bool, int]
"""How much a rest is worth keeping; the greater the better."""
_Score: TypeAlias = tuple[Merit, int, int]
_NOTHING: Merit = (False, 0)


def retraced(tree: Node, merit: Callable[[Node], Merit]) -> Node:
    """The tree itself, or one over the same places with a better rest, or fewer stages, or fewer cuts."""
    retracing = _Retracing(merit)
    anew = retracing.panel(tree, _pieces(tree))
    return anew if retracing.score(anew) > retracing.score(tree) else tree


def _pieces(node: Node) -> tuple[Node, ...]:
    if node.piece is not None:
        return (node,)
    return tuple(piece for child in node.children for piece in _pieces(child))


class _Retracing:
    def __init__(self, merit: Callable[[Node], Merit]) -> None:
        self._merit = merit
        self._known: dict[tuple[int, int, int, int], Node] = {}
        self._scores: dict[int, tuple[Node, _Score]] = {}
        """By the node's identity, with the node so that it lives as long: most panels are scored as parts of many."""

    def score(self, node: Node) -> _Score:
        """The best rest, and how few stages and cuts it takes, as `trees.stages` and `trees.cuts` count them."""
        if not node.children:
            return (self._merit(node) if node.piece is None else _NOTHING), 0, 0
        known = self._scores.get(id(node))
        if known is not None:
            return known[1]
        scores = [self.score(child) for child in node.children]
        filled = [child for child in node.children if child.children or child.piece is not None]
        only_trims = not filled or (len(filled) == 1 and filled[0].piece is not None)
        score = (
            max(merit for merit, _, _ in scores),
            0 if only_trims else min(stages for _, stages, _ in scores) - 1,
            sum(cuts for _, _, cuts in scores) - len(node.children) + 1,
        )
        self._scores[id(node)] = node, score
        return score

    def panel(self, place: Node, pieces: tuple[Node, ...]) -> Node:
        """The best tree of a panel, whose place is that of a node and which holds these pieces."""
        if not pieces:
            return Node(place.x, place.y, place.length, place.width)
        if len(pieces) == 1 and (pieces[0].length, pieces[0].width) == (place.length, place.width):
            return pieces[0]
        key = place.x, place.y, place.length, place.width
        if key not in self._known:
            both = [tree for across in (True, False) if (tree := self._divided(place, pieces, across)) is not None]
            self._known[key] = max(both, key=self.score)
        return self._known[key]

    def _divided(self, place: Node, pieces: tuple[Node, ...], across: bool) -> Node | None:
        """The panel with every cut that goes through it one way; None where there is none."""
        start, size = (place.x, place.length) if across else (place.y, place.width)
        ordered = sorted(pieces, key=lambda piece: piece.x if across else piece.y)
        parts: list[tuple[int, int, list[Node]]] = []
        for piece in ordered:
            begin, end = (piece.x, piece.x + piece.length) if across else (piece.y, piece.y + piece.width)
            reached = parts[-1][1] if parts else start
            if parts and begin < reached:
                parts[-1] = (parts[-1][0], max(reached, end), [*parts[-1][2], piece])
                continue
            if begin > reached:
                parts.append((reached, begin, []))
            parts.append((begin, end, [piece]))
        if parts[-1][1] < start + size:
            parts.append((parts[-1][1], start + size, []))
        if len(parts) == 1:
            return None
        children = tuple(
            self.panel(
                Node(begin, place.y, end - begin, place.width)
                if across
                else Node(place.x, begin, place.length, end - begin),
                tuple(inside),
            )
            for begin, end, inside in parts
        )
        return joined(place.x, place.y, place.length, place.width, across, children)
