"""The tables of sheets and of bars: what can be bought, what lies in the rack already, at what price."""

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QWidget

from baywright.app.commands import Command
from baywright.app.edits.needed import Several
from baywright.app.edits.stock import AddBar, AddSheet, ChangeBar, ChangeSheet, RemoveBar, RemoveSheet
from baywright.app.session import Session
from baywright.gui.fields.kinds import ChoiceKind, CountKind, FlagKind, LengthKind, LiveChoiceKind, PriceKind, TextKind
from baywright.gui.messages import Tone
from baywright.gui.tables.block import Block
from baywright.gui.tables.editing import CellKind, EditTable, EditTableView, value_column
from baywright.gui.wording import BAR_USES, OWNERSHIP, count_words
from baywright.model.identity import next_id
from baywright.model.stock import Bar, Sheet

SHEET_WORDS = (
    "Sheets to buy by size and price, and offcuts that are owned; what is owned is used first where that saves. "
    "Length runs with the grain."
)
SHEETS_EMPTY = "No sheets: a usual size, 2500 × 1250 mm, is taken for granted, without a price."
BAR_WORDS = "Bars, strips or rolls that edging, lippings and, if you like, rails are cut from."
BARS_EMPTY = "No bars: edging is counted by length in the hardware order."
ANY_NUMBER = "as many as needed"
ANY_BOARD = "serves every board"
_SAMPLES = {
    "material_id": "n" * 16,
    "supplier": "n" * 8,
    "is_owned": "to buy",
    "name": "n" * 8,
    "price": "9,999.99 EUR",
}

SHEET_COLUMNS = (
    ("Material", "material_id", "Which material it is of"),
    ("Length", "length_mm", "Along the grain"),
    ("Width", "width_mm", "Across the grain"),
    ("Price", "price", "Of one sheet; empty where it is not known. What is owned costs nothing"),
    ("How many", "quantity", "How many there are; empty: as many as one wants to buy"),
    ("Bought or owned", "is_owned", "Owned sheets and offcuts are used first where that saves"),
    ("Trimmed", "is_trimmed", "Whether its edges are trimmed before it is cut"),
    ("Name", "name", "What it is called, such as “offcut behind the door”"),
    ("Supplier", "supplier", "Who sells it"),
    ("Note", "note", "Anything else"),
)
BAR_COLUMNS = (
    ("Used for", "use", "What is cut from it"),
    ("Length", "length_mm", "Of one bar or roll"),
    (
        "Width",
        "width_mm",
        "A strip covers boards up to 2 mm thinner, a rail is as wide; empty: serves every board",
    ),
    ("Price", "price", "Of one; empty where it is not known. What is owned costs nothing"),
    ("How many", "quantity", "How many there are; empty: as many as one wants to buy"),
    ("Bought or owned", "is_owned", "Owned ones are used first where that saves"),
    ("Name", "name", "What it is called"),
    ("Supplier", "supplier", "Who sells it"),
    ("Note", "note", "Anything else"),
)


def _kinds(session: Session, any_width: str = "") -> dict[str, CellKind]:
    """The kinds of values by field; `any_width`: what no width means, empty where there must be one."""

    def materials() -> tuple[tuple[object, str], ...]:
        return tuple((material.id, material.name) for material in session.project.stock.materials)

    return {
        "material_id": LiveChoiceKind(materials),
        "use": ChoiceKind(BAR_USES),
        "name": TextKind(),
        "length_mm": LengthKind(),
        "width_mm": LengthKind(any_width),
        "price": PriceKind(lambda: session.project.pricing.currency),
        "quantity": CountKind(0, 10_000, ANY_NUMBER),
        "is_owned": ChoiceKind(OWNERSHIP),
        "is_trimmed": FlagKind(),
        "supplier": TextKind(),
        "note": TextKind(),
    }


class BoardBlock(Block):
    """What sheets and bars have in common: a table with buttons to add, copy and remove."""

    def __init__(
        self,
        session: Session,
        words: str,
        names: tuple[str, str],
        columns: tuple[tuple[str, str, str], ...],
        change: Callable[[str, str, object], Command],
        parent: QWidget | None = None,
        *,
        any_width: str = "",
    ) -> None:
        unit, kinds = self.unit_of(session), _kinds(session, any_width)
        made = [value_column(t, f, kinds[f], hint, unit, sample=_SAMPLES.get(f, "")) for t, f, hint in columns]
        self.table: EditTable[Any] = EditTable(session, made, change)
        name, empty = names
        super().__init__(session, words, EditTableView(self.table, session, kinds, name, empty), parent)
        self.table.setParent(self)
        self._currency = session.project.pricing.currency

    def add_buttons(self, what: str) -> None:
        """The buttons that act on the selected lines."""
        self.duplicate = self.add_button("D&uplicate", f"Copy the selected {what}", self.duplicate_selected)
        self.remove = self.add_button("&Remove", f"Remove the selected {what} (Del)", self.remove_selected)
        self.view.delete_wanted.connect(self.remove_selected)
        self.view.ids_selected.connect(lambda _ids: self._enable())

    def show_lines(self, records: list[tuple[str, Any]]) -> None:
        """Show these lines; prices anew where the currency is another one."""
        self.show_records(records)
        if self._currency != self.session.project.pricing.currency:
            self._currency = self.session.project.pricing.currency
            self.table.refresh()
        self._enable()

    def duplicate_selected(self) -> None:
        """Copy the selected lines, each behind the others."""
        taken = list(self.all_ids())
        commands = []
        for identifier in self.view.selected_ids():
            new = next_id(identifier.rpartition("-")[0] or identifier, taken)
            taken.append(new)
            commands.append(self.addition(self.table.record(identifier).replace(id=new)))
        if commands:
            words = f"Duplicate {count_words(len(commands), 'line')} of the stock"
            self.attempt(commands[0] if len(commands) == 1 else Several(tuple(commands), words))

    def remove_selected(self) -> None:
        """Remove the selected lines."""
        if ids := self.view.selected_ids():
            self.attempt(self.removal(ids))

    def all_ids(self) -> tuple[str, ...]:
        """The ids of all lines in the document."""
        raise NotImplementedError

    def addition(self, record: Any) -> Command:
        """The command that adds a line."""
        raise NotImplementedError

    def removal(self, ids: tuple[str, ...]) -> Command:
        """The command that removes lines."""
        raise NotImplementedError

    def _enable(self) -> None:
        some = bool(self.view.selected_ids())
        for button in (self.duplicate, self.remove):
            button.setEnabled(some)


class SheetBlock(BoardBlock):
    """The sheets with their buttons."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        names = ("Sheets and offcuts", SHEETS_EMPTY)
        super().__init__(session, SHEET_WORDS, names, SHEET_COLUMNS, ChangeSheet, parent)
        self.add = self.add_button(
            "Add &sheet", "Add a size of sheet that can be bought", lambda: self.add_sheet(False)
        )
        self.add_owned = self.add_button(
            "Add &offcut", "Add a piece that lies in the rack already", lambda: self.add_sheet(True)
        )
        self.in_a_row_above(self.add, self.add_owned)
        self.add_buttons("sheets")
        self._material_id = ""
        self.update_from_document()

    def choose_material(self, material_id: str) -> None:
        """Let the next sheet be of this material."""
        self._material_id = material_id

    def update_from_document(self) -> None:
        """Show the sheets of the present document."""
        self.show_lines([(sheet.id, sheet) for sheet in self.session.project.stock.sheets])

    def add_sheet(self, is_owned: bool) -> None:
        """Add a sheet to buy, or an offcut, and open the editor of its length."""
        self.messages.clear()
        materials = [material.id for material in self.session.project.stock.materials]
        if not materials:
            self.messages.show_message("A sheet is of a material: add the material first.", Tone.TROUBLE)
            return
        selected = self.view.selected_ids()
        material_id = self.table.record(selected[-1]).material_id if selected else self._material_id
        sheet_id = next_id("offcut" if is_owned else "sheet", self.all_ids())
        values: dict[str, object] = {"id": sheet_id, "is_owned": is_owned}
        values["material_id"] = material_id if material_id in materials else materials[0]
        if is_owned:
            values |= {"length_mm": 1000.0, "width_mm": 600.0, "quantity": 1, "is_trimmed": False}
        if self.attempt(AddSheet(Sheet.model_validate(values))):
            self.begin_editing(sheet_id, "length_mm")

    def all_ids(self) -> tuple[str, ...]:
        """The ids of all sheets."""
        return tuple(sheet.id for sheet in self.session.project.stock.sheets)

    def addition(self, record: Sheet) -> Command:
        """The command that adds a sheet."""
        return AddSheet(record)

    def removal(self, ids: tuple[str, ...]) -> Command:
        """The command that removes sheets."""
        return RemoveSheet(ids)


class BarBlock(BoardBlock):
    """The bars with their buttons."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(
            session, BAR_WORDS, ("Bars and rolls", BARS_EMPTY), BAR_COLUMNS, ChangeBar, parent, any_width=ANY_BOARD
        )
        self.add = self.add_button("&Add", "Add a bar, strip or roll and type its length", self.add_bar)
        self.add_buttons("bars")
        self.update_from_document()

    def update_from_document(self) -> None:
        """Show the bars of the present document."""
        self.show_lines([(bar.id, bar) for bar in self.session.project.stock.bars])

    def add_bar(self) -> None:
        """Add a bar and open the editor of its length."""
        bar_id = next_id("bar", self.all_ids())
        if self.attempt(AddBar(Bar(id=bar_id))):
            self.begin_editing(bar_id, "length_mm")

    def all_ids(self) -> tuple[str, ...]:
        """The ids of all bars."""
        return tuple(bar.id for bar in self.session.project.stock.bars)

    def addition(self, record: Bar) -> Command:
        """The command that adds a bar."""
        return AddBar(record)

    def removal(self, ids: tuple[str, ...]) -> Command:
        """The command that removes bars."""
        return RemoveBar(ids)
