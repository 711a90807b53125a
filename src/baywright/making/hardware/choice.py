"""Which items of the catalogue serve a line of the order, and which of them are bought.

Laws: an item serves where its kind and every measure that is asked for fit; of those that serve the cheapest packs are
taken, then the smallest waste. Packs of several sizes are put together only of one article: items of one kind, measures
and supplier whose names differ at most in what follows their last comma. Why none serves is told with what there is.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from baywright.making.hardware.need import Measure, Need
from baywright.making.hardware.packs import Pack, cheapest_packs
from baywright.model.catalogue import CatalogueItem

_MOST_TOLD = 4
"""Measures that are there are told up to so many."""


@dataclass(frozen=True)
class Taken:
    """An item that is bought, and how many packs of it."""

    item: CatalogueItem
    packs: int


@dataclass(frozen=True)
class Choice:
    """What is bought for a need, the largest packs first; or why nothing of the catalogue serves."""

    taken: tuple[Taken, ...] = ()
    reason: str = ""


def choose(need: Need, amount: float, catalogue: Sequence[CatalogueItem]) -> Choice:
    """The items to buy for `amount` of a need; no item and no reason where the catalogue has none of the kind."""
    of_kind = [item for item in catalogue if item.kind is need.kind]
    serving = [item for item in of_kind if serves(need, item)]
    if not serving:
        return Choice(reason=why_none(need, of_kind) if of_kind else "")
    articles: dict[tuple[object, ...], list[CatalogueItem]] = {}
    for item in serving:
        articles.setdefault(_article(item), []).append(item)
    ways = [_way(amount, items) for items in articles.values()]
    return Choice(min(ways, key=lambda way: _value(way, amount)))


def serves(need: Need, item: CatalogueItem) -> bool:
    """Whether an item is of the kind and has every measure that is asked for."""
    return not why_not(need, item)


def why_none(need: Need, of_kind: Sequence[CatalogueItem]) -> str:
    """Why none of the items serves: the first measure that none of those has which have the measures before it."""
    left = list(of_kind)
    words: list[str] = []
    for measure in need.measures:
        words.append(measure.words)
        fitting = [item for item in left if measure.fits(item)]
        if not fitting:
            return f"The catalogue has no {need.kind.value} {', '.join(words)}: {_there(measure, left)}."
        left = fitting
    return ""


def why_not(need: Need, item: CatalogueItem) -> str:
    """Why an item does not serve, to go on after “but”; empty where it does."""
    if item.kind is not need.kind:
        return f"it is a {item.kind.value}"
    for measure in need.measures:
        if not measure.fits(item):
            name = measure.field.removesuffix("_mm").removesuffix("_kg").replace("_", " ")
            value = measure.of(item)
            return f"its {name} is not known" if value is None else f"its {name} is {value:g} {measure.unit}"
    return ""


def _there(measure: Measure, items: Sequence[CatalogueItem]) -> str:
    """What those that are otherwise right have instead, nearest first."""
    values = {value for item in items if (value := measure.of(item)) is not None}
    if not values:
        return "it does not say so of any"
    nearest = sorted(values, key=lambda value: (max(measure.least - value, value - measure.most), value))[:_MOST_TOLD]
    told = [f"{value:g}" for value in sorted(nearest)]
    listed = told[0] if len(told) == 1 else f"{', '.join(told[:-1])} and {told[-1]}"
    return f"there {'is' if len(told) == 1 else 'are'} only {listed} {measure.unit}"


def _article(item: CatalogueItem) -> tuple[object, ...]:
    """By which two items are the same article in other packs."""
    measures = (item.length_mm, item.diameter_mm, item.thickness_mm, item.width_mm, item.load_class_kg)
    name = item.name.rpartition(",")[0] or item.name
    return (*measures, item.supplier, name.strip().casefold())


def _way(amount: float, items: Sequence[CatalogueItem]) -> tuple[Taken, ...]:
    """The cheapest packs of one article."""
    counts = cheapest_packs(amount, [Pack(item.pack_size, item.price) for item in items])
    taken = [Taken(item, count) for item, count in zip(items, counts, strict=True) if count]
    return tuple(sorted(taken, key=lambda one: -one.item.pack_size))


def _value(way: Sequence[Taken], amount: float) -> tuple[object, ...]:
    """What makes one way better than another: a known price, the cost, the waste, the packs."""
    prices = [one.item.price for one in way]
    waste = round(sum(one.packs * one.item.pack_size for one in way) - amount, 6)
    packs = sum(one.packs for one in way)
    if None in prices:
        return (True, packs, waste, 0)
    return (False, sum(one.packs * price for one, price in zip(way, prices, strict=True) if price), waste, packs)
