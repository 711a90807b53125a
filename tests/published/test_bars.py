"""Bars against published optima of one-dimensional bin packing; sources and construction: `tests.benchmarks.packing`.

Mark: V2, the optimum of each instance as it stands in the file; the bound that meets it is proved anew here. Only what
takes little time; `python -m tests.benchmarks bars` goes through the whole published set.
"""

from collections import Counter
from pathlib import Path

import pytest

from baywright.making.cutting.bars import Bar, Length, cut_bars
from tests.benchmarks.bars import Order, answered
from tests.benchmarks.packing import Packing, published, published_file, triplets
from tests.benchmarks.publicsets import FOLDER_VARIABLE
from tests.oracle.sticks import Stick

QUICK = ("u250_06", "u250_12", "u500_00", "u500_18", "t60_06", "t60_10", "t120_02", "t120_18", "t249_08")


def order(packing: Packing) -> Order:
    return Order(dict(Counter(packing.sizes)), (Stick(packing.capacity, 1),), optimum=packing.optimum)


@pytest.fixture(scope="module")
def instances(checkout: Path) -> dict[str, Packing]:
    path = published_file(checkout)
    if not path.is_file():
        pytest.skip(f"the published instances are not here: {path.name} (set {FOLDER_VARIABLE} to its folder)")
    return {packing.name: packing for packing in published(path)}


@pytest.mark.parametrize("name", QUICK)
def test_published_pieces_need_the_published_number_of_bars_and_no_fewer(
    instances: dict[str, Packing], name: str
) -> None:
    packing = answered(order(instances[name])).packing
    assert (packing.cost, packing.bound) == (instances[name].optimum, instances[name].optimum)


def test_no_bound_is_above_a_published_optimum(instances: dict[str, Packing]) -> None:
    for packing in instances.values():
        pieces = [Length(size, size, count) for size, count in Counter(packing.sizes).items()]
        quick = cut_bars(pieces, [Bar(0, packing.capacity)], effort=30)
        assert quick.bound <= packing.optimum <= quick.cost, packing.name


@pytest.mark.parametrize("seed", range(3))
@pytest.mark.parametrize("count", [15, 60, 120])
def test_triplets_made_here_need_a_third_of_their_number(count: int, seed: int) -> None:
    made = triplets(count, seed)
    packing = answered(order(made)).packing
    assert (packing.cost, packing.bound) == (count // 3, count // 3)
