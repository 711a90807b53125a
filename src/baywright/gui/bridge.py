"""The way from worker threads back into the window's thread, and small jobs that must not hold the window up.

Laws: a call handed to `Bridge.deliver` runs in the window's thread, in the order handed in; after `close` none runs.
"""

import sys
import threading
from collections.abc import Callable
from typing import Any, TypeVar

from PySide6.QtCore import QObject, Qt, Signal

Outcome = TypeVar("Outcome")


TURN_S = 0.0005
"""So long a worker thread may keep Python before the window's thread gets its turn. Python's own 5 ms make drawing,
which asks for its turn many times, several times slower while a search in plain Python runs beside it.
"""


class Bridge(QObject):
    """Runs calls from any thread in the thread that made the bridge."""

    _handed_in = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._is_open = True
        sys.setswitchinterval(min(sys.getswitchinterval(), TURN_S))
        self._handed_in.connect(self._run, Qt.ConnectionType.QueuedConnection)

    def deliver(self, call: Callable[[], None]) -> None:
        """Have `call` run in the window's thread, soon."""
        self._handed_in.emit(call)

    def close(self) -> None:
        """Run nothing from now on."""
        self._is_open = False

    def _run(self, call: Callable[[], None]) -> None:
        if self._is_open:
            call()


class Errands:
    """Runs calls beside the window. Of errands that only look, a newer one makes the answer of an older one void; an
    errand that does something is `lasting`: its outcome is always told.
    """

    def __init__(self, bridge: Bridge, *, synchronous: bool = False) -> None:
        self._bridge = bridge
        self._synchronous = synchronous
        self._number = 0
        self._is_open = True
        self._threads: list[threading.Thread] = []

    def run(
        self,
        call: Callable[[], Outcome],
        done: Callable[[Outcome], None],
        failed: Callable[[Exception], None],
        *,
        lasting: bool = False,
    ) -> None:
        """Run `call` beside the window; then, in its thread, `done` with the answer or `failed` with the error."""
        if not lasting:
            self._number += 1
        number = self._number

        def answer(then: Callable[[Any], None], value: Any) -> None:
            if self._is_open and (lasting or number == self._number):
                then(value)

        def work() -> None:
            try:
                outcome = call()
            except Exception as error:  # what went wrong must reach the window, not die in a thread
                trouble = error
                self._hand_back(lambda: answer(failed, trouble))
            else:
                self._hand_back(lambda: answer(done, outcome))

        if self._synchronous:
            work()
            return
        self._threads = [thread for thread in self._threads if thread.is_alive()]
        thread = threading.Thread(target=work, name="errand", daemon=True)
        self._threads.append(thread)
        thread.start()

    def _hand_back(self, call: Callable[[], None]) -> None:
        if self._synchronous:
            call()
        else:
            self._bridge.deliver(call)

    def forget(self) -> None:
        """Make the answer of the errand that looks void."""
        self._number += 1

    def close(self, timeout_s: float = 10.0) -> None:
        """Make every answer void and wait for the threads to end."""
        self._is_open = False
        for thread in self._threads:
            thread.join(timeout_s)
