"""The distribution engine against bin packing with known optima; sources and construction: `tests.benchmarks.packing`.

Here only what takes little time; `python -m tests.benchmarks packing` goes through the whole published set.
"""

from pathlib import Path

import pytest

from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.search import holds
from tests.benchmarks.packing import Packing, fewest_bins, published, published_file, triplets
from tests.benchmarks.publicsets import FOLDER_VARIABLE

EFFORT = 20.0
QUICK = ("u250_02", "u250_16", "t60_00", "t60_08")


@pytest.fixture(scope="module")
def instances(checkout: Path) -> dict[str, Packing]:
    path = published_file(checkout)
    if not path.is_file():
        pytest.skip(f"the published instances are not here: {path.name} (set {FOLDER_VARIABLE} to its folder)")
    return {packing.name: packing for packing in published(path)}


@pytest.mark.parametrize("seed", range(5))
@pytest.mark.parametrize("count", [15, 30, 60])
def test_triplets_need_a_third_of_their_number_and_no_less(count: int, seed: int) -> None:
    made = triplets(count, seed, capacity=100)
    assert sum(made.sizes) == count // 3 * 100
    assert all(100 / 4 <= size < 100 / 2 for size in made.sizes)
    answer = fewest_bins(made, EFFORT)
    assert (answer.bins, answer.bound) == (count // 3, count // 3)
    assert holds(made.problem(count // 3 - 1), Budget(EFFORT)).holds is False


@pytest.mark.parametrize("most", [2, 3, 4])
@pytest.mark.parametrize("count", [15, 30, 60])
def test_triplets_with_few_items_a_bin_need_what_their_number_asks(count: int, most: int) -> None:
    made = triplets(count, 7, capacity=100).with_at_most(most)
    assert made.optimum == (-(-count // 2) if most == 2 else count // 3)
    answer = fewest_bins(made, EFFORT)
    assert (answer.bins, answer.bound) == (made.optimum, made.optimum)


@pytest.mark.parametrize("name", QUICK)
def test_published_items_reach_the_published_optimum(instances: dict[str, Packing], name: str) -> None:
    answer = fewest_bins(instances[name], EFFORT)
    assert (answer.bins, answer.bound) == (instances[name].optimum, instances[name].optimum)


def test_no_published_instance_is_said_to_need_more_or_fewer_bins_than_it_does(instances: dict[str, Packing]) -> None:
    """One bin under the optimum is never said to hold everything; the counting bound never passes the optimum."""
    for packing in instances.values():
        assert packing.by_sum <= packing.optimum, packing.name
        assert holds(packing.problem(packing.optimum - 1), Budget(0.1)).holds is not True, packing.name


def test_published_triplets_with_two_a_bin_need_half_of_their_number(instances: dict[str, Packing]) -> None:
    for name, packing in instances.items():
        if name.startswith("t60"):
            halved = packing.with_at_most(2)
            answer = fewest_bins(halved, EFFORT)
            assert (answer.bins, answer.bound) == (30, 30), name
