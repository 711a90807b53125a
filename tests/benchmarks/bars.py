"""Bars cut from stock: the published set of bin packing, and orders of a workshop made here, as Markdown.

`python -m tests.benchmarks bars [STEPS [ORDERS]]`: so many steps of search each, about a millisecond each, and so many
orders of every sort. Every answer is checked by `tests.oracle.sticks` in true measures. Sources of the published set:
`tests.benchmarks.packing`; its optimum is the published one.
"""

import random
import time
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from baywright.making.cutting.bars import Bar, BarPacking, Length, cut_bars
from tests.benchmarks.measuring import heading, middle_and_most, row, seconds
from tests.benchmarks.packing import published, published_file
from tests.oracle.sticks import Stick, check_sticks

CHECKOUT = Path(__file__).resolve().parent.parent.parent
STEPS = 4_000
ORDERS = 10
"""Orders of every sort, by seeds 0, 1, 2 …"""


@dataclass(frozen=True)
class Order:
    """Pieces (true length: count), the bars, the kerf; the published number of bars where there is one."""

    pieces: dict[int, int]
    sticks: tuple[Stick, ...]
    kerf: int = 0
    optimum: int | None = None


@dataclass(frozen=True)
class Answer:
    """What the engine answered, and the processor's seconds to the first answer and to the last."""

    order: Order
    packing: BarPacking
    first_s: float
    all_s: float

    @property
    def gap(self) -> float:
        """By how many percent the cost could be beaten at most."""
        return 100 * (self.packing.cost - self.packing.bound) / max(1, self.packing.cost)


def answered(order: Order, steps: int = STEPS) -> Answer:
    """The engine's answer, checked."""
    firsts: list[float] = []
    began = time.process_time()
    packing = cut_bars(
        [Length(length, length + order.kerf, count) for length, count in order.pieces.items()],
        [Bar(n, stick.length + order.kerf, stick.cost, stick.available) for n, stick in enumerate(order.sticks)],
        effort=steps,
        found=lambda _: firsts.append(time.process_time() - began),
    )
    all_s = time.process_time() - began
    sawn = [
        (pattern.bar, [length for length, count in pattern.counts for _ in range(count)])
        for pattern in packing.patterns
        for _ in range(pattern.times)
    ]
    assert check_sticks(order.pieces, order.sticks, sawn, order.kerf) == Counter(dict(packing.unplaced))
    assert packing.cost == sum(order.sticks[kind].cost for kind, _ in sawn)
    assert order.optimum is None or packing.bound <= order.optimum <= packing.cost
    return Answer(order, packing, firsts[0], all_s)


def published_orders() -> Iterator[tuple[str, Order]]:
    """The published instances by class; none where the file is not here."""
    path = published_file(CHECKOUT)
    for instance in published(path) if path.is_file() else ():
        order = Order(dict(Counter(instance.sizes)), (Stick(instance.capacity, 1),), optimum=instance.optimum)
        yield f"published {instance.name.split('_')[0]}", order


def strips(seed: int) -> Order:
    """120 strips of 200 to 2,400 mm from bars of 6 m with a kerf of 3.2 mm, in tenths of a mm."""
    chance = random.Random(seed)
    return Order(dict(Counter(10 * chance.randint(200, 2400) for _ in range(120))), (Stick(60_000, 1),), 32)


def edging(seed: int) -> Order:
    """About 120 strips of edging of 100 to 900 mm, up to six of a length, from rolls of 25 m, in tenths of a mm."""
    chance = random.Random(seed)
    pieces = {10 * length: chance.randint(1, 6) for length in chance.sample(range(100, 900), 34)}
    return Order(pieces, (Stick(250_000, 1),), 25)


def long_rails(seed: int) -> Order:
    """120 rails of 600 to 4,000 mm, three of each, from bars of 6 m: much of a bar cannot be used."""
    chance = random.Random(seed)
    return Order(dict.fromkeys(chance.sample(range(600, 4000), 40), 3), (Stick(6_000, 1),), 4)


def many_lengths(shortest: int, longest: int, bar: int, most: int) -> Callable[[int], Order]:
    """200 different lengths, up to so many of each."""

    def order(seed: int) -> Order:
        chance = random.Random(seed)
        lengths = chance.sample(range(shortest, longest), 200)
        return Order({length: chance.randint(1, most) for length in lengths}, (Stick(bar, 1),), 3)

    return order


def _offcuts(chance: random.Random, number: int, dearest: int) -> tuple[Stick, ...]:
    return tuple(Stick(chance.randint(500, 2800), chance.randint(0, dearest), 1) for _ in range(number))


SOLD = (Stick(6000, 2400), Stick(4000, 1700), Stick(3000, 1350))


def with_offcuts(seed: int) -> Order:
    """100 pieces from three lengths sold and eight offcuts, each there once, that cost little."""
    chance = random.Random(seed)
    return Order(dict(Counter(chance.randint(200, 2500) for _ in range(100))), (*SOLD, *_offcuts(chance, 8, 100)), 3)


def limited(seed: int) -> Order:
    """About 75 pieces from four lengths of which eight to ten are there each, and twelve dearer offcuts."""
    chance = random.Random(seed)
    pieces = {length: chance.randint(1, 2) for length in chance.sample(range(200, 2500), 50)}
    sold = (Stick(6000, 2400, 10), Stick(5000, 2050, 8), Stick(4000, 1700, 8), Stick(3000, 1350, 10))
    return Order(pieces, (*sold, *_offcuts(chance, 12, 500)), 3)


def by_metre(seed: int) -> Order:
    """About 80 pieces from six lengths that cost what they measure, and ten offcuts at half of it."""
    chance = random.Random(seed)
    pieces = {length: chance.randint(1, 3) for length in chance.sample(range(300, 2400), 40)}
    sold = tuple(Stick(length, length) for length in (2000, 2400, 3000, 3600, 4800, 6000))
    owned = tuple(Stick(length, length // 2, 1) for length in chance.sample(range(600, 2500), 10))
    return Order(pieces, (*sold, *owned), 3)


def long_with_offcuts(seed: int) -> Order:
    """About 60 long pieces from three lengths, one of them limited, and ten offcuts of all prices."""
    chance = random.Random(seed)
    pieces = {length: chance.randint(1, 3) for length in chance.sample(range(1000, 4200), 30)}
    owned = tuple(Stick(chance.randint(1000, 4000), chance.randint(0, 800), 1) for _ in range(10))
    return Order(pieces, (Stick(6000, 2400), Stick(5000, 2050), Stick(4500, 1900, 6), *owned), 3)


def many_with_offcuts(seed: int) -> Order:
    """200 different lengths from three lengths sold and ten offcuts."""
    chance = random.Random(seed)
    pieces = dict.fromkeys(chance.sample(range(250, 2600), 200), 1)
    return Order(pieces, (*SOLD, *_offcuts(chance, 10, 100)), 3)


MADE: dict[str, Callable[[int], Order]] = {
    "120 strips, 6 m, kerf": strips,
    "120 strips of edging, 25 m, kerf": edging,
    "120 long rails, 6 m, kerf": long_rails,
    "200 lengths, 0.2 to 2.5 m of 6 m, up to 3 each": many_lengths(200, 2500, 6_000, 3),
    "200 lengths, 0.6 to 4 m of 6 m, up to 3 each": many_lengths(600, 4000, 6_000, 3),
    "200 lengths, 1.5 to 2.9 m of 6 m, one each": many_lengths(1500, 2900, 6_000, 1),
    "200 lengths, 1 to 3.5 m of 10 m, up to 20 each": many_lengths(1000, 3500, 10_000, 20),
    "200 lengths, 0.1 to 0.7 m of 1 m, up to 100 each": many_lengths(100, 700, 1_000, 100),
    "mixed stock, 8 offcuts, 100 pieces": with_offcuts,
    "mixed stock, all limited, 12 offcuts": limited,
    "mixed stock, priced by the metre, 10 offcuts": by_metre,
    "mixed stock, long pieces, 10 offcuts": long_with_offcuts,
    "mixed stock, 10 offcuts, 200 lengths": many_with_offcuts,
}


def main(steps: int = STEPS, orders: int = ORDERS) -> None:
    """Goes through the published set and the orders made here."""
    print(heading("bars", "orders", "proved", "largest gap %", "first s, most", "s: median / 95th percentile / most"))
    groups: dict[str, list[Order]] = {}
    for name, order in published_orders():
        groups.setdefault(name, []).append(order)
    if not groups:
        print(row("published classes: the file is not here", "", "", "", "", ""))
    for name, make in MADE.items():
        groups[name] = [make(seed) for seed in range(orders)]
    for name, group in groups.items():
        answers = [answered(order, steps) for order in group]
        print(
            row(
                name,
                len(answers),
                sum(answer.packing.proved for answer in answers),
                f"{max(answer.gap for answer in answers):.2f}",
                seconds(max(answer.first_s for answer in answers)),
                middle_and_most([answer.all_s for answer in answers]),
            ),
            flush=True,
        )
