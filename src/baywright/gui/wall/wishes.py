"""The table of bays with what is wished for each: box width, rows, drawers."""

from dataclasses import dataclass

from PySide6.QtWidgets import QWidget

from baywright.app.commands import Command
from baywright.app.edits.wishes import ClearBayWishes, SetBayWish, WishForBay
from baywright.app.session import Session
from baywright.gui.fields.kinds import CountKind, LengthKind
from baywright.gui.tables.block import Block
from baywright.gui.tables.column import Column
from baywright.gui.tables.editing import CellKind, EditTable, EditTableView, value_column
from baywright.model.limits import MOST_ROWS, BayWish

WORDS = (
    "What you fix about single bays, counted from the left; an empty cell leaves a bay as the others are. "
    "Planning keeps these wishes."
)
EMPTY = "No bays yet: plan first, or ask for a bay."
_OTHERS = "as the others"
KINDS: dict[str, CellKind] = {
    "box_width_mm": LengthKind(_OTHERS),
    "rows": CountKind(1, MOST_ROWS, _OTHERS),
    "drawers": CountKind(0, MOST_ROWS, _OTHERS),
}


@dataclass(frozen=True)
class WishLine:
    """A bay with its wish; `is_there` once the run has it."""

    number: int
    is_there: bool
    box_width_mm: float | None
    rows: int | None
    drawers: int | None


def wish_lines(session: Session) -> list[tuple[str, WishLine]]:
    """A line for every bay that the run has or that something is wished for."""
    project = session.project
    there = project.arrangement.bay_count
    lines = []
    for bay in range(max(there, len(project.limits.bays))):
        wish: BayWish = project.limits.wish(bay)
        lines.append((str(bay), WishLine(bay + 1, bay < there, wish.box_width_mm, wish.rows, wish.drawers)))
    return lines


def _edit(identifier: str, field: str, value: object) -> Command:
    return SetBayWish(int(identifier), field, value)


class WishBlock(Block):
    """The bays with their buttons."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        unit = self.unit_of(session)
        columns = [
            Column[WishLine](
                "Bay",
                lambda x: f"bay {x.number}" if x.is_there else f"bay {x.number}, wished",
                lambda x: x.number,
                "Counted from the left",
            ),
            value_column(
                "Box width", "box_width_mm", KINDS["box_width_mm"], "Width of box that this bay is made for", unit
            ),
            value_column("Rows", "rows", KINDS["rows"], "Hole rows of this bay's uprights, which set its height", unit),
            value_column("Drawers at most", "drawers", KINDS["drawers"], "At most so many drawers in this bay", unit),
        ]
        self.table: EditTable[WishLine] = EditTable(session, columns, _edit)
        view = EditTableView(self.table, session, KINDS, "Wishes for bays", EMPTY)
        super().__init__(session, WORDS, view, parent)
        self.table.setParent(self)
        self.add = self.add_button("As&k for a bay", "Ask for one more bay at the right end", self.add_bay)
        self.clear = self.add_button("&Clear wishes", "Leave the selected bays as the others are (Del)", self.clear_all)
        view.delete_wanted.connect(self.clear_all)
        view.ids_selected.connect(lambda ids: self.clear.setEnabled(bool(ids)))
        self.update_from_document()

    def update_from_document(self) -> None:
        """Show the bays of the present document."""
        self.show_records(wish_lines(self.session))
        self.clear.setEnabled(bool(self.view.selected_ids()))

    def add_bay(self) -> None:
        """Ask for one more bay than there are lines."""
        bay = len(self.table.ids)
        if self.attempt(WishForBay(bay)):
            self.begin_editing(str(bay), "box_width_mm")

    def clear_all(self) -> None:
        """Clear the wishes of the selected bays."""
        if ids := self.view.selected_ids():
            self.attempt(ClearBayWishes(tuple(sorted(map(int, ids)))))
