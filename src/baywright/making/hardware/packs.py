"""The cheapest packs that hold an amount, out of packs of several sizes and prices.

Laws: the packs hold at least the amount, and no packs that do cost less; of those that cost the same the smallest
waste wins, then the fewest packs, then the order in which the packs were given. Where no pack has a price, the fewest
packs win, then the smallest waste. Exact: whole numbers and fractions, no binary ones.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

_NOISE_DECIMALS = 6
"""Amounts are sums of measures; what differs after the sixth decimal is noise."""
_MOST_UNITS = 50_000
"""Of an amount of more units than this (sizes that have hardly a common measure), what is beyond is packs of the best
value; only then could something cheaper be missed."""


@dataclass(frozen=True)
class Pack:
    """A pack on offer: how much is in it, and its price (None: not known)."""

    size: float
    price: Decimal | None = None


@dataclass(frozen=True)
class _Best:
    """The best way to hold an amount: what counts first, second and third, and the pack taken last."""

    value: tuple[Fraction, Fraction, int]
    last: int = -1


def cheapest_packs(amount: float, packs: Sequence[Pack]) -> tuple[int, ...]:
    """How many of each pack to take for `amount`; packs without a price are taken only where none has one.

    Raises ValueError where there is no pack, or one holds nothing.
    """
    if not packs or min(pack.size for pack in packs) <= 0:
        raise ValueError("There must be packs, and each must hold something.")
    return _cheapest(round(amount, _NOISE_DECIMALS), tuple(packs))


@lru_cache(maxsize=1_024)
def _cheapest(amount: float, packs: tuple[Pack, ...]) -> tuple[int, ...]:
    known = [place for place, pack in enumerate(packs) if pack.price is not None]
    places = known or list(range(len(packs)))
    sizes = [Fraction(str(packs[place].size)) for place in places]
    prices = [Fraction(packs[place].price or 0) for place in places]
    unit = _common_unit(sizes)
    whole = [int(size / unit) for size in sizes]
    needed = max(0, math.ceil(Fraction(str(amount)) / unit))
    costs = [_step(price, size, bool(known)) for price, size in zip(prices, sizes, strict=True)]
    counts = [0] * len(packs)
    for index, count in enumerate(_covered(needed, whole, costs)):
        counts[places[index]] = count
    return tuple(counts)


def _common_unit(sizes: Sequence[Fraction]) -> Fraction:
    """The largest amount of which every size is a whole multiple."""
    denominator = math.lcm(*(size.denominator for size in sizes))
    return Fraction(math.gcd(*(int(size * denominator) for size in sizes)), denominator)


def _step(price: Fraction, size: Fraction, has_price: bool) -> tuple[Fraction, Fraction, int]:
    """What one more pack adds to what counts: cost, amount and packs, or without prices packs first."""
    return (price, size, 1) if has_price else (Fraction(1), size, 0)


def _covered(needed: int, sizes: list[int], costs: list[tuple[Fraction, Fraction, int]]) -> list[int]:
    """How many of each size hold `needed` units at the least cost."""
    counts = [0] * len(sizes)
    base = min(range(len(sizes)), key=lambda i: ([part / sizes[i] for part in costs[i]], i))
    # Among any sizes[base] packs of other sizes some make up whole packs of the base size, which cost no more: so
    # fewer than that many others are ever needed, and all beyond them is packs of the base size.
    most_others = min(sizes[base] * max(sizes), _MOST_UNITS)
    if needed > most_others:
        counts[base] = (needed - most_others) // sizes[base]
        needed -= counts[base] * sizes[base]
    best = {0: _Best((Fraction(0), Fraction(0), 0))}
    for amount in sorted(_left_over(needed, sizes)):
        best[amount] = _best_step(amount, best, sizes, costs)
    while needed > 0:
        last = best[needed].last
        counts[last] += 1
        needed = max(0, needed - sizes[last])
    return counts


def _left_over(needed: int, sizes: list[int]) -> set[int]:
    """Every amount that can be left to hold after some packs."""
    found: set[int] = set()
    to_do = [needed]
    while to_do:
        amount = to_do.pop()
        if amount > 0 and amount not in found:
            found.add(amount)
            to_do += (amount - size for size in sizes)
    return found


def _best_step(
    amount: int, best: dict[int, _Best], sizes: list[int], costs: list[tuple[Fraction, Fraction, int]]
) -> _Best:
    found: _Best | None = None
    for index, (size, cost) in enumerate(zip(sizes, costs, strict=True)):
        before = best[max(0, amount - size)].value
        value = (before[0] + cost[0], before[1] + cost[1], before[2] + cost[2])
        if found is None or value < found.value:
            found = _Best(value, index)
    assert found is not None
    return found
