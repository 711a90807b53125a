"""Planning that follows the edits: what an edit leaves without a place or in conflict is planned anew, as part of it.

Which edits make the planner act is the owner's choice (`LiveMode`). The usual one, MEND, is what owners can expect of a
wall that they have drilled or drawn: they type a new box, and it has a drawer; they make a box higher, and the drawers
over it make room; whatever stands well is left standing, even where a better plan exists, because a change of a mass
must not shuffle the wall. BEST asks for the best plan after every edit that the planner weighs; CHECK only tells what
is wrong.

Laws: nothing is planned before the owner has planned once (the first plan is a decision). What was put somewhere by
hand since the last whole plan stays there, what was taken out by hand stays out; the others go round it. The answer
becomes part of the edit's own undo step. A newer edit ends the search and begins anew; where no plan is possible,
nothing is changed. Undo and redo bring back documents as they were, and never plan. Time is the caller's: an edit only
says that a plan is wanted, `act` begins the search.
"""

from collections.abc import Callable
from enum import StrEnum
from typing import Protocol

from baywright.app.edits.repair import ApplyRepair
from baywright.app.notices import Notice, ReplanEnded, ReplanStarted, ReplanWanted
from baywright.app.validity import is_same_task
from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.plan import ArrangementReport, PlanResult, PlanStatus
from baywright.model.project import Project
from baywright.model.repair import Repair


class LiveMode(StrEnum):
    """Which edits make the planner act."""

    CHECK = "check"
    """None: what is wrong is told, nothing is moved."""
    MEND = "mend"
    """Those that leave a box without a drawer, or something in conflict."""
    BEST = "best"
    """All that the planner weighs."""


class Host(Protocol):
    """What live planning needs of its session."""

    project: Project
    """The present document."""
    is_planning: bool
    """Whether a whole plan is being made, which live planning leaves alone."""

    @property
    def report(self) -> ArrangementReport:
        """What is wrong with the present arrangement."""
        ...

    def do(self, command: ApplyRepair) -> None:
        """Makes an edit."""
        ...

    def search(self, project: Project, on_end: Callable[[PlanResult], None]) -> None:
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


class LivePlanning:
    """The part of a session that plans along with its edits."""

    def __init__(self, host: Host) -> None:
        self._host = host
        self._mode = LiveMode.MEND
        self._placed: dict[str, tuple[int, int]] = {}
        self._taken_out: set[str] = set()
        self._edits = 0
        """Edits since the one that the wanted or running search is for, itself included; 0 while there is none."""
        self._is_wanted = False

    @property
    def mode(self) -> LiveMode:
        """Which edits make the planner act."""
        return self._mode

    @mode.setter
    def mode(self, mode: LiveMode) -> None:
        self._mode = mode
        if mode is LiveMode.CHECK:
            self.stop()

    @property
    def is_wanted(self) -> bool:
        """Whether an edit asks for a search that `act` has not begun yet."""
        return self._is_wanted

    @property
    def is_busy(self) -> bool:
        """Whether a search is wanted or runs."""
        return self._edits > 0

    # What the session tells

    def edited(self, before: Project, report_before: Callable[[], ArrangementReport]) -> None:
        """An edit was made: find out whether it makes the planner act. `report_before` tells what was wrong before."""
        after = self._host.project
        is_task = not is_same_task(before, after)
        if not is_task:
            self._learn_by_hand(before, after)
        moved = before.arrangement != after.arrangement
        if self._mode is not LiveMode.CHECK and self._makes_act(report_before, is_task=is_task, moved=moved):
            if self.is_busy and not self._is_wanted:
                self._host.cancel_plan()
            self._is_wanted, self._edits = True, 1
            self._host.tell(ReplanWanted())
        elif self.is_busy and (is_task or moved):
            self.stop()
        elif self.is_busy:
            self._edits += 1  # a name, a note: the search goes on, and its answer belongs under both edits

    def stop(self) -> None:
        """Give up what is wanted or searched for: the document was undone, or a whole plan is made."""
        if self.is_busy:
            self._host.cancel_plan()
            self._end(None)

    def free_hands(self) -> None:
        """From now on nothing counts as put somewhere by hand: the whole was planned, or another document opened."""
        self._placed, self._taken_out = {}, set()

    def _learn_by_hand(self, before: Project, after: Project) -> None:
        were, are = before.arrangement.placements_by_box, after.arrangement.placements_by_box
        if before.arrangement.bay_count != after.arrangement.bay_count:
            self.free_hands()
            return
        for box_id, place in are.items():
            old = were.get(box_id)
            if old is not place and (old is None or (old.bay, old.row) != (place.bay, place.row)):
                self._placed[box_id] = (place.bay, place.row)
        self._taken_out = (self._taken_out | (were.keys() - are.keys())) - are.keys()

    def _makes_act(self, report_before: Callable[[], ArrangementReport], *, is_task: bool, moved: bool) -> bool:
        project = self._host.project
        if self._host.is_planning or not project.arrangement.bay_count:
            return False
        if (is_task and self._mode is LiveMode.BEST) or (self.is_busy and (is_task or moved)):
            return True
        trouble = self._trouble(self._host.report)
        return bool(trouble if is_task else trouble and trouble - self._trouble(report_before()))

    def _trouble(self, report: ArrangementReport) -> set[object]:
        """What is wrong, so that it can be told whether an edit brought something new."""
        wanting = {box.id for box in self._host.project.boxes_to_place} - self._taken_out
        conflicts = {(conflict.kind, conflict.message, conflict.box_ids) for conflict in report.conflicts}
        return {*conflicts, *(wanting & set(report.unplaced))}

    # Searching

    def act(self) -> None:
        """Begin the search that the newest edit asks for, if one does."""
        if self._is_wanted:
            self._search(self._task(), self._on_answer)

    def apply_repair(self, repair: Repair) -> None:
        """Make the change that the planner offered and plan anew, as one undo step, whatever the mode.

        The repair was solved for the whole document, so nothing is kept where it is for having been put there by hand.
        Raises EditRefused where the document no longer has what it changes.
        """
        before = self._host.project
        self._host.do(ApplyRepair(repair))
        if self._host.project is not before:
            self.free_hands()
            self.replan()

    def replan(self) -> None:
        """Plan anew what is not locked or put by hand, as part of the newest edit."""
        self._edits = 1
        self._search(self._task(), self._on_answer)

    def _search(self, task: Project, on_end: Callable[[Project, Project, PlanResult], None]) -> None:
        self._is_wanted = False
        project = self._host.project
        self._host.tell(ReplanStarted())
        self._host.search(task, lambda result: on_end(project, task, result))

    def _task(self) -> Project:
        """What the planner is asked: the document, with what was done by hand fixed and what was taken out left out."""
        project = self._host.project
        out = {box_id for box_id in self._taken_out if box_id in project.boxes_by_id}
        placements = project.arrangement.placements
        held = tuple(
            p.replace(lock=Lock.DRAWER) if self._placed.get(p.box_id) == (p.bay, p.row) else p for p in placements
        )
        if not out and held == placements:
            return project
        boxes = tuple(box for box in project.boxes if box.id not in out)
        return project.replace(boxes=boxes, arrangement=project.arrangement.replace(placements=held))

    def _on_answer(self, project: Project, task: Project, result: PlanResult) -> None:
        if not self._is_still_meant(project):
            return
        if result.arrangement is not None and result.status is not PlanStatus.IMPOSSIBLE:
            self._take_in(result, is_whole=task is project)
        elif result.status is not PlanStatus.IMPOSSIBLE:
            self._end(result)
        elif task is project:
            self._host.note_refusal(result)
            self._end(result)
        else:  # is it the document that is impossible, or only what was done by hand?
            self._search(self._host.project, self._on_second_answer)

    def _on_second_answer(self, project: Project, _task: Project, result: PlanResult) -> None:
        if not self._is_still_meant(project):
            return
        if result.status is PlanStatus.IMPOSSIBLE:
            self._host.note_refusal(result)
            self._end(result)
        else:
            labels = self._held_labels() if result.arrangement is not None else ()
            self._end(result, by_hand=labels)

    def _take_in(self, result: PlanResult, *, is_whole: bool) -> None:
        assert result.arrangement is not None
        arrangement, edits = self._unheld(result.arrangement), self._edits
        before = self._host.project.arrangement.placements_by_box
        after = arrangement.placements_by_box
        moved = [key for key, p in after.items() if key in before and _place(before[key]) != _place(p)]
        new = [key for key in after if key not in before]
        self._is_wanted, self._edits = False, 0
        self._host.take_part(arrangement, result if is_whole else None, edits)
        self._host.tell(ReplanEnded(result, moved=tuple(moved), placed=tuple(new)))

    def _unheld(self, found: Arrangement) -> Arrangement:
        """The arrangement found, with the locks that the document has."""
        own = self._host.project.arrangement.placements_by_box
        locks = {key: own[key].lock if key in own else Lock.NONE for key in found.placements_by_box}
        return found.replace(
            placements=tuple(
                p if p.lock is locks[p.box_id] else p.replace(lock=locks[p.box_id]) for p in found.placements
            )
        )

    def _is_still_meant(self, planned: Project) -> bool:
        present = self._host.project
        if not self.is_busy or self._is_wanted:
            return False
        return planned is present or (planned.arrangement == present.arrangement and is_same_task(planned, present))

    def _held_labels(self) -> tuple[str, ...]:
        project = self._host.project
        places = project.arrangement.placements_by_box
        held = [key for key, place in self._placed.items() if key in places and _place(places[key]) == place]
        return tuple(project.box(key).label for key in (*held, *self._taken_out) if key in project.boxes_by_id)

    def _end(self, result: PlanResult | None, by_hand: tuple[str, ...] = ()) -> None:
        self._is_wanted, self._edits = False, 0
        self._host.tell(ReplanEnded(result, by_hand=by_hand))


def _place(placement: Placement) -> tuple[int, int]:
    return placement.bay, placement.row
