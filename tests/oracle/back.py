"""How much harder a box is to lift at a height than at the edge of the comfortable band, in exact fractions.

Written from the published equation (DHHS (NIOSH) 94-110, metric, read second-hand) and the goal's definition; shares no
code with the program. All lengths in mm, so that the multipliers read 250/H, 1 − 0.0003·|V − 750|, 0.82 + 45/D.

Laws: the index of 1 kg is the greater one of lifting out and setting down; a lift that is not to be done at all counts
twice what the formulas give past their limits, none under a tenth; counted is what lies over the easier one of 500 and
1,400 mm, in 1/250, and nothing in between.
"""

from fractions import Fraction
from functools import cache

from baywright.model.inventory import BoxSize
from baywright.model.safety import Grip, Safety

TENTH = Fraction(1, 10)
AT_ONE_HOUR = {0.2: (100, 100), 1.0: (94, 94), 4.0: (84, 84), 13.0: (0, 34)}
"""Frequency multipliers in hundredths, hands under 750 mm and from there on, of table 5 for an hour or less."""
HOLD = {Grip.GOOD: (100, 100), Grip.FAIR: (95, 100), Grip.POOR: (90, 90)}
"""Coupling multipliers of table 7, likewise."""


def grip_in_box_mm(height_mm: float) -> Fraction:
    """Grips 40 mm under the rim, in a box lower than 80 mm at half its height."""
    high = Fraction(height_mm)
    return high - 40 if high > 80 else high / 2


def strain(size: BoxSize, grip_mm: Fraction, safety: Safety) -> int:
    """What one kg lifted once counts."""
    return _strain(size.depth_mm, size.height_mm, grip_mm, safety.model_dump_json())


@cache
def _strain(depth_mm: float, height_mm: float, grip_mm: Fraction, said: str) -> int:
    safety = Safety.model_validate_json(said)

    def index(drawer: Fraction) -> Fraction:
        bench = Fraction(safety.set_down_height_mm) + grip_in_box_mm(height_mm)
        return max(_one_end(at, drawer, abs(bench - drawer), depth_mm, safety) for at in (drawer, bench))

    if 500 <= grip_mm <= 1400:
        return 0
    return max(0, round(250 * (index(grip_mm) - min(index(Fraction(500)), index(Fraction(1400))))))


def _one_end(at: Fraction, drawer: Fraction, travel: Fraction, depth_mm: float, safety: Safety) -> Fraction:
    reach = Fraction(depth_mm) / 2 + (200 if at >= 250 else 250)
    turn = Fraction(safety.twist_degrees)
    often, held = AT_ONE_HOUR[safety.lifts_a_minute][drawer >= 750], HOLD[safety.grip][at >= 750]
    factors = [
        min(Fraction(1), 250 / reach),
        1 - abs(at - 750) * Fraction(3, 10_000),
        Fraction(82, 100) + Fraction(45) / max(travel, Fraction(250)),
        1 - turn * Fraction(32, 10_000),
        Fraction(often, 100),
        Fraction(held, 100),
    ]
    is_allowed = reach <= 630 and 0 <= at <= 1750 and travel <= 1750 and turn <= 135 and often > 0
    product = Fraction(23)
    for factor in factors:
        product *= factor if is_allowed else max(TENTH, factor)
    return (1 if is_allowed else 2) / product
