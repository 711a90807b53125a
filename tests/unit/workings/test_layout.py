"""Bays side by side: the sums of the workings and the places along the wall are the same thing."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.model.arrangement import Arrangement
from baywright.model.construction import Construction, Top, Uprights
from baywright.model.limits import BayWish, Limits
from baywright.model.project import Project
from baywright.model.space import CeilingPoint, Space, Zone, ZoneEffect
from baywright.workings import derive


def zone(effect: ZoneEffect, left_mm: float, width_mm: float, **more: float) -> Zone:
    return Zone(id=f"z{round(left_mm)}", label="Zone", effect=effect, left_mm=left_mm, width_mm=width_mm, **more)


def wall(*zones: Zone, own: bool = False, overhang_mm: float = 0.0, **limits: object) -> Project:
    uprights = Uprights.OWN if own else Uprights.SHARED
    return Project(
        space=Space(length_mm=4000, height_limit_mm=1400, zones=zones),
        construction=Construction(uprights=uprights, top=Top(overhang_side_mm=overhang_mm)),
        limits=Limits(**limits),  # type: ignore[arg-type]
        arrangement=Arrangement(bay_count=4, upright_rows=30),
    )


def test_bays_that_are_all_alike_stand_a_bay_pitch_apart() -> None:
    w = derive(wall())
    lefts = [bay.left_mm for bay in w.layout.bays]
    assert lefts == [18 + n * w.value("bay_pitch") for n in range(4)]
    assert w.layout.bays_end_mm == w.value("bays_run_length")
    assert [u.left_mm for u in w.layout.uprights[:5]] == [n * w.value("bay_pitch") for n in range(5)]
    assert w.layout.shelf is not None
    assert w.layout.shelf.clear_mm == w.value("shelf_bay_clear_width")
    assert len(w.kinds) == 1


def test_a_wider_bay_is_a_kind_of_its_own() -> None:
    w = derive(wall(bays=(BayWish(), BayWish(box_width_mm=600))))
    assert [bay.box_width_mm for bay in w.layout.bays] == [400, 600, 400, 400]
    kind = w.kind_of(w.layout.bays[1])
    assert w.value("bay_clear_width", kind) == w.value("bay_clear_width") + 200
    assert w.value("rail_length", kind) == w.value("rail_length") + 200
    assert w.at_kind("upright_depth", kind) == w.value("upright_depth")
    assert w.value("bays_run_length") == 4 * w.value("bay_pitch") + 200 + 18
    assert "600 mm" in w.entry("bay_clear_width", kind).label


def test_a_lower_bay_has_a_top_of_its_own_that_ends_at_the_higher_upright() -> None:
    w = derive(wall(bays=(BayWish(rows=20),)))
    low, high = w.layout.stretches
    assert (low.rows, low.bays, high.rows, high.bays) == (20, (0,), 30, (1, 2, 3))
    assert low.right_mm == high.left_mm == w.layout.uprights[1].left_mm
    assert [u.rows for u in w.layout.uprights] == [20, 30, 30, 30, 30, 30]
    assert high.has_shelf
    assert w.value("upright_height", w.kind_of(w.layout.bays[0])) == 20 * 32


@pytest.mark.parametrize("own", [False, True])
def test_a_zone_kept_clear_interrupts_the_run(own: bool) -> None:
    w = derive(wall(zone(ZoneEffect.KEEP_CLEAR, 1100, 400), own=own, overhang_mm=10))
    assert [bay.section for bay in w.layout.bays] == [0, 0, 1, 1]
    assert w.layout.bays[2].left_mm - 18 == pytest.approx(1500 - 10 + 10)  # its top's overhang starts behind the zone
    assert w.layout.bays_end_mm == pytest.approx(w.value("bays_run_length"))


def test_under_a_window_a_bay_ends_below_it() -> None:
    w = derive(wall(zone(ZoneEffect.END_BELOW, 600, 100, bottom_mm=900)))
    rows = [bay.rows for bay in w.layout.bays]
    assert rows[0] == rows[2] == 30
    low = w.value("unit_height", w.kind_of(w.layout.bays[1]))
    assert low <= 900 < low + 32


def test_a_sloping_ceiling_lowers_the_bays_one_after_the_other() -> None:
    project = wall()
    slope = (CeilingPoint(along_mm=0, height_mm=1400), CeilingPoint(along_mm=4000, height_mm=600))
    w = derive(project.replace(space=project.space.replace(ceiling=slope)))
    rows = [bay.rows for bay in w.layout.bays]
    assert rows == sorted(rows, reverse=True)
    assert rows[0] > rows[-1]


def test_only_drawers_that_cross_a_zone_are_shallower() -> None:
    w = derive(wall(zone(ZoneEffect.STAY_IN_FRONT, 0, 300, bottom_mm=200, height_mm=100, depth_mm=60)))
    assert w.drawer_kind(0, 20, 4) == ""
    shallow = w.drawer_kind(0, 3, 4)
    assert shallow
    assert w.drawer_kind(1, 3, 4) == ""
    assert w.value("runner_room", shallow) == w.value("runner_room") - 60


def test_the_shelf_bay_gets_the_width_that_is_wished_and_the_bays_the_rest() -> None:
    project = wall(shelf_bay_clear_width_mm=800).replace(arrangement=Arrangement())
    w = derive(project)
    assert w.value("shelf_bay_clear_width") == 800
    assert w.value("bays_that_fit") < derive(wall(shelf_bay=False).replace(arrangement=Arrangement())).value(
        "bays_that_fit"
    )


@settings(max_examples=60, deadline=None)
@given(
    own=st.booleans(),
    overhang_mm=st.sampled_from([0.0, 25.0]),
    widths=st.lists(st.sampled_from([None, 200.0, 600.0]), min_size=0, max_size=5),
    clear=st.lists(st.tuples(st.integers(0, 3800), st.integers(10, 700)), max_size=3),
)
def test_the_places_add_up_to_the_run(
    own: bool, overhang_mm: float, widths: list[float | None], clear: list[tuple[int, int]]
) -> None:
    zones = {left: zone(ZoneEffect.KEEP_CLEAR, left, width) for left, width in clear}
    bays = tuple(BayWish(box_width_mm=width) for width in widths)
    project = wall(*zones.values(), own=own, overhang_mm=overhang_mm, bays=bays)
    w = derive(project)
    layout = w.layout
    assert layout.bays_end_mm == pytest.approx(w.value("bays_run_length"))
    assert layout.length_mm == pytest.approx(w.value("run_length"))
    for bay in layout.bays:
        for z in zones.values():
            left, right = bay.left_mm + overhang_mm, bay.right_mm + overhang_mm
            assert right <= z.left_mm or left >= z.right_mm
    edges = sorted((u.left_mm, u.left_mm + 18) for u in layout.uprights)
    assert all(a[1] <= b[0] + 1e-9 for a, b in pairwise(edges))
    for bay in layout.bays:
        assert any(bay.left_mm == pytest.approx(right) for _, right in edges)
        assert any(bay.right_mm == pytest.approx(left) for left, _ in edges)
