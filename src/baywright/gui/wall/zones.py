"""The table of the wall's zones: windows, doors, sockets, pipes, and what each asks of the run."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QMenu, QToolButton, QWidget

from baywright.app.edits.wall import AddZone, DuplicateZones, EditZone, RemoveZones
from baywright.app.session import Session
from baywright.gui.fields.kinds import ChoiceKind, LengthKind, TextKind
from baywright.gui.tables.block import Block
from baywright.gui.tables.editing import CellKind, EditTable, EditTableView, value_column
from baywright.gui.wording import ZONE_EFFECTS
from baywright.model.identity import next_id
from baywright.model.space import Zone, ZoneEffect

WORDS = (
    "Places of the wall that the run must respect, measured from the left end of the wall and from the floor. "
    "Keep clear: no bay stands there. End below it: bays there end under its lower edge. "
    "Stay in front: drawers that cross it leave its depth free."
)
EMPTY = "No zones: the whole wall may be used."
LENGTH = LengthKind()
KINDS: dict[str, CellKind] = {
    "label": TextKind(may_be_empty=False),
    "effect": ChoiceKind(ZONE_EFFECTS),
    "left_mm": LENGTH,
    "width_mm": LENGTH,
    "bottom_mm": LENGTH,
    "height_mm": LENGTH,
    "depth_mm": LENGTH,
}
_COLUMNS = (
    ("Zone", "label", "What it is, such as “window” or “socket”"),
    ("Effect", "effect", "What it asks of the run: see the words above"),
    ("From left", "left_mm", "From the left end of the wall to the zone's left edge"),
    ("Width", "width_mm", "Along the wall"),
    ("Over floor", "bottom_mm", "From the floor to the zone's lower edge; does not count where the wall is kept clear"),
    ("Height", "height_mm", "From its lower to its upper edge; counts where drawers stay in front"),
    ("Depth", "depth_mm", "How far it stands out from the wall; counts where drawers stay in front"),
)
_SAMPLES = {"label": "n" * 9, "effect": "stay in front"}
_NEW: tuple[tuple[str, str, ZoneEffect, dict[str, float]], ...] = (
    (
        "&Keep clear (a door, a radiator)",
        "Door",
        ZoneEffect.KEEP_CLEAR,
        {"width_mm": 800, "bottom_mm": 0, "height_mm": 2000},
    ),
    (
        "&End below it (a window, a hung cupboard)",
        "Window",
        ZoneEffect.END_BELOW,
        {"width_mm": 1000, "bottom_mm": 900, "height_mm": 1000},
    ),
    (
        "&Stay in front (a socket, a pipe)",
        "Socket",
        ZoneEffect.STAY_IN_FRONT,
        {"width_mm": 100, "bottom_mm": 300, "height_mm": 100, "depth_mm": 40},
    ),
)


class ZoneBlock(Block):
    """The zones with their buttons."""

    zone_selected = Signal(str)
    """The zone that is selected alone; empty for none or several."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        unit = self.unit_of(session)
        columns = [
            value_column(title, field, KINDS[field], hint, unit, sample=_SAMPLES.get(field, ""))
            for title, field, hint in _COLUMNS
        ]
        self.table: EditTable[Zone] = EditTable(session, columns, EditZone)
        super().__init__(session, WORDS, EditTableView(self.table, session, KINDS, "Zones of the wall", EMPTY), parent)
        self.table.setParent(self)
        self.add = QToolButton(self)
        self.add.setText("&Add zone")
        self.add.setToolTip("Add a zone at the right end of the wall, then type where it is")
        self.add.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.add.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        menu = QMenu(self.add)
        for title, label, effect, lengths in _NEW:
            action = menu.addAction(title)
            action.triggered.connect(lambda _checked=False, new=(label, effect, lengths): self.add_zone(*new))
        self.add.setMenu(menu)
        self.row.insertWidget(0, self.add)
        self.duplicate = self.add_button("D&uplicate", "Make a copy of the selected zones", self.duplicate_selected)
        self.remove = self.add_button("&Remove", "Remove the selected zones (Del)", self.remove_selected)
        self.view.delete_wanted.connect(self.remove_selected)
        self.view.ids_selected.connect(self._on_selected)
        self.update_from_document()

    def update_from_document(self) -> None:
        """Show the zones of the present document."""
        self.show_records([(zone.id, zone) for zone in self.session.project.space.zones])
        self._on_selected(self.view.selected_ids())

    def add_zone(self, label: str, effect: ZoneEffect, lengths: dict[str, float]) -> None:
        """Add a zone at the right end of the wall and open the editor of its place."""
        project = self.session.project
        zones = project.space.zones
        zone_id = next_id("zone", [zone.id for zone in zones])
        taken = {zone.label for zone in zones}
        name = next(
            name for n in range(1, len(zones) + 2) if (name := label if n == 1 else f"{label} {n}") not in taken
        )
        width = min(lengths["width_mm"], project.space.length_mm)
        values = {**lengths, "width_mm": width, "left_mm": project.space.length_mm - width}
        if self.attempt(AddZone(Zone.model_validate({"id": zone_id, "label": name, "effect": effect, **values}))):
            self.begin_editing(zone_id, "left_mm")

    def duplicate_selected(self) -> None:
        """Copy the selected zones."""
        if ids := self.view.selected_ids():
            self.attempt(DuplicateZones(ids))

    def remove_selected(self) -> None:
        """Remove the selected zones."""
        if ids := self.view.selected_ids():
            self.attempt(RemoveZones(ids))

    def _on_selected(self, ids: tuple[str, ...]) -> None:
        for button in (self.duplicate, self.remove):
            button.setEnabled(bool(ids))
        self.zone_selected.emit(ids[0] if len(ids) == 1 else "")
