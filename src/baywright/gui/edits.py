"""What the window's edit actions do: add, duplicate, delete, lock, paste, import, mark as built. Each is one command,
so one undo.
"""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QWidget

from baywright.app.commands import Command, EditRefused
from baywright.app.edits.arrangement import SetLock, UnplaceBoxes
from baywright.app.edits.built import MarkBuilt
from baywright.app.edits.inventory import MOST_DUPLICATES, AddBoxes, DuplicateBoxes, GiveNewSize, RemoveBoxes
from baywright.app.files import FileTrouble
from baywright.app.importing import (
    Table,
    read_catalogue_table,
    read_table,
    table_from_text,
    take_over,
    take_over_catalogue,
)
from baywright.app.session import Session
from baywright.gui.bridge import Errands
from baywright.gui.dialogs import TABLE_FILTER, Dialogs
from baywright.gui.importing.dialog import ImportDialog
from baywright.gui.importing.subject import CATALOGUE, INVENTORY, Subject
from baywright.gui.messages import Tone
from baywright.gui.sizes.dialog import SizeDialog
from baywright.gui.wording import count_words
from baywright.model.arrangement import Lock
from baywright.model.identity import next_id
from baywright.model.inventory import Box, BoxSize


@dataclass(frozen=True)
class Surroundings:
    """What the edits need of the window."""

    window: QWidget
    errands: Errands
    selected: Callable[[], tuple[str, ...]]
    """Ids of the selected boxes."""
    tell: Callable[[str, Tone], None]
    begin_editing: Callable[[str], None]
    """Puts the cursor on the label of a box."""
    folder: Callable[[], Path]
    """Where file dialogs begin."""


class Edits:
    """The edits of one session, begun by actions."""

    def __init__(self, session: Session, dialogs: Dialogs, surroundings: Surroundings) -> None:
        self._session, self.dialogs, self._around = session, dialogs, surroundings

    def attempt(self, command: Command) -> bool:
        """Do a command; where it is refused, tell why and leave everything as it was."""
        try:
            self._session.do(command)
        except EditRefused as refusal:
            self._around.tell(refusal.message, Tone.TROUBLE)
            return False
        return True

    # ---- adding and removing

    def add_box(self) -> None:
        """Add a box of the size used last, and open its label; the first box asks for its size."""
        project = self._session.project
        size, sizes = self._likely_size(), tuple[BoxSize, ...]()
        if size is None:
            size = self._ask_for_size("The first box needs a size. Measure it outside, with its lid on.")
            if size is None:
                return
            sizes = (size,)
        box_id = next_id("box", [box.id for box in project.boxes])
        number = box_id.rpartition("-")[2]
        if self.attempt(AddBoxes((Box(id=box_id, label=f"Box {number}", size_id=size.id),), sizes)):
            self._around.begin_editing(box_id)

    def new_size_for(self, box_id: str) -> None:
        """Ask for a new size and give it to a box."""
        size = self._ask_for_size("")
        if size is not None:
            self.attempt(GiveNewSize(box_id, size))

    def duplicate(self) -> None:
        """Make copies of the selected boxes, as many as asked for."""
        ids = self._around.selected()
        if not ids:
            return
        copies = self.dialogs.copies(count_words(len(ids), "box", "boxes"), MOST_DUPLICATES)
        if copies and self.attempt(DuplicateBoxes(ids, copies)):
            made = count_words(copies * len(ids), "copy", "copies")
            self._around.tell(f"{made} made; they have no place yet. Undo takes them back.", Tone.NOTE)

    def delete(self) -> None:
        """Delete the selected boxes; no question, because undo brings them back."""
        ids = self._around.selected()
        if ids and self.attempt(RemoveBoxes(ids)):
            self._around.tell(f"{count_words(len(ids), 'box', 'boxes')} deleted. Undo brings them back.", Tone.NOTE)

    def unplace(self) -> None:
        """Take the selected boxes out of their drawers."""
        ids = self._around.selected()
        if ids:
            self.attempt(UnplaceBoxes(ids))

    def lock(self, lock: Lock) -> None:
        """Lock or unlock the selected boxes."""
        ids = self._around.selected()
        if ids:
            self.attempt(SetLock(ids, lock))

    # ---- what stands as built

    def mark_built(self, bays: tuple[int, ...] = ()) -> None:
        """Mark bays as cut and drilled: those given, else those of the selected boxes, else all."""
        arrangement = self._session.project.arrangement
        of_boxes = {p.bay for box_id in self._around.selected() if (p := arrangement.placement_of(box_id))}
        chosen = bays or tuple(sorted(of_boxes)) or tuple(range(arrangement.bay_count))
        if self.attempt(MarkBuilt(chosen)):
            which = f"Bay {chosen[0] + 1} stands" if len(chosen) == 1 else f"{len(chosen)} bays stand"
            self._around.tell(
                f"{which} as built: re-planning keeps its place and hole rows, and counts moves from how it is now.",
                Tone.NOTE,
            )

    def mark_work_done(self) -> None:
        """Take down that boxes and runners of the built bays are now as drawn."""
        if self.attempt(MarkBuilt(())):
            self._around.tell("Noted: what is built is now as drawn; further changes count from here.", Tone.NOTE)

    def _likely_size(self) -> BoxSize | None:
        project, selected = self._session.project, self._around.selected()
        boxes = {box.id: box for box in project.boxes}
        if selected and selected[-1] in boxes:
            return project.size_of(boxes[selected[-1]])
        if project.boxes:
            return project.size_of(project.boxes[-1])
        return project.box_sizes[0] if project.box_sizes else None

    def _ask_for_size(self, reason: str) -> BoxSize | None:
        dialog = SizeDialog(self._session.project, reason, self._around.window)
        try:
            return dialog.size_made if dialog.exec() else None
        finally:
            dialog.deleteLater()

    # ---- taking over from tables

    def paste(self) -> None:
        """Take boxes over from the cells on the clipboard, after a preview."""
        text = QGuiApplication.clipboard().text()
        if not text.strip():
            self._around.tell("There is nothing to paste: copy cells in a spreadsheet first.", Tone.CAUTION)
            return
        try:
            table = table_from_text(text)
        except FileTrouble as trouble:
            self._around.tell(str(trouble), Tone.TROUBLE)
            return
        self._preview(table, None)

    def import_inventory(self) -> None:
        """Ask for a file, read it beside the window, and show which boxes it would bring."""
        self._import(INVENTORY, read_table)

    def import_catalogue(self) -> None:
        """Ask for a file, read it beside the window, and show which hardware it would bring."""
        self._import(CATALOGUE, read_catalogue_table)

    def _import(self, subject: Subject, read: Callable[[Path], Table]) -> None:
        path = self.dialogs.file_to_open(subject.title, self._around.folder(), TABLE_FILTER)
        if path is None:
            return
        self._around.tell(f"Reading “{path.name}” …", Tone.NOTE)
        self._around.errands.run(
            lambda: read(path), lambda table: self._preview(table, path, subject), self._on_trouble
        )

    def _preview(self, table: Table, path: Path | None, subject: Subject = INVENTORY) -> None:
        self._around.tell("", Tone.NOTE)
        dialog = ImportDialog(
            self._session.project, table, self._around.errands, path, self._around.window, subject=subject
        )
        try:
            if not dialog.exec() or dialog.preview is None:
                return
            preview = dialog.preview
        finally:
            dialog.deleteLater()
        if self.attempt(take_over_catalogue(preview) if subject is CATALOGUE else take_over(preview)):
            count = subject.count(preview)
            words = f"{count_words(count, subject.one, subject.many)} taken over. Undo takes them out again."
            refused = len(preview.refused)
            if refused:
                words += f" {count_words(refused, 'row')} of the table {'was' if refused == 1 else 'were'} left out."
            self._around.tell(words, Tone.NOTE)

    def _on_trouble(self, trouble: Exception) -> None:
        if not isinstance(trouble, FileTrouble):
            raise trouble
        self._around.tell(str(trouble), Tone.TROUBLE)
