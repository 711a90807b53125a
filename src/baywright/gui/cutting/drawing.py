"""The drawing of one layout: a sheet or a bar to scale, its pieces, rests and trim, and the cut that is stepped to.

Laws: places come from the layout; parts that are selected in the window stand out; a click or an arrow key chooses the
part of a piece; the step of sawing outlines the panel that is cut and draws the cut through it.
"""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QBrush, QColor, QFontMetricsF, QKeyEvent, QMouseEvent, QPainter, QPen
from PySide6.QtWidgets import QWidget

from baywright.gui.cutting.line import CutLine, LayoutLine, layout_words, size_words
from baywright.gui.cutting.painting import (
    KEEP,
    Lettered,
    paint_grain,
    paint_piece,
    paint_rest,
    size_on_drawing,
)
from baywright.gui.drawings.plate import Plate
from baywright.gui.elevation.area import Area
from baywright.gui.elevation.captions import bare_length
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.lettering import longest_that_fits, smaller
from baywright.gui.elevation.pixels import Pixels
from baywright.gui.wording import count_words
from baywright.model.cutting import BarLayout, SheetLayout
from baywright.model.length import LengthUnit

NOTHING_CHOSEN = "Select a layout to see its drawing."
_BAR_SHARE = 0.06
"""How high a bar is drawn, as a share of its length: bars have no width that matters here."""
_STEPS = {Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1, Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1}


class CuttingDrawing(Plate):
    """Draws one layout, or says that none is chosen."""

    parts_selected = Signal(object)
    """The person chose the part of a piece: its number in a tuple; empty for none."""

    def __init__(self, unit: Callable[[], LengthUnit], parent: QWidget | None = None) -> None:
        self._line: LayoutLine | None = None
        self._cut: CutLine | None = None
        self._numbers: frozenset[str] = frozenset()
        self._piece = -1
        super().__init__("Drawing of the layout", NOTHING_CHOSEN, unit, parent)

    # ---- what is shown

    @property
    def line(self) -> LayoutLine | None:
        """The layout that is drawn."""
        return self._line

    @property
    def cut(self) -> CutLine | None:
        """The cut that is stepped to."""
        return self._cut

    @property
    def numbers(self) -> frozenset[str]:
        """The parts whose pieces stand out."""
        return self._numbers

    def show_layout(self, line: LayoutLine | None) -> None:
        """Draw this layout; None says to choose one."""
        same_size = line is not None and self._line is not None and _extent(line) == _extent(self._line)
        self._line, self._cut, self._piece = line, None, -1
        self.setAccessibleDescription(NOTHING_CHOSEN if line is None else layout_words(line, self._unit()))
        self.show_extent(None if line is None else _extent(line))
        if not same_size:
            self.zoom_to_fit()
        self.repaint_all()

    def show_cut(self, cut: CutLine | None) -> None:
        """Step to a cut; None shows none."""
        self._cut = cut
        self.repaint_all()

    def show_parts(self, numbers: Sequence[str]) -> None:
        """Let the pieces of exactly these parts stand out."""
        self._numbers = frozenset(numbers)
        self.repaint_all()

    def has_something(self) -> bool:
        """Whether a layout is chosen."""
        return self._line is not None

    def margins_px(self, size: QSize) -> tuple[float, float, float, float]:
        """Room for the heading over it and the foot below."""
        line = QFontMetricsF(self.font()).height()
        return 8.0, line + 8.0, 8.0, line + 8.0

    # ---- pieces as areas

    def _areas(self) -> list[tuple[str, Area]]:
        """Every piece with its part's number, in the layout's order."""
        if self._line is None:
            return []
        layout = self._line.layout
        if isinstance(layout, BarLayout):
            high = _extent(self._line).height
            return [(piece.part_number, Area(piece.from_mm, 0.0, piece.length_mm, high)) for piece in layout.pieces]
        return [(p.part_number, Area(p.x_mm, p.y_mm, p.length_mm, p.width_mm)) for p in layout.pieces]

    def piece_middle(self, index: int) -> QPointF:
        """The pixel in the middle of a piece, for whoever clicks on it."""
        return QPointF(self.mapFromScene(self._areas()[index][1].centre))

    # ---- painting

    def paint(self, painter: QPainter, pixels: Pixels, style: FaceStyle) -> None:
        """Sheet or bar, pieces, rests, the cut, and words."""
        line = self._line
        if line is None:
            return
        outline = pixels.rect(_extent(line))
        painter.fillRect(outline, QColor(style.colours.bay))
        if isinstance(line.layout, SheetLayout):
            self._paint_sheet(painter, pixels, line.layout, style)
        else:
            self._paint_bar(painter, pixels, line.layout, style)
        painter.setPen(QPen(QColor(style.colours.dimension), 1.4))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(outline)
        self._paint_cut(painter, pixels, style)
        self._paint_words(painter, outline, line, style)

    def _paint_sheet(self, painter: QPainter, pixels: Pixels, layout: SheetLayout, style: FaceStyle) -> None:
        _paint_trim(painter, pixels, layout, style)
        for rest in layout.rests:
            kept = (KEEP, size_on_drawing(rest.length_mm, rest.width_mm, style))
            area = Area(rest.x_mm, rest.y_mm, rest.length_mm, rest.width_mm)
            paint_rest(painter, pixels.rect(area), kept, style, is_reusable=rest.is_reusable)
        for index, piece in enumerate(layout.pieces):
            area = Area(piece.x_mm, piece.y_mm, piece.length_mm, piece.width_mm)
            size = size_on_drawing(piece.length_mm, piece.width_mm, style)
            words = Lettered(f"{piece.part_number} · {piece.piece}", (size, "turned" if piece.is_turned else ""))
            self._paint_piece(painter, pixels.rect(area), words, style, piece.part_number, index)

    def _paint_bar(self, painter: QPainter, pixels: Pixels, layout: BarLayout, style: FaceStyle) -> None:
        high = layout.length_mm * _BAR_SHARE
        if layout.rest_mm > 0:
            rest = pixels.rect(Area(layout.length_mm - layout.rest_mm, 0.0, layout.rest_mm, high))
            words = (KEEP, bare_length(layout.rest_mm, style.unit))
            paint_rest(painter, rest, words, style, is_reusable=layout.is_rest_reusable)
        for index, piece in enumerate(layout.pieces):
            rect = pixels.rect(Area(piece.from_mm, 0.0, piece.length_mm, high))
            words_on = Lettered(f"{piece.part_number} · {piece.piece}", (bare_length(piece.length_mm, style.unit),))
            self._paint_piece(painter, rect, words_on, style, piece.part_number, index)

    def _paint_piece(
        self, painter: QPainter, rect: QRectF, words: Lettered, style: FaceStyle, number: str, index: int
    ) -> None:
        paint_piece(painter, rect, words, style, chosen=number in self._numbers)
        if index == self._piece and self.hasFocus():
            painter.setPen(QPen(QColor(style.colours.selected_line), 1.4, Qt.PenStyle.DotLine))
            painter.drawRect(rect.adjusted(4, 4, -4, -4))

    def _paint_cut(self, painter: QPainter, pixels: Pixels, style: FaceStyle) -> None:
        cut, line = self._cut, self._line
        if cut is None or line is None:
            return
        colour = QColor(style.colours.change)
        if cut.saw is None:
            x = pixels.x(cut.from_mm + cut.measure_mm)
            outline = pixels.rect(_extent(line))
            painter.setPen(QPen(colour, 2.6))
            painter.drawLine(QLineF(x, outline.top() - 6.0, x, outline.bottom() + 6.0))
            return
        saw = cut.saw
        panel = pixels.rect(Area(saw.x_mm, saw.y_mm, saw.length_mm, saw.width_mm))
        painter.setPen(QPen(colour, 3.0, Qt.PenStyle.DashLine))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(panel.adjusted(1.5, 1.5, -1.5, -1.5))
        painter.setPen(QPen(colour, 2.6))
        if saw.is_across:
            x = pixels.x(saw.at_mm)
            painter.drawLine(QLineF(x, panel.top() - 5.0, x, panel.bottom() + 5.0))
        else:
            y = pixels.y(saw.at_mm)
            painter.drawLine(QLineF(panel.left() - 5.0, y, panel.right() + 5.0, y))

    def _paint_words(self, painter: QPainter, outline: QRectF, line: LayoutLine, style: FaceStyle) -> None:
        font = smaller(style.font)
        height = QFontMetricsF(font).height()
        view = QRectF(self.viewport().rect()).adjusted(8, 0, -8, 0)
        size, unit = size_words(line.layout, style.unit), "in" if style.unit is LengthUnit.INCH else "mm"
        owned = "owned" if line.layout.is_owned else "to buy"
        head = f"{line.title}: {line.material}"
        wordings = (f"{head}, {size}, {owned}", f"{head}, {size}", f"{line.title}: {size}", line.title)
        painter.setFont(font)
        painter.setPen(QColor(style.colours.dimension))
        top = QRectF(view.left(), outline.top() - height - 4.0, view.width(), height)
        painter.drawText(top, Qt.AlignmentFlag.AlignLeft, longest_that_fits(wordings, font, view.width()))
        foot = QRectF(view.left(), outline.bottom() + 4.0, view.width(), height)
        layout = line.layout
        stages = f", {count_words(layout.stages, 'stage')}" if isinstance(layout, SheetLayout) else ""
        told = (f"measures in {unit}; {line.used:.0%} used{stages}", f"{line.used:.0%} used")
        if line.has_grain:
            paint_grain(painter, QPointF(outline.left(), foot.center().y()), style)
            foot.setLeft(outline.left() + 90.0)
        painter.setFont(font)
        painter.setPen(QColor(style.colours.dimension))
        painter.drawText(foot, Qt.AlignmentFlag.AlignRight, longest_that_fits(told, font, foot.width()))

    # ---- the mouse and the keys

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose the part of the piece under the pointer."""
        super().mousePressEvent(event)
        if event.button() is not Qt.MouseButton.LeftButton or self._space_held or self._line is None:
            return
        place = self.at_pixel(event.position())
        for index, (_, area) in enumerate(self._areas()):
            if area.left <= place.x() <= area.right and area.bottom <= place.y() <= area.top:
                self._choose(index)
                return
        if self._numbers:
            self.show_parts(())
            self.parts_selected.emit(())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows go from piece to piece and choose its part."""
        step, count = _STEPS.get(Qt.Key(event.key())), len(self._areas())
        if step is None or not count or event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            super().keyPressEvent(event)
            return
        self._choose((self._piece + step) % count if self._piece >= 0 else 0 if step > 0 else count - 1)
        event.accept()

    def _choose(self, index: int) -> None:
        self._piece = index
        number = self._areas()[index][0]
        self.show_parts((number,))
        self.parts_selected.emit((number,))


def _extent(line: LayoutLine) -> Area:
    layout = line.layout
    if isinstance(layout, BarLayout):
        return Area(0.0, 0.0, layout.length_mm, layout.length_mm * _BAR_SHARE)
    return Area(0.0, 0.0, layout.length_mm, layout.width_mm)


def _paint_trim(painter: QPainter, pixels: Pixels, layout: SheetLayout, style: FaceStyle) -> None:
    """What is trimmed off all round, hatched between the sheet's edge and a broken line."""
    if layout.trim_mm <= 0:
        return
    outer = pixels.rect(Area(0.0, 0.0, layout.length_mm, layout.width_mm))
    trim = layout.trim_mm
    inner = pixels.rect(Area(trim, trim, layout.length_mm - 2 * trim, layout.width_mm - 2 * trim))
    painter.setOpacity(0.6)
    painter.fillRect(outer, QBrush(QColor(style.colours.clearance), Qt.BrushStyle.DiagCrossPattern))
    painter.setOpacity(1.0)
    painter.fillRect(inner, QColor(style.colours.bay))
    painter.setPen(QPen(QColor(style.colours.clearance), 1.0, Qt.PenStyle.DashLine))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(inner)
