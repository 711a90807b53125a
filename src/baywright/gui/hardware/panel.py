"""The tab “Hardware”: the order and the catalogue behind it."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from baywright.app.session import Session
from baywright.gui.hardware.catalogue import CatalogueBlock
from baywright.gui.hardware.order import OrderView
from baywright.gui.tabs import SlimTabs

LINES_WANTED = 12


class HardwarePanel(QWidget):
    """Order and catalogue in two tabs."""

    import_wanted = Signal()
    """The person wants to import a catalogue."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.order = OrderView(session, self)
        self.catalogue = CatalogueBlock(session, self)
        self.tabs = SlimTabs({}, self)
        self.tabs.setAccessibleName("Order and catalogue")
        self.tabs.setDocumentMode(True)
        self.tabs.addTab(self.order, "&Order")
        self.tabs.addTab(self.catalogue, "Catalo&gue")
        whole = QVBoxLayout(self)
        whole.setContentsMargins(6, 6, 6, 6)
        whole.addWidget(self.tabs)
        self.order.import_wanted.connect(self.import_wanted)
        self.catalogue.import_wanted.connect(self.import_wanted)

    @property
    def total(self) -> int:
        """How many lines the order has."""
        return self.order.table.total

    def wanted_height(self) -> int:
        """The height at which several lines of the order can be read."""
        return self.fontMetrics().lineSpacing() * LINES_WANTED + 120

    def update_from_document(self) -> None:
        """Show the present document."""
        self.order.update_from_document()
        self.catalogue.update_from_document()
        count = self.catalogue.table.total
        self.tabs.setTabText(1, f"Catalo&gue ({count})" if count else "Catalo&gue")
