"""Planning in the background, each request for one document.

Law: a new request stops the one before, whose answer is told no more.
"""

import threading
from collections.abc import Callable

from baywright.app.search import Deliver, Search
from baywright.model.plan import PlanResult
from baywright.model.project import Project
from baywright.planner import plan
from baywright.planner.distribution.solver import warm_up


def warm_up_beside() -> None:
    """Imports the solver beside the owner's thread, so that the first plan need not wait for it."""
    threading.Thread(target=warm_up, name="warm-up", daemon=True).start()


class PlanningDesk:
    """Runs the planner off the owner's thread. With `synchronous` it answers before `request` returns (tests)."""

    def __init__(self, deliver: Deliver, synchronous: bool = False) -> None:
        self.search = Search("planning", deliver, synchronous=synchronous)

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

        def work(stop: threading.Event, progress: Callable[[PlanResult], None]) -> PlanResult:
            return plan(project, keep=keep, stop=stop.is_set, progress=progress)

        self.search.begin(work, on_progress, on_end, on_failure)

    def cancel(self) -> None:
        """Asks the running search to stop; it answers with the best it has."""
        self.search.cancel()

    def close(self) -> None:
        """Stops the search and waits for its thread to end."""
        self.search.close()
