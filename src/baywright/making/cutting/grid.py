"""The grid that pieces are packed on: as coarse as they allow without changing what fits.

Laws: every piece's measure, with the kerf, is a whole number of steps; so is every place where a piece can begin, and a
board loses nothing by being counted down to whole steps but the strip behind the last one, which is given back to what
lies at its far edges.
"""

from collections.abc import Iterable
from dataclasses import replace
from math import gcd

from baywright.making.cutting.packing import Node
from baywright.making.cutting.units import A_MM

COARSEST = A_MM
"""No coarser than a mm, or rests would be told too small to the search."""


def grid_of(measures: Iterable[int]) -> int:
    """The largest step up to a mm that all measures are whole numbers of."""
    shared = gcd(*measures) or 1
    return max(step for step in range(1, COARSEST + 1) if shared % step == 0)


def refined(node: Node, step: int) -> Node:
    """A tree that was counted in steps, in single units."""
    return Node(
        node.x * step, node.y * step, node.length * step, node.width * step, node.piece, node.across,
        tuple(refined(child, step) for child in node.children),
    )  # fmt: skip


def stretched(node: Node, longer: int, wider: int) -> Node:
    """The tree of a slightly larger rectangle: what is more goes to the rests at the far edges, or is one itself."""
    if not longer and not wider:
        return node
    x, y, length, width = node.x, node.y, node.length + longer, node.width + wider
    if node.piece is not None:
        inner = node
        if wider:
            rest = Node(x, y + node.width, node.length, wider)
            inner = Node(x, y, node.length, width, None, False, (node, rest))
        if not longer:
            return inner
        return Node(x, y, length, width, None, True, (inner, Node(x + node.length, y, longer, width)))
    if not node.children:
        return Node(x, y, length, width)
    more, beside = (longer, (0, wider)) if node.across else (wider, (longer, 0))
    children = [stretched(child, *beside) for child in node.children]
    if more:
        last = children[-1]
        if last.piece is None and not last.children:
            children[-1] = stretched(last, more, 0) if node.across else stretched(last, 0, more)
        elif node.across:
            children.append(Node(x + node.length, y, more, width))
        else:
            children.append(Node(x, y + node.width, length, more))
    return replace(node, length=length, width=width, children=tuple(children))
