"""The measured batches of the materials: readings typed one after the other, their mean, least and most told."""

from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QWidget

from baywright.app.commands import Command
from baywright.app.edits.materials import AddBatch, ChangeBatch, RemoveBatch, UseBatch
from baywright.app.edits.needed import Several
from baywright.app.session import Session
from baywright.gui.fields.choice import Combo
from baywright.gui.fields.kinds import ChoiceKind, ReadingsKind, TextKind, read_typed
from baywright.gui.fields.line import LineEdit
from baywright.gui.messages import Tone
from baywright.gui.tables.block import Block
from baywright.gui.tables.column import Column
from baywright.gui.tables.editing import CellKind, EditTable, EditTableView, value_column
from baywright.model.identity import next_id
from baywright.model.length import format_length
from baywright.model.stock import Batch

WORDS = (
    "Boards are seldom as thick as their name says. Measure each delivery at several places and type what was read; "
    "the mean of the batch in use is the thickness that every size follows."
)
EMPTY = "No batch was measured: the thicknesses of the form are in force."
USES: tuple[tuple[object, str], ...] = ((True, "in use"), (False, "not in use"))
KINDS: dict[str, CellKind] = {
    "name": TextKind(may_be_empty=False),
    "readings_mm": ReadingsKind(),
    "is_used": ChoiceKind(USES),
}
_SEPARATOR = "/"


@dataclass(frozen=True)
class BatchLine:
    """A batch with its material."""

    material_id: str
    material: str
    batch: Batch
    is_used: bool

    @property
    def name(self) -> str:
        """What the batch is called."""
        return self.batch.name

    @property
    def readings_mm(self) -> tuple[float, ...]:
        """Thickness as read at several places."""
        return self.batch.readings_mm


class BatchBlock(Block):
    """All batches, and a line to type the readings of a new one."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        unit = self.unit_of(session)

        def figure(title: str, name: str, hint: str) -> Column[BatchLine]:
            def value(line: BatchLine) -> float:
                found: float = getattr(line.batch, name)
                return found

            return Column(title, lambda x: format_length(value(x), unit()), value, hint, is_number=True)

        columns: list[Column[BatchLine]] = [
            Column("Material", lambda x: x.material, lambda x: x.material, "Which material it is of", sample="n" * 10),
            value_column("Batch", "name", KINDS["name"], "What the delivery is called", unit, sample="n" * 8),
            value_column("Use", "is_used", KINDS["is_used"], "Whether it is being cut", unit, sample="not in use"),
            figure("Mean", "measured_mm", "Mean of the readings, to a hundredth"),
            figure("Least", "least_mm", "Thinnest place"),
            figure("Most", "most_mm", "Thickest place"),
            value_column("Readings", "readings_mm", KINDS["readings_mm"], "Thickness at several places, separated by "
                         "semicolons", unit, sample="n" * 12),
        ]  # fmt: skip
        self.table: EditTable[BatchLine] = EditTable(session, columns, _command)
        view = EditTableView(self.table, session, KINDS, "Measured batches", EMPTY)
        super().__init__(session, WORDS, view, parent)
        self.table.setParent(self)
        self.remove = self.add_button("&Remove", "Remove the selected batches (Del)", self.remove_selected)
        self._make_new_line()
        self.view.delete_wanted.connect(self.remove_selected)
        self.view.ids_selected.connect(lambda _ids: self._enable())
        self.update_from_document()

    def _make_new_line(self) -> None:
        self.material = Combo(self)
        self.material.setAccessibleName("Material of the new batch")
        self.material.setToolTip("Which material was measured")
        self.readings = LineEdit(self)
        self.readings.setPlaceholderText("17.6; 17.5; 17.7 then Enter")
        self.readings.setAccessibleName("Readings of the new batch")
        self.readings.setToolTip("Thickness at several places, separated by semicolons; Enter adds the batch")
        self.readings.confirmed.connect(self.add_batch)
        self.figures = QLabel(self)
        self.figures.setTextFormat(Qt.TextFormat.PlainText)
        self.readings.textChanged.connect(lambda _text: self._show_figures())
        line = QHBoxLayout()
        line.addWidget(self.material, 1)
        line.addWidget(self.readings, 2)
        self.add = self.add_button("&Add", "Add a batch with the readings typed below", self.add_batch)
        self.row.removeWidget(self.add)
        line.addWidget(self.add)
        self.row.removeWidget(self.remove)
        line.addWidget(self.remove)
        self.column.insertLayout(2, line)
        self.column.insertWidget(3, self.figures)
        self._show_figures()

    # ---- to and from the document

    def update_from_document(self) -> None:
        """Show the batches of the present document."""
        materials = self.session.project.stock.materials
        self.show_records([
            (f"{material.id}{_SEPARATOR}{batch.id}",
             BatchLine(material.id, material.name, batch, batch.id == material.batch_id))
            for material in materials
            for batch in material.batches
        ])  # fmt: skip
        chosen = self.material.currentData()
        listed = [(material.id, material.name) for material in materials]
        if listed != [(self.material.itemData(n), self.material.itemText(n)) for n in range(self.material.count())]:
            self.material.clear()
            for identifier, name in listed:
                self.material.addItem(name, identifier)
            if chosen in dict(listed):
                self.material.setCurrentIndex(list(dict(listed)).index(chosen))
        self._enable()

    def choose_material(self, material_id: str) -> None:
        """Let the next batch be of this material."""
        place = self.material.findData(material_id)
        if place >= 0:
            self.material.setCurrentIndex(place)

    def add_batch(self) -> None:
        """Add a batch of what was typed to the chosen material."""
        self.messages.clear()
        material_id = self.material.currentData()
        material = next((each for each in self.session.project.stock.materials if each.id == material_id), None)
        if material is None:
            self.messages.show_message("A batch is of a material: add the material first.", Tone.TROUBLE)
            return
        try:
            readings = read_typed(ReadingsKind(), self.readings.text(), self.session.project.unit)
            batch = self._batch(readings, [each.id for each in material.batches])
        except ValueError as error:
            self.messages.show_message(_plain(error), Tone.TROUBLE)
            return
        if self.attempt(AddBatch(material_id, batch)):
            self.readings.clear()
            if doubt := material.doubt(batch):
                self.messages.show_message(doubt, Tone.CAUTION)

    def _batch(self, readings: object, taken: list[str]) -> Batch:
        batch_id = next_id("batch", taken)
        number = batch_id.rpartition("-")[2]
        return Batch.model_validate({"id": batch_id, "name": f"Batch {number}", "readings_mm": readings})

    def remove_selected(self) -> None:
        """Remove the selected batches."""
        commands = tuple(RemoveBatch(*identifier.split(_SEPARATOR)) for identifier in self.view.selected_ids())
        if commands:
            self.attempt(commands[0] if len(commands) == 1 else Several(commands, f"Remove {len(commands)} batches"))

    def _show_figures(self) -> None:
        """Mean, least and most of what is being typed, before it is taken in."""
        words = ""
        try:
            readings = read_typed(ReadingsKind(), self.readings.text(), self.session.project.unit)
            batch = self._batch(readings, [])
        except ValueError:
            pass
        else:
            unit = self.session.project.unit
            mean, least, most = (format_length(v, unit) for v in (batch.measured_mm, batch.least_mm, batch.most_mm))
            words = f"Mean {mean}, least {least}, most {most}."
        self.figures.setText(words)
        self.figures.setVisible(bool(words))

    def _enable(self) -> None:
        self.remove.setEnabled(bool(self.view.selected_ids()))
        has_materials = self.material.count() > 0
        for widget in (self.material, self.readings, self.add):
            widget.setEnabled(has_materials)
        self.readings.setToolTip(
            "Thickness at several places, separated by semicolons; Enter adds the batch"
            if has_materials
            else "Add a material first: a batch is of one"
        )


def _plain(error: ValueError) -> str:
    """What is wrong with readings that were typed."""
    text = str(error)
    return "A board is from 1 to 100 mm thick; check the readings." if "validation error" in text else text


def _command(identifier: str, field: str, value: object) -> Command:
    material_id, batch_id = identifier.split(_SEPARATOR)
    if field == "is_used":
        return UseBatch(material_id, batch_id if value else None)
    return ChangeBatch(material_id, batch_id, field, value)
