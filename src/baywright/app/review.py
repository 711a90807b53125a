"""Looking at a re-plan before it is taken in: whole, box by box, or not at all.

Laws: a proposal belongs to the document it was made for; it ends as soon as that asks for something else or its boxes
stand elsewhere. What is accepted is one edit. After a part was accepted, the rest stays on offer.
"""

from collections.abc import Callable
from typing import Protocol

from baywright.app.commands import Command
from baywright.app.edits.arrangement import REPLAN, ApplyPlan
from baywright.app.edits.proposal import AcceptMoves
from baywright.app.notices import Notice, ProposalEnded, ProposalMade
from baywright.app.proposal import Proposal
from baywright.app.validity import is_same_task
from baywright.model.plan import PlanResult
from baywright.model.project import Project


class Host(Protocol):
    """What a review needs of its session."""

    project: Project
    """The present document."""

    def take_in(self, result: PlanResult, title: str) -> None:
        """Takes the planner's answer in as one edit of that title."""
        ...

    def take_over(self, command: Command) -> None:
        """Makes an edit without planning along with it."""
        ...

    def tell(self, notice: Notice) -> None:
        """Tells listeners."""
        ...


class Review:
    """The part of a session that holds a proposal."""

    def __init__(self, host: Host) -> None:
        self._host = host
        self._is_accepting = False
        self.proposal: Proposal | None = None
        """What is on offer; None while nothing is."""

    def offer(self, result: PlanResult) -> bool:
        """Puts an answer for the present document on offer; False where it would change nothing, or is no plan."""
        self.end()
        project = self._host.project
        if result.arrangement is None:
            return False
        return self._propose(project, ApplyPlan(result.arrangement).apply(project), result)

    def _propose(self, before: Project, after: Project, result: PlanResult) -> bool:
        if before.arrangement == after.arrangement:
            return False
        self.proposal = Proposal(before, after, result)
        self._host.tell(ProposalMade(self.proposal))
        return True

    def accept(self, box_ids: tuple[str, ...] | None = None) -> tuple[str, ...]:
        """Takes the proposal in: whole, or only those boxes and what must move for them; the ids of what moved.

        Raises EditRefused, and changes nothing, where that alone breaks a limit.
        """
        proposal = self.proposal
        if proposal is None:
            return ()
        offered = {move.box_id for move in proposal.moves}
        if box_ids is None or offered <= set(box_ids):
            self._accept(lambda: self._host.take_in(proposal.result, REPLAN))
            self.end(accepted=True)
            return tuple(move.box_id for move in proposal.moves)
        command = AcceptMoves(proposal.after.arrangement, box_ids)
        _, moved = command.taken(proposal.before)
        self._accept(lambda: self._host.take_over(command))
        after = ApplyPlan(proposal.after.arrangement).apply(self._host.project)
        if not self._propose(self._host.project, after, proposal.result):
            self.end(accepted=True)
        return moved

    def _accept(self, act: Callable[[], None]) -> None:
        self._is_accepting = True
        try:
            act()
        finally:
            self._is_accepting = False

    def end(self, *, accepted: bool = False) -> None:
        """Takes the proposal off the table; the document stays as it is."""
        if self.proposal is not None:
            self.proposal = None
            self._host.tell(ProposalEnded(accepted))

    def document_changed(self) -> None:
        """The document is another one now: the proposal goes, unless it was only a name or a note that changed."""
        proposal, present = self.proposal, self._host.project
        if proposal is None or self._is_accepting:
            return
        if proposal.before.arrangement == present.arrangement and is_same_task(proposal.before, present):
            after = ApplyPlan(proposal.after.arrangement).apply(present)
            self.proposal = Proposal(present, after, proposal.result)
            self._host.tell(ProposalMade(self.proposal))
        else:
            self.end()
