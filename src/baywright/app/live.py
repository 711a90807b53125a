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

from baywright.app.edits.repair import ApplyRepair
from baywright.app.notices import ReplanWanted
from baywright.app.replanning import Host, Replanning, place_of
from baywright.app.validity import is_same_task
from baywright.model.arrangement import Lock
from baywright.model.plan import ArrangementReport
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


class LivePlanning:
    """The part of a session that plans along with its edits."""

    def __init__(self, host: Host) -> None:
        self._host = host
        self._mode = LiveMode.MEND
        self._placed: dict[str, tuple[int, int]] = {}
        self._taken_out: set[str] = set()
        self._replanning = Replanning(host, self._held_labels)

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
        return self._replanning.is_wanted

    @property
    def is_busy(self) -> bool:
        """Whether a search is wanted or runs."""
        return self._replanning.is_busy

    # What the session tells

    def edited(self, before: Project, report_before: Callable[[], ArrangementReport]) -> None:
        """An edit was made: find out whether it makes the planner act. `report_before` tells what was wrong before."""
        after = self._host.project
        is_task = not is_same_task(before, after)
        if not is_task:
            self._learn_by_hand(before, after)
        moved = before.arrangement != after.arrangement
        if self._mode is not LiveMode.CHECK and self._makes_act(report_before, is_task=is_task, moved=moved):
            self._replanning.want()
            self._host.tell(ReplanWanted())
        elif self.is_busy and (is_task or moved):
            self.stop()
        elif self.is_busy:
            self._replanning.pass_over()

    def stop(self) -> None:
        """Give up what is wanted or searched for: the document was undone, or a whole plan is made."""
        self._replanning.stop()

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
        if (is_task and self._mode is LiveMode.BEST) or (self._replanning.is_open and (is_task or moved)):
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
        if self.is_wanted:
            self._replanning.begin(self._task())

    def apply_repair(self, repair: Repair) -> None:
        """Make the change that the planner offered and plan anew, as one undo step, whatever the mode.

        The repair was solved for the whole document, so nothing is kept where it is for having been put there by hand.
        Raises EditRefused where the document no longer has what it changes.
        """
        before = self._host.project
        self._host.do(ApplyRepair(repair))
        if self._host.project is not before:
            self.free_hands()
            self._replanning.want()
            self._replanning.begin(self._host.project, is_asked=True)

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

    def _held_labels(self) -> tuple[str, ...]:
        project = self._host.project
        places = project.arrangement.placements_by_box
        held = [key for key, place in self._placed.items() if key in places and place_of(places[key]) == place]
        return tuple(project.box(key).label for key in (*held, *self._taken_out) if key in project.boxes_by_id)
