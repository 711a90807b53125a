"""The question in its smallest form: distinct lengths, longest first, and distinct kinds of bar, and the way back.

Laws: lengths are divided by their greatest common measure; pieces of one length are one entry whatever their ids;
bars of one length and cost are one kind. `short_costs` says what leaving out one piece of a length counts: 0 where
some kind of bar without limit is long enough, so that none need be left out; else so much that cost never outweighs it.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import gcd

from baywright.making.cutting.bars.stock import Bar, BarPacking, Length, Pattern

Counts = tuple[tuple[int, int], ...]
"""A filling of one bar: (number of the length, how many), by number."""
Cut = tuple[int, Counts]
"""One bar cut: (number of its kind, its filling)."""

SHARES = 100
"""A piece left out counts for its share of the longest bar, in so many parts."""


@dataclass(frozen=True)
class Kind:
    """Bars of one length and cost, and how many there are at most.

    `length` is in the task's unit, rounded down; `measure` is the length as it was given.
    """

    length: int
    cost: int
    available: int
    measure: int


@dataclass(frozen=True)
class Task:
    """Lengths and their counts, longest first, and the kinds of bar, longest first and cheapest first among these."""

    lengths: tuple[int, ...]
    counts: tuple[int, ...]
    short_costs: tuple[int, ...]
    kinds: tuple[Kind, ...]

    @property
    def longest_bar(self) -> int:
        """The length of the longest kind of bar."""
        return max((kind.length for kind in self.kinds), default=0)

    def filled(self, counts: Counts) -> int:
        """The length that a filling takes."""
        return sum(self.lengths[number] * count for number, count in counts)

    def cost(self, cuts: Iterable[Cut]) -> int:
        """What the bars of some cuts cost."""
        return sum(self.kinds[kind].cost for kind, _ in cuts)

    def left_over(self, cuts: Iterable[Cut]) -> list[int]:
        """How many pieces of each length are not in the cuts."""
        left = list(self.counts)
        for _, counts in cuts:
            for number, count in counts:
                left[number] -= count
        return left


class Reading:
    """A question as it was asked, as a `Task`, and answers to the task in the words of the question."""

    def __init__(self, lengths: Sequence[Length], bars: Sequence[Bar]) -> None:
        _check(lengths, bars)
        self._lengths = lengths
        longest = max((bar.length for bar in bars if bar.available != 0), default=0)
        self._placeable = [each for each in lengths if each.length <= longest and each.count > 0]
        self._unplaceable = tuple((each.id, each.count) for each in lengths if each.length > longest and each.count > 0)
        self._unit = gcd(*(each.length for each in self._placeable)) or 1
        self._bars = [bar for bar in bars if bar.available != 0 and bar.length >= self._unit]
        self.task = self._task()

    def _task(self) -> Task:
        counts: dict[int, int] = {}
        for each in self._placeable:
            counts[each.length // self._unit] = counts.get(each.length // self._unit, 0) + each.count
        pieces = sum(counts.values())
        stock: dict[tuple[int, int], int] = {}
        for bar in self._bars:
            key = (bar.length, bar.cost)
            stock[key] = min(pieces, stock.get(key, 0) + (pieces if bar.available is None else bar.available))
        shortest = min(counts, default=1)
        kinds = tuple(
            Kind(measure // self._unit, cost, stock[measure, cost], measure)
            for measure, cost in sorted(stock, key=lambda key: (-key[0], key[1]))
            if measure // self._unit >= shortest
        )
        endless = max((bar.length // self._unit for bar in self._bars if bar.available is None), default=0)
        longest = kinds[0].length if kinds else 1
        dear = 1 + sum(kind.cost * kind.available for kind in kinds)
        lengths = sorted(counts, reverse=True)
        return Task(
            tuple(lengths),
            tuple(counts[length] for length in lengths),
            tuple(0 if length <= endless else dear * -(-length * SHARES // longest) for length in lengths),
            kinds,
        )

    def packing(self, cuts: Sequence[Cut], bound: int) -> BarPacking:
        """An answer to the task as an answer to the question; equal bars are told once, with their number."""
        pieces = self._ids(self._lengths_by_id(), cuts)
        times: dict[tuple[int, tuple[tuple[int, int], ...]], int] = {}
        for key in zip(self._bar_ids(cuts), pieces, strict=True):
            times[key] = times.get(key, 0) + 1
        left = {each.id: each.count for each in self._lengths}
        for (_, counts), n in times.items():
            for id_, count in counts:
                left[id_] -= n * count
        cost = self.task.cost(cuts)
        return BarPacking(
            tuple(Pattern(bar, counts, n) for (bar, counts), n in times.items()),
            tuple((id_, count) for id_, count in left.items() if count > 0),
            cost,
            min(bound, cost),  # where pieces are left over the bound counts them as well
            self._unplaceable,
        )

    def _lengths_by_id(self) -> list[list[list[int]]]:
        """For every length of the task its ids with their counts, to be taken from the front."""
        number = {length: n for n, length in enumerate(self.task.lengths)}
        found: list[list[list[int]]] = [[] for _ in self.task.lengths]
        for each in self._placeable:
            found[number[each.length // self._unit]].append([each.id, each.count])
        return found

    @staticmethod
    def _ids(stock: list[list[list[int]]], cuts: Sequence[Cut]) -> list[tuple[tuple[int, int], ...]]:
        """The fillings in ids: the first id of a length is used up before the next."""
        fillings = []
        for _, counts in cuts:
            filling: list[tuple[int, int]] = []
            for number, count in counts:
                while count:
                    id_, left = stock[number][0]
                    taken = min(left, count)
                    filling.append((id_, taken))
                    count -= taken
                    stock[number][0][1] -= taken
                    if not stock[number][0][1]:
                        stock[number].pop(0)
            fillings.append(tuple(filling))
        return fillings

    def _bar_ids(self, cuts: Sequence[Cut]) -> list[int]:
        """The id of each cut’s bar: of bars that are alike those are used up first of which there are only some."""
        stock: dict[tuple[int, int], list[list[int]]] = {}
        endless = len(cuts)
        for bar in sorted(self._bars, key=lambda bar: bar.available is None):
            left = endless if bar.available is None else bar.available
            stock.setdefault((bar.length, bar.cost), []).append([bar.id, left])
        ids = []
        for kind, _ in cuts:
            bars = stock[self.task.kinds[kind].measure, self.task.kinds[kind].cost]
            while not bars[0][1]:
                bars.pop(0)
            bars[0][1] -= 1
            ids.append(bars[0][0])
        return ids


def _check(lengths: Sequence[Length], bars: Sequence[Bar]) -> None:
    """Raise ValueError where the question makes no sense."""
    for things, name in ((lengths, "length"), (bars, "bar")):
        if len({thing.id for thing in things}) != len(things):
            raise ValueError(f"two of the {name}s have one id")
    if any(each.length <= 0 or each.count < 0 for each in lengths):
        raise ValueError("a piece needs a length over 0, and a count of 0 or more")
    if any(bar.length <= 0 or bar.cost < 0 or (bar.available or 0) < 0 for bar in bars):
        raise ValueError("a bar needs a length over 0, and a cost and a number of 0 or more")
