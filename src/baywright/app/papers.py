"""Papers for the workshop: the book of cuts, labels for the pieces, drawings of the parts.

Law: a paper is made from the document, and where it tells of cuts from a cutting plan of just that document; without
one it is sought first.
"""

from enum import StrEnum
from pathlib import Path

from baywright.app.files import FileTrouble
from baywright.making import manufacture
from baywright.making.cutting.plan import cutting_plan
from baywright.model.cutting import CuttingPlan
from baywright.model.making import Manufacture
from baywright.model.project import Project
from baywright.storage.output import write_output


class Paper(StrEnum):
    """What can be written besides the workbook, each a PDF file."""

    CUTS = "book of cuts"
    LABELS = "labels"
    DRAWINGS = "drawings of the parts"


def write_paper(path: Path, paper: Paper, project: Project, cutting: CuttingPlan | None = None) -> None:
    """Writes a paper of the project's present arrangement; raises FileTrouble.

    `cutting` is the plan of its cutting where that is known already.
    """
    if not project.arrangement.bay_count:
        raise FileTrouble(f"There is nothing for the {paper.value} yet: plan the bays first.")
    made = manufacture(project)
    if not made.parts:
        raise FileTrouble(f"There is no part for the {paper.value}: see the remarks on the construction.")
    if paper is Paper.DRAWINGS:
        from baywright.documents.drawings.page import part_drawings

        write_output(path, part_drawings(project, made))
        return
    # What a search has found before its end is not put on paper: whoever saws has only that.
    plan = cutting if cutting is not None and cutting.is_finished else cutting_plan(project, made)
    write_output(path, _content(paper, project, made, plan))


def _content(paper: Paper, project: Project, made: Manufacture, plan: CuttingPlan) -> bytes:
    # matplotlib takes a second to import; a window that only plans must not wait for it.
    if paper is Paper.CUTS:
        from baywright.documents.cutting.pages import cutting_pages

        return cutting_pages(project, made, plan)
    from baywright.documents.labels import labels

    return labels(project, made, plan)
