"""The same places, cut in another order: the cutting tree drawn anew over pieces that stay where they are.

A search that fills boards leaves trees that peel off strips in turn, first one way, then the other, where whoever
stands at the saw would rip a board into strips and cut these to length. So every panel is tried both ways, each time
with all the cuts that go through, and the better one is kept.

Laws: no piece moves; the new tree is taken only where its best rest is no worse, its stages and its cuts no more.
"""

from collections.abc import Callable
from typing import TypeAlias

from baywright.making.cutting.packing import Node
from baywright.making.cutting.sheets.trees import cuts, joined, rests, stages

Merit: TypeAlias = tuple[bool, int]
"""How much a rest is worth keeping; the greater the better."""
_Score: TypeAlias = tuple[Merit, int, int]
_NOTHING: Merit = (False, 0)


def retraced(tree: Node, merit: Callable[[Node], Merit]) -> Node:
    """The tree itself, or one over the same places with a better rest, or fewer stages, or fewer cuts."""
    anew = _Retracing(merit).panel(tree, _pieces(tree))
    return anew if _score(anew, merit) > _score(tree, merit) else tree


def _score(tree: Node, merit: Callable[[Node], Merit]) -> _Score:
    best = max((merit(rest) for rest in rests(tree)), default=_NOTHING)
    return best, -stages(tree), -cuts(tree)


def _pieces(node: Node) -> tuple[Node, ...]:
    if node.piece is not None:
        return (node,)
    return tuple(piece for child in node.children for piece in _pieces(child))


class _Retracing:
    def __init__(self, merit: Callable[[Node], Merit]) -> None:
        self._merit = merit
        self._known: dict[tuple[int, int, int, int], Node] = {}

    def panel(self, place: Node, pieces: tuple[Node, ...]) -> Node:
        """The best tree of a panel, whose place is that of a node and which holds these pieces."""
        if not pieces:
            return Node(place.x, place.y, place.length, place.width)
        if len(pieces) == 1 and (pieces[0].length, pieces[0].width) == (place.length, place.width):
            return pieces[0]
        key = place.x, place.y, place.length, place.width
        if key not in self._known:
            both = [tree for across in (True, False) if (tree := self._divided(place, pieces, across)) is not None]
            self._known[key] = max(both, key=lambda tree: _score(tree, self._merit))
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
