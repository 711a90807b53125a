"""One search at a time off the owner's thread: request → pure call → response.

Laws: a new search stops the one before, and no answer of an older one is told any more; nothing of the caller's is
touched from the worker thread but through `deliver`; a defect in a search is told, not lost with its thread.
"""

import threading
from collections.abc import Callable
from typing import TypeVar

Deliver = Callable[[Callable[[], None]], None]
"""Runs a call in the owner's thread, soon."""

Better = TypeVar("Better")
Answer = TypeVar("Answer")


class Search:
    """Runs calls off the owner's thread. With `synchronous` it answers before `begin` returns (tests)."""

    def __init__(self, name: str, deliver: Deliver, *, synchronous: bool = False) -> None:
        self._name = name
        self._deliver = deliver
        self._synchronous = synchronous
        self._stop = threading.Event()
        self._number = 0
        """Of the newest search; what an older one answers is dropped."""
        self.thread: threading.Thread | None = None
        """The newest search's own."""

    def begin(
        self,
        work: Callable[[threading.Event, Callable[[Better], None]], Answer],
        on_progress: Callable[[Better], None],
        on_end: Callable[[Answer], None],
        on_failure: Callable[[Exception], None],
    ) -> None:
        """Starts `work`, which is given when to stop and whom to tell what it has found so far.

        The other calls run in the owner's thread.
        """
        self.forget()
        number, stop = self._number, threading.Event()
        self._stop = stop

        def answer(call: Callable[[], None]) -> None:
            self._deliver(lambda: call() if number == self._number else None)

        def run() -> None:
            try:
                found = work(stop, lambda better: answer(lambda: on_progress(better)))
            except Exception as error:  # a defect in the search must reach the owner, not die in a thread
                failure = error
                answer(lambda: on_failure(failure))
            else:
                answer(lambda: on_end(found))

        if self._synchronous:
            run()
            return
        self.thread = threading.Thread(target=run, name=self._name, daemon=True)
        self.thread.start()

    def cancel(self) -> None:
        """Asks the running search to stop; it answers with the best it has."""
        self._stop.set()

    def forget(self) -> None:
        """Stops the running search, whose answers are told no more."""
        self._number += 1
        self.cancel()

    def close(self, timeout_s: float = 5.0) -> None:
        """Stops the search and waits for its thread to end."""
        self.cancel()
        if self.thread is not None:
            self.thread.join(timeout_s)
