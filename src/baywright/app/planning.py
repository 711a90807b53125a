"""Planning in the background: request → pure call → response with its request's number.

Laws: one search at a time, and a new request stops the one before; nothing of the caller's is touched from the
worker thread but through `deliver`; a response whose number is not the newest is dropped by the caller.
"""

import threading
from collections.abc import Callable

from baywright.model.plan import PlanResult
from baywright.model.project import Project
from baywright.planner import plan
from baywright.planner.distribution.solver import warm_up

Deliver = Callable[[Callable[[], None]], None]
"""Runs a call in the owner's thread, soon."""


def warm_up_beside() -> None:
    """Imports the solver beside the owner's thread, so that the first plan need not wait for it."""
    threading.Thread(target=warm_up, name="warm-up", daemon=True).start()


class PlanningDesk:
    """Runs the planner off the owner's thread. With `synchronous` it answers before `request` returns (tests)."""

    def __init__(self, deliver: Deliver, synchronous: bool = False) -> None:
        self._deliver = deliver
        self._synchronous = synchronous
        self._stop = threading.Event()
        self._thread: threading.Thread | None = None

    def request(
        self,
        project: Project,
        on_progress: Callable[[PlanResult], None],
        on_end: Callable[[PlanResult], None],
        on_failure: Callable[[Exception], None],
        *,
        keep: bool = False,
    ) -> None:
        """Starts a search, with `keep` for the fewest changes; the callbacks run in the owner's thread."""
        self.cancel()
        stop = threading.Event()
        self._stop = stop

        def search() -> None:
            try:
                result = plan(
                    project,
                    keep=keep,
                    stop=stop.is_set,
                    progress=lambda better: self._deliver(lambda: on_progress(better)),
                )
            except Exception as error:  # a defect in the search must reach the owner, not die in a thread
                failure = error
                self._deliver(lambda: on_failure(failure))
            else:
                self._deliver(lambda: on_end(result))

        if self._synchronous:
            search()
            return
        self._thread = threading.Thread(target=search, name="planning", daemon=True)
        self._thread.start()

    def cancel(self) -> None:
        """Asks the running search to stop; it answers with the best it has."""
        self._stop.set()

    def close(self, timeout_s: float = 5.0) -> None:
        """Stops the search and waits for its thread to end."""
        self.cancel()
        if self._thread is not None:
            self._thread.join(timeout_s)
