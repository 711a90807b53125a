"""Boxes that share a drawer: where each stands across it in the elevation.

Laws: boxes side by side are drawn to scale, with the play between them; of boxes one behind another, which a front
elevation cannot show, those behind are drawn as upright strips at the right of the front one's face, so that each can
be seen, read and taken hold of.
"""

from collections.abc import Sequence

from baywright.gui.elevation.drawers import DrawerMeasures, Span
from baywright.model.arrangement import Placement

Team = tuple[Placement, ...]
"""The boxes of one drawer, from the left or from the front."""

STRIP = 0.2
"""How much of the front face each box behind it takes."""


def width_across(placement: Placement, measures: DrawerMeasures) -> float:
    """Width in mm of a box as it stands in its drawer."""
    return measures.box_depth if placement.turned else measures.box_width


def spans_of(team: Team, measures: Sequence[DrawerMeasures]) -> list[Span]:
    """Where each box of a drawer is drawn across it."""
    widths = [width_across(placement, each) for placement, each in zip(team, measures, strict=True)]
    if any(placement.behind for placement in team):
        return _file(widths)
    play = measures[0].play
    left = -(sum(widths) + play * (len(widths) - 1)) / 2
    spans = []
    for width in widths:
        spans.append(Span(left, width))
        left += width + play
    return spans


def _file(widths: list[float]) -> list[Span]:
    widest, behind = max(widths), len(widths) - 1
    strip = widest * STRIP
    front = widest - behind * strip
    lefts = [-widest / 2, *(-widest / 2 + front + number * strip for number in range(behind))]
    return [Span(left, front if not number else strip) for number, left in enumerate(lefts)]
