"""The session's way to files: projects, recent files, the workbook. Whatever goes wrong is one FileTrouble."""

from pathlib import Path

from baywright.checks import inspect
from baywright.making import manufacture
from baywright.making.costing import cost
from baywright.making.cutting.plan import cutting_plan
from baywright.model.cutting import CuttingPlan
from baywright.model.option import Option
from baywright.model.plan import PlanResult
from baywright.model.project import Project
from baywright.planner import report
from baywright.storage.output import write_output
from baywright.storage.projects import PROJECT_SUFFIX, read_project, write_project
from baywright.storage.recent import forget, read_recent, remember
from baywright.storage.trouble import StorageError as FileTrouble
from baywright.workings import derive

__all__ = [
    "PROJECT_SUFFIX",
    "FileTrouble",
    "RecentFiles",
    "export_workbook",
    "open_project",
    "save_project",
    "write_text",
]


class RecentFiles:
    """The files opened or saved last, kept in the person's state folder."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def paths(self) -> tuple[Path, ...]:
        """The files, newest first."""
        return read_recent(self._folder)

    def forget(self, path: Path) -> None:
        """Takes a file off the list."""
        forget(self._folder, path)

    def remember(self, path: Path) -> None:
        """Puts a file at the head."""
        remember(self._folder, path)


def open_project(path: Path) -> Project:
    """The project in a file; raises FileTrouble with one clear message."""
    return read_project(path)


def save_project(path: Path, project: Project) -> None:
    """Writes a project file whole or not at all; raises FileTrouble."""
    write_project(path, project)


def export_workbook(
    path: Path,
    project: Project,
    plan: PlanResult | None,
    options: tuple[Option, ...] = (),
    cutting: CuttingPlan | None = None,
) -> None:
    """Writes the ordering workbook of a project's present arrangement; raises FileTrouble.

    `plan` is the planner's answer that led to the arrangement, if it still belongs to it; `options` those known for
    the project; `cutting` how its parts are cut, where that is known and its search was over: else it is sought first.
    """
    if not project.arrangement.bay_count:
        raise FileTrouble("There is nothing to order yet: plan the bays first, then export the workbook.")
    # openpyxl and matplotlib take a second to import; a window that only plans must not wait for them.
    from baywright.documents.workbook import write_workbook

    workings = derive(project)
    made, findings = manufacture(project, workings), inspect(project, workings)
    saw = cutting if cutting is not None and cutting.is_finished else cutting_plan(project, made)
    costs = cost(project, made, saw, workings)
    data = write_workbook(project, workings, report(project), plan, made, findings, options, saw, costs)
    write_output(path, data)


def write_text(path: Path, text: str) -> None:
    """Writes a text file in UTF-8, whole or not at all; raises FileTrouble."""
    write_output(path, text.encode())
