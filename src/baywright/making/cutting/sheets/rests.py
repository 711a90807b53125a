"""Which rest is worth keeping, and how good a packing's best one is.

A rest counts where it is at least as long and as wide as the owner says, turned or not. The better of two goes over
the full width of its board, if the owner prefers that, else is larger.
"""

from collections.abc import Sequence
from typing import TypeAlias

from baywright.making.cutting.packing import Board, Layout, Node, Rules
from baywright.making.cutting.sheets.trees import cuts, rests

Merit: TypeAlias = tuple[bool, int]
"""Whether a rest goes over the full width (where that is preferred), and its area; the greater the better."""
Quality: TypeAlias = tuple[Merit, int, int]
"""The best rest, and the cuts and stages below zero; the greater the better."""
NOTHING: Merit = (False, 0)


def merit(rest: Node, board: Board, rules: Rules) -> Merit:
    """How good a rest is; `NOTHING` where it is too small to keep, or the owner keeps none."""
    if rules.rest_least == (0, 0):
        return NOTHING
    least, most = sorted(rules.rest_least)
    if min(rest.length, rest.width) < least or max(rest.length, rest.width) < most:
        return NOTHING
    return rules.full_width_first and rest.width == board.width, rest.length * rest.width


def best_rest(layout: Layout, board: Board, rules: Rules) -> Merit:
    """The merit of a layout's best rest."""
    return max((merit(rest, board, rules) for rest in rests(layout.tree)), default=NOTHING)


def quality(layouts: Sequence[tuple[Layout, Board]], rules: Rules) -> Quality:
    """The best rest of several layouts, then fewer cuts, then fewer stages; the greater the better."""
    best = max((best_rest(layout, board, rules) for layout, board in layouts), default=NOTHING)
    return best, -sum(cuts(layout.tree) for layout, _ in layouts), -sum(layout.stages for layout, _ in layouts)
