"""A heart that beats in the window's thread, and tells when it stood still because of this program.

What other programs on the machine take is not counted: a gap counts by the processor time that this process spent in
it, or when it is so long that something must have been waited for.
"""

import time
from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import Qt, QTimer

LONGEST_GAP_S = 0.05
LONGEST_WAIT_S = 1.0
"""Longer than this without a beat counts whatever was done meanwhile."""
GAPS_FORGIVEN = 2
"""One or two steps of the solver hold Python for longer; the window's own fault would be seen often."""


@dataclass(frozen=True)
class Beat:
    """When the heart beat: on the clock, and by the processor time of this process."""

    at_s: float
    spent_s: float


class Heart:
    """Beats from `start` to `stop`. `clock` tells what was spent: by this process, or with `time.thread_time` by the
    window's own thread alone, where another one of plain Python uses the processor all the time.
    """

    def __init__(self, clock: Callable[[], float] = time.process_time) -> None:
        self._beats: list[Beat] = []
        self._clock = clock
        self._timer = QTimer()
        self._timer.setTimerType(Qt.TimerType.PreciseTimer)
        self._timer.timeout.connect(self._beat)

    def _beat(self) -> None:
        self._beats.append(Beat(time.monotonic(), self._clock()))

    def start(self) -> None:
        """Begin now."""
        self._beats.clear()
        self._beat()
        self._timer.start(5)

    def stop(self) -> None:
        """Beat no more."""
        self._timer.stop()

    @property
    def gaps(self) -> list[str]:
        """How long it stood still, as often as that was too long."""
        return [
            f"{(later.at_s - earlier.at_s) * 1000:.0f} ms"
            for earlier, later in pairwise(self._beats)
            if min(later.at_s - earlier.at_s, later.spent_s - earlier.spent_s) > LONGEST_GAP_S
            or later.at_s - earlier.at_s > LONGEST_WAIT_S
        ]
