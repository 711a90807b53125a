"""The catalogue: articles that the order chooses from, entered line by line or imported."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QSizePolicy, QWidget

from baywright.app.edits.hardware import AddCatalogueItems, ChangeCatalogueItem, RemoveCatalogueItems
from baywright.app.session import Session
from baywright.gui.fields.kinds import ChoiceKind, LengthKind, NumberKind, PriceKind, TextKind
from baywright.gui.tables.block import Block
from baywright.gui.tables.editing import CellKind, EditTable, EditTableView, value_column
from baywright.model.catalogue import CatalogueItem, HardwareKind
from baywright.model.identity import free_ids, next_id

WORDS = "Articles that you can buy. The order takes the cheapest that serves, or the one that you choose there."
EMPTY = "No articles yet: the order counts usual packs without prices. Import a table, or add articles here."
ANY = "any"
KINDS_OF_HARDWARE: tuple[tuple[HardwareKind, str], ...] = tuple((kind, kind.value) for kind in HardwareKind)
_COLUMNS = (
    ("Kind", "kind", "What it is for", "connecting bolt"),
    ("Name", "name", "What the shop calls it", "n" * 14),
    ("Length", "length_mm", "Of a runner, screw, tenon or dowel", ""),
    ("Diameter", "diameter_mm", "Of a screw, dowel or pin", ""),
    ("Thickness", "thickness_mm", "Room a runner takes on each side; thickness of a tenon or an edging", ""),
    ("Width", "width_mm", "Of an edging or a tenon", ""),
    ("Load class", "load_class_kg", "Rated load of a pair of runners, or of a foot", ""),
    ("In a pack", "pack_size", "Pieces, pairs, metres or litres in a pack, as the order counts its kind", ""),
    ("Price", "price", "Of one pack; empty where it is not known", "999.99 EUR"),
    ("Mass", "mass_kg", "Of one piece; empty where it is not known", ""),
    ("Supplier", "supplier", "Who sells it", "n" * 8),
    ("Order no.", "order_number", "By which it is ordered", "n" * 8),
    ("Note", "note", "Anything else", ""),
)


class CatalogueBlock(Block):
    """The articles with their buttons."""

    import_wanted = Signal()
    """The person wants to import a catalogue."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        unit, length = self.unit_of(session), LengthKind(ANY)
        kinds: dict[str, CellKind] = {
            "kind": ChoiceKind(KINDS_OF_HARDWARE),
            "name": TextKind(may_be_empty=False),
            "length_mm": length,
            "diameter_mm": length,
            "thickness_mm": length,
            "width_mm": length,
            "load_class_kg": NumberKind("kg", ANY),
            "pack_size": NumberKind(),
            "price": PriceKind(lambda: session.project.pricing.currency),
            "mass_kg": NumberKind("kg", "not known"),
            "supplier": TextKind(),
            "order_number": TextKind(),
            "note": TextKind(),
        }
        columns = [value_column(t, f, kinds[f], hint, unit, sample=sample) for t, f, hint, sample in _COLUMNS]
        self.table: EditTable[CatalogueItem] = EditTable(session, columns, ChangeCatalogueItem)
        view = EditTableView(self.table, session, kinds, "Catalogue", EMPTY)
        super().__init__(session, WORDS, view, parent)
        self.table.setParent(self)
        view.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.column.setStretchFactor(view, 1)
        self.add = self.add_button("&Add", "Add an article and type its name", self.add_item)
        self.duplicate = self.add_button("D&uplicate", "Copy the selected articles", self.duplicate_selected)
        self.remove = self.add_button("&Remove", "Remove the selected articles (Del)", self.remove_selected)
        self.bring = self.add_button(
            "I&mport…", "Read articles and prices from a table", lambda: self.import_wanted.emit()
        )
        self._currency = session.project.pricing.currency
        self.view.delete_wanted.connect(self.remove_selected)
        self.view.ids_selected.connect(lambda _ids: self._enable())
        self.update_from_document()

    def update_from_document(self) -> None:
        """Show the catalogue of the present document."""
        project = self.session.project
        self.show_records([(item.id, item) for item in project.hardware.catalogue])
        if self._currency != project.pricing.currency:
            self._currency = project.pricing.currency
            self.table.refresh()
        self._enable()

    def _ids(self) -> list[str]:
        return [item.id for item in self.session.project.hardware.catalogue]

    def add_item(self) -> None:
        """Add an article and open the editor of its name."""
        item_id = next_id("article", self._ids())
        new = CatalogueItem(id=item_id, kind=HardwareKind.OTHER, name="New article")
        if self.attempt(AddCatalogueItems((new,))):
            self.update_from_document()
            self.begin_editing(item_id, "name")

    def duplicate_selected(self) -> None:
        """Copy the selected articles."""
        ids = free_ids("article", self._ids())
        copies = tuple(self.table.record(key).replace(id=next(ids)) for key in self.view.selected_ids())
        if copies:
            self.attempt(AddCatalogueItems(copies))

    def remove_selected(self) -> None:
        """Remove the selected articles."""
        if ids := self.view.selected_ids():
            self.attempt(RemoveCatalogueItems(ids))

    def _enable(self) -> None:
        some = bool(self.view.selected_ids())
        for button in (self.duplicate, self.remove):
            button.setEnabled(some)
