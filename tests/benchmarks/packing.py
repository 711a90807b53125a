"""Bin packing as bays: the distribution engine, told to take as few bays as it can, against known optima.

Sources. The uniform and triplet classes of E. Falkenauer, “A hybrid grouping genetic algorithm for bin packing”,
Journal of Heuristics 2 (1996), 5–30, read from a file that is not part of the project:
`one_dimensional_bin_packing.json` in the folder that the environment variable `BAYWRIGHT_BENCHMARKS` names, else in
`shared/benchmarks` beside the checkout.
Triplets are made here as well, by that paper's construction (the ends of its intervals from memory): every bin is
filled to the brim by three items, the first of 38 to 49 % of it, the second from a quarter of it to half of what is
left. All items being under half a bin and the sum being n/3 bins, the optimum is n/3, also where a bin may take three
or more items; where it may take two only, it is n/2 rounded up.

Law: an item of size s is a box of s rows, a bin a bay of as many rows as its capacity; sizes with a tenth are scaled.
"""

import json
import random
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.problem import Item, Kind, Place, Problem, Shape, Span, is_kept
from baywright.planner.distribution.search import holds
from tests.benchmarks.publicsets import BARS_FILE, public_file

TRIPLET_CAPACITY = 1000


@dataclass(frozen=True)
class Packing:
    """One instance with its known optimum; `most_items` a bin, None without a limit."""

    name: str
    sizes: tuple[int, ...]
    capacity: int
    optimum: int
    most_items: int | None = None

    def problem(self, bins: int) -> Problem:
        """The instance as so many bays: an item may start at any row from which it ends within the bay."""
        sizes = sorted(set(self.sizes))
        number = {size: n for n, size in enumerate(sizes)}
        shapes = tuple(Shape((Span(size, 0, self.capacity - size),)) for size in sizes)
        items = tuple(Item(f"item-{n}", number[size]) for n, size in enumerate(self.sizes))
        return Problem((Kind(bins, self.capacity, self.most_items),), shapes, items)

    @property
    def by_sum(self) -> int:
        """The bins that the sum of sizes, or the number of items, needs at least."""
        by_items = -(-len(self.sizes) // self.most_items) if self.most_items else 0
        return max(-(-sum(self.sizes) // self.capacity), by_items)

    def with_at_most(self, items: int) -> "Packing":
        """The same items with a limit on the number in a bin; only for triplets, whose optimum is known then."""
        optimum = -(-len(self.sizes) // 2) if items == 2 else len(self.sizes) // 3
        return Packing(f"{self.name}, at most {items}", self.sizes, self.capacity, optimum, items)


@dataclass(frozen=True)
class Answer:
    """What the engine made of an instance: bins of its best packing (None: none found), proved bound, time, effort."""

    bins: int | None
    bound: int
    seconds: float
    effort: float


def published_file(checkout: Path) -> Path:
    """Where the published instances are looked for."""
    return public_file(checkout, BARS_FILE)


def published(path: Path) -> Iterator[Packing]:
    """The instances of the file, in its order."""
    for given in json.loads(path.read_text(encoding="utf-8"))["instances"]:
        scale = 1 if all(size == int(size) for size in given["items"]) else 10
        sizes = tuple(round(size * scale) for size in given["items"])
        yield Packing(given["name"], sizes, round(given["capacity"] * scale), given["optimum"])


def triplets(count: int, seed: int, capacity: int = TRIPLET_CAPACITY) -> Packing:
    """`count` items, a multiple of three, made by the construction above."""
    chance = random.Random(seed)
    sizes: list[int] = []
    while len(sizes) < count:
        first = chance.randint(round(0.38 * capacity), round(0.49 * capacity))
        second = chance.randint(capacity // 4, (capacity - first) // 2)
        sizes += [first, second, capacity - first - second]
    chance.shuffle(sizes)
    return Packing(f"triplets {count} of {capacity}, seed {seed}", tuple(sizes), capacity, count // 3)


def fewest_bins(packing: Packing, effort: float) -> Answer:
    """The engine's answer: more and more bays, from what the sum needs on, until they hold everything."""
    began = time.process_time()
    budget = Budget(effort)
    bound = packing.by_sum
    is_settled = True
    for bins in range(bound, len(packing.sizes) + 1):
        problem = packing.problem(bins)
        answer = holds(problem, budget)
        if answer.holds:
            _check(problem, answer.places)
            return Answer(bins, bound, time.process_time() - began, budget.spent)
        is_settled = is_settled and answer.holds is False
        bound = bins + 1 if is_settled else bound
    return Answer(None, bound, time.process_time() - began, budget.spent)


def _check(problem: Problem, places: tuple[Place, ...]) -> None:
    """Every item once, no bin over its capacity or its number of items: by plain sums, beside the engine's check."""
    assert is_kept(problem, places)
    assert sorted(place.item for place in places) == list(range(len(problem.items)))
    (kind,) = problem.kinds
    rows: dict[int, list[int]] = {}
    for place in places:
        span = problem.shapes[problem.items[place.item].shape].spans[0]
        assert span is not None
        rows.setdefault(place.bay, []).append(span.rows)
    assert len(rows) <= kind.bays
    assert all(sum(taken) <= kind.rows for taken in rows.values())
    assert kind.drawers is None or all(len(taken) <= kind.drawers for taken in rows.values())
