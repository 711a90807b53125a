"""Dividing what belongs to the whole run among its bays, and money among whatever has a share in it.

Laws: shares of money are whole coins and add up exactly to what was divided, the remainder going to the largest share
(the first of equals); a bay reaches to the middle of the uprights that it shares, and to the outer faces of its own.
"""

from collections.abc import Mapping, Sequence
from decimal import ROUND_DOWN, Decimal
from fractions import Fraction
from itertools import pairwise

from baywright.making.frame import Frame
from baywright.model.making import HardwareItem, Part

Weights = Mapping[int, float]
"""How much each bay has of something, by its number; -1 is the shelf bay."""


def divided(amount: Decimal, weights: Sequence[float], coin: Decimal) -> list[Decimal]:
    """The amount divided in proportion to the weights, in whole coins; in equal parts where all weights are 0.

    Raises ValueError where there is nothing to divide it among, or a weight is negative.
    """
    if not weights or min(weights) < 0:
        raise ValueError("Money is divided among shares of 0 or more.")
    exact = [Fraction(weight) for weight in weights]
    total = sum(exact)
    if total == 0:
        exact, total = [Fraction(1)] * len(exact), Fraction(len(exact))
    shares = [_down(Fraction(amount) * weight / total, coin) for weight in exact]
    largest = max(range(len(exact)), key=lambda place: (exact[place], -place))
    shares[largest] += amount - sum(shares)
    return shares


def _down(amount: Fraction, coin: Decimal) -> Decimal:
    coins = (Decimal(amount.numerator) / Decimal(amount.denominator) / coin).to_integral_value(ROUND_DOWN)
    return coins * coin


def reaches(frame: Frame) -> dict[int, tuple[float, float]]:
    """From where to where along the run each bay reaches, in mm, from the left."""
    found = {}
    for left, right in frame.carcasses_mm:
        spans = [span for span in frame.spans if left < span.left_mm + span.width_mm / 2 < right]
        middles = [(a.left_mm + a.width_mm + b.left_mm) / 2 for a, b in pairwise(spans)]
        for span, ends in zip(spans, pairwise([left, *middles, right]), strict=True):
            found[span.number] = ends
    return dict(sorted(found.items(), key=lambda item: item[1]))


def along(bays: Mapping[int, tuple[float, float]]) -> Weights:
    """What each bay has of the run's length, in mm."""
    return {bay: right - left for bay, (left, right) in bays.items()}


def pieces_in(part: Part, bays: Mapping[int, tuple[float, float]]) -> Weights:
    """How many pieces of a part each bay has: of an upright between two bays each half, of a long board by length."""
    if not bays:
        return {}
    if part.lefts_mm and part.number[0] != "U":
        return _by_length(part, bays)
    places = [bay for bay in part.bays if bay in bays]
    if not places:
        return _scaled(along(bays), part.quantity)
    each = part.quantity / len(places)
    found = dict.fromkeys(bays, 0.0)
    for bay in places:
        found[bay] += each
    return found


def _by_length(part: Part, bays: Mapping[int, tuple[float, float]]) -> Weights:
    """Shares of a board that runs along the wall; what stands out beyond the run is the outer bays'."""
    first, last = min(left for left, _ in bays.values()), max(right for _, right in bays.values())
    covered = dict.fromkeys(bays, 0.0)
    for left in part.lefts_mm:
        right = left + part.length_mm
        for bay, (start, end) in bays.items():
            start = min(start, left) if start == first else start
            end = max(end, right) if end == last else end
            covered[bay] += max(0.0, min(end, right) - max(start, left))
    return _scaled(covered, part.quantity) if any(covered.values()) else _scaled(along(bays), part.quantity)


def used_in(item: HardwareItem, bays: Mapping[int, tuple[float, float]]) -> Weights:
    """How much of a line of hardware each bay has: where it is used, else by its share of the run's length."""
    used = {bay: amount for bay, amount in item.bays if bay in bays}
    return {bay: used.get(bay, 0.0) for bay in bays} if any(used.values()) else along(bays)


def _scaled(weights: Weights, total: float) -> Weights:
    held = sum(weights.values())
    return {bay: weight * total / held for bay, weight in weights.items()}
