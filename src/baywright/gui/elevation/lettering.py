"""Letters on the elevation: they keep their size while zooming, and are shortened rather than cut or overlapped."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter

LEAST_WIDTH_PX = 16.0
"""Narrower text says nothing and is left out."""
SLACK_PX = 3.0
"""So much of a line's height is air that may be cut off."""


@dataclass(frozen=True)
class Line:
    """One line of text with its type and colour, and shorter ways to say it, longest first."""

    text: str
    font: QFont
    colour: QColor
    shorter: tuple[str, ...] = ()

    def fitted(self, width_px: float) -> str:
        """The fullest wording that fits in that width; where none does the shortest, ended with “…”."""
        wordings = (self.text, *self.shorter)
        found = longest_that_fits(wordings, self.font, width_px)
        return found or QFontMetricsF(self.font).elidedText(wordings[-1], Qt.TextElideMode.ElideRight, width_px)


def smaller(font: QFont, factor: float = 0.88) -> QFont:
    """The same font a little smaller."""
    changed = QFont(font)
    if font.pointSizeF() > 0:
        changed.setPointSizeF(font.pointSizeF() * factor)
    else:
        changed.setPixelSize(max(6, round(font.pixelSize() * factor)))
    return changed


def bold(font: QFont) -> QFont:
    """The same font in bold."""
    changed = QFont(font)
    changed.setBold(True)
    return changed


def text_width(text: str, font: QFont) -> float:
    """How wide a line of text is, in pixels."""
    return QFontMetricsF(font).horizontalAdvance(text)


def longest_that_fits(texts: Sequence[str], font: QFont, width_px: float) -> str:
    """The first of `texts` (longest first) that fits in that width, or an empty text."""
    return next((text for text in texts if text_width(text, font) <= width_px), "")


def split_in_two(line: Line, width_px: float) -> list[Line]:
    """A line that is too long for that width as two, broken between words; else the line alone."""
    words = line.text.split()
    if text_width(line.text, line.font) <= width_px or len(words) < 2:
        return [line]
    first = words[:1]
    while len(first) < len(words) - 1 and text_width(" ".join(words[: len(first) + 1]), line.font) <= width_px:
        first = words[: len(first) + 1]
    rest = " ".join(words[len(first) :])
    return [Line(" ".join(first), line.font, line.colour), Line(rest, line.font, line.colour)]


def draw_lines(painter: QPainter, rect: QRectF, lines: Sequence[Line], *, centred: bool = True) -> int:
    """Draw as many of `lines` as the rectangle is high for, in its middle; long ones end in “…”. Returns how many."""
    if rect.width() < LEAST_WIDTH_PX:
        return 0
    heights = [QFontMetricsF(line.font).height() for line in lines]
    shown, used = 0, 0.0
    for height in heights:
        if used + height > rect.height() + (SLACK_PX if not shown else 1.0):
            break
        shown, used = shown + 1, used + height
    y = rect.top() + (rect.height() - used) / 2
    along = Qt.AlignmentFlag.AlignHCenter if centred else Qt.AlignmentFlag.AlignLeft
    for line, height in zip(lines[:shown], heights[:shown], strict=True):
        text = line.fitted(rect.width())
        painter.setFont(line.font)
        painter.setPen(line.colour)
        painter.drawText(QRectF(rect.left(), y, rect.width(), height), along | Qt.AlignmentFlag.AlignVCenter, text)
        y += height
    return shown


def draw_upright_text(painter: QPainter, centre: QPointF, line: Line) -> None:
    """Draw a line of text turned to read from below upwards, its middle at `centre`."""
    width, height = text_width(line.text, line.font) + 4.0, QFontMetricsF(line.font).height()
    painter.save()
    painter.translate(centre)
    painter.rotate(-90.0)
    painter.setFont(line.font)
    painter.setPen(line.colour)
    painter.drawText(QRectF(-width / 2, -height / 2, width, height), Qt.AlignmentFlag.AlignCenter, line.text)
    painter.restore()
