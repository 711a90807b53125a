"""The table of box sizes as a Qt model: lengths edited in the project's unit, with the opening that each one needs."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import QObject, Qt, Signal

from baywright.app.commands import EditRefused
from baywright.app.edits.inventory import EditBoxSize
from baywright.app.session import Session
from baywright.gui.tables.column import Column
from baywright.gui.tables.model import Index, RowTable
from baywright.model.inventory import BoxSize
from baywright.model.length import LengthUnit, format_exact, format_length, parse_length


@dataclass(frozen=True)
class SizeLine:
    """A size, how many boxes have it, and the opening a drawer for it takes."""

    size: BoxSize
    boxes: int
    opening_rows: int
    opening_mm: float
    unit: LengthUnit


def size_lines(session: Session) -> list[tuple[str, SizeLine]]:
    """The rows for all sizes of the session's project, by size id."""
    project, workings = session.project, session.workings
    counts: dict[str, int] = {}
    for box in project.boxes:
        counts[box.size_id] = counts.get(box.size_id, 0) + 1
    return [
        (
            size.id,
            SizeLine(
                size,
                counts.get(size.id, 0),
                round(workings.value("opening_rows", size.id)),
                workings.value("opening_height", size.id),
                project.unit,
            ),
        )
        for size in project.box_sizes
    ]


def _length_column(title: str, field: str, hint: str) -> Column[SizeLine]:
    def length(line: SizeLine) -> float:
        value: float = getattr(line.size, field)
        return value

    return Column(
        title,
        lambda x: format_length(length(x), x.unit),
        length,
        hint,
        field,
        is_number=True,
        write=lambda x: format_exact(length(x), x.unit),
    )


def _count_column(title: str, field: str, hint: str) -> Column[SizeLine]:
    def count(line: SizeLine) -> int:
        value: int = getattr(line.size, field)
        return value

    return Column(
        title,
        lambda x: "alone" if count(x) == 1 else f"up to {count(x)}",
        count,
        hint,
        field,
        write=count,
        sample="up to 3",
    )


def size_columns() -> tuple[Column[SizeLine], ...]:
    """The columns of the table of sizes."""
    return (
        Column("Size", lambda x: x.size.name, lambda x: x.size.name, "What the size is called", "name"),
        _length_column("Width", "width_mm", "Outside, across the front of the drawer"),
        _length_column("Depth", "depth_mm", "Outside, front to back"),
        _length_column("Height", "height_mm", "Outside, with its lid on"),
        Column(
            "May turn",
            lambda x: "yes" if x.size.may_turn else "no",
            lambda x: x.size.may_turn,
            "Whether a box may stand turned by a quarter, its depth across the drawer front",
            "may_turn",
            write=lambda x: x.size.may_turn,
        ),
        _count_column(
            "Abreast",
            "most_abreast",
            "How many boxes may stand side by side in a drawer that such a box is in; alone: one drawer, one box",
        ),
        _count_column(
            "Behind",
            "most_behind",
            "How many boxes may stand one behind another in a drawer that such a box is in",
        ),
        Column(
            "Opening",
            lambda x: format_length(x.opening_mm, x.unit),
            lambda x: x.opening_mm,
            "Height that an inner drawer for it takes, in whole rows: seat, box and the air over it",
            is_number=True,
        ),
        Column("Rows", lambda x: str(x.opening_rows), lambda x: x.opening_rows, "The opening in rows", is_number=True),
        Column("Boxes", lambda x: str(x.boxes), lambda x: x.boxes, "How many boxes have this size", is_number=True),
    )


class SizeTable(RowTable[SizeLine]):
    """All box sizes of the session's project, editable."""

    refused = Signal(str, str, str)
    """An edit was refused: size id, field, message."""

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(size_columns(), parent)
        self._session = session
        self.show_records(size_lines(session))

    def update_from_document(self, *, replaced: bool = False) -> None:
        """Show the session's present document."""
        self.show_records(size_lines(self._session), sort_anew=replaced)

    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Send the edit to the session; False where it is refused (`refused` then tells why)."""
        if role != Qt.ItemDataRole.EditRole or not index.isValid():
            return False
        field, size_id = self.columns[index.column()].field, self.id_at(index.row())
        if not field:
            return False
        if getattr(self.record(size_id).size, field) == value:
            return True
        try:
            self._session.do(EditBoxSize(size_id, field, value))
        except EditRefused as refusal:
            self.refused.emit(size_id, field, refusal.message)
            return False
        return True


def length_reader(session: Session) -> Callable[[str], object]:
    """Reads lengths in the unit of the session's present project."""
    return lambda text: parse_length(text, session.project.unit)
