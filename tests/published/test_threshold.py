"""The threshold moments of the 2022 method, and the scope of what replaced it, in the units of the program.

Source: 87 FR 72598, 16 CFR 1261.4 as of 2022 (formulas MEM 85 %, arithmetic V1); ASTM F2057-23 through its makers' and
agency's pages (V2). A built-in wall of a workshop is outside both: as a measure only.
"""

import pytest

from baywright.checks.beam import GRAVITY_M_S2
from baywright.checks.statics import balance
from baywright.checks.threshold import (
    FILLING_KG_PER_LITRE,
    FOOT_MM,
    FOOT_POUND_NM,
    IN_SCOPE_HEIGHT_MM,
    IN_SCOPE_KG,
    IN_SCOPE_LITRES,
    extended_nm,
    handhold_nm,
    threshold_nm,
)
from tests.published.test_tipping import unit

POUND_KG = 0.45359237


def test_the_threshold_of_a_drawer_400_mm_before_the_pivot() -> None:
    """V1: 400 mm is 1.3123 ft; 55.3 × 1.3123 + 26.6 = 99.17 lbf·ft = 134.46 N·m."""
    assert pytest.approx(1.3123, abs=0.00005) == 400 / FOOT_MM
    assert extended_nm(400) == pytest.approx(134.46, abs=0.006)
    assert extended_nm(400) / FOOT_POUND_NM == pytest.approx(99.17, abs=0.006)


def test_the_threshold_of_a_handhold() -> None:
    """V1: 77.4 lbf·ft for a handhold at 4.5 ft; 56 in, or 80.27 lbf·ft, at most."""
    assert handhold_nm(4.5 * FOOT_MM) / FOOT_POUND_NM == pytest.approx(77.4)
    assert handhold_nm(2000) / FOOT_POUND_NM == pytest.approx(80.27, abs=0.006)


def test_the_greater_of_both_counts() -> None:
    """V1: a drawer 300 mm before the pivot asks for 81.03 lbf·ft, one of 250 mm for 71.96, less than handholds."""
    assert threshold_nm(300, 2000) / FOOT_POUND_NM == pytest.approx(81.03, abs=0.006)
    assert extended_nm(250) / FOOT_POUND_NM == pytest.approx(71.96, abs=0.006)
    assert threshold_nm(250, 2000) == handhold_nm(2000)


def test_the_worked_unit_beside_its_threshold() -> None:
    """V1: with one drawer open 237.2 N·m (174.9 lbf·ft) are left, over 134.5; with three open 115.5, under it."""
    assert balance(unit(1)).net_nm / FOOT_POUND_NM == pytest.approx(174.9, abs=0.06)
    assert balance(unit(1)).net_nm > extended_nm(400) > balance(unit(3)).net_nm


def test_what_the_drawers_are_filled_with_and_what_pulls() -> None:
    """V2: 8.5 lb/ft³ is 0.1362 kg/l, 30 lbf is 133.4 N; V1: 60 lb at 400 mm turn by 106.8 N·m."""
    assert pytest.approx(0.1362, abs=0.00005) == FILLING_KG_PER_LITRE
    assert pytest.approx(133.4, abs=0.06) == 30 * POUND_KG * 9.80665
    assert pytest.approx(106.8, abs=0.06) == 60 * POUND_KG * GRAVITY_M_S2 * 0.4


def test_what_is_in_the_scope_of_the_standard_in_force() -> None:
    """V2: ASTM F2057-23: from 27 in high, 30 lb heavy and 3.2 ft³ inside."""
    assert pytest.approx(27 * 25.4, abs=0.3) == IN_SCOPE_HEIGHT_MM
    assert pytest.approx(30 * POUND_KG, abs=0.01) == IN_SCOPE_KG
    assert pytest.approx(3.2 * 28.316846592, abs=0.05) == IN_SCOPE_LITRES
