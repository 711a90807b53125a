"""Runner pairs from old places to new ones."""

from itertools import pairwise, permutations

from hypothesis import given
from hypothesis import strategies as st

from baywright.planner.replanning.pairing import nearest_rows, pair_up

MAKE, WIDE = (432.0,), (532.0,)


def test_a_pair_stays_in_its_bay_where_it_can() -> None:
    pairs = pair_up({(0, 4): MAKE, (1, 8): MAKE}, {(1, 9): MAKE, (0, 20): MAKE})
    assert pairs == {(0, 4): (0, 20), (1, 8): (1, 9)}


def test_what_is_left_goes_to_the_nearest_bay() -> None:
    pairs = pair_up({(0, 4): MAKE, (5, 4): MAKE}, {(4, 4): MAKE})
    assert pairs == {(5, 4): (4, 4)}


def test_a_drawer_for_another_width_serves_no_place() -> None:
    assert pair_up({(0, 4): MAKE, (1, 4): WIDE}, {(0, 8): WIDE}) == {(1, 4): (0, 8)}
    assert pair_up({(0, 4): MAKE}, {(0, 8): WIDE}) == {}


@given(st.sets(st.integers(0, 30), max_size=5), st.sets(st.integers(0, 30), max_size=5))
def test_no_other_pairing_of_rows_has_a_smaller_sum_and_none_cross(old: set[int], new: set[int]) -> None:
    pairs = nearest_rows(sorted(old), sorted(new))
    few, many = sorted([sorted(old), sorted(new)], key=len)
    assert len(pairs) == len(few)
    best = min(sum(abs(a - b) for a, b in zip(few, chosen, strict=True)) for chosen in permutations(many, len(few)))
    assert sum(abs(a - b) for a, b in pairs) == best
    assert all(first < second for (_, first), (_, second) in pairwise(sorted(pairs)))
