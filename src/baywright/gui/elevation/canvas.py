"""The drawing itself: the run behind, drawers as items that can be selected, dimensions and the carried box in front.

Laws: redrawn from one layout, only what changed; selecting and redrawing edit nothing; it hands presses on drawers to
whoever carries boxes (`Hands`) and moves none itself.
"""

from collections.abc import Iterable
from typing import Protocol

from PySide6.QtCore import QPoint, QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QContextMenuEvent, QFontMetricsF, QKeyEvent, QMouseEvent, QPainter, QPen
from PySide6.QtWidgets import QGraphicsView, QWidget

from baywright.gui.elevation.carcass import paint_carcass
from baywright.gui.elevation.changes import Changes, paint_changes
from baywright.gui.elevation.dimension import Dimensions
from baywright.gui.elevation.drag import Ghost
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.fronts import paint_fronts
from baywright.gui.elevation.ghost import paint_ghost
from baywright.gui.elevation.item import DrawerItem
from baywright.gui.elevation.layout import Layout
from baywright.gui.elevation.lettering import Line, bold, draw_lines, text_width
from baywright.gui.elevation.limit import paint_limits
from baywright.gui.elevation.neighbour import neighbour
from baywright.gui.elevation.parts import ShownPart, paint_parts
from baywright.gui.elevation.pixels import in_pixels
from baywright.gui.elevation.ruler import chains_for, paint_dimensions, paint_opening
from baywright.gui.elevation.sheet import Sheet
from baywright.gui.elevation.zones import paint_surroundings
from baywright.model.making import FrontPanel

_ARROWS = {
    Qt.Key.Key_Up: (0, 1),
    Qt.Key.Key_Down: (0, -1),
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
}


class Hands(Protocol):
    """Whoever carries boxes; positions are global pixels."""

    def press(self, box_id: str, carried: tuple[str, ...], position: QPoint, grip: QPointF | None) -> None:
        """A box was taken hold of."""

    def move(self, position: QPoint) -> None:
        """The pointer moved with the button down."""

    def release(self, position: QPoint) -> None:
        """The button was let go."""

    @property
    def is_holding(self) -> bool:
        """Whether a box is held."""
        ...


class Canvas(Sheet):
    """The elevation of one layout."""

    selection_changed = Signal()
    menu_wanted = Signal(QPoint)
    """A context menu is wanted at that global position."""
    ground_pressed = Signal(QPointF)
    """The person pressed beside every drawer, at that place in mm."""

    def __init__(self, style: FaceStyle, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setDragMode(QGraphicsView.DragMode.RubberBandDrag)
        self.setCacheMode(QGraphicsView.CacheModeFlag.CacheBackground)
        self.setAccessibleName("Front elevation")
        self._style = style
        self._layout: Layout | None = None
        self._dimensions: Dimensions | None = None
        self._hint: tuple[str, ...] = ()
        self._items: dict[str, DrawerItem] = {}
        self._ghost: Ghost | None = None
        self._hands: Hands | None = None
        self._zone = ""
        self._parts: tuple[ShownPart, ...] = ()
        self._fronts: tuple[FrontPanel, ...] = ()
        self._changes: Changes | None = None
        self.scene().selectionChanged.connect(self.selection_changed)

    def set_hands(self, hands: Hands | None) -> None:
        """Who carries boxes from now on; None leaves them where they are."""
        self._hands = hands

    # What is shown

    def show_layout(self, layout: Layout, dimensions: Dimensions | None, hint: tuple[str, ...] = ()) -> None:
        """Show another layout; items whose drawer is the same as before are left alone."""
        self._layout, self._dimensions, self._hint = layout, dimensions, hint
        drawers = {drawer.box.id: drawer for drawer in layout.drawers}
        for box_id in [box_id for box_id in self._items if box_id not in drawers]:
            self.scene().removeItem(self._items.pop(box_id))
        for box_id, drawer in drawers.items():
            item = self._items.get(box_id)
            if item is None:
                self._items[box_id] = DrawerItem(drawer, self._style)
                self.scene().addItem(self._items[box_id])
            elif item.drawer != drawer:
                item.show_drawer(drawer, self._style)
        self.show_extent(layout.frame.extent if layout.frame else None)
        self._repaint_all()

    def margins_px(self, size: QSize) -> tuple[float, float, float, float]:
        """Room for row numbers, bay numbers and dimensions."""
        return chains_for(size, self._style.font).margins

    def show_style(self, style: FaceStyle) -> None:
        """Paint with other colours, letters or units."""
        self._style = style
        for item in self._items.values():
            item.show_drawer(item.drawer, style)
        self.show_extent(self._layout.frame.extent if self._layout and self._layout.frame else None)
        self._repaint_all()

    def _repaint_all(self) -> None:
        self.resetCachedContent()
        self.viewport().update()

    def show_changes(self, changes: Changes | None) -> None:
        """Mark what a re-plan would move, or nothing."""
        if changes != self._changes:
            self._changes = changes
            self.viewport().update()

    def show_zone(self, zone_id: str) -> None:
        """Make this zone of the wall stand out; none where the id is empty."""
        self._zone = zone_id
        self.viewport().update()

    def show_parts(self, parts: Iterable[ShownPart]) -> None:
        """Make these parts stand out, and no others."""
        chosen = tuple(parts)
        if chosen != self._parts:
            self._parts = chosen
            self.viewport().update()

    def show_fronts(self, fronts: tuple[FrontPanel, ...]) -> None:
        """Show the drawers' front panels where they hang."""
        if fronts != self._fronts:
            self._fronts = fronts
            self.viewport().update()

    @property
    def fronts_shown(self) -> tuple[FrontPanel, ...]:
        """The front panels that are drawn."""
        return self._fronts

    @property
    def parts_shown(self) -> tuple[ShownPart, ...]:
        """The parts that stand out."""
        return self._parts

    def show_ghost(self, ghost: Ghost | None) -> None:
        """Show the carried box, or no longer."""
        self._ghost = ghost
        self.viewport().update()

    def show_moving(self, box_ids: Iterable[str]) -> None:
        """Fade these drawers, and no others."""
        moving = set(box_ids)
        for box_id, item in self._items.items():
            item.show_moving(box_id in moving)

    # Selection

    @property
    def selected_ids(self) -> tuple[str, ...]:
        """The boxes whose drawers are selected, bay by bay from below."""
        chosen = [item.drawer for item in self._items.values() if item.isSelected()]
        return tuple(drawer.box.id for drawer in sorted(chosen, key=lambda drawer: (drawer.bay, drawer.number)))

    def select(self, box_ids: Iterable[str]) -> None:
        """Select exactly these boxes, as far as they have a drawer."""
        wanted = set(box_ids)
        if wanted == set(self.selected_ids):
            return
        self.scene().blockSignals(True)
        for box_id, item in self._items.items():
            item.setSelected(box_id in wanted)
        self.scene().blockSignals(False)
        self.scene().selectionChanged.emit()
        self.viewport().update()

    def reveal(self, box_id: str) -> None:
        """Scroll so far that the drawer of a box can be seen."""
        if box_id in self._items:
            self._items[box_id].ensureVisible()

    def middle_of(self, box_id: str) -> QPoint:
        """The global pixel in the middle of a box's face."""
        centre = self._items[box_id].drawer.areas.box.centre
        return self.viewport().mapToGlobal(self.mapFromScene(centre))

    def bay_at(self, position: QPoint) -> int | None:
        """The drawer bay at a global pixel; None beside the bays."""
        if self._layout is None or self._layout.frame is None:
            return None
        pixel = self.viewport().mapFromGlobal(position)
        return self._layout.frame.bay_at(self.at_pixel(QPointF(pixel)).x())

    def drawer_item(self, box_id: str) -> DrawerItem | None:
        """The item of a box's drawer."""
        return self._items.get(box_id)

    # Painting

    @property
    def hint(self) -> tuple[str, ...]:
        """What the card in the middle says; empty where there is none."""
        return self._hint

    def drawBackground(self, painter: QPainter, rect: QRectF | QRect) -> None:
        """Ground, carcass and the dimensions round it; kept as a picture until something changes."""
        painter.fillRect(rect, QColor(self._style.colours.ground))
        if self._layout is not None and self._layout.frame is not None and self._dimensions is not None:
            paint_carcass(painter, self._layout.frame, self._style)
            chains = chains_for(self.maximumViewportSize(), self._style.font)
            built = self._layout.project.built
            bays = frozenset(built.bays) if built else frozenset[int]()
            paint_dimensions(painter, self._layout.frame, self._dimensions, chains, self._style, bays)

    def drawForeground(self, painter: QPainter, rect: QRectF | QRect) -> None:
        """Limits of the space, the selected drawer's opening, the carried box, and a hint what to do."""
        if self._layout is not None and self._layout.frame is not None:
            space = self._layout.project.space
            paint_fronts(painter, self._fronts, self._style)
            paint_surroundings(painter, space, self._layout.frame, self._style, self._zone)
            paint_limits(painter, self._layout.frame, self._style)
            paint_parts(painter, self._parts, self._style)
            selected = self.selected_ids
            if len(selected) == 1 and self._ghost is None and self._changes is None:
                paint_opening(painter, self._items[selected[0]].drawer, self._layout.frame, self._style)
        if self._changes is not None:
            paint_changes(painter, self._changes, self._style, frozenset(self.selected_ids))
        if self._hint:
            self._paint_hint(painter)
        if self._ghost is not None:
            paint_ghost(painter, self._ghost, self._style, QRectF(self.viewport().rect()))

    def _paint_hint(self, painter: QPainter) -> None:
        """A card in the middle of the view."""
        colours, font = self._style.colours, self._style.font
        lines = [Line(self._hint[0], bold(font), QColor(colours.window.text))]
        lines += [Line(text, font, QColor(colours.window.text)) for text in self._hint[1:]]
        room = QRectF(self.viewport().rect())
        width = min(room.width() - 16.0, max(text_width(line.text, line.font) for line in lines) + 40.0)
        card = QRectF(0.0, 0.0, width, QFontMetricsF(bold(font)).height() * len(lines) + 28.0)
        card.moveCenter(room.center())
        with in_pixels(painter):
            painter.setPen(QPen(QColor(colours.selected_line), 1.5))
            painter.setBrush(QColor(colours.window.note_ground))
            painter.drawRect(card)
            draw_lines(painter, card.adjusted(12, 4, -12, -4), lines)

    # The mouse and the keys

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Select as usual; a left press on a drawer also takes hold of its box."""
        super().mousePressEvent(event)
        if event.button() is not Qt.MouseButton.LeftButton or self._space_held:
            return
        item = self.itemAt(event.position().toPoint())
        if item is None:
            self.ground_pressed.emit(self.at_pixel(event.position()))
        if isinstance(item, DrawerItem) and item.isSelected() and self._hands is not None:
            areas = item.drawer.areas.outside
            grip = self.at_pixel(event.position()) - QPointF(areas.centre.x(), areas.bottom)
            self._hands.press(item.box_id, self.selected_ids, event.globalPosition().toPoint(), grip)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Carry the box that is held."""
        if self._hands is not None and self._hands.is_holding:
            self._hands.move(event.globalPosition().toPoint())
        else:
            super().mouseMoveEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let the box go."""
        if self._hands is not None and self._hands.is_holding and event.button() is Qt.MouseButton.LeftButton:
            self._hands.release(event.globalPosition().toPoint())
        super().mouseReleaseEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """The menu is about the drawer under the pointer, or by key about the selected ones."""
        if event.reason() is QContextMenuEvent.Reason.Keyboard:
            ids = self.selected_ids
            self.menu_wanted.emit(self.middle_of(ids[0]) if ids else self.mapToGlobal(self.rect().center()))
            return
        item = self.itemAt(event.pos())
        if isinstance(item, DrawerItem) and not item.isSelected():
            self.select([item.box_id])
        self.menu_wanted.emit(event.globalPos())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows go from drawer to drawer; with shift they add to the selection."""
        step = _ARROWS.get(Qt.Key(event.key()))
        plain = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
        if step is None or plain not in (Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ShiftModifier):
            super().keyPressEvent(event)
            return
        if self._layout is not None and (found := neighbour(self._layout, self.selected_ids, step)):
            keep = self.selected_ids if plain == Qt.KeyboardModifier.ShiftModifier else ()
            self.select([*keep, found])
            self.reveal(found)
