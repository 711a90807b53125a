"""The tab “Stock”: materials, batches, sheets, bars, cutting rules and prices in folding sections."""

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from baywright.app.session import Session
from baywright.gui.dimensions.grid import FieldGrid
from baywright.gui.sections import SectionPage
from baywright.gui.stock.batches import BatchBlock
from baywright.gui.stock.boards import BarBlock, SheetBlock
from baywright.gui.stock.entries import PRICES, RULES
from baywright.gui.stock.materials import MaterialBlock, RoleBlock


class StockPanel(QWidget):
    """What parts are cut from, and how."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.materials = MaterialBlock(session)
        self.roles = RoleBlock(session)
        self.batches = BatchBlock(session)
        self.sheets = SheetBlock(session)
        self.bars = BarBlock(session)
        self.rules = FieldGrid(session, RULES)
        self.prices = FieldGrid(session, PRICES)
        page = SectionPage((
            ("Materials", self.materials),
            ("What is cut from what", self.roles),
            ("Measured batches", self.batches),
            ("Sheets and offcuts", self.sheets),
            ("Bars and rolls", self.bars),
            ("How the saw cuts", self.rules),
            ("Prices", self.prices),
        ))  # fmt: skip
        self.sections = page.sections
        whole = QVBoxLayout(self)
        whole.setContentsMargins(6, 6, 6, 6)
        whole.addWidget(page)
        self._is_late = False
        self.materials.view.ids_selected.connect(self._on_material_selected)

    def showEvent(self, event: QShowEvent) -> None:
        """Who opens the tab wants to see how things stand now."""
        super().showEvent(event)
        if self._is_late:
            self._show()

    def _on_material_selected(self, ids: tuple[str, ...]) -> None:
        """What is added next is of the material that was selected."""
        if ids:
            self.batches.choose_material(ids[-1])
            self.sheets.choose_material(ids[-1])

    def update_from_document(self, *, replaced: bool = False) -> None:
        """Show the session's present document, at once or when somebody looks."""
        if replaced:
            for block in (self.materials, self.roles, self.batches, self.sheets, self.bars):
                block.messages.clear()
        if self.isVisible():
            self._show()
        else:
            self._is_late = True

    def _show(self) -> None:
        self._is_late = False
        blocks = (self.materials, self.roles, self.batches, self.sheets, self.bars)
        for part in (*blocks, self.rules, self.prices):
            part.update_from_document()
