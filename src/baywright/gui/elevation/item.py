"""The graphics item of one drawer: it can be selected, tells its contents in a tool tip, and moves nothing itself."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPainterPath
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from baywright.gui.elevation.captions import box_tip
from baywright.gui.elevation.drawers import Drawer
from baywright.gui.elevation.face import FaceStyle, paint_drawer

MOVING_OPACITY = 0.35


class DrawerItem(QGraphicsItem):
    """One drawer on the scene, in scene coordinates (mm)."""

    def __init__(self, drawer: Drawer, style: FaceStyle) -> None:
        super().__init__()
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemIsSelectable)
        # Hundreds of faces with text take too long to paint on every move of the pointer.
        self.setCacheMode(QGraphicsItem.CacheMode.DeviceCoordinateCache)
        self.drawer = drawer
        self._style = style
        self.show_drawer(drawer, style)

    @property
    def box_id(self) -> str:
        """The box in the drawer."""
        return self.drawer.box.id

    def show_drawer(self, drawer: Drawer, style: FaceStyle) -> None:
        """Show this state of the drawer from now on."""
        self.prepareGeometryChange()
        self.drawer, self._style = drawer, style
        # Qt asks for these at every repaint, so they are worked out once.
        areas = drawer.areas
        box, tray = areas.box.rect(), areas.outside.rect().united(areas.box.rect())
        # Boxes that share a drawer are each taken hold of by the box alone.
        self._grip = tray if len(drawer.team) < 2 else box
        runners = areas.runners[0].rect().united(areas.runners[1].rect())
        self._bounds = tray.united(areas.clearance.rect()).united(runners)
        self.setToolTip(box_tip(drawer.box, drawer.size, style.unit, drawer))
        self.update()

    def show_moving(self, moving: bool) -> None:
        """Fade the drawer while its box is being dragged elsewhere."""
        self.setOpacity(MOVING_OPACITY if moving else 1.0)

    def boundingRect(self) -> QRectF:
        """The tray, the box and the air over it."""
        return self._bounds

    def shape(self) -> QPainterPath:
        """Tray and box: what the pointer can take hold of."""
        path = QPainterPath()
        path.addRect(self._grip)
        return path

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:
        """Paint the drawer as it is selected or not."""
        paint_drawer(painter, self.drawer, self._style, selected=self.isSelected())
