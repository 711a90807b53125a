"""Laws of tipping that hold for any unit: plain statics about the front feet's line."""

from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.checks.statics import Mass, balance, tilted
from baywright.checks.weighing import Drawer, Scales

masses = st.floats(1.0, 100.0)
depths = st.floats(200.0, 900.0)


def unit(
    carcass_kg: float, loads_kg: list[float], depth_mm: float, travel_mm: float, leaning_mm: float = 0.0
) -> Scales:
    """A unit whose masses lie in the middle of its depth when it is closed."""
    middle = depth_mm / 2
    drawers = tuple(
        Drawer((0, number), 2.0, kg, middle, middle - travel_mm, 300.0 * (number + 1))
        for number, kg in enumerate(loads_kg)
    )
    return Scales((0,), (Mass(carcass_kg, middle, 900.0),), drawers, depth_mm, leaning_mm)


loads = st.lists(masses, min_size=1, max_size=8)


@settings(max_examples=60, deadline=None)
@given(masses, loads, depths, st.floats(0.5, 4.0))
def test_scaling_all_masses_changes_nothing(kg: float, loaded: list[float], depth: float, factor: float) -> None:
    plain = unit(kg, loaded, depth, depth - 20)
    drawers = tuple(
        Drawer(d.place, d.empty_kg * factor, d.loaded_kg * factor, d.closed_mm, d.open_mm, d.height_mm)
        for d in plain.drawers
    )
    scaled = Scales((0,), (Mass(kg * factor, depth / 2, 900.0),), drawers, depth, 0.0)
    for filled in (True, False):
        closest = min(abs(plain.net_kgm(count, filled=filled)) for count in range(1, len(loaded) + 1))
        if closest > 1e-9:  # on the very edge the last digit decides
            assert scaled.most_open(filled=filled) == plain.most_open(filled=filled)


@settings(max_examples=60, deadline=None)
@given(masses, loads, depths, st.floats(0.3, 0.9))
def test_shorter_travel_lets_no_fewer_be_open(kg: float, loaded: list[float], depth: float, share: float) -> None:
    for filled in (True, False):
        assert unit(kg, loaded, depth, depth * share).most_open(filled=filled) >= unit(
            kg, loaded, depth, depth
        ).most_open(filled=filled)


@settings(max_examples=60, deadline=None)
@given(masses, loads, depths, st.floats(1.0, 2.0))
def test_more_depth_lets_no_fewer_be_open(kg: float, loaded: list[float], depth: float, factor: float) -> None:
    for filled in (True, False):
        narrow, deep = (unit(kg, loaded, d, depth - 20).most_open(filled=filled) for d in (depth, depth * factor))
        assert deep >= narrow


@settings(max_examples=60, deadline=None)
@given(masses, loads, depths)
def test_closed_it_stands_where_its_centre_is_behind_the_feet(kg: float, loaded: list[float], depth: float) -> None:
    closed = unit(kg, loaded, depth, depth)
    assert closed.net_kgm(0, filled=True) > 0
    assert closed.lean_degrees > 0


@settings(max_examples=60, deadline=None)
@given(masses, loads, depths)
def test_an_empty_run_that_is_filled_stands_no_better_than_a_full_one(
    kg: float, loaded: list[float], depth: float
) -> None:
    scales = unit(kg, loaded, depth, depth)
    assert scales.most_open(filled=False) <= scales.most_open(filled=True)


@settings(max_examples=60, deadline=None)
@given(masses, loads, depths, st.floats(0.0, 60.0))
def test_the_worst_set_of_drawers_is_the_worst_of_all_sets(
    kg: float, loaded: list[float], depth: float, leaning: float
) -> None:
    """By trying every set of drawers: none of as many leaves less."""
    scales = unit(kg, loaded[:6], depth, depth - 20, leaning)
    for filled in (True, False):
        least = dict.fromkeys(range(len(scales.drawers) + 1), float("inf"))
        for chosen in range(1 << len(scales.drawers)):
            there = [*scales.boards]
            for number, drawer in enumerate(scales.drawers):
                is_open = bool(chosen >> number & 1)
                there.append(drawer.mass(loaded=filled or is_open, opened=is_open))
            count = chosen.bit_count()
            least[count] = min(least[count], balance(tilted(there, leaning, depth)).net_kgm)
        for count, left in least.items():
            assert abs(scales.net_kgm(count, filled=filled) - left) < 1e-6
