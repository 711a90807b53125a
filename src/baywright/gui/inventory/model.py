"""The box table as a Qt model on the session's document. Edits become commands; refused ones change nothing."""

from typing import Any

from PySide6.QtCore import QObject, Qt, Signal

from baywright.app.commands import EditRefused
from baywright.app.edits.inventory import EditBox
from baywright.app.session import Session
from baywright.gui.inventory.line import BoxLine, box_columns, box_lines
from baywright.gui.tables.model import Index, RowTable


class BoxTable(RowTable[BoxLine]):
    """All boxes of the session's project, editable."""

    refused = Signal(str, str, str)
    """An edit was refused: box id, field, message."""

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(box_columns(lambda: session.project.unit), parent)
        self._session = session
        self.show_records(box_lines(session.project, session.derived.lifting_indices))

    def update_from_document(self, *, replaced: bool = False) -> None:
        """Show the session's present document; `replaced` after another one was opened."""
        lines = box_lines(self._session.project, self._session.derived.lifting_indices)
        self.show_records(lines, sort_anew=replaced)

    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Send the edit to the session; False where it is refused (`refused` then tells why)."""
        if role != Qt.ItemDataRole.EditRole or not index.isValid():
            return False
        field, box_id = self.columns[index.column()].field, self.id_at(index.row())
        if not field:
            return False
        if getattr(self.record(box_id).box, field) == value:
            return True
        try:
            self._session.do(EditBox(box_id, field, value))
        except EditRefused as refusal:
            self.refused.emit(box_id, field, refusal.message)
            return False
        return True
