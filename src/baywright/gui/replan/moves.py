"""The boxes that a re-plan would move, each with a tick: which of them to accept."""

from collections.abc import Iterable

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTreeWidget, QTreeWidgetItem, QWidget

from baywright.gui.replan.words import spot_words
from baywright.model.difference import BoxMove
from baywright.model.project import Project

_ID = Qt.ItemDataRole.UserRole
NUMBER, BOX, FROM, TO = range(4)


class MoveList(QTreeWidget):
    """One line a box, numbered as on the elevation; the space bar ticks and unticks."""

    ids_selected = Signal(object)
    """The person selected the lines of these boxes (a tuple of ids)."""
    ticked = Signal()
    """Other boxes are ticked."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Boxes that move")
        self.setHeaderLabels(["No.", "Box", "From", "To"])
        self.setRootIsDecorated(False)
        self.setUniformRowHeights(True)
        self.setAlternatingRowColors(True)
        self.setAllColumnsShowFocus(True)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        header = self.header()
        header.setStretchLastSection(False)
        header.setMinimumSectionSize(30)
        for column in (NUMBER, FROM, TO):
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.ResizeToContents)
        header.setSectionResizeMode(BOX, QHeaderView.ResizeMode.Stretch)
        self._is_filling = False
        self.itemSelectionChanged.connect(self._on_selected)
        self.itemChanged.connect(lambda _item, _column: None if self._is_filling else self.ticked.emit())

    def show_moves(self, moves: Iterable[BoxMove], project: Project, *, can_choose: bool) -> None:
        """List these moves. Where there is a choice all are ticked but those that were unticked in the list before."""
        unticked = set(self.ids) - set(self.ticked_ids)
        self._is_filling = True
        self.clear()
        for number, move in enumerate(moves, 1):
            label = project.box(move.box_id).label
            item = QTreeWidgetItem(self, [str(number), label, spot_words(move.before), spot_words(move.after)])
            item.setData(NUMBER, _ID, move.box_id)
            item.setToolTip(BOX, label)
            if not can_choose:
                continue
            item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
            state = Qt.CheckState.Unchecked if move.box_id in unticked else Qt.CheckState.Checked
            item.setCheckState(NUMBER, state)
        self._is_filling = False
        self.ticked.emit()

    def _items(self) -> list[QTreeWidgetItem]:
        items = [self.topLevelItem(row) for row in range(self.topLevelItemCount())]
        return [item for item in items if item is not None]

    @property
    def ids(self) -> tuple[str, ...]:
        """All boxes listed."""
        return tuple(str(item.data(NUMBER, _ID)) for item in self._items())

    @property
    def ticked_ids(self) -> tuple[str, ...]:
        """The boxes that are ticked."""
        checked = (item for item in self._items() if item.checkState(NUMBER) is Qt.CheckState.Checked)
        return tuple(str(item.data(NUMBER, _ID)) for item in checked)

    def tick(self, box_id: str, *, is_ticked: bool) -> None:
        """Tick or untick a box."""
        for item in self._items():
            if item.data(NUMBER, _ID) == box_id:
                item.setCheckState(NUMBER, Qt.CheckState.Checked if is_ticked else Qt.CheckState.Unchecked)

    def select_ids(self, ids: Iterable[str]) -> None:
        """Select the lines of these boxes, without telling that the person did."""
        wanted = set(ids)
        self.blockSignals(True)
        for item in self._items():
            item.setSelected(item.data(NUMBER, _ID) in wanted)
        self.blockSignals(False)
        self.viewport().update()

    def _on_selected(self) -> None:
        chosen = tuple(str(item.data(NUMBER, _ID)) for item in self._items() if item.isSelected())
        if chosen and not self._is_filling:
            self.ids_selected.emit(chosen)

    def sizeHint(self) -> QSize:
        """A few lines."""
        return QSize(340, self.fontMetrics().lineSpacing() * 6)

    def minimumSizeHint(self) -> QSize:
        """As low as the tabs may be."""
        return QSize(180, self.fontMetrics().lineSpacing() * 3)
