"""One open document: edits with undo and redo, everything derived from it, planning, its file, and who listens.

Laws: every change goes through `do`; everything derived belongs to exactly the present document; a refused edit and
a failed file leave all as it was; `is_modified` turns false only after the file is safely written.
"""

from collections.abc import Callable
from pathlib import Path

from baywright.app import files
from baywright.app.commands import Command, made
from baywright.app.cutting import Cutting
from baywright.app.derived import Derived
from baywright.app.edits.arrangement import PLAN, REPLAN, ApplyPlan
from baywright.app.edits.shape import ChooseOption
from baywright.app.edits.title import title_of
from baywright.app.history import History
from baywright.app.listeners import Listeners
from baywright.app.live import LivePlanning
from baywright.app.notices import (
    ArrangementProved,
    DocumentChanged,
    DocumentReplaced,
    FileStateChanged,
    PlanningEnded,
    PlanningFailed,
    PlanningProgressed,
    PlanningStarted,
)
from baywright.app.options import Options
from baywright.app.planning import PlanningDesk
from baywright.app.proposal import Proposal
from baywright.app.review import Review
from baywright.app.search import Deliver
from baywright.app.validity import Answers
from baywright.model.arrangement import Arrangement
from baywright.model.destination import Destination
from baywright.model.difference import Difference
from baywright.model.making import Manufacture
from baywright.model.option import Option
from baywright.model.plan import ArrangementReport, Conflict, PlanResult, PlanStatus
from baywright.model.project import Project
from baywright.planner import destinations, place_conflicts
from baywright.workings import Workings


class Session(Listeners):
    """The document that a person works on."""

    def __init__(
        self,
        project: Project | None = None,
        path: Path | None = None,
        *,
        deliver: Deliver | None = None,
        synchronous: bool = False,
        recent: "files.RecentFiles | None" = None,
    ) -> None:
        super().__init__()
        self.project = project or Project()
        self.path = path
        self._saved: Project | None = self.project
        self._derived = Derived(self.project)
        self._history = History()
        self._answers = Answers()
        self._request = 0
        self.is_planning = False
        self._recent = recent
        hand_back, at_once = deliver or (lambda call: call()), synchronous or deliver is None
        self._desk = PlanningDesk(hand_back, at_once)
        self.options = Options(self, hand_back, synchronous=at_once)
        self.cutting = Cutting(self, hand_back, synchronous=at_once)
        self.live = LivePlanning(self)
        self.review = Review(self)
        self.proposes = False
        """Whether a re-plan is put on offer instead of being taken in."""

    @property
    def workings(self) -> Workings:
        """All dimensions of the present document."""
        return self._derived.workings

    @property
    def report(self) -> ArrangementReport:
        """What is wrong with the present arrangement, and how full it is."""
        return self._derived.report

    @property
    def manufacture(self) -> Manufacture | None:
        """Parts, hardware and schedule of the present arrangement; None while nothing is arranged."""
        return self._derived.manufacture

    @property
    def derived(self) -> Derived:
        """Everything that follows from the present document, each worked out when first asked for."""
        return self._derived

    @property
    def difference(self) -> Difference | None:
        """The work from the bays that stand as built to the present document; None where nothing is as built."""
        return self._derived.difference

    @property
    def plan(self) -> PlanResult | None:
        """The planner's newest answer while it still holds for the present document, else None."""
        return self._answers.to(self.project)

    @property
    def is_modified(self) -> bool:
        """Whether the present document differs from what the file holds."""
        return self._saved is not self.project and self._saved != self.project

    @property
    def title(self) -> str:
        """The document's name for a window title."""
        return self.path.stem if self.path else self.project.name

    def place_conflicts(self, box_id: str, bay: int, row: int) -> tuple[Conflict, ...]:
        """Why the box could not stand there; empty where it could."""
        return place_conflicts(self.project, box_id, bay, row)

    def destinations(self, box_id: str) -> tuple[Destination, ...]:
        """Every place of the run for a box, with what it would change of every goal, or why not."""
        return destinations(self.project, box_id)

    # Edits

    def do(self, command: Command) -> None:
        """Makes an edit; EditRefused leaves everything as it was. An edit that changes nothing is not recorded."""
        before, derived = self.project, self._derived
        self._commit(made(command, before), title_of(command, before))
        if self.project is not before:
            self.live.edited(before, lambda: derived.report)

    @property
    def can_undo(self) -> bool:
        """Whether there is an edit to undo."""
        return bool(self._history.undo)

    @property
    def can_redo(self) -> bool:
        """Whether there is an undone edit to make again."""
        return bool(self._history.redo)

    @property
    def undo_title(self) -> str:
        """What undo would undo; empty where there is nothing."""
        return self._history.undo[-1].title if self._history.undo else ""

    @property
    def redo_title(self) -> str:
        """What redo would make again; empty where there is nothing."""
        return self._history.redo[-1].title if self._history.redo else ""

    def undo(self) -> None:
        """Goes back to the document before the newest edit."""
        self.live.stop()
        if step := self._history.back(self.project):
            self._swap(step.project, f"Undo {step.title}")

    def redo(self) -> None:
        """Makes the newest undone edit again."""
        self.live.stop()
        if step := self._history.forward(self.project):
            self._swap(step.project, f"Redo {step.title}")

    def _commit(self, after: Project, title: str) -> None:
        if after != self.project:
            self._history.record(self.project, title)
            self._swap(after, title)

    def _swap(self, after: Project, title: str) -> None:
        before, was_modified = self.project, self.is_modified
        self.project = after
        self._derived = Derived(after)
        self.options.document_changed()
        self.tell(DocumentChanged(before, after, title))
        self.review.document_changed()
        self.cutting.document_changed()
        if was_modified != self.is_modified:
            self.tell(FileStateChanged(self.path, self.is_modified))

    # Planning

    def request_plan(self) -> None:
        """Plans afresh in the background; a plan that is found is taken in as one edit that can be undone."""
        self._plan_in_background(keep=False)

    def request_replan(self) -> None:
        """Plans anew with the fewest changes of how the run stands; with `proposes` what is found is only offered."""
        self._plan_in_background(keep=True)

    def _plan_in_background(self, *, keep: bool) -> None:
        self.live.stop()
        self.review.end()
        self._request += 1
        request, project = self._request, self.project
        self.is_planning = True
        self.tell(PlanningStarted())
        self._desk.request(
            project,
            lambda result: self._on_planning_progressed(request, result),
            lambda result: self._on_planning_ended(request, project, result, keep=keep),
            lambda error: self._on_planning_failed(request, error),
            keep=keep,
        )

    def request_proof(self) -> None:
        """Finds out in the background whether the present arrangement is what the planner would answer.

        If it is, the answer is kept with its proof and listeners are told; the document never changes by this.
        """
        self._request += 1
        request, project = self._request, self.project

        def on_end(result: PlanResult) -> None:
            if request == self._request and self.project is project and result.arrangement == project.arrangement:
                self._answers.keep(result, project)
                self.tell(ArrangementProved(result))

        self._desk.request(
            project, lambda _better: None, on_end, lambda error: self._on_planning_failed(request, error)
        )

    def cancel_plan(self) -> None:
        """Stops the search; the best plan so far is taken in, if there is one."""
        self._desk.cancel()

    def close(self) -> None:
        """Ends background work; the session must not be used afterwards."""
        self._request += 1
        self._desk.close()
        self.options.close()
        self.cutting.close()

    def _on_planning_progressed(self, request: int, result: PlanResult) -> None:
        if request == self._request and self.is_planning:
            self.tell(PlanningProgressed(result))

    def _on_planning_ended(self, request: int, project: Project, result: PlanResult, *, keep: bool) -> None:
        if request != self._request:
            return
        self.is_planning = False
        stale = project != self.project
        if not stale and not (keep and self.proposes and self.review.offer(result)):
            self.take_in(result, REPLAN if keep else PLAN)
        self.tell(PlanningEnded(result, stale))

    def take_in(self, result: PlanResult, title: str) -> None:
        """Takes the planner's answer to the present document in, as one edit of that title where it is a plan."""
        if result.arrangement is None or result.status is PlanStatus.IMPOSSIBLE:
            self._answers.keep(result, self.project)
            return
        command = ApplyPlan(result.arrangement)
        planned = command.apply(self.project)
        if planned == self.project:
            planned = self.project
        # Before the document changes, so that those who are told of the change find the answer that belongs to it.
        self._answers.keep(result, planned)
        self.live.free_hands()
        self._commit(planned, title)

    # What is on offer

    @property
    def proposal(self) -> Proposal | None:
        """The re-plan that is on offer; None while there is none."""
        return self.review.proposal

    def accept_proposal(self, box_ids: tuple[str, ...] | None = None) -> tuple[str, ...]:
        """Takes the re-plan in as one edit: whole, or those boxes and what must move for them. The ids of what moved;
        EditRefused where those alone cannot move.
        """
        return self.review.accept(box_ids)

    def reject_proposal(self) -> None:
        """Takes the re-plan off the table; the document stays as it is."""
        self.review.end()

    def take_over(self, command: Command) -> None:
        """Makes an edit that comes from a plan, so that nothing is planned along with it."""
        self._commit(command.apply(self.project), command.title)

    def choose_option(self, option: Option) -> None:
        """Puts the run in the shape of an option, with its plan, as one edit; EditRefused where that cannot be."""
        self.do(ChooseOption(option))
        self.live.free_hands()

    def search(
        self, project: Project, on_better: Callable[[PlanResult], None], on_end: Callable[[PlanResult], None]
    ) -> None:
        """Plans a document in the background for live planning, which takes in the answer; a whole plan ends by it."""
        self._request += 1
        self.is_planning = False
        request = self._request
        self._desk.request(
            project,
            lambda result: on_better(result) if request == self._request else None,
            lambda result: on_end(result) if request == self._request else None,
            lambda error: self._on_planning_failed(request, error),
            keep=True,
        )

    def take_part(self, arrangement: Arrangement, answer: PlanResult | None, edits: int) -> None:
        """Takes an arrangement in as part of the newest `edits` edits, so that no undo step of its own is made."""
        command = ApplyPlan(arrangement)
        planned = command.apply(self.project)
        if planned == self.project:
            planned = self.project
        if answer is not None:
            self._answers.keep(answer, planned)
        if planned is not self.project:
            self._history.amend(edits - 1, command.apply)
            self._swap(planned, self.undo_title)

    def note_refusal(self, answer: PlanResult) -> None:
        """Keeps the planner's “impossible” as its answer to the present document."""
        self._answers.keep(answer, self.project)

    def _on_planning_failed(self, request: int, error: Exception) -> None:
        if request == self._request:
            self.is_planning = False
            self.live.stop()
            self.tell(PlanningFailed(f"Planning broke off on a defect of the program ({error}). Nothing was changed."))

    # The file

    @property
    def recent_files(self) -> tuple[Path, ...]:
        """Files that were opened or saved lately, newest first."""
        return self._recent.paths() if self._recent else ()

    def new_project(self, project: Project | None = None) -> None:
        """Begins a new document without a file."""
        self._replace(project or Project(), None)

    def open(self, path: Path) -> None:
        """Opens a project file; raises FileTrouble and stays as it was where it cannot be read.

        One that is gone is dropped from the list of recent files.
        """
        try:
            project = files.open_project(path)
        except files.FileTrouble:
            if self._recent and not path.exists():
                self._recent.forget(path)
                self.tell(FileStateChanged(self.path, self.is_modified))
            raise
        self._replace(project, path)
        self._remember(path)

    def save(self) -> None:
        """Writes the document to its file; raises FileTrouble where it cannot be written or has no file yet."""
        if self.path is None:
            raise files.FileTrouble("This project has no file yet; choose a name with “Save as”.")
        self.save_as(self.path)

    def save_as(self, path: Path) -> None:
        """Writes the document to a file, which becomes its own; raises FileTrouble where it cannot be written."""
        project = self.project
        files.save_project(path, project)
        self.path, self._saved = path, project
        self._remember(path)
        self.tell(FileStateChanged(self.path, self.is_modified))

    def export_workbook(self, path: Path) -> None:
        """Writes the ordering workbook; raises FileTrouble where it cannot be written."""
        files.export_workbook(path, self.project, self.plan, self.options.as_they_stand, self.cutting.plan)

    def write_text(self, path: Path, text: str) -> None:
        """Writes a text for others to read; raises FileTrouble where it cannot be written."""
        files.write_text(path, text)

    def _remember(self, path: Path) -> None:
        if self._recent:
            self._recent.remember(path)

    def _replace(self, project: Project, path: Path | None) -> None:
        self._request += 1
        self._desk.cancel()
        self.is_planning = False
        self.project, self.path, self._saved = project, path, project
        self._derived = Derived(project)
        self.options.forget()
        self.cutting.forget()
        self.live.stop()
        self.live.free_hands()
        self._history.clear()
        self._answers.forget()
        self.review.end()
        self.tell(DocumentReplaced(project))
        self.tell(FileStateChanged(self.path, self.is_modified))
