"""The table of the ceiling's points, for a ceiling that slopes."""

from PySide6.QtWidgets import QWidget

from baywright.app.commands import Command
from baywright.app.edits.wall import AddCeilingPoint, EditCeilingPoint, RemoveCeilingPoints
from baywright.app.session import Session
from baywright.gui.fields.kinds import LengthKind
from baywright.gui.tables.block import Block
from baywright.gui.tables.editing import CellKind, EditTable, EditTableView, value_column
from baywright.model.space import CeilingPoint

WORDS = (
    "Where the ceiling slopes: its height over the floor at two or more places along the wall. It runs straight "
    "between them and level beyond. The height limit counts as well."
)
EMPTY = "No slope: only the height limit counts."
KINDS: dict[str, CellKind] = {"along_mm": LengthKind(), "height_mm": LengthKind()}


def _edit(identifier: str, field: str, value: object) -> Command:
    return EditCeilingPoint(int(identifier), field, value)


class CeilingBlock(Block):
    """The points with their buttons; a point is known by its number from the left."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        unit = self.unit_of(session)
        columns = [
            value_column("From left", "along_mm", KINDS["along_mm"], "From the left end of the wall", unit),
            value_column("Ceiling over floor", "height_mm", KINDS["height_mm"], "Height of the ceiling there", unit),
        ]
        self.table: EditTable[CeilingPoint] = EditTable(session, columns, _edit)
        view = EditTableView(self.table, session, KINDS, "Points of the ceiling", EMPTY)
        super().__init__(session, WORDS, view, parent)
        self.table.setParent(self)
        self.add = self.add_button(
            "Add &point", "Add a point of the ceiling; the first time one at each end of the wall", self.add_point
        )
        self.remove = self.add_button("Re&move point", "Remove the selected points (Del)", self.remove_selected)
        view.delete_wanted.connect(self.remove_selected)
        view.ids_selected.connect(lambda ids: self.remove.setEnabled(bool(ids)))
        self.update_from_document()

    def update_from_document(self) -> None:
        """Show the points of the present document."""
        points = enumerate(self.session.project.space.ceiling)
        self.show_records([(str(number), point) for number, point in points])
        self.remove.setEnabled(bool(self.view.selected_ids()))

    def add_point(self) -> None:
        """Add a point on the present line, and open the editor of its height."""
        before = self.session.project.space.ceiling
        if self.attempt(AddCeilingPoint()):
            after = self.session.project.space.ceiling
            new = next(number for number, point in enumerate(after) if point not in before)
            self.begin_editing(str(new), "height_mm")

    def remove_selected(self) -> None:
        """Remove the selected points."""
        if ids := self.view.selected_ids():
            self.attempt(RemoveCeilingPoints(tuple(map(int, ids))))
