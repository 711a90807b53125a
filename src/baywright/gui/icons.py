"""The few signs of the toolbar and menus, drawn by strokes in the text's colour, so that they fit every theme.

Each sign is drawn on a square of 16 × 16 units.
"""

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPainterPath, QPen, QPixmap, QPolygonF

_SIZES = (16, 24, 32, 48)
_Draw = Callable[[QPainterPath], None]


def _lines(path: QPainterPath, *points: tuple[float, float]) -> None:
    path.addPolygon(QPolygonF([QPointF(x, y) for x, y in points]))


def _new(path: QPainterPath) -> None:
    _lines(path, (3.5, 1.5), (9.5, 1.5), (12.5, 4.5), (12.5, 14.5), (3.5, 14.5), (3.5, 1.5))
    _lines(path, (9.5, 1.5), (9.5, 4.5), (12.5, 4.5))


def _open(path: QPainterPath) -> None:
    _lines(path, (1.5, 13.5), (1.5, 3.5), (6, 3.5), (7.5, 5.5), (14.5, 5.5), (14.5, 13.5), (1.5, 13.5))


def _save(path: QPainterPath) -> None:
    _lines(path, (8, 1.5), (8, 9.5))
    _lines(path, (4.5, 6), (8, 9.5), (11.5, 6))
    _lines(path, (2, 10.5), (2, 14), (14, 14), (14, 10.5))


def _undo(path: QPainterPath) -> None:
    _lines(path, (5.5, 2.5), (2, 6), (5.5, 9.5))
    path.moveTo(2, 6)
    path.lineTo(9.5, 6)
    path.cubicTo(15, 6, 15, 13.5, 9.5, 13.5)
    path.lineTo(6, 13.5)


def _redo(path: QPainterPath) -> None:
    _lines(path, (10.5, 2.5), (14, 6), (10.5, 9.5))
    path.moveTo(14, 6)
    path.lineTo(6.5, 6)
    path.cubicTo(1, 6, 1, 13.5, 6.5, 13.5)
    path.lineTo(10, 13.5)


def _add(path: QPainterPath) -> None:
    _lines(path, (8, 3), (8, 13))
    _lines(path, (3, 8), (13, 8))


def _duplicate(path: QPainterPath) -> None:
    path.addRect(QRectF(2, 2, 8, 8))
    _lines(path, (6, 10), (6, 14), (14, 14), (14, 6), (10, 6))


def _delete(path: QPainterPath) -> None:
    _lines(path, (3.5, 3.5), (12.5, 12.5))
    _lines(path, (12.5, 3.5), (3.5, 12.5))


def _import(path: QPainterPath) -> None:
    path.addRect(QRectF(8.5, 2, 5.5, 12))
    _lines(path, (1.5, 8), (7, 8))
    _lines(path, (4.5, 5.5), (7, 8), (4.5, 10.5))


def _export(path: QPainterPath) -> None:
    path.addRect(QRectF(2, 2, 5.5, 12))
    _lines(path, (9, 8), (14.5, 8))
    _lines(path, (12, 5.5), (14.5, 8), (12, 10.5))


def _plan(path: QPainterPath) -> None:
    path.addRect(QRectF(2, 2, 12, 12))
    _lines(path, (8, 2), (8, 14))
    _lines(path, (2, 6), (8, 6))
    _lines(path, (2, 9), (8, 9))
    _lines(path, (8, 10), (14, 10))


def _replan(path: QPainterPath) -> None:
    path.addRect(QRectF(2, 2, 5, 5))
    path.addRect(QRectF(9, 9, 5, 5))
    _lines(path, (9.5, 4.5), (11.5, 4.5), (11.5, 6.8))
    _lines(path, (9.8, 5.2), (11.5, 6.9), (13.2, 5.2))


def _stop(path: QPainterPath) -> None:
    path.addRect(QRectF(4, 4, 8, 8))


_SIGNS: dict[str, _Draw] = {
    "new": _new,
    "open": _open,
    "save": _save,
    "undo": _undo,
    "redo": _redo,
    "add": _add,
    "duplicate": _duplicate,
    "delete": _delete,
    "import": _import,
    "export": _export,
    "plan": _plan,
    "replan": _replan,
    "stop": _stop,
}


def make_icon(name: str, colour: QColor, faint: QColor) -> QIcon:
    """The sign called `name` in `colour`, and in `faint` for actions that cannot be used; KeyError where unknown."""
    path = QPainterPath()
    _SIGNS[name](path)
    icon = QIcon()
    for mode, ink in ((QIcon.Mode.Normal, colour), (QIcon.Mode.Disabled, faint)):
        for size in _SIZES:
            icon.addPixmap(_pixmap(path, ink, size), mode)
    return icon


def _pixmap(path: QPainterPath, ink: QColor, size: int) -> QPixmap:
    pixmap = QPixmap(size, size)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.scale(size / 16, size / 16)
    pen = QPen(ink, 1.4)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.setPen(pen)
    painter.drawPath(path)
    painter.end()
    return pixmap
