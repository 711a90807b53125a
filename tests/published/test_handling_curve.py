"""The planner's handling goal grows as the lifting equation's vertical multiplier falls, outside its band."""

import pytest

from baywright.checks.lifting import vertical
from baywright.planner.handling import KNEE_HEIGHT_MM, SHOULDER_HEIGHT_MM, outside_band


@pytest.mark.parametrize("height_mm", range(0, 1_751, 50))
def test_what_is_counted_is_what_the_multiplier_loses(height_mm: int) -> None:
    """V2: VM = 1 − 0.003·|V − 75 cm|, DHHS (NIOSH) 94-110; from the band's edge on, every cm costs the same 0.003."""
    edge_mm = min(max(height_mm, KNEE_HEIGHT_MM), SHOULDER_HEIGHT_MM)
    lost = vertical(edge_mm / 10) - vertical(height_mm / 10)
    inside = KNEE_HEIGHT_MM <= height_mm <= SHOULDER_HEIGHT_MM
    assert outside_band(height_mm) / 10 * 0.003 == pytest.approx(0.0 if inside else lost)
