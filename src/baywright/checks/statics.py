"""Whether something that stands free tips over: moments about the line of its front feet.

Plain statics. A mass behind the line rights the unit, one in front of it (an open drawer) tips it; it stands while the
righting moment is the greater. x is in mm, over 0 behind the line; masses in kg, moments in kg·m or N·m.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from math import asin, atan2, cos, degrees, sin

from baywright.checks.beam import GRAVITY_M_S2


@dataclass(frozen=True)
class Mass:
    """A mass with its centre: `x_mm` behind the front feet's line (under 0: in front), `z_mm` over the floor."""

    kg: float
    x_mm: float
    z_mm: float = 0.0


@dataclass(frozen=True)
class Balance:
    """The moments of some masses about the front feet's line, in kg·m."""

    righting_kgm: float
    tipping_kgm: float
    kg: float

    @property
    def net_kgm(self) -> float:
        """Righting less tipping; under 0 it tips."""
        return self.righting_kgm - self.tipping_kgm

    @property
    def net_nm(self) -> float:
        """The same in N·m."""
        return self.net_kgm * GRAVITY_M_S2

    @property
    def centre_mm(self) -> float:
        """How far behind the line the centre of all masses lies; under 0 in front of it."""
        return 1000.0 * self.net_kgm / self.kg if self.kg else 0.0

    @property
    def safety(self) -> float:
        """Righting over tipping moment; infinite where nothing tips."""
        return self.righting_kgm / self.tipping_kgm if self.tipping_kgm else float("inf")


def balance(masses: Iterable[Mass]) -> Balance:
    """The balance of masses."""
    righting = tipping = total = 0.0
    for mass in masses:
        moment = mass.kg * mass.x_mm / 1000.0
        righting += max(0.0, moment)
        tipping += max(0.0, -moment)
        total += mass.kg
    return Balance(righting, tipping, total)


def tilted(masses: Iterable[Mass], raised_mm: float, depth_mm: float) -> list[Mass]:
    """The masses when the rear is raised, or the front sunk into a carpet, by `raised_mm` over `depth_mm`: turned about
    the front feet's line by the angle whose sine is raised/depth; raised by more than its depth it lies on its front.
    """
    angle = asin(min(1.0, raised_mm / depth_mm))
    return [
        Mass(m.kg, m.x_mm * cos(angle) - m.z_mm * sin(angle), m.x_mm * sin(angle) + m.z_mm * cos(angle)) for m in masses
    ]


def force_at_n(net_nm: float, distance_mm: float) -> float:
    """The force in N, straight down at `distance_mm` in front of the feet's line, or level at that height over the
    floor, that just tips a unit with that net moment; 0 where it tips by itself.
    """
    return max(0.0, net_nm) / (distance_mm / 1000.0)


def anchor_n(net_nm: float, height_mm: float) -> float:
    """The pull in N that an anchor at that height must take so that the unit stands; 0 where it stands by itself."""
    return max(0.0, -net_nm) / (height_mm / 1000.0)


def tip_angle_degrees(found: Balance, centre_height_mm: float) -> float:
    """By how many degrees the unit can lean before it goes over; under 0 where it tips by itself."""
    return degrees(atan2(found.centre_mm, centre_height_mm))
