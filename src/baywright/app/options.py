"""Looking for options in the background: the shapes that a builder can choose from, for the document as it is.

Laws: one search at a time; what was found belongs to the document it was found for and is dropped as soon as that asks
for something else. Taking over an option only puts the run in another shape: the others stay on offer. The options
never change the document by themselves.
"""

import threading
from collections.abc import Callable
from typing import Protocol

from baywright.app.derived import Derived
from baywright.app.edits.shape import ChooseOption
from baywright.app.notices import (
    Notice,
    OptionsDropped,
    OptionsFailed,
    OptionsFound,
    OptionsProgressed,
    OptionsStarted,
)
from baywright.app.purchases import Purchases
from baywright.app.search import Deliver, Search
from baywright.app.validity import is_same_task
from baywright.model.arrangement import Lock
from baywright.model.construction import Top, Uprights
from baywright.model.option import Option
from baywright.model.project import Project
from baywright.planner import options

MOST_RECKONED_BOXES = 300
"""With more boxes than this it would take too long to lay out the parts of every option."""


class Host(Protocol):
    """What the options need of their session."""

    project: Project
    """The present document."""

    def tell(self, notice: Notice) -> None:
        """Tells listeners."""
        ...


class Options:
    """The part of a session that looks for options."""

    def __init__(self, host: Host, deliver: Deliver, *, synchronous: bool = False) -> None:
        self._host = host
        self._search = Search("options", deliver, synchronous=synchronous)
        self._asked: Project | None = None
        self._found: tuple[Option, ...] = ()
        self.is_looking = False
        self.is_complete = False
        """Whether the last search came to its end, so that what is not among the options is no option."""

    @property
    def found(self) -> tuple[Option, ...] | None:
        """What was found so far for the present document; None where nothing was asked for it."""
        return None if self._asked is None else self._found

    @property
    def as_they_stand(self) -> tuple[Option, ...]:
        """All options of the present document, marked by the shape that the run has now; none while a search goes on
        or was stopped.
        """
        found = self._found if self._asked is not None and self.is_complete else ()
        return tuple(option.replace(is_present=self.is_present(option)) for option in found)

    def is_present(self, option: Option) -> bool:
        """Whether the run stands in the shape of an option now."""
        project = self._host.project
        shape, top = project.arrangement, project.construction.top
        return (
            option.bays == shape.bay_count
            and option.rows == shape.upright_rows
            and option.uprights is project.construction.uprights
            and option.overhang_front_mm == top.overhang_front_mm
            and option.overhang_side_mm == top.overhang_side_mm
        )

    def in_shape(self, option: Option) -> tuple[Project, Derived]:
        """The document as it would be in the shape of an option, and what follows from it."""
        project = ChooseOption(option).apply(self._host.project)
        return project, Derived(project)

    def request(self) -> None:
        """Looks for the options of the present document."""
        project = self._host.project
        self._search.forget()
        self._asked, self._found = project, ()
        self.is_looking, self.is_complete = True, False
        self._host.tell(OptionsStarted())

        def work(
            stop: threading.Event, progress: Callable[[tuple[Option, ...]], None]
        ) -> tuple[tuple[Option, ...], bool]:
            purchases = Purchases(stop.is_set) if len(project.boxes_to_place) <= MOST_RECKONED_BOXES else None
            return options(project, stop=stop.is_set, progress=progress, purchases=purchases), not stop.is_set()

        self._search.begin(work, self._on_progress, lambda answer: self._on_end(*answer), self._on_failure)

    def cancel(self) -> None:
        """Asks the running search to stop; what it has found so far is told."""
        self._search.cancel()

    def document_changed(self) -> None:
        """Drops what was found where the present document asks for something else."""
        if self._asked is not None and not _same_choice(self._asked, self._host.project):
            self.forget()
            self._host.tell(OptionsDropped())

    def forget(self) -> None:
        """Stops and forgets everything: another document was opened."""
        self._search.forget()
        self._asked, self._found = None, ()
        self.is_looking = self.is_complete = False

    def close(self) -> None:
        """Stops the search and waits for its thread to end."""
        self.forget()
        self._search.close()

    def _on_progress(self, so_far: tuple[Option, ...]) -> None:
        self._found = so_far
        self._host.tell(OptionsProgressed(so_far))

    def _on_end(self, found: tuple[Option, ...], is_complete: bool) -> None:
        self._found = found
        self.is_looking, self.is_complete = False, is_complete
        self._host.tell(OptionsFound(found, is_complete))

    def _on_failure(self, error: Exception) -> None:
        self.forget()
        message = f"Looking for options broke off on a defect of the program ({error}). Nothing was changed."
        self._host.tell(OptionsFailed(message))


def _same_choice(asked: Project, present: Project) -> bool:
    """Whether two documents have the same options: all but the shape, what is locked, and prices, is alike."""
    return asked is present or (
        is_same_task(_unshaped(asked), _unshaped(present))
        and _locked(asked) == _locked(present)
        and (asked.stock, asked.hardware, asked.pricing) == (present.stock, present.hardware, present.pricing)
    )


def _unshaped(project: Project) -> Project:
    """The document without what an option sets."""
    construction = project.construction
    plain = Top()
    top = construction.top.replace(overhang_front_mm=plain.overhang_front_mm, overhang_side_mm=plain.overhang_side_mm)
    return project.replace(
        construction=construction.replace(uprights=Uprights.SHARED, top=top),
        limits=project.limits.replace(bay_count=None, upright_rows=None),
    )


def _locked(project: Project) -> set[tuple[str, int, int | None]]:
    """What must stay: boxes locked in their bay, and with their row those locked in their drawer."""
    locked = (placement for placement in project.arrangement.placements if placement.lock is not Lock.NONE)
    return {(p.box_id, p.bay, p.row if p.lock is Lock.DRAWER else None) for p in locked}
