"""What a session tells those who listen: frozen, in the past tense."""

from dataclasses import dataclass
from pathlib import Path

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


Notice = (
    DocumentChanged
    | DocumentReplaced
    | FileStateChanged
    | PlanningStarted
    | PlanningProgressed
    | PlanningEnded
    | ArrangementProved
    | PlanningFailed
)
