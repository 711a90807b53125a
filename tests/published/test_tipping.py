"""Tip-over against statics worked by hand. V1: recomputed on paper; the same figures must come out."""

import pytest

from baywright.checks.statics import Mass, anchor_n, balance, force_at_n, tilted, tip_angle_degrees


def unit(open_drawers: int, height_mm: float = 900.0) -> list[Mass]:
    """460 wide, 450 deep, 1,800 high: carcass 42 kg, six drawers of 15.5 kg whose centre goes from +225 to −175 mm."""
    drawers = [Mass(15.5, -175.0 if n < open_drawers else 225.0, height_mm) for n in range(6)]
    return [Mass(42.0, 225.0, height_mm), *drawers]


@pytest.mark.parametrize(
    ("opened", "righting", "tipping", "net_nm", "centre_mm", "safety", "force_n"),
    [
        (0, 30.375, 0.0, 297.98, 225.0, float("inf"), 744.9),
        (1, 26.8875, 2.7125, 237.16, 179.1, 9.91, 592.9),
        (2, 23.4, 5.425, 176.33, 133.1, 4.31, 440.8),
        (3, 19.9125, 8.1375, 115.51, 87.2, 2.45, 288.8),
        (4, 16.425, 10.85, 54.69, 41.3, 1.51, 136.7),
        (5, 12.9375, 13.5625, -6.13, -4.6, 0.954, 0.0),
        (6, 9.45, 16.275, -66.95, -50.6, 0.581, 0.0),
    ],
)
def test_one_drawer_after_the_other_is_opened(
    opened: int, righting: float, tipping: float, net_nm: float, centre_mm: float, safety: float, force_n: float
) -> None:
    found = balance(unit(opened))
    assert (found.righting_kgm, found.tipping_kgm) == pytest.approx((righting, tipping))
    assert found.net_nm == pytest.approx(net_nm, abs=0.01)
    assert found.centre_mm == pytest.approx(centre_mm, abs=0.06)
    assert found.safety == pytest.approx(safety, abs=0.006)
    assert force_at_n(found.net_nm, 400.0) == pytest.approx(force_n, abs=0.06)


def test_what_the_wall_anchor_must_hold() -> None:
    assert anchor_n(balance(unit(6)).net_nm, 1700.0) == pytest.approx(39.4, abs=0.05)
    assert anchor_n(balance(unit(5)).net_nm, 1700.0) == pytest.approx(3.61, abs=0.01)
    assert anchor_n(balance(unit(4)).net_nm, 1700.0) == 0


def test_break_even() -> None:
    closed, one = balance(unit(0)).net_kgm, balance(unit(1)).net_kgm
    number = closed / (closed - one)
    assert number == pytest.approx(4.899, abs=0.0005)
    assert [int(bays * number) for bays in (1, 2, 3, 4)] == [4, 9, 14, 19]


def test_a_level_push_and_the_lean_it_stands() -> None:
    assert force_at_n(balance(unit(0)).net_nm, 1420.0) == pytest.approx(209.8, abs=0.06)
    assert force_at_n(balance(unit(1)).net_nm, 1420.0) == pytest.approx(167.0, abs=0.06)
    angles = [tip_angle_degrees(balance(unit(n)), 900.0) for n in (0, 1, 4)]
    assert angles == pytest.approx([14.04, 11.25, 2.63], abs=0.006)


def test_on_a_carpet_the_rear_stands_higher() -> None:
    """The rear raised by 10.9 mm over a depth of 450 mm."""
    masses = tilted(unit(0), 10.9, 450.0)
    assert masses[0].x_mm == pytest.approx(203.1, abs=0.06)
    assert tilted(unit(1), 10.9, 450.0)[1].x_mm == pytest.approx(-196.7, abs=0.06)
    assert balance(tilted(unit(4), 10.9, 450.0)).net_kgm == pytest.approx(2.631, abs=0.003)
    assert balance(tilted(unit(5), 10.9, 450.0)).net_kgm == pytest.approx(-3.567, abs=0.003)
