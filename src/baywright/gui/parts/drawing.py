"""The drawing of one part: its face with holes, grooves and mortises, worked ends and edges as strips, its measures.

Laws: to scale, places from the machining alone; what is on the reverse is drawn in broken lines; bands are thick lines
with a word; the piece of work that is selected in the table stands out by a ring and its measures in words.
"""

from collections.abc import Callable

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import QWidget

from baywright.gui.drawings.plate import Plate
from baywright.gui.elevation.area import Area
from baywright.gui.elevation.captions import short_length
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.lettering import Line, draw_upright_text, longest_that_fits, smaller, text_width
from baywright.gui.elevation.pixels import Pixels
from baywright.gui.parts.geometry import Bench, is_behind
from baywright.gui.parts.line import banded_words
from baywright.gui.parts.work import WorkLine, work_summary
from baywright.gui.wording import count_words
from baywright.model.length import LengthUnit
from baywright.model.machining import Hole, HolePurpose, Joint, ShapedEdge, Side
from baywright.model.making import Grain, Part

NOTHING_CHOSEN = "Select a part to see its drawing."
_LEAST_RADIUS_PX = 1.6
_STRIP_GAP_PX = 12.0
_GRAIN_PX = 26.0


class PartDrawing(Plate):
    """Draws one part, or says that none is chosen."""

    def __init__(self, unit: Callable[[], LengthUnit], parent: QWidget | None = None) -> None:
        self._bench: Bench | None = None
        self._chosen: WorkLine | None = None
        super().__init__("Drawing of the part", NOTHING_CHOSEN, unit, parent)

    @property
    def bench(self) -> Bench | None:
        """The part as it lies, or None."""
        return self._bench

    def show_part(self, part: Part | None, *, is_mirrored: bool = False) -> None:
        """Draw this part; None says to choose one."""
        same_size = part is not None and self._bench is not None and self._bench.face == Bench(part).face
        self._bench = None if part is None else Bench(part, is_mirrored)
        self._chosen = None
        self.setAccessibleDescription(NOTHING_CHOSEN if part is None else part_words(part, self._unit()))
        self.show_extent(None if self._bench is None else self._bench.face)
        if not same_size:
            self.zoom_to_fit()
        self.repaint_all()

    def show_work(self, line: WorkLine | None) -> None:
        """Let one piece of work stand out."""
        self._chosen = line
        self.repaint_all()

    def has_something(self) -> bool:
        """Whether a part is chosen."""
        return self._bench is not None

    def margins_px(self, size: QSize) -> tuple[float, float, float, float]:
        """Room for measures, words and the strips of worked ends and edges."""
        line = QFontMetricsF(self.font()).height()
        bench = self._bench
        if bench is None:
            return 8.0, 8.0, 8.0, 8.0
        scale = self._scale_for(size)
        strip = bench.part.thickness_mm * scale + _STRIP_GAP_PX + 4.0
        worked = bench.sides_worked()
        over, under = (Side.FRONT, Side.REAR) if bench.is_front_far else (Side.REAR, Side.FRONT)
        left, right = (strip if side in worked else 0.0 for side in (Side.START, Side.END))
        top, bottom = (strip if side in worked else 0.0 for side in (over, under))
        return left + line + 8.0, top + 2 * line + 6.0, right + line + 8.0, bottom + 2 * line + 10.0

    def _scale_for(self, size: QSize) -> float:
        """Pixels a mm, roughly: the strips are as thick as the scale makes them."""
        part = self._bench.part if self._bench is not None else None
        if part is None:
            return 1.0
        across = (size.width() - 90.0) / (part.length_mm + 2 * part.thickness_mm)
        up = (size.height() - 110.0) / (part.width_mm + 2 * part.thickness_mm)
        return max(0.02, min(across, up)) if self.is_fitting else self.pixels_per_mm

    # ---- painting

    def paint(self, painter: QPainter, pixels: Pixels, style: FaceStyle) -> None:
        """Face, edges, work and words."""
        bench = self._bench
        if bench is None:
            return
        gap = _STRIP_GAP_PX / pixels.scale
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
        _paint_board(painter, pixels.rect(bench.face), style)
        for side in bench.sides_worked():
            _paint_board(painter, pixels.rect(bench.strip(side, gap)), style)
        self._paint_work(painter, pixels, style, bench, gap)
        _paint_grain(painter, pixels.rect(bench.face), bench.part.grain, style)
        _paint_bands(painter, pixels.rect(bench.face), bench, style)
        self._paint_words(painter, pixels.rect(bench.face), style, bench)
        if self._chosen is not None:
            self._paint_chosen(painter, pixels, style, bench, gap)

    def _paint_work(self, painter: QPainter, pixels: Pixels, style: FaceStyle, bench: Bench, gap: float) -> None:
        machining, colours = bench.part.machining, style.colours
        for groove in machining.grooves:
            rect = pixels.rect(bench.groove_area(groove))
            painter.fillRect(rect, QColor(colours.tray if not is_behind(groove) else colours.board))
            painter.setPen(_pen(colours.board_line, behind=is_behind(groove)))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(rect)
        for joint in machining.joints:
            painter.setPen(_pen(colours.limit, behind=joint.side is Side.REVERSE))
            painter.setBrush(QColor(colours.ground))
            painter.drawRect(pixels.rect(bench.joint_area(joint, gap)))
        for hole in machining.holes:
            centre, radius = _circle(hole, bench, pixels, gap)
            is_row = hole.purpose is HolePurpose.ROW
            painter.setPen(_pen(colours.row if is_row else colours.limit, behind=is_behind(hole)))
            through = hole.depth_mm is None
            painter.setBrush(QColor(colours.row) if through else QColor(colours.ground))
            painter.drawEllipse(centre, radius, radius)

    def _paint_chosen(self, painter: QPainter, pixels: Pixels, style: FaceStyle, bench: Bench, gap: float) -> None:
        line = self._chosen
        if line is None:
            return
        painter.setPen(QPen(QColor(style.colours.selected_line), 2.4))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        feature = line.feature
        if isinstance(feature, Hole):
            centre, radius = _circle(feature, bench, pixels, gap)
            painter.drawEllipse(centre, radius + 4.0, radius + 4.0)
            place = QRectF(centre.x(), centre.y(), 0.0, 0.0)
        elif isinstance(feature, ShapedEdge):
            place = pixels.rect(_edge_area(feature.side, bench))
            painter.drawRect(place.adjusted(-2, -2, 2, 2))
        else:
            area = bench.joint_area(feature, gap) if isinstance(feature, Joint) else bench.groove_area(feature)
            place = pixels.rect(area).adjusted(-3, -3, 3, 3)
            painter.drawRect(place)
        self._paint_chosen_words(painter, place, line, style)

    def _paint_chosen_words(self, painter: QPainter, place: QRectF, line: WorkLine, style: FaceStyle) -> None:
        """Its measures beside it, over a ground of their own and never beyond the view."""
        unit = style.unit
        places = [
            f"{name} {short_length(v, unit)}" for name, v in (("x", line.x_mm), ("y", line.y_mm)) if v is not None
        ]
        words = ", ".join([line.what, *places])
        font = smaller(style.font)
        width, height = text_width(words, font) + 10.0, QFontMetricsF(font).height() + 4.0
        view = QRectF(self.viewport().rect())
        left = max(view.left() + 2.0, min(place.center().x() + 10.0, view.right() - width - 2.0))
        over = place.top() - height - 10.0
        card = QRectF(left, over if over > view.top() else place.bottom() + 10.0, width, height)
        painter.fillRect(card, QColor(style.colours.window.note_ground))
        painter.setPen(QColor(style.colours.window.text))
        painter.setFont(font)
        painter.drawText(card, Qt.AlignmentFlag.AlignCenter, words)

    def _paint_words(self, painter: QPainter, face: QRectF, style: FaceStyle, bench: Bench) -> None:
        part, font = bench.part, smaller(style.font)
        height = QFontMetricsF(font).height()
        painter.setFont(font)
        painter.setPen(QColor(style.colours.dimension))
        margins = self.margins_px(self.maximumViewportSize())
        view = QRectF(self.viewport().rect()).adjusted(4, 2, -4, -2)
        title = f"{part.number} {part.name}"
        head = QRectF(view.left(), max(view.top(), face.top() - margins[1] + 2.0), view.width(), height)
        mirrored = f", {part.mirrored} mirrored" if part.mirrored else ""
        words = (f"{title}, {count_words(part.quantity, 'piece')}{mirrored}", title, part.number)
        painter.drawText(head, Qt.AlignmentFlag.AlignLeft, longest_that_fits(words, font, view.width()))
        near, far = ("rear edge", "front edge") if bench.is_front_far else ("front edge", "rear edge")
        over = face.top() - margins[1] + height + 3.0
        under = face.bottom() + margins[3] - 2 * height - 6.0
        painter.drawText(QRectF(face.left(), over, face.width(), height), _MIDDLE, far)
        painter.drawText(QRectF(face.left(), under, face.width(), height), _MIDDLE, near)
        length = short_length(part.length_mm, style.unit)
        _paint_measure(painter, QRectF(face.left(), under + height + 1.0, face.width(), height), length, style)
        width = Line(short_length(part.width_mm, style.unit), font, QColor(style.colours.dimension))
        draw_upright_text(painter, QPointF(face.left() - margins[0] + height / 2 + 2.0, face.center().y()), width)


_MIDDLE = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignVCenter


def part_words(part: Part, unit: LengthUnit) -> str:
    """The drawing in words."""
    size = " × ".join(short_length(value, unit) for value in (part.length_mm, part.width_mm, part.thickness_mm))
    bands = banded_words(part)
    edges = f" Edging on: {bands}." if bands else ""
    return f"{part.number} {part.name}, {size}, {part.material}. {work_summary(part.machining)}{edges}"


def _pen(colour: str, *, behind: bool) -> QPen:
    return QPen(QColor(colour), 1.2, Qt.PenStyle.DashLine if behind else Qt.PenStyle.SolidLine)


def _circle(hole: Hole, bench: Bench, pixels: Pixels, gap: float) -> tuple[QPointF, float]:
    x, y = bench.place(hole.side, hole.x_mm, hole.y_mm, gap)
    return QPointF(pixels.x(x), pixels.y(y)), max(_LEAST_RADIUS_PX, hole.diameter_mm / 2 * pixels.scale)


def _paint_board(painter: QPainter, rect: QRectF, style: FaceStyle) -> None:
    painter.fillRect(rect, QColor(style.colours.board))
    painter.setPen(QPen(QColor(style.colours.board_line), 1.2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(rect)


def _paint_grain(painter: QPainter, rect: QRectF, grain: Grain, style: FaceStyle) -> None:
    """A double arrow along the grain in the middle of the face, and the word where it has room."""
    if grain is Grain.ANY or min(rect.width(), rect.height()) < _GRAIN_PX:
        return
    painter.setPen(QPen(QColor(style.colours.board_line), 1.4))
    middle = rect.center()
    half = min(60.0, (rect.width() if grain is Grain.LENGTH else rect.height()) / 4)
    along = QPointF(half, 0.0) if grain is Grain.LENGTH else QPointF(0.0, half)
    painter.drawLine(middle - along, middle + along)
    for end, back in ((middle + along, -1.0), (middle - along, 1.0)):
        step = along * (back * 6.0 / half)
        aside = QPointF(step.y(), step.x()) * 0.6
        painter.drawLine(end, end + step + aside)
        painter.drawLine(end, end + step - aside)
    font = smaller(style.font, 0.8)
    if grain is Grain.LENGTH and rect.height() > 2.4 * QFontMetricsF(font).height():
        painter.setFont(font)
        place = QRectF(0.0, 0.0, text_width("grain", font) + 6.0, QFontMetricsF(font).height())
        place.moveCenter(middle)
        painter.fillRect(place, QColor(style.colours.board))
        painter.setPen(QColor(style.colours.row))
        painter.drawText(place, Qt.AlignmentFlag.AlignCenter, "grain")


def _paint_bands(painter: QPainter, face: QRectF, bench: Bench, style: FaceStyle) -> None:
    """A thick line along each banded edge."""
    painter.setPen(QPen(QColor(style.colours.change), 3.4, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap))
    for side in bench.part.banded:
        painter.drawLine(_edge_line(side, face, bench))


def _edge_line(side: Side, face: QRectF, bench: Bench) -> QLineF:
    if side is Side.START:
        return QLineF(face.topLeft(), face.bottomLeft())
    if side is Side.END:
        return QLineF(face.topRight(), face.bottomRight())
    if (side is Side.FRONT) == bench.is_front_far:
        return QLineF(face.topLeft(), face.topRight())
    return QLineF(face.bottomLeft(), face.bottomRight())


def _edge_area(side: Side, bench: Bench) -> Area:
    """A side's edge as a line without thickness."""
    part = bench.part
    if side in (Side.START, Side.END):
        return Area(0.0 if side is Side.START else part.length_mm, 0.0, 0.0, part.width_mm)
    return Area(0.0, part.width_mm if (side is Side.FRONT) == bench.is_front_far else 0.0, part.length_mm, 0.0)


def _paint_measure(painter: QPainter, place: QRectF, words: str, style: FaceStyle) -> None:
    """A measure over the whole width of a place, with ticks at its ends and the figure in the middle."""
    painter.setPen(QPen(QColor(style.colours.dimension), 1.0))
    y, wide = place.center().y(), text_width(words, painter.font()) + 10.0
    left, right = place.left(), place.right()
    for x in (left, right):
        painter.drawLine(QLineF(x, y - 4.0, x, y + 4.0))
    if place.width() > wide + 12.0:
        painter.drawLine(QLineF(left, y, place.center().x() - wide / 2, y))
        painter.drawLine(QLineF(place.center().x() + wide / 2, y, right, y))
    around = place.adjusted(-200.0, 0.0, 200.0, 0.0)
    painter.drawText(around, Qt.AlignmentFlag.AlignCenter, words)
