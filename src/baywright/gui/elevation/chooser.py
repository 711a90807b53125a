"""“Move to…”: every legal place of a box by bay and row, to choose from without dragging."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from baywright.app.session import Session
from baywright.gui.elevation.places import Place, bay_count, legal_rows
from baywright.gui.wording import count_words
from baywright.model.length import format_length


class PlaceChooser(QDialog):
    """Asks for one of the legal places of a box; edits nothing itself."""

    def __init__(self, session: Session, box_id: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._box_id = session, box_id
        self._at = session.project.arrangement.placement_of(box_id)
        label = session.project.box(box_id).label
        self.setWindowTitle("Move to")
        self.bays = QListWidget(self)
        self.bays.setAccessibleName("Bay")
        self.rows = QListWidget(self)
        self.rows.setAccessibleName("Row")
        self.buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel, self)
        self.move_button = self.buttons.addButton("Move", QDialogButtonBox.ButtonRole.AcceptRole)
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)
        self._arrange(label)
        for bay in range(bay_count(session)):
            here = " (here now)" if self._at is not None and self._at.bay == bay else ""
            self.bays.addItem(f"Bay {bay + 1}{here}")
        self.bays.currentRowChanged.connect(self._on_bay_changed)
        self.rows.itemDoubleClicked.connect(lambda _item: self.accept() if self.place else None)
        self.rows.itemSelectionChanged.connect(lambda: self.move_button.setEnabled(self.place is not None))
        self.bays.setCurrentRow(min(self._at.bay, self.bays.count() - 1) if self._at else 0)

    @property
    def place(self) -> Place | None:
        """The bay and row chosen, from 0; None while none is."""
        item = self.rows.currentItem()
        if item is None or not item.isSelected() or item.data(Qt.ItemDataRole.UserRole) is None:
            return None
        return self.bays.currentRow(), int(item.data(Qt.ItemDataRole.UserRole))

    def _arrange(self, label: str) -> None:
        head = QLabel(f"Places where “{label}” can stand:", self)
        head.setTextFormat(Qt.TextFormat.PlainText)
        head.setWordWrap(True)
        columns = QHBoxLayout()
        for title, widget, stretch in (("Bay", self.bays, 2), ("Row and height over the floor", self.rows, 3)):
            column = QVBoxLayout()
            caption = QLabel(title, self)
            caption.setBuddy(widget)
            column.addWidget(caption)
            column.addWidget(widget)
            columns.addLayout(column, stretch)
        whole = QVBoxLayout(self)
        whole.addWidget(head)
        whole.addLayout(columns)
        whole.addWidget(self.buttons)
        self.resize(420, 360)

    def _on_bay_changed(self, bay: int) -> None:
        self.rows.clear()
        value = self._session.workings.value
        free = legal_rows(self._session, self._box_id, bay)
        if self._at is not None and self._at.bay == bay:
            free = [row for row in free if row != self._at.row]
        for row in reversed(free):
            edge = value("base_upper_height") + value("first_row") + value("pitch") * row - value("line_offset")
            text = f"Row {row + 1}: {format_length(edge, self._session.project.unit)}"
            item = QListWidgetItem(text, self.rows)
            item.setData(Qt.ItemDataRole.UserRole, row)
        if not free:
            none = QListWidgetItem("No free place in this bay", self.rows)
            none.setFlags(Qt.ItemFlag.NoItemFlags)
        else:
            self.rows.setCurrentRow(self.rows.count() - 1)
        self.rows.setAccessibleDescription(f"{count_words(len(free), 'place')} in bay {bay + 1}")
        self.move_button.setEnabled(self.place is not None)
