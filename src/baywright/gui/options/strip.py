"""The options as pictures side by side, in the order of the table and selected in step with it."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QItemSelectionModel, QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import QAbstractItemView, QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from baywright.gui.elevation.area import Area
from baywright.gui.elevation.captions import short_length
from baywright.gui.elevation.colours import ElevationColours, elevation_colours
from baywright.gui.elevation.layout import Layout
from baywright.gui.elevation.lettering import Line, bold, draw_lines, smaller, text_width
from baywright.gui.options.line import OptionLine
from baywright.gui.options.picture import paint_picture
from baywright.gui.tables.model import RowTable
from baywright.model.construction import Uprights
from baywright.model.length import LengthUnit

Index = QModelIndex | QPersistentModelIndex
LEAST_WIDTH_PX, MOST_WIDTH_PX = 120, 300
LEAST_PICTURE_PX, MOST_PICTURE_PX = 40, 84
LINES = 3
MARGIN_PX = 6


class Card(QStyledItemDelegate):
    """Paints one option: its picture, and under it what tells it from the others."""

    def __init__(self, strip: "PictureStrip") -> None:
        super().__init__(strip)
        self._strip = strip

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """All cards are alike, as high as the strip."""
        return self._strip.card_size

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Ground, picture, words, and a frame round the selected one."""
        strip = self._strip
        line, rect = strip.line_at(index.row()), QRectF(option.rect)
        colours = elevation_colours(strip.palette())
        card = rect.adjusted(2, 2, -3, -2)
        painter.save()
        painter.fillRect(card, QColor(colours.ground))
        inner = card.adjusted(MARGIN_PX, MARGIN_PX, -MARGIN_PX, -MARGIN_PX)
        words = QRectF(inner)
        words.setTop(inner.bottom() - strip.words_height)
        picture = QRectF(inner)
        picture.setBottom(words.top() - 3)
        paint_picture(painter, strip.layout_of(line), picture, strip.extent, colours)
        draw_lines(painter, words, strip.words(line, colours))
        is_selected = bool(option.state & QStyle.StateFlag.State_Selected)
        _frame(painter, card, colours, is_selected=is_selected)
        painter.restore()


def _frame(painter: QPainter, card: QRectF, colours: ElevationColours, *, is_selected: bool) -> None:
    width = 3.0 if is_selected else 1.0
    pen = QPen(QColor(colours.selected_line if is_selected else colours.window.line), width)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(card.adjusted(width / 2, width / 2, -width / 2, -width / 2))


class PictureStrip(QListView):
    """One row of cards over a table's model; arrow keys and the mouse select as in the table."""

    def __init__(
        self,
        model: RowTable[OptionLine],
        layout_of: Callable[[OptionLine], Layout],
        unit: Callable[[], LengthUnit],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._rows = model
        self._unit = unit
        self.layout_of = layout_of
        self.extent = Area(0.0, 0.0, 1.0, 1.0)
        self._words_width = 0.0
        self.setModel(model)
        self.setModelColumn(0)
        self.setItemDelegate(Card(self))
        self.setFlow(QListView.Flow.LeftToRight)
        self.setWrapping(False)
        self.setUniformItemSizes(True)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName("Options in pictures")
        self.setMinimumHeight(self._height(LEAST_PICTURE_PX))
        self.setMaximumHeight(self._height(MOST_PICTURE_PX))

    # ---- sizes

    @property
    def words_height(self) -> float:
        """Height of the lines under a picture."""
        return QFontMetricsF(self.font()).height() * LINES

    def _height(self, picture_px: int) -> int:
        bar = self.style().pixelMetric(QStyle.PixelMetric.PM_ScrollBarExtent)
        return round(picture_px + self.words_height + 2 * MARGIN_PX + 10 + bar)

    @property
    def card_size(self) -> QSize:
        """As high as the strip, as wide as the picture of the largest space needs, within reason."""
        high = self.maximumViewportSize().height() - self.style().pixelMetric(QStyle.PixelMetric.PM_ScrollBarExtent)
        picture = high - self.words_height - 2 * MARGIN_PX - 7
        wide = picture * self.extent.width / max(1.0, self.extent.height)
        least = min(max(LEAST_WIDTH_PX, self._words_width), MOST_WIDTH_PX)
        return QSize(round(max(least, min(MOST_WIDTH_PX, wide)) + 2 * MARGIN_PX + 5), max(1, high))

    def fit_words(self) -> None:
        """Make cards wide enough for what is written on them, in its shorter wording."""
        colours = elevation_colours(self.palette())
        lines = [line for key in self._rows.ids for line in self.words(self._rows.record(key), colours)]
        widest = max((text_width(line.shorter[0], line.font) for line in lines), default=0.0) + 2
        if widest != self._words_width:
            self._words_width = widest
            self.scheduleDelayedItemsLayout()

    def sizeHint(self) -> QSize:
        """As low as it may be; what is left over makes the pictures larger."""
        return QSize(300, self.minimumHeight())

    def show_extent(self, extent: Area) -> None:
        """What all pictures make room for."""
        self.extent = extent
        self.scheduleDelayedItemsLayout()

    def resizeEvent(self, event: QEvent) -> None:
        """Cards grow with the strip."""
        super().resizeEvent(event)  # type: ignore[arg-type]
        self.scheduleDelayedItemsLayout()

    def changeEvent(self, event: QEvent) -> None:
        """Keep room for letters of another size."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self.setMinimumHeight(self._height(LEAST_PICTURE_PX))
            self.setMaximumHeight(self._height(MOST_PICTURE_PX))
            self.fit_words()

    # ---- contents

    def line_at(self, row: int) -> OptionLine:
        """The option of a card."""
        return self._rows.record(self._rows.id_at(row))

    def words(self, line: OptionLine, colours: ElevationColours) -> list[Line]:
        """What is written under a picture, with shorter wordings for narrow cards."""
        option, unit = line.option, self._unit()
        worktop, rest = short_length(option.unit_height_mm, unit), short_length(option.left_over_mm, unit)
        runner = f"runner {short_length(option.runner_length_mm, unit)}"
        kind = "own" if option.uprights is Uprights.OWN else "shared"
        shape = f"{option.bays} × {option.rows}"
        ink, faint = QColor(colours.box_text), QColor(colours.box_detail)
        small = smaller(self.font(), 0.9)
        now, briefly = (f"  {line.standing}", "  ✓ now") if line.is_present else ("", "")
        return [
            Line(f"{line.shape}{now}", bold(self.font()), ink, (f"{shape}{now}", f"{shape}{briefly}")),
            Line(f"{worktop} high, {rest} left over", small, faint, (f"{worktop}, {rest} left", worktop)),
            Line(f"{kind} uprights, {runner}", small, faint, (f"{kind}, {runner}", kind)),
        ]

    # ---- selecting whole rows

    def selectionCommand(self, index: Index, event: QEvent | None = None) -> QItemSelectionModel.SelectionFlag:
        """As in the table: what is selected is a whole row."""
        return super().selectionCommand(index, event) | QItemSelectionModel.SelectionFlag.Rows

    def keep_current_seen(self) -> None:
        """Scroll to the selected card."""
        if self.currentIndex().isValid():
            self.scrollTo(self._rows.index(self.currentIndex().row(), 0))
