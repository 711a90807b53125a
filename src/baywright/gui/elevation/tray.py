"""The tray under the elevation: the boxes that have no drawer. They are dragged from here into a drawer and back.

Law: it shows and selects; what is dropped on it is decided by whoever carries the box.
"""

from collections.abc import Iterable

from PySide6.QtCore import (
    QItemSelection,
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    QPoint,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor, QContextMenuEvent, QMouseEvent, QPainter, QPen, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QLabel,
    QListView,
    QListWidget,
    QListWidgetItem,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QVBoxLayout,
    QWidget,
)

from baywright.gui.elevation.canvas import Hands
from baywright.gui.elevation.captions import box_details, box_tip
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.lettering import Line, bold, draw_lines, smaller, text_width
from baywright.gui.wording import count_words
from baywright.model.project import Project

_BOX_ID, _DETAILS = Qt.ItemDataRole.UserRole, Qt.ItemDataRole.UserRole + 1
_WIDEST_CHIP_PX = 220
_ROWS_SHOWN = 2


class _Chips(QStyledItemDelegate):
    """Paints a box of the tray as a small plate with its label and details."""

    def __init__(self, style: FaceStyle, parent: QWidget) -> None:
        super().__init__(parent)
        self.face = style

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:
        """Two lines high; as wide as the longer one, within reason."""
        strong, small = bold(self.face.font), smaller(self.face.font)
        widest = max(text_width(str(index.data()), strong), text_width(str(index.data(_DETAILS)), small))
        height = option.fontMetrics.height() * 2 + 8
        return QSize(min(_WIDEST_CHIP_PX, round(widest) + 18), height)

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        """Plate, label, details."""
        colours = self.face.colours
        selected = bool(option.state & QStyle.StateFlag.State_Selected)
        focused = bool(option.state & QStyle.StateFlag.State_HasFocus)
        plate = QRectF(option.rect).adjusted(1.5, 1.5, -1.5, -1.5)
        width = 3.0 if selected else 1.0
        painter.save()
        painter.setPen(QPen(QColor(colours.selected_line if selected or focused else colours.box_line), width))
        painter.setBrush(QColor(colours.selected if selected else colours.box))
        painter.drawRect(plate)
        strong = QColor(colours.selected_text if selected else colours.box_text)
        weak = QColor(colours.selected_text if selected else colours.box_detail)
        lines = [
            Line(str(index.data()), bold(self.face.font), strong),
            Line(str(index.data(_DETAILS)), smaller(self.face.font), weak),
        ]
        draw_lines(painter, plate.adjusted(5, 1, -5, -1), lines)
        painter.restore()


class TrayList(QListWidget):
    """The boxes of the tray, in rows of chips."""

    menu_wanted = Signal(QPoint)

    def __init__(self, style: FaceStyle, parent: QWidget) -> None:
        super().__init__(parent)
        self.hands: Hands | None = None
        self.chips = _Chips(style, self)
        self.setItemDelegate(self.chips)
        self.setFlow(QListView.Flow.LeftToRight)
        self.setWrapping(True)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setSpacing(2)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName("Boxes without a drawer")

    @property
    def selected_ids(self) -> tuple[str, ...]:
        """The selected boxes, in the inventory's order."""
        items = [self.item(row) for row in range(self.count())]
        return tuple(str(item.data(_BOX_ID)) for item in items if item.isSelected())

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Select as usual, and take hold of the box."""
        super().mousePressEvent(event)
        item = self.itemAt(event.position().toPoint())
        if event.button() is Qt.MouseButton.LeftButton and item is not None and item.isSelected() and self.hands:
            self.hands.press(str(item.data(_BOX_ID)), self.selected_ids, event.globalPosition().toPoint(), None)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Carry the box that is held."""
        if self.hands is not None and self.hands.is_holding:
            self.hands.move(event.globalPosition().toPoint())
        else:
            super().mouseMoveEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let the box go."""
        if self.hands is not None and self.hands.is_holding and event.button() is Qt.MouseButton.LeftButton:
            self.hands.release(event.globalPosition().toPoint())
        super().mouseReleaseEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """The menu is about the selected boxes."""
        self.menu_wanted.emit(event.globalPos())


class Tray(QFrame):
    """The tray with its heading; folds up to the heading while it is empty."""

    selection_changed = Signal()

    def __init__(self, style: FaceStyle, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._style = style
        self._shown: tuple[tuple[str, str, str, str], ...] = ()
        self.heading = QLabel(self)
        self.heading.setWordWrap(True)
        self.list = TrayList(style, self)
        box = QVBoxLayout(self)
        box.setContentsMargins(8, 4, 8, 4)
        box.setSpacing(2)
        box.addWidget(self.heading)
        box.addWidget(self.list)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self.list.itemSelectionChanged.connect(self.selection_changed)
        self.list.hide()

    def show_boxes(self, project: Project, box_ids: tuple[str, ...]) -> None:
        """Show these boxes; which of them are selected is to be said anew."""
        boxes = {box.id: box for box in project.boxes}
        lines = []
        for box_id in box_ids:
            box = boxes[box_id]
            size = project.size_of(box)
            unit = project.unit
            lines.append((box_id, box.label, box_details(box, size, unit), box_tip(box, size, unit, None)))
        self._show_heading(project, len(box_ids))
        if tuple(lines) == self._shown:
            return
        self._shown = tuple(lines)
        self.list.blockSignals(True)
        self.list.clearSelection()
        self.list.clear()
        for box_id, label, details, tip in lines:
            item = QListWidgetItem(label, self.list)
            item.setData(_BOX_ID, box_id)
            item.setData(_DETAILS, details)
            item.setData(Qt.ItemDataRole.AccessibleTextRole, f"{label}, {details}")
            item.setToolTip(tip)
        self.list.blockSignals(False)
        self.list.setVisible(bool(lines))
        self._fit_height()

    def select(self, box_ids: Iterable[str]) -> None:
        """Select exactly these boxes, as far as they are here."""
        wanted = set(box_ids)
        if wanted == set(self.list.selected_ids):
            return
        chosen = QItemSelection()
        model = self.list.model()
        for row in range(self.list.count()):
            if self.list.item(row).data(_BOX_ID) in wanted:
                chosen.select(model.index(row, 0), model.index(row, 0))
        self.list.blockSignals(True)
        self.list.selectionModel().select(chosen, QItemSelectionModel.SelectionFlag.ClearAndSelect)
        self.list.blockSignals(False)
        self.list.viewport().update()
        self.selection_changed.emit()

    def show_style(self, style: FaceStyle) -> None:
        """Paint with other colours or letters."""
        self._style = self.list.chips.face = style
        self.list.viewport().update()
        self._fit_height()

    def show_target(self, is_target: bool) -> None:
        """Show that letting go now puts the box here."""
        self.setFrameShape(QFrame.Shape.Box if is_target else QFrame.Shape.StyledPanel)
        self.setLineWidth(2 if is_target else 1)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Chips wrap anew."""
        super().resizeEvent(event)
        self._fit_height()

    def _show_heading(self, project: Project, count: int) -> None:
        if count:
            text = f"{count_words(count, 'box', 'boxes')} without a drawer: drag into a bay, or choose “Move to…”."
        elif project.boxes:
            text = "Every box has its drawer. Drag a box here to take it out."
        else:
            text = "Boxes without a drawer will lie here."
        self.heading.setText(text)

    def _fit_height(self) -> None:
        """As high as the chips need, up to two rows; more are scrolled."""
        if not self.list.count():
            return
        chip = self.list.sizeHintForRow(0) + 2 * self.list.spacing()
        width = self.list.viewport().width() - 4
        used, rows = 0, 1
        for row in range(self.list.count()):
            wide = self.list.sizeHintForIndex(self.list.model().index(row, 0)).width() + 2 * self.list.spacing()
            if used and used + wide > width:
                used, rows = 0, rows + 1
                if rows >= _ROWS_SHOWN:
                    break
            used += wide
        self.list.setFixedHeight(min(rows, _ROWS_SHOWN) * chip)
