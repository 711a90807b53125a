"""Cutting in the background: how the parts of the present document are cut, sought anew when an edit matters to it.

Whoever shows or needs the cutting asks for it once; from then on it follows the edits until the document is replaced.
An edit ends the search before it and begins another after a moment, so that typing does not start one for each letter.
Edits of names and notes leave plan and search alone; where another one turns out to leave parts, stock and rules alike,
the plan that is known comes back without a search.

Laws: a plan is told only while it belongs to the present document, and an answer to an older one is dropped; the
cutting never changes the document.
"""

import threading
from collections.abc import Callable
from typing import Protocol

from baywright.app.notices import CuttingEnded, CuttingFailed, CuttingProgressed, CuttingStarted, Notice
from baywright.app.search import Deliver, Search
from baywright.app.validity import is_same_task
from baywright.making import manufacture
from baywright.making.cutting.plan import cutting_plan
from baywright.making.cutting.task import CuttingTask, cutting_task
from baywright.model.cost import Cost
from baywright.model.cutting import CuttingPlan
from baywright.model.making import Manufacture
from baywright.model.project import Project

PAUSE_S = 0.15
"""How long a search that follows an edit waits for the next edit."""

_Answer = tuple[CuttingTask, CuttingPlan]
"""A plan and what it is the answer to."""


class Host(Protocol):
    """What the cutting needs of its session."""

    project: Project
    """The present document."""

    @property
    def manufacture(self) -> Manufacture | None:
        """Parts and hardware of the present document; None while nothing is arranged."""
        ...

    def tell(self, notice: Notice) -> None:
        """Tells listeners."""
        ...


class Cutting:
    """The part of a session that seeks how the parts are cut."""

    def __init__(self, host: Host, deliver: Deliver, *, synchronous: bool = False) -> None:
        self._host = host
        self._synchronous = synchronous
        self._search = Search("cutting", deliver, synchronous=synchronous)
        self._asked: Project | None = None
        """The document that plan and search are for."""
        self._known: _Answer | None = None
        """The newest whole answer and what it is the answer to."""
        self._plan: CuttingPlan | None = None
        self._cost: tuple[Project, CuttingPlan, Cost] | None = None
        self.is_followed = False
        """Whether the cutting follows the edits, because somebody asked for it."""
        self.is_searching = False

    @property
    def plan(self) -> CuttingPlan | None:
        """The best plan so far for the present document; None while none is known, or nobody asked."""
        return self._plan

    @property
    def cost(self) -> Cost | None:
        """What the run costs with that plan; None while there is none."""
        made, plan, project = self._host.manufacture, self._plan, self._host.project
        if plan is None or made is None:
            return None
        if self._cost is None or self._cost[0] is not project or self._cost[1] is not plan:
            from baywright.making.costing import cost

            self._cost = project, plan, cost(project, made, plan)
        return self._cost[2]

    def request(self) -> None:
        """Seeks how the present document's parts are cut, and does so again after every edit that matters to it."""
        self.is_followed = True
        self._begin(pause_s=0.0)

    def cancel(self) -> None:
        """Asks the running search to stop; the best plan so far is told."""
        self._search.cancel()

    def document_changed(self) -> None:
        """Seeks anew where the cutting is followed; what was known of the document before is no longer told."""
        if self.is_followed and not (self._asked and _has_same_parts(self._asked, self._host.project)):
            self._begin(pause_s=PAUSE_S)

    def forget(self) -> None:
        """Stops and forgets everything: another document was opened."""
        self._search.forget()
        self._asked = self._known = self._plan = self._cost = None
        self.is_followed = self.is_searching = False

    def close(self) -> None:
        """Stops the search and waits for its thread to end."""
        self.forget()
        self._search.close()

    def _begin(self, *, pause_s: float) -> None:
        project, known = self._host.project, self._known
        self._search.forget()
        self._asked, self._plan, self.is_searching = project, None, True
        self._host.tell(CuttingStarted())

        def work(stop: threading.Event, progress: Callable[[CuttingPlan], None]) -> _Answer | None:
            if not self._synchronous and stop.wait(pause_s):
                return None  # stopped by hand before it began: there is nothing to tell
            made = manufacture(project)
            task = cutting_task(project, made.parts)
            if known is not None and known[0] == task:
                return known
            return task, cutting_plan(project, made, stop=stop.is_set, progress=progress)

        self._search.begin(work, self._on_progress, self._on_end, self._on_failure)

    def _on_progress(self, so_far: CuttingPlan) -> None:
        self._plan = so_far
        self._host.tell(CuttingProgressed(so_far))

    def _on_end(self, answer: _Answer | None) -> None:
        self.is_searching = False
        if answer is None:
            self._asked = None
            self._host.tell(CuttingEnded(None))
            return
        _, self._plan = answer
        if self._plan.is_finished:
            self._known = answer
        self._host.tell(CuttingEnded(self._plan))

    def _on_failure(self, error: Exception) -> None:
        self._plan, self.is_searching, self.is_followed = None, False, False
        message = f"Planning the cutting broke off on a defect of the program ({error}). Nothing was changed."
        self._host.tell(CuttingFailed(message))


def _has_same_parts(asked: Project, present: Project) -> bool:
    """Whether it is plain, without working out any part, that two documents have the same parts and stock."""
    return asked is present or (
        asked.arrangement == present.arrangement
        and asked.stock == present.stock
        and asked.unit == present.unit
        and asked.safety.board_material == present.safety.board_material
        and is_same_task(asked, present)
    )
