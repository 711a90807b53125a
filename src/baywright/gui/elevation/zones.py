"""How the wall's zones and its ceiling are painted: hatched rectangles with a label, a sloping line hatched above.

Laws: what a zone asks of the run is told by hatching and word, not by colour alone; drawn over the run, thin enough
that what stands there can still be read; what reaches beyond the drawing ends at its edge.
"""

from itertools import pairwise

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFontMetricsF, QPainter, QPen, QPolygonF

from baywright.gui.elevation.area import Area
from baywright.gui.elevation.captions import short_length
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.frame import Frame
from baywright.gui.elevation.lettering import Line, bold, draw_lines, longest_that_fits, smaller, text_width
from baywright.gui.elevation.pixels import Pixels, in_pixels
from baywright.gui.wording import ZONE_EFFECTS, words_for
from baywright.model.space import Space, Zone, ZoneEffect

_HATCHES = {
    ZoneEffect.KEEP_CLEAR: Qt.BrushStyle.DiagCrossPattern,
    ZoneEffect.END_BELOW: Qt.BrushStyle.BDiagPattern,
    ZoneEffect.STAY_IN_FRONT: Qt.BrushStyle.FDiagPattern,
}
_HATCH_OPACITY = 0.55
_LEAST_LABELLED_PX = 26.0


def zone_area(zone: Zone, frame: Frame) -> Area | None:
    """A zone in the elevation, cut off at the drawing's ends; None where nothing of it is seen."""
    extent = frame.extent
    left = max(extent.left, frame.wall.left + zone.left_mm)
    right = min(extent.right, frame.wall.left + zone.right_mm)
    bottom, top = max(0.0, zone.bottom_mm), min(extent.top, zone.top_mm)
    return Area(left, bottom, right - left, top - bottom) if right > left and top > bottom else None


def ceiling_line(space: Space, frame: Frame) -> list[QPointF]:
    """The ceiling from one end of the wall to the other, in mm of the elevation; empty where it does not slope."""
    if not space.ceiling:
        return []
    inner = [p.along_mm for p in space.ceiling if 0.0 < p.along_mm < space.length_mm]
    free = space.replace(zones=(), height_limit_mm=max(p.height_mm for p in space.ceiling))
    places = [0.0, *inner, space.length_mm]
    return [QPointF(frame.wall.left + along, free.height_limit_between(along, along)) for along in places]


def paint_surroundings(painter: QPainter, space: Space, frame: Frame, style: FaceStyle, chosen: str = "") -> None:
    """Paint ceiling and zones; the zone with the id `chosen` stands out."""
    if not space.ceiling and not space.zones:
        return
    with in_pixels(painter) as pixels:
        _paint_ceiling(painter, ceiling_line(space, frame), frame, style, pixels)
        for zone in space.zones:
            area = zone_area(zone, frame)
            if area is not None:
                room = pixels.rect(frame.extent)
                _paint_zone(painter, zone, pixels.rect(area), room, style, is_chosen=zone.id == chosen)


def label_place(zone: QRectF, room: QRectF, width: float, height: float) -> QRectF:
    """Where a label of that size goes: in the middle of its zone, never beside the run, where measures are."""
    left = max(room.left(), min(zone.center().x() - width / 2, room.right() - width))
    return QRectF(left, zone.center().y() - height / 2, width, height)


def _paint_zone(
    painter: QPainter, zone: Zone, rect: QRectF, room: QRectF, style: FaceStyle, *, is_chosen: bool
) -> None:
    colours = style.colours
    line = QColor(colours.zone)
    painter.setOpacity(_HATCH_OPACITY)
    painter.fillRect(rect, QBrush(line, _HATCHES[zone.effect]))
    painter.setOpacity(1.0)
    painter.setPen(QPen(line, 2.6 if is_chosen else 1.4))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(rect.adjusted(0.5, 0.5, -0.5, -0.5))
    if not is_chosen and min(rect.width(), rect.height()) < _LEAST_LABELLED_PX:
        return
    font = bold(smaller(style.font, 0.85))
    effect = words_for(zone.effect, ZONE_EFFECTS)
    full, label = f"{zone.label}: {effect}", zone.label
    text = longest_that_fits((full, label), font, rect.width() - 8.0)
    if not text and is_chosen:
        text = full
    height = QFontMetricsF(font).height()
    if text:
        place = label_place(rect, room, text_width(text, font) + 8.0, height)
    else:
        place = QRectF(rect.left() + 3.0, rect.center().y() - height / 2, rect.width() - 6.0, height)
    painter.fillRect(place, QColor(colours.ground))
    draw_lines(painter, place.adjusted(2, 0, -2, 0), [Line(text or label, font, line)])


def _paint_ceiling(painter: QPainter, points: list[QPointF], frame: Frame, style: FaceStyle, pixels: Pixels) -> None:
    """The line of the ceiling, and a hatching over it up to the top of the drawing."""
    if not points:
        return
    colour = QColor(style.colours.limit)
    there = [QPointF(pixels.x(point.x()), pixels.y(point.y())) for point in points]
    top = pixels.y(frame.extent.top)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    above = QPolygonF([*there, QPointF(there[-1].x(), top), QPointF(there[0].x(), top)])
    painter.setClipRect(QRectF(there[0].x(), top, there[-1].x() - there[0].x(), pixels.y(0.0) - top))
    painter.setOpacity(_HATCH_OPACITY)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QBrush(colour, Qt.BrushStyle.BDiagPattern))
    painter.drawPolygon(above)
    painter.setOpacity(1.0)
    painter.setPen(QPen(colour, 2.0))
    painter.drawLines([QLineF(left, right) for left, right in pairwise(there)])
    painter.restore()
    _paint_ceiling_words(painter, points, there, style)


def _paint_ceiling_words(painter: QPainter, points: list[QPointF], there: list[QPointF], style: FaceStyle) -> None:
    font = smaller(style.font, 0.9)
    height = QFontMetricsF(font).height()
    lowest = min(range(len(points)), key=lambda number: points[number].y())
    text = f"ceiling {short_length(points[lowest].y(), style.unit)}"
    width = text_width(text, font) + 6.0
    at = there[lowest]
    left = max(there[0].x(), min(at.x() - width / 2, there[-1].x() - width))
    place = QRectF(left, at.y() + 3.0, width, height)
    painter.fillRect(place, QColor(style.colours.ground))
    draw_lines(painter, place, [Line(text, font, QColor(style.colours.limit))])
