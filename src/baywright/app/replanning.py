"""One search for the newest edit, and how its answers come into the document.

Laws: an answer is taken in as part of the edit's own undo step, and only while the document is the one that was asked
about (names and notes apart). What moves fewest boxes is taken in as soon as that is proved; a better place for them
that is found later follows, still in the same step. A plan of which nobody knows whether it moves far more boxes than
it must is not taken in unless it was asked for. Impossible: nothing is changed, the reasons are kept.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from baywright.app.commands import Command
from baywright.app.notices import Notice, ReplanEnded, ReplanStarted
from baywright.app.validity import is_same_task
from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.goals import Goal
from baywright.model.plan import ArrangementReport, PlanResult, PlanStatus
from baywright.model.project import Project


class Host(Protocol):
    """What planning along with edits needs of its session."""

    project: Project
    """The present document."""
    is_planning: bool
    """Whether a whole plan is being made, which live planning leaves alone."""

    @property
    def report(self) -> ArrangementReport:
        """What is wrong with the present arrangement."""
        ...

    def do(self, command: Command) -> None:
        """Makes an edit."""
        ...

    def search(
        self, project: Project, on_better: Callable[[PlanResult], None], on_end: Callable[[PlanResult], None]
    ) -> None:
        """Re-plans a document in the background; an answer that a newer search outdates is dropped."""
        ...

    def cancel_plan(self) -> None:
        """Stops the search that runs."""
        ...

    def take_part(self, arrangement: Arrangement, answer: PlanResult | None, edits: int) -> None:
        """Takes an arrangement in as part of the newest edits; `answer` where it answers the document itself."""
        ...

    def note_refusal(self, answer: PlanResult) -> None:
        """Keeps the planner's “impossible” as the answer to the present document."""
        ...

    def tell(self, notice: Notice) -> None:
        """Tells listeners."""
        ...


@dataclass
class _Search:
    """A search that runs."""

    start: Project
    """The document that it is for."""
    task: Project
    """What the planner was asked; the document itself where nothing is fixed by hand."""
    is_asked: bool
    """Whether a person asked for the plan, so that it is taken in whatever it moves."""
    present: Project
    """The document since: with a plan in it, once one was taken in."""


class Replanning:
    """Searches on behalf of edits. `by_hand` names the boxes that stand somewhere, or nowhere, by hand."""

    def __init__(self, host: Host, by_hand: Callable[[], tuple[str, ...]]) -> None:
        self._host, self._by_hand = host, by_hand
        self._edits = 0
        """Edits since the one that the search is for, itself included; 0 while there is none."""
        self._search: _Search | None = None

    @property
    def is_wanted(self) -> bool:
        """Whether a search is wanted that has not begun."""
        return self._edits > 0 and self._search is None

    @property
    def is_busy(self) -> bool:
        """Whether a search is wanted or runs."""
        return self._edits > 0

    @property
    def is_open(self) -> bool:
        """Whether a search is wanted or runs that has put no plan into the document yet."""
        return self.is_busy and (self._search is None or self._search.present is self._search.start)

    def want(self) -> None:
        """A search is wanted for the newest edit; one that runs ends."""
        if self._search is not None:
            self._host.cancel_plan()
        self._search, self._edits = None, 1

    def pass_over(self) -> None:
        """An edit was made that means nothing to the planner: the search goes on, its answer belongs under both."""
        self._edits += 1

    def begin(self, task: Project, *, is_asked: bool = False) -> None:
        """Search for `task`, which is the present document or that with some things fixed."""
        self._edits = max(1, self._edits)
        project = self._host.project
        search = self._search = _Search(project, task, is_asked, project)
        self._host.tell(ReplanStarted())
        self._host.search(
            task, lambda result: self._on_better(search, result), lambda result: self._on_end(search, result)
        )

    def stop(self) -> None:
        """Give up what is wanted or searched for."""
        if self.is_busy:
            self._host.cancel_plan()
            self._end(None)

    # Answers

    def _on_better(self, search: _Search, result: PlanResult) -> None:
        if self._is_meant(search) and search.present is search.start and _moves_are_proved(result):
            self._take_in(search, result, None)
            search.present = self._host.project

    def _on_end(self, search: _Search, result: PlanResult) -> None:
        if not self._is_meant(search):
            return
        if result.status is PlanStatus.IMPOSSIBLE:
            self._on_impossible(search, result)
        elif result.arrangement is not None and (search.is_asked or _moves_are_proved(result)):
            answer = result if search.task is search.start else None
            self._search, edits = None, self._edits
            self._edits = 0
            self._take_in(search, result, answer, edits)
            self._tell_end(search, result)
        elif search.present is not search.start:
            self._search, self._edits = None, 0
            self._tell_end(search, result)
        else:
            self._end(result, is_unsettled=result.arrangement is not None)

    def _on_impossible(self, search: _Search, result: PlanResult) -> None:
        if search.task is search.start:
            self._host.note_refusal(result)
            self._end(result)
            return
        # Is it the document that is impossible, or only what was done by hand?
        asked = self._search = _Search(search.present, search.present, search.is_asked, search.present)
        self._host.search(asked.task, lambda _better: None, lambda second: self._on_second_end(asked, second))

    def _on_second_end(self, search: _Search, result: PlanResult) -> None:
        if not self._is_meant(search):
            return
        if result.status is PlanStatus.IMPOSSIBLE:
            self._host.note_refusal(result)
            self._end(result)
        else:
            self._end(result, by_hand=self._by_hand() if result.arrangement is not None else ())

    def _is_meant(self, search: _Search) -> bool:
        """Whether the document is still the one asked about, but for names and notes."""
        if self._search is not search:
            return False
        present, asked = self._host.project, search.present
        return asked is present or (asked.arrangement == present.arrangement and is_same_task(asked, present))

    def _take_in(self, search: _Search, result: PlanResult, answer: PlanResult | None, edits: int = 0) -> None:
        assert result.arrangement is not None
        found = with_own_locks(result.arrangement, search.start.arrangement)
        self._host.take_part(found, answer, edits or self._edits)

    def _tell_end(self, search: _Search, result: PlanResult) -> None:
        before = search.start.arrangement.placements_by_box
        after = self._host.project.arrangement.placements_by_box
        moved = tuple(key for key, p in after.items() if key in before and place_of(before[key]) != place_of(p))
        placed = tuple(key for key in after if key not in before)
        self._host.tell(ReplanEnded(result, moved=moved, placed=placed))

    def _end(self, result: PlanResult | None, *, by_hand: tuple[str, ...] = (), is_unsettled: bool = False) -> None:
        self._search, self._edits = None, 0
        self._host.tell(ReplanEnded(result, by_hand=by_hand, is_unsettled=is_unsettled))


def place_of(placement: Placement) -> tuple[int, int]:
    """Bay and row."""
    return placement.bay, placement.row


def with_own_locks(found: Arrangement, present: Arrangement) -> Arrangement:
    """An arrangement found for a task with more locks, with those that the document has."""
    own = present.placements_by_box
    locks = {key: own[key].lock if key in own else Lock.NONE for key in found.placements_by_box}
    placements = (p if p.lock is locks[p.box_id] else p.replace(lock=locks[p.box_id]) for p in found.placements)
    return found.replace(placements=tuple(placements))


def _moves_are_proved(result: PlanResult) -> bool:
    """Whether no plan as good in bays and rows moves fewer boxes; where moves are no goal, there is none to move."""
    if result.arrangement is None or not result.goals:
        return False
    return all(goal.is_proved for goal in result.goals if goal.goal is Goal.MOVES)
