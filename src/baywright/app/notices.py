"""What a session tells those who listen: frozen, in the past tense."""

from dataclasses import dataclass
from pathlib import Path

from baywright.app.proposal import Proposal
from baywright.model.cutting import CuttingPlan
from baywright.model.option import Option
from baywright.model.plan import PlanResult
from baywright.model.project import Project


@dataclass(frozen=True)
class DocumentChanged:
    """An edit, an undo or a redo put another document in the place of the one before."""

    before: Project
    after: Project
    title: str


@dataclass(frozen=True)
class DocumentReplaced:
    """Another document was opened or begun; nothing of the one before is left."""

    after: Project


@dataclass(frozen=True)
class FileStateChanged:
    """The file, its name or whether it holds the present document changed."""

    path: Path | None
    is_modified: bool


@dataclass(frozen=True)
class PlanningStarted:
    """A plan was asked for."""


@dataclass(frozen=True)
class PlanningProgressed:
    """A first or a better plan is known; the search goes on."""

    result: PlanResult


@dataclass(frozen=True)
class PlanningEnded:
    """The search ended. `stale`: the document was edited meanwhile, and the answer was dropped."""

    result: PlanResult
    stale: bool


@dataclass(frozen=True)
class ArrangementProved:
    """The arrangement that came with the document turned out to be what the planner would answer."""

    result: PlanResult


@dataclass(frozen=True)
class PlanningFailed:
    """The search broke off on a defect; the document is untouched."""

    message: str


@dataclass(frozen=True)
class ReplanWanted:
    """An edit asks for planning along with it (`baywright.app.live`)."""


@dataclass(frozen=True)
class ReplanStarted:
    """A search for the newest edit began."""


@dataclass(frozen=True)
class ReplanEnded:
    """Planning along with an edit ended; what it found stands in the document already."""

    result: PlanResult | None
    """The planner's answer; None where it was given up."""
    moved: tuple[str, ...] = ()
    """Ids of the boxes that stand elsewhere now."""
    placed: tuple[str, ...] = ()
    """Ids of the boxes that have a drawer now and had none."""
    by_hand: tuple[str, ...] = ()
    """Labels of boxes put somewhere or taken out by hand, where only that stands against a plan."""
    is_unsettled: bool = False
    """Whether a plan is known, but not whether it moves more boxes than it must, so that it was not taken in."""


@dataclass(frozen=True)
class OptionsStarted:
    """A search for options began (`baywright.app.options`)."""


@dataclass(frozen=True)
class OptionsProgressed:
    """Another option is known, or one has a better plan; the search goes on."""

    options: tuple[Option, ...]


@dataclass(frozen=True)
class OptionsFound:
    """The search for options ended. `is_complete`: it came to its end, what is not among them is no option."""

    options: tuple[Option, ...]
    is_complete: bool


@dataclass(frozen=True)
class OptionsDropped:
    """An edit asks for something else than the options were found for; they are forgotten."""


@dataclass(frozen=True)
class OptionsFailed:
    """The search for options broke off on a defect; the document is untouched."""

    message: str


@dataclass(frozen=True)
class ProposalMade:
    """A re-plan is on offer, or what is left of one after a part was accepted (`baywright.app.review`)."""

    proposal: Proposal


@dataclass(frozen=True)
class ProposalEnded:
    """The re-plan is no longer on offer: accepted to the end, rejected, or made void by an edit."""

    accepted: bool


@dataclass(frozen=True)
class CuttingStarted:
    """How the parts are cut is being sought (`baywright.app.cutting`); what was known of it no longer holds."""


@dataclass(frozen=True)
class CuttingProgressed:
    """First or better layouts are known; the search goes on."""

    plan: CuttingPlan


@dataclass(frozen=True)
class CuttingEnded:
    """The search ended."""

    plan: CuttingPlan | None
    """None where it was stopped before there was a plan; else whether it came to its end stands in it."""


@dataclass(frozen=True)
class CuttingFailed:
    """The search broke off on a defect; the document is untouched."""

    message: str


Notice = (
    DocumentChanged
    | DocumentReplaced
    | FileStateChanged
    | PlanningStarted
    | PlanningProgressed
    | PlanningEnded
    | ArrangementProved
    | PlanningFailed
    | ReplanWanted
    | ReplanStarted
    | ReplanEnded
    | OptionsStarted
    | OptionsProgressed
    | OptionsFound
    | OptionsDropped
    | OptionsFailed
    | ProposalMade
    | ProposalEnded
    | CuttingStarted
    | CuttingProgressed
    | CuttingEnded
    | CuttingFailed
)
