"""The revised NIOSH lifting equation, in kg and cm: how much may be lifted at one place, and how a load compares.

    RWL = LC · HM · VM · DM · AM · FM · CM,   LI = load / RWL

Source: Waters, Putz-Anderson, Garg, *Applications Manual for the Revised NIOSH Lifting Equation*, DHHS (NIOSH)
publication 94-110 (1994, revised 2021); read second-hand, with its pages quoted. Multipliers
are computed in full precision, not rounded as on the manual's worksheet.

Law: outside its limits a multiplier is 0: the lift is not to be done at all. The equation is made for two-handed smooth
lifting without slips or sudden loads; it is a guide, not a permission.
"""

from bisect import bisect_left
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

LOAD_CONSTANT_KG = 23.0
LEAST_REACH_CM, MOST_REACH_CM = 25.0, 63.0
MOST_HEIGHT_CM = 175.0
LEAST_TRAVEL_CM, MOST_TRAVEL_CM = 25.0, 175.0
MOST_TWIST_DEGREES = 135.0
GRIP_DIVIDE_CM = 75.0
"""Height from which on frequency and coupling multipliers are the easier ones."""
LEAST_CARRIED_ON = 0.1
"""No formula is carried on under this, so that every place keeps its order."""
HIGH_INDEX = 3.0
"""Over it many workers are at risk; the manual aims at 1 or less."""


class Coupling(StrEnum):
    """How well hands hold the load (manual, table 6)."""

    GOOD = "good"
    FAIR = "fair"
    POOR = "poor"


class Duration(StrEnum):
    """How long lifting goes on in a working day (manual, page 14)."""

    SHORT = "up to 1 h"
    MODERATE = "up to 2 h"
    LONG = "up to 8 h"


_COUPLING: Mapping[Coupling, tuple[float, float]] = {
    Coupling.GOOD: (1.00, 1.00),
    Coupling.FAIR: (0.95, 1.00),
    Coupling.POOR: (0.90, 0.90),
}
"""Table 7: below and from 75 cm on."""

_FREQUENCIES = (0.2, 0.5, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0, 13.0, 14.0, 15.0)
_FREQUENCY: Mapping[tuple[Duration, bool], tuple[float, ...]] = {
    (Duration.SHORT, False): (
        1.00, 0.97, 0.94, 0.91, 0.88, 0.84, 0.80, 0.75, 0.70, 0.60, 0.52, 0.45, 0.41, 0.37, 0, 0, 0),
    (Duration.SHORT, True): (
        1.00, 0.97, 0.94, 0.91, 0.88, 0.84, 0.80, 0.75, 0.70, 0.60, 0.52, 0.45, 0.41, 0.37, 0.34, 0.31, 0.28),
    (Duration.MODERATE, False): (0.95, 0.92, 0.88, 0.84, 0.79, 0.72, 0.60, 0.50, 0.42, 0.35, 0.30, 0.26, 0, 0, 0, 0, 0),
    (Duration.MODERATE, True): (
        0.95, 0.92, 0.88, 0.84, 0.79, 0.72, 0.60, 0.50, 0.42, 0.35, 0.30, 0.26, 0.23, 0.21, 0, 0, 0),
    (Duration.LONG, False): (0.85, 0.81, 0.75, 0.65, 0.55, 0.45, 0.35, 0.27, 0.22, 0.18, 0, 0, 0, 0, 0, 0, 0),
    (Duration.LONG, True): (0.85, 0.81, 0.75, 0.65, 0.55, 0.45, 0.35, 0.27, 0.22, 0.18, 0.15, 0.13, 0, 0, 0, 0, 0),
}  # fmt: skip
"""Table 5, by duration and whether the hands are at 75 cm or higher at the origin."""


@dataclass(frozen=True)
class Lift:
    """One lift at one place. `reach_cm` is from between the ankles to between the hands, `height_cm` of the hands over
    the floor, `travel_cm` the vertical distance they go, `lifts_a_minute` the frequency.
    """

    reach_cm: float
    height_cm: float
    travel_cm: float
    twist_degrees: float = 0.0
    lifts_a_minute: float = 0.2
    duration: Duration = Duration.SHORT
    coupling: Coupling = Coupling.GOOD
    origin_height_cm: float | None = None
    """Height of the hands where the lift begins; it decides on the frequency multiplier. None: this place is it."""


@dataclass(frozen=True)
class Multipliers:
    """The six multipliers, each from 0 to 1."""

    horizontal: float
    vertical: float
    distance: float
    asymmetry: float
    frequency: float
    coupling: float

    @property
    def product(self) -> float:
        """All of them together."""
        return (
            self.horizontal * self.vertical * self.distance * self.asymmetry * self.frequency * self.coupling
        )  # fmt: skip


def horizontal(reach_cm: float) -> float:
    """HM = 25/H; 1 up to 25 cm, 0 over 63 cm."""
    return 0.0 if reach_cm > MOST_REACH_CM else LEAST_REACH_CM / max(reach_cm, LEAST_REACH_CM)


def vertical(height_cm: float) -> float:
    """VM = 1 − 0.003·|V − 75|; 0 under the floor and over 175 cm."""
    return 1.0 - 0.003 * abs(height_cm - 75.0) if 0.0 <= height_cm <= MOST_HEIGHT_CM else 0.0


def distance(travel_cm: float) -> float:
    """DM = 0.82 + 4.5/D; 1 up to 25 cm, 0 over 175 cm."""
    return 0.0 if travel_cm > MOST_TRAVEL_CM else 0.82 + 4.5 / max(travel_cm, LEAST_TRAVEL_CM)


def asymmetry(twist_degrees: float) -> float:
    """AM = 1 − 0.0032·A; 0 over 135°."""
    return 0.0 if twist_degrees > MOST_TWIST_DEGREES else 1.0 - 0.0032 * twist_degrees


def frequency(lifts_a_minute: float, duration: Duration, origin_height_cm: float) -> float:
    """FM by table 5, straight between its lines; 0 over 15 lifts a minute."""
    if lifts_a_minute > _FREQUENCIES[-1]:
        return 0.0
    column = _FREQUENCY[duration, origin_height_cm >= GRIP_DIVIDE_CM]
    rate = max(lifts_a_minute, _FREQUENCIES[0])
    right = bisect_left(_FREQUENCIES, rate)
    if _FREQUENCIES[right] == rate:
        return column[right]
    left = right - 1
    share = (rate - _FREQUENCIES[left]) / (_FREQUENCIES[right] - _FREQUENCIES[left])
    return column[left] + share * (column[right] - column[left])


def coupling(quality: Coupling, height_cm: float) -> float:
    """CM by table 7."""
    return _COUPLING[quality][height_cm >= GRIP_DIVIDE_CM]


def multipliers(lift: Lift) -> Multipliers:
    """The multipliers of a lift."""
    origin = lift.height_cm if lift.origin_height_cm is None else lift.origin_height_cm
    return Multipliers(
        horizontal(lift.reach_cm), vertical(lift.height_cm), distance(lift.travel_cm), asymmetry(lift.twist_degrees),
        frequency(lift.lifts_a_minute, lift.duration, origin), coupling(lift.coupling, lift.height_cm),
    )  # fmt: skip


def recommended_kg(lift: Lift) -> float:
    """The recommended weight limit of a lift, in kg; 0 where it is not to be done."""
    return LOAD_CONSTANT_KG * multipliers(lift).product


def carried_on(lift: Lift) -> float:
    """The product of the formulas of a lift, carried on past the limits at which a multiplier becomes 0; over 0. No
    value of the manual: only to tell which of two places is farther from what may be done.
    """
    origin = lift.height_cm if lift.origin_height_cm is None else lift.origin_height_cm
    factors = (
        LEAST_REACH_CM / max(lift.reach_cm, LEAST_REACH_CM),
        1.0 - 0.003 * abs(lift.height_cm - 75.0),
        0.82 + 4.5 / max(lift.travel_cm, LEAST_TRAVEL_CM),
        1.0 - 0.0032 * lift.twist_degrees,
        frequency(lift.lifts_a_minute, lift.duration, origin),
        coupling(lift.coupling, lift.height_cm),
    )
    product = 1.0
    for factor in factors:
        product *= max(LEAST_CARRIED_ON, factor)
    return product


def lifting_index(load_kg: float, lift: Lift) -> float:
    """The load in multiples of the recommended weight limit; infinite where no load may be lifted there."""
    limit = recommended_kg(lift)
    return load_kg / limit if limit > 0 else float("inf")


def reach_from_width_cm(depth_of_load_cm: float, height_cm: float) -> float:
    """Reach where it cannot be measured: 20 + W/2 cm from 25 cm of height on, else 25 + W/2 (manual, page 12); W is how
    far the load reaches away from the body.
    """
    return (20.0 if height_cm >= 25.0 else 25.0) + depth_of_load_cm / 2.0
