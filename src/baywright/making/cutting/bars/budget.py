"""The effort of one search: what is left of it, and the caller's wish to stop.

Law: effort is counted in steps from what was computed, never from a clock, so that the same effort gives the same
answer; a step is about a thousandth of a second of one processor of 2025.
"""

from collections.abc import Callable
from dataclasses import dataclass


def never() -> bool:
    """Do not stop before the effort is spent."""
    return False


class StoppedError(Exception):
    """The effort is spent, or the caller wants to stop."""


@dataclass
class Budget:
    """Steps left (None: no limit), and the caller's wish to stop."""

    left: float | None
    stop: Callable[[], bool]
    spent: float = 0.0

    def spend(self, steps: float) -> None:
        """Count what was done; raises `StoppedError` where nothing is left or the caller wants to stop."""
        self.spent += steps
        if self.left is not None:
            self.left -= steps
            if self.left <= 0:
                raise StoppedError
        if self.stop():
            raise StoppedError
