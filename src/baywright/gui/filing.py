"""What the window's file actions do: new, open, save, export. Work that is not saved is never lost without a question.

Laws: a file that cannot be read or written is one message and changes nothing; the workbook is written beside the
window, from the document as it was when asked for.
"""

from collections.abc import Callable
from pathlib import Path

from baywright.app.files import PROJECT_SUFFIX, FileTrouble, export_workbook, open_project
from baywright.app.papers import Paper, write_paper
from baywright.app.session import Session
from baywright.gui.bridge import Errands
from baywright.gui.dialogs import PAPER_FILTER, PROJECT_FILTER, WORKBOOK_FILTER, Dialogs, Unsaved
from baywright.gui.messages import Tone
from baywright.gui.wording import count_words

WORKBOOK_SUFFIX = ".xlsx"
PAPER_SUFFIX = ".pdf"


class Filing:
    """The file side of one window."""

    def __init__(self, session: Session, dialogs: Dialogs, errands: Errands, tell: Callable[[str, Tone], None]) -> None:
        self._session, self.dialogs, self._errands, self._tell = session, dialogs, errands, tell

    @property
    def folder(self) -> Path:
        """Where file dialogs begin: beside the project's file, else in the person's own folder."""
        return self._session.path.parent if self._session.path else Path.home()

    def may_leave(self) -> bool:
        """Whether the present document may be left: saved, or given up on purpose."""
        if not self._session.is_modified:
            return True
        answer = self.dialogs.unsaved_changes(self._session.title)
        if answer is Unsaved.SAVE:
            return self.save()
        return answer is Unsaved.DISCARD

    def new(self) -> None:
        """Begin an empty project."""
        if self.may_leave():
            self._session.new_project()

    def open(self) -> None:
        """Ask for a project file and open it."""
        if self.may_leave():
            path = self.dialogs.file_to_open("Open a project", self.folder, PROJECT_FILTER)
            if path is not None:
                self._open(path)

    def open_path(self, path: Path) -> None:
        """Open a project file, for instance one opened lately."""
        if self.may_leave():
            self._open(path)

    def open_copy(self, path: Path) -> None:
        """Begin a new project that is like a file, for instance the demo; the file is left alone."""
        if self.may_leave():
            try:
                self._session.new_project(open_project(path))
            except FileTrouble as trouble:
                self.dialogs.trouble("The file was not opened", str(trouble))

    def _open(self, path: Path) -> None:
        try:
            self._session.open(path)
        except FileTrouble as trouble:
            self.dialogs.trouble("The file was not opened", str(trouble))

    def save(self) -> bool:
        """Write the project to its file, asking for one where it has none; whether it is saved now."""
        if self._session.path is None:
            return self.save_as()
        return self._save(self._session.path)

    def save_as(self) -> bool:
        """Ask for a file and write the project to it; whether it is saved now."""
        suggestion = self._session.path or self.folder / f"{_file_name(self._session.title)}{PROJECT_SUFFIX}"
        path = self.dialogs.file_to_write("Save the project", suggestion, PROJECT_FILTER, PROJECT_SUFFIX)
        return path is not None and self._save(path)

    def _save(self, path: Path) -> bool:
        try:
            self._session.save_as(path)
        except FileTrouble as trouble:
            self.dialogs.trouble("The project was not saved", str(trouble))
            return False
        self._tell(f"Saved as “{path.name}”.", Tone.NOTE)
        return True

    def export(self) -> None:
        """Ask for a file and write the ordering workbook to it, beside the window."""
        session = self._session
        if not session.project.arrangement.bay_count:
            self._tell("There is nothing to order yet: plan first (F5), then export the workbook.", Tone.CAUTION)
            return
        stem = session.path.stem if session.path else _file_name(session.title)
        suggestion = self.folder / f"{stem}{WORKBOOK_SUFFIX}"
        path = self.dialogs.file_to_write("Export the workbook", suggestion, WORKBOOK_FILTER, WORKBOOK_SUFFIX)
        if path is None:
            return
        project, plan, options = session.project, session.plan, session.options.as_they_stand
        cutting = session.cutting.plan
        wrong, unplaced = len(session.report.conflicts), len(session.report.unplaced)
        self._tell(f"Writing “{path.name}” …", Tone.NOTE)
        self._errands.run(
            lambda: export_workbook(path, project, plan, options, cutting),
            lambda _nothing: self._tell(*_written(path, wrong, unplaced)),
            self._on_export_failed,
            lasting=True,
        )

    def write_paper(self, paper: Paper) -> None:
        """Ask for a file and write a paper for the workshop to it, beside the window."""
        session = self._session
        if not session.project.arrangement.bay_count:
            self._tell(f"There is nothing for the {paper.value} yet: plan first (F5).", Tone.CAUTION)
            return
        stem = session.path.stem if session.path else _file_name(session.title)
        suggestion = self.folder / f"{stem} {paper.value}{PAPER_SUFFIX}"
        path = self.dialogs.file_to_write(f"Write the {paper.value}", suggestion, PAPER_FILTER, PAPER_SUFFIX)
        if path is None:
            return
        project, cutting = session.project, session.cutting.plan
        self._tell(f"Writing “{path.name}” …", Tone.NOTE)
        self._errands.run(
            lambda: write_paper(path, paper, project, cutting),
            lambda _nothing: self._tell(f"Written: {path}", Tone.NOTE),
            lambda error: self._on_export_failed(error, f"The {paper.value} could not be written"),
            lasting=True,
        )

    def _on_export_failed(self, error: Exception, title: str = "The workbook was not written") -> None:
        if not isinstance(error, FileTrouble):
            raise error
        self._tell("", Tone.NOTE)
        self.dialogs.trouble(title, str(error))


def _written(path: Path, wrong: int, unplaced: int) -> tuple[str, Tone]:
    """What to tell once a workbook is written, of an arrangement in which so much is still wrong."""
    still = []
    if wrong:
        still.append(f"{count_words(wrong, 'thing')} {'is' if wrong == 1 else 'are'} wrong")
    if unplaced:
        still.append(f"{count_words(unplaced, 'box', 'boxes')} {'has' if unplaced == 1 else 'have'} no drawer")
    if not still:
        return f"Workbook written: {path}", Tone.NOTE
    return f"Workbook written: {path}. Do not order from it yet: {' and '.join(still)}.", Tone.CAUTION


def _file_name(title: str) -> str:
    """The title with what no file system takes left out."""
    kept = "".join(sign for sign in title if sign.isalnum() or sign in " -_,").strip()
    return kept[:80] or "project"
