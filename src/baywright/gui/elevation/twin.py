"""The elevation's twin for those who cannot see or point: every drawer as a row of a table, selected in step with it.

Laws: it tells the same layout in words; it edits nothing.
"""

from collections.abc import Callable, Iterable

from PySide6.QtCore import (
    QAbstractTableModel,
    QEvent,
    QItemSelection,
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    Qt,
    Signal,
)
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from baywright.app.notices import DocumentChanged, DocumentReplaced, Notice
from baywright.app.session import Session
from baywright.gui.elevation.captions import LOCKED, mass_caption, opening_caption, standing_words
from baywright.gui.elevation.drawers import Drawer
from baywright.gui.elevation.layout import Layout, lay_out
from baywright.gui.elevation.view import ElevationView
from baywright.gui.tables.model import MARK, runs
from baywright.model.length import LengthUnit, format_length
from baywright.model.making import Part

HEADINGS = ("Bay", "Drawer", "Box", "Row", "Height over floor", "Opening", "Mass", "Lock", "How it stands")
_DRAWER_PARTS = "DF"
"""First letters of the parts of drawers and their front panels."""
_BOX = HEADINGS.index("Box")
_BOLD = QFont()
_BOLD.setBold(True)
_ANY = QModelIndex | QPersistentModelIndex
_ROOT = QModelIndex()
_WIDEST_COLUMN = 260
_AIR_PX = 7
"""Of a row's height, over and under its letters together."""
_ROWS_MEASURED = 50
"""How many rows are looked at to find a column's width; all of a long list would take too long."""


class DrawerTable(QAbstractTableModel):
    """The drawers of a session's document, bay by bay from below. An edit redraws only the rows that differ."""

    def __init__(self, session: Session, layout_now: Callable[[], Layout], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._layout_now = layout_now
        self._drawers: tuple[Drawer, ...] = ()
        self._rows: dict[str, int] = {}
        self._marked: frozenset[str] = frozenset()
        self._unit = session.project.unit
        self.refresh()
        unsubscribe = session.subscribe(self._on_noticed)
        self.destroyed.connect(lambda _gone=None: unsubscribe())

    def refresh(self) -> None:
        """Read the session's present document."""
        layout = self._layout_now()
        drawers, unit = layout.drawers, layout.project.unit
        before, same_unit = self._drawers, unit == self._unit
        if same_unit and [d.box.id for d in drawers] == [d.box.id for d in before]:
            self._drawers = drawers
            pairs = enumerate(zip(drawers, before, strict=True))
            for first, last in runs([row for row, (new, old) in pairs if new is not old and new != old]):
                self.dataChanged.emit(self.index(first, 0), self.index(last, len(HEADINGS) - 1))
            return
        self.beginResetModel()
        self._drawers, self._unit = drawers, unit
        self._rows = {drawer.box.id: row for row, drawer in enumerate(drawers)}
        self.endResetModel()

    def box_id(self, row: int) -> str:
        """The box of a table row."""
        return self._drawers[row].box.id

    def row_of(self, box_id: str) -> int | None:
        """The table row of a box, or None where it has no drawer."""
        return self._rows.get(box_id)

    def boxes_in(self, is_wanted: Callable[[int], bool]) -> tuple[str, ...]:
        """The boxes in the drawers of these bays that are made."""
        return tuple(d.box.id for d in self._drawers if not d.is_wished and is_wanted(d.bay))

    def mark(self, box_ids: Iterable[str]) -> None:
        """Let the drawers of these boxes stand out, by a sign and in bold, and no others."""
        marked = frozenset(box_ids)
        changed, self._marked = marked ^ self._marked, marked
        for first, last in runs(sorted(self._rows[box_id] for box_id in changed if box_id in self._rows)):
            self.dataChanged.emit(self.index(first, 0), self.index(last, len(HEADINGS) - 1))

    @property
    def marked(self) -> frozenset[str]:
        """The boxes whose drawers stand out."""
        return self._marked

    @property
    def kind_shown(self) -> tuple[bool, LengthUnit]:
        """What the columns' widths depend on: whether there are rows at all, and the unit of lengths."""
        return bool(self._drawers), self._unit

    def rowCount(self, parent: _ANY = _ROOT) -> int:
        """A row for each drawer."""
        return 0 if parent.isValid() else len(self._drawers)

    def columnCount(self, parent: _ANY = _ROOT) -> int:
        """A column for each heading."""
        return 0 if parent.isValid() else len(HEADINGS)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The headings."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return HEADINGS[section]
        return None

    def data(self, index: _ANY, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The words of a cell; troubles and contents as its tool tip."""
        if not index.isValid():
            return None
        drawer = self._drawers[index.row()]
        is_marked = drawer.box.id in self._marked
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            words = _cells(drawer, self._unit)[index.column()]
            return f"{MARK}{words}" if is_marked and index.column() == _BOX else words
        if role == Qt.ItemDataRole.FontRole and is_marked:
            return _BOLD
        if role == Qt.ItemDataRole.ToolTipRole:
            return "\n".join(filter(None, (drawer.box.contents, *drawer.troubles)))
        if role == Qt.ItemDataRole.TextAlignmentRole and index.column() in (0, 1, 3, 4, 6):
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        return None

    def _on_noticed(self, notice: Notice) -> None:
        if isinstance(notice, DocumentChanged | DocumentReplaced):
            self.refresh()


class DrawerTableView(QTableView):
    """The table, with the elevation's way of telling what is selected."""

    box_selected = Signal(object)
    """As `ElevationView.box_selected`."""

    def __init__(
        self, session: Session, parent: QWidget | None = None, layout_now: Callable[[], Layout] | None = None
    ) -> None:
        """`layout_now` tells the layout of the present document where somebody has it already."""
        super().__init__(parent)
        self.table = DrawerTable(session, layout_now or (lambda: _layout_of(session)), self)
        self.setModel(self.table)
        self.setAccessibleName("Drawers")
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setTabKeyNavigation(False)
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.horizontalHeader().setStretchLastSection(True)
        self.horizontalHeader().setResizeContentsPrecision(_ROWS_MEASURED)
        self.setWordWrap(False)
        self._fitted_for: tuple[bool, LengthUnit] | None = None
        self._fit_columns()
        self._is_selecting = False
        self._selected: tuple[str, ...] = ()
        self.selectionModel().selectionChanged.connect(self._on_selected)
        self.table.modelReset.connect(self._on_reset)

    @property
    def selected_ids(self) -> tuple[str, ...]:
        """The boxes of the selected rows, from the top."""
        return tuple(self.table.box_id(row) for row in sorted(i.row() for i in self.selectionModel().selectedRows()))

    def select_boxes(self, ids: Iterable[str]) -> None:
        """Select exactly the rows of these boxes; emits nothing."""
        self._selected = tuple(ids)
        self._is_selecting = True
        chosen = QItemSelection()
        rows = [row for box_id in self._selected if (row := self.table.row_of(box_id)) is not None]
        for row in rows:
            chosen.select(self.table.index(row, 0), self.table.index(row, self.table.columnCount() - 1))
        self.selectionModel().select(chosen, QItemSelectionModel.SelectionFlag.ClearAndSelect)
        if rows:
            self.scrollTo(self.table.index(rows[0], 0))
        self._is_selecting = False

    def show_parts(self, parts: Iterable[Part]) -> None:
        """Let the drawers that have any of these parts stand out."""
        wanted = [part for part in parts if part.number[:1] in _DRAWER_PARTS]
        self.table.mark(self.table.boxes_in(lambda bay: any(not part.bays or bay in part.bays for part in wanted)))

    def _on_selected(self) -> None:
        if not self._is_selecting and self.selected_ids != self._selected:
            self._selected = self.selected_ids
            self.box_selected.emit(self._selected[0] if len(self._selected) == 1 else list(self._selected))

    def changeEvent(self, event: QEvent) -> None:
        """Keep the columns fitting the text size."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self._fit_columns()

    def _fit_columns(self) -> None:
        """Make columns as wide as their words, within reason."""
        self._fitted_for = self.table.kind_shown
        self.verticalHeader().setDefaultSectionSize(self.fontMetrics().height() + _AIR_PX)
        self.resizeColumnsToContents()
        header = self.horizontalHeader()
        for column in range(header.count()):
            header.resizeSection(column, min(_WIDEST_COLUMN, header.sectionSize(column)))

    def _on_reset(self) -> None:
        if self.table.kind_shown != self._fitted_for:  # measuring the words at every edit would take too long
            self._fit_columns()
        self.select_boxes(self._selected)


def _layout_of(session: Session) -> Layout:
    return lay_out(session.project, session.workings, session.report, lifting_indices=session.derived.lifting_indices)


def couple(elevation: ElevationView, table: DrawerTableView) -> None:
    """What is selected in one is selected in the other from now on."""
    elevation.box_selected.connect(lambda ids: table.select_boxes([ids] if isinstance(ids, str) else ids))
    table.box_selected.connect(lambda ids: elevation.select_boxes([ids] if isinstance(ids, str) else ids))


def _cells(drawer: Drawer, unit: LengthUnit) -> tuple[str, ...]:
    return (
        str(drawer.bay + 1),
        str(drawer.number),
        drawer.box.label,
        str(drawer.row + 1),
        format_length(drawer.lower_edge, unit),
        opening_caption(drawer, unit),
        mass_caption(drawer.box),
        LOCKED[drawer.lock],
        "; ".join([*standing_words(drawer), *(["The bay stands as built"] if drawer.is_built else [])]),
    )
