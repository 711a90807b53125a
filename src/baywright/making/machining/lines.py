"""Where a runner is screwed on: its fixing holes along its length, and the lines of them across an upright.

Laws: the first hole lies 37 mm behind the runner's front end and the others whole steps of 32 mm behind that, the last
one as far back as the runner allows: common practice of the 32 mm system, which no standard defines. The data sheet
of the runner that is bought comes first.
"""

import math

from baywright.making.hardware.fasteners import in_runner

FIRST_HOLE_MM = 37.0
STEP_MM = 32.0
_BEHIND_LAST_MM = 25.0
"""The runner's rear end keeps at least so much behind its last hole: common practice, from memory."""


def runner_holes_mm(length_mm: float) -> tuple[float, ...]:
    """Distances of the fixing holes in use from the front end of a runner of that length; none without a runner."""
    if length_mm <= 0:
        return ()
    steps = math.floor((length_mm - FIRST_HOLE_MM - _BEHIND_LAST_MM) / STEP_MM + 1e-9)
    if steps < 1:
        return (length_mm / 2,)
    count = min(in_runner(length_mm), steps + 1)
    return tuple(FIRST_HOLE_MM + STEP_MM * round(steps * index / (count - 1)) for index in range(count))
