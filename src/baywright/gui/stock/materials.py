"""The table of board materials, and the table that says which boards are cut from which."""

from dataclasses import dataclass, replace

from PySide6.QtWidgets import QWidget

from baywright.app.commands import Command
from baywright.app.edits.materials import AddMaterial, AssignRole, ChangeMaterial, RemoveMaterial
from baywright.app.edits.needed import AddNeeded, Several, is_all_there, roles_needed
from baywright.app.session import Session
from baywright.gui.fields.kinds import ChoiceKind, FlagKind, LengthKind, LiveChoiceKind, NumberKind, TextKind
from baywright.gui.tables.block import Block
from baywright.gui.tables.column import Column
from baywright.gui.tables.editing import CellKind, EditTable, EditTableView, value_column
from baywright.gui.wording import BOARD_MATERIALS, BOARD_ROLES, words_for
from baywright.model.identity import next_id
from baywright.model.length import format_length
from baywright.model.material import MATERIALS
from baywright.model.stock import BoardRole, Material

WORDS = "What boards are cut from: one line for each board material and thickness, as the timber yard sells it."
EMPTY = (
    "No materials yet: usual boards are taken for granted, without a price. “Add what the run needs” puts them here, "
    "to be measured and priced."
)
KINDS: dict[str, CellKind] = {
    "name": TextKind(may_be_empty=False),
    "kind": ChoiceKind(BOARD_MATERIALS),
    "nominal_mm": LengthKind(),
    "has_grain": FlagKind(),
    "density_kg_m3": NumberKind("kg/m³", "usual"),
}
_COLUMNS = (
    ("Material", "name", "As ordered, such as “birch plywood 18 mm”", "n" * 16),
    ("Kind", "kind", "What it is of; the checks know how stiff it is", "birch plywood"),
    ("Nominal", "nominal_mm", "Thickness by its name; measure what was delivered in the batches below", ""),
    ("Grain", "has_grain", "Whether its face has a grain that parts must follow", ""),
    ("Density", "density_kg_m3", "For the masses; empty takes the usual one of its kind", "680 kg/m³ (usual)"),
)
NEEDED = "Add &what the run needs"
NEEDED_TIP = "Put every material that the run needs into the stock, each with a usual sheet to buy; one undo"


def _density_words(material: Material) -> str:
    if material.density_kg_m3 is not None:
        return f"{material.density_kg_m3:g} kg/m³"
    known = MATERIALS.get(material.kind)
    return "not known" if known is None else f"{known.density_kg_m3:g} kg/m³ (usual)"


def _used_for(material: Material) -> str:
    return ", ".join(words_for(role, BOARD_ROLES) for role in material.roles) or "nothing yet"


class MaterialBlock(Block):
    """The materials with their buttons."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        unit = self.unit_of(session)
        columns: list[Column[Material]] = [
            value_column(title, field, KINDS[field], hint, unit, sample=sample)
            for title, field, hint, sample in _COLUMNS
        ]
        columns[4] = replace(columns[4], text=_density_words)
        columns.append(Column("Used for", _used_for, _used_for, "Which boards are cut from it: see the table below"))
        self.table: EditTable[Material] = EditTable(session, columns, ChangeMaterial)
        view = EditTableView(self.table, session, KINDS, "Materials", EMPTY)
        super().__init__(session, WORDS, view, parent)
        self.table.setParent(self)
        self.needed = self.add_button(NEEDED, NEEDED_TIP, self.add_needed)
        self.in_a_row_above(self.needed)
        self.add = self.add_button("&Add", "Add a material and type its name", self.add_material)
        self.duplicate = self.add_button("D&uplicate", "Copy the selected materials, without their batches", self._copy)
        self.remove = self.add_button(
            "&Remove", "Remove the selected materials (Del); those that sheets are of stay", self.remove_selected
        )
        self.view.delete_wanted.connect(self.remove_selected)
        self.view.ids_selected.connect(lambda _ids: self._enable())
        self.update_from_document()

    @property
    def _roles(self) -> tuple[BoardRole, ...]:
        made = self.session.derived.known_manufacture
        return roles_needed(self.session.project, made.parts if made is not None else ())

    def update_from_document(self) -> None:
        """Show the materials of the present document."""
        self.show_records([(material.id, material) for material in self.session.project.stock.materials])
        self._enable()

    def add_needed(self) -> None:
        """Put every material that the run needs into the stock."""
        self.attempt(AddNeeded(self._roles))
        self.view.fit_columns(200)

    def add_material(self) -> None:
        """Add a material and open the editor of its name."""
        material_id = next_id("material", [material.id for material in self.session.project.stock.materials])
        if self.attempt(AddMaterial(Material(id=material_id, name="New material"))):
            self.begin_editing(material_id, "name")

    def _copy(self) -> None:
        taken = [material.id for material in self.session.project.stock.materials]
        commands: list[Command] = []
        for identifier in self.view.selected_ids():
            new = next_id("material", taken)
            taken.append(new)
            commands.append(
                AddMaterial(self.table.record(identifier).replace(id=new, roles=(), batches=(), batch_id=None))
            )
        if commands:
            self.attempt(Several(tuple(commands), "Duplicate material"))

    def remove_selected(self) -> None:
        """Remove the selected materials."""
        commands = tuple(RemoveMaterial(identifier) for identifier in self.view.selected_ids())
        if commands:
            self.attempt(commands[0] if len(commands) == 1 else Several(commands, f"Remove {len(commands)} materials"))

    def _enable(self) -> None:
        some = bool(self.view.selected_ids())
        self.duplicate.setEnabled(some)
        self.remove.setEnabled(some)
        all_there = is_all_there(self.session.project, self._roles)
        self.needed.setEnabled(not all_there)
        self.needed.setToolTip("Every board of the run has its material" if all_there else NEEDED_TIP)


@dataclass(frozen=True)
class RoleLine:
    """A board of the run and the material that it is cut from; None where a usual one is taken for granted."""

    role: BoardRole
    material_id: str | None
    form_mm: float
    in_force_mm: float
    is_needed: bool
    batch: str = ""
    """The measured batch in use; empty where the form counts."""


ROLE_WORDS = (
    "Which boards are cut from which material. Where a measured batch is in use, its thickness is in force "
    "everywhere; else the one of the form under “Measures”."
)
GRANTED = "a usual one"


class RoleBlock(Block):
    """One line for each board of the run."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        unit = self.unit_of(session)

        def choices() -> tuple[tuple[object, str], ...]:
            return ((None, GRANTED), *((each.id, each.name) for each in session.project.stock.materials))

        kinds: dict[str, CellKind] = {"material_id": LiveChoiceKind(choices)}
        columns: list[Column[RoleLine]] = [
            Column("Board", _role_words, lambda x: list(BoardRole).index(x.role), "What is cut", sample="n" * 12),
            value_column(
                "Cut from", "material_id", kinds["material_id"], "Choose the material; “a usual one” is none of yours",
                unit, sample="n" * 16,
            ),
            Column("In the form", lambda x: format_length(x.form_mm, unit()), lambda x: x.form_mm,
                   "Thickness as the form under “Measures” says", is_number=True),
            Column("In force", lambda x: format_length(x.in_force_mm, unit()), lambda x: x.in_force_mm,
                   "Thickness that every size follows", is_number=True),
            Column("From", _source_words, lambda x: x.batch, "Where the thickness in force comes from"),
        ]  # fmt: skip
        self.table: EditTable[RoleLine] = EditTable(session, columns, _assign)
        view = EditTableView(self.table, session, kinds, "Boards and their materials", "")
        super().__init__(session, ROLE_WORDS, view, parent)
        self.table.setParent(self)
        self.update_from_document()

    def update_from_document(self) -> None:
        """Show which material each board is cut from in the present document."""
        project = self.session.project
        made = self.session.derived.known_manufacture
        needed = roles_needed(project, made.parts if made is not None else ())
        lines = []
        for role in BoardRole:
            material, name = project.stock.material_of(role), f"{role.value}_mm"
            form, force = getattr(project.construction.boards, name), getattr(project.boards, name)
            identifier = material.id if material is not None else None
            batch = material.batch.name if material is not None and material.batch is not None else ""
            lines.append((role.value, RoleLine(role, identifier, form, force, role in needed, batch)))
        self.show_records(lines)


def _role_words(line: RoleLine) -> str:
    words = words_for(line.role, BOARD_ROLES)
    return words if line.is_needed else f"{words} (none now)"


def _source_words(line: RoleLine) -> str:
    return f"measured: {line.batch}" if line.batch else "the form"


def _assign(identifier: str, _field: str, value: object) -> Command:
    return AssignRole(BoardRole(identifier), None if value is None else str(value))
