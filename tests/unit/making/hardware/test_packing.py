"""Packs to buy."""

import pytest

from baywright.making.hardware.packing import order, pieces


@pytest.mark.parametrize(("needed", "pack", "packs"), [(181, 200, 1), (182, 200, 2), (0, 200, 0), (20, 1, 22)])
def test_need_and_loss_together_decide_the_packs(needed: int, pack: int, packs: int) -> None:
    """181 and 10 % (19, rounded up) are 200: one pack; one more piece needs a second."""
    assert pieces("N", "item", "", needed, pack).packs == packs


def test_noise_in_the_last_digit_costs_no_roll() -> None:
    assert order("E", "edging", "", 0.1 + 0.2, 24.7, "m", 25.0, "").packs == 1
