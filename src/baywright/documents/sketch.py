"""A drawing surface in points with a scale for millimetres: rectangles, lines, measured text, dimension lines.

Laws: no global state of matplotlib is touched; the same calls give the same bytes (no dates, fixed ids).
"""

import io
import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum, auto
from typing import Any, Literal

import matplotlib
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.backends.backend_pdf import PdfPages
from matplotlib.collections import LineCollection, PolyCollection
from matplotlib.figure import Figure

from baywright.documents.lettering import printable, shortened, sized_font, width_of

INK = "#1c1f24"
FAINT = "#8b9098"

_POINTS_PER_INCH = 72.0
_BLANK = "blank"
SETTINGS: Any = {
    "svg.hashsalt": "baywright",
    "svg.fonttype": "path",
    "pdf.fonttype": 42,
    "hatch.linewidth": 0.5,
    "text.hinting": "none",
}

_DASH, _HEAD = 3.0, 6.0


class Look(Enum):
    """How a mark looks: told apart by shape and weight, not by colour."""

    RING = auto()
    BOLD_RING = auto()
    DISC = auto()
    CROSS = auto()
    BOLD_CROSS = auto()


_LOOKS: dict[Look, tuple[str, float, str]] = {
    Look.RING: ("o", 0.5, "white"),
    Look.BOLD_RING: ("o", 1.3, "white"),
    Look.DISC: ("o", 0.5, INK),
    Look.CROSS: ("x", 0.5, "none"),
    Look.BOLD_CROSS: ("x", 1.3, "none"),
}

Format = Literal["png", "svg", "pdf"]
_Corners = tuple[tuple[float, float], ...]


@dataclass(frozen=True)
class Scale:
    """From millimetres of the run (x from its left end, y from the floor) to points on the sheet."""

    points_per_mm: float
    left: float
    floor: float

    def x(self, mm: float) -> float:
        """Points from the sheet's left edge."""
        return self.left + mm * self.points_per_mm

    def y(self, mm: float) -> float:
        """Points from the sheet's lower edge."""
        return self.floor + mm * self.points_per_mm


class Sketch:
    """One sheet of `width` × `height` points."""

    def __init__(self, width: float, height: float) -> None:
        self.width = width
        self.height = height
        self._figure = Figure(figsize=(width / _POINTS_PER_INCH, height / _POINTS_PER_INCH), facecolor="white")
        FigureCanvasAgg(self._figure)
        self._axes = self._figure.add_axes((0.0, 0.0, 1.0, 1.0))
        self._axes.set_xlim(0, width)
        self._axes.set_ylim(0, height)
        self._axes.axis("off")
        self._rectangles: dict[str, list[tuple[_Corners, str, str, float]]] = {"": []}
        self._lines: list[tuple[tuple[tuple[float, float], tuple[float, float]], float, str]] = []

    def rectangle(
        self, left: float, lower: float, width: float, height: float, *,
        fill: str = "white", edge: str = INK, line: float = 0.6, hatch: str = "",
    ) -> None:  # fmt: skip
        """A filled rectangle; hatched ones, hatched in the edge's colour, lie over all plain ones."""
        self._add(left, lower, width, height, (fill, edge, line), hatch)

    def blank(self, left: float, lower: float, width: float, height: float) -> None:
        """A white field over all rectangles, for words that must not stand on a hatching."""
        self._add(left, lower, width, height, ("white", "white", 0.0), _BLANK)

    def _add(
        self, left: float, lower: float, width: float, height: float, look: tuple[str, str, float], layer: str
    ) -> None:
        right, upper = left + width, lower + height
        corners = ((left, lower), (right, lower), (right, upper), (left, upper))
        self._rectangles.setdefault(layer, []).append((corners, *look))

    def line(self, start: tuple[float, float], end: tuple[float, float], width: float = 0.5, colour: str = INK) -> None:
        """A straight line; lines lie over rectangles."""
        self._lines.append(((start, end), width, colour))

    def dots(self, points: list[tuple[float, float]], size: float = 0.8) -> None:
        """Small filled dots."""
        if points:
            across, up = zip(*points, strict=True)
            self._axes.plot(across, up, linestyle="none", marker="o", markersize=size, color=INK, markeredgewidth=0)

    def marks(self, points: Sequence[tuple[float, float]], look: Look, size: float) -> None:
        """Marks of one look over everything else, `size` points across."""
        shape, width, fill = _LOOKS[look]
        if points:
            across, up = zip(*points, strict=True)
            self._axes.plot(
                across, up, linestyle="none", marker=shape, markersize=size, markeredgewidth=width,
                markeredgecolor=INK, markerfacecolor=fill, zorder=3,
            )  # fmt: skip

    def broken_line(self, start: tuple[float, float], end: tuple[float, float], width: float = 0.5) -> None:
        """A line of dashes, for what lies behind."""
        length = math.dist(start, end)
        count = max(1, round(length / _DASH))
        for dash in range(0, count, 2):
            ends = [dash / count, min(1.0, (dash + 1) / count)]
            first, last = (
                (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share) for share in ends
            )
            self.line(first, last, width)

    def arrow(self, start: tuple[float, float], end: tuple[float, float], width: float = 0.8) -> None:
        """A line with a head at both ends."""
        self.line(start, end, width)
        length = math.dist(start, end)
        step = ((end[0] - start[0]) / length * _HEAD, (end[1] - start[1]) / length * _HEAD)
        for (x, y), way in ((start, 1.0), (end, -1.0)):
            for aside in (0.5, -0.5):
                self.line((x, y), (x + way * step[0] - aside * step[1], y + way * step[1] + aside * step[0]), width)

    def text(
        self, x: float, y: float, words: str, size: float, *, room: float | None = None, bold: bool = False,
        colour: str = INK, across: Literal["left", "center", "right"] = "left", upright: bool = False,
    ) -> None:  # fmt: skip
        """Text centred on `y` (on `x` where `upright`), shortened to `room` points where that is given."""
        shown = printable(words) if room is None else shortened(words, room, size, bold)
        if shown:
            self._axes.text(
                x, y, shown, fontproperties=sized_font(size, bold), color=colour, ha=across, va="center",
                rotation=90 if upright else 0, parse_math=False,
            )  # fmt: skip

    def level_dimension(self, left: float, right: float, y: float, words: str, size: float = 7.0) -> None:
        """A horizontal dimension line with its text over the middle; without text where that has no room."""
        self._ticked((left, y), (right, y))
        if width_of(words, size) <= right - left:
            self.text((left + right) / 2, y + size * 0.75, words, size, across="center")

    def height_dimension(self, x: float, lower: float, upper: float, words: str, size: float = 7.0) -> None:
        """A vertical dimension line; its text stands upright left of it, or level to the right where it is short."""
        self._ticked((x, lower), (x, upper))
        if width_of(words, size) <= upper - lower:
            self.text(x - size * 0.75, (lower + upper) / 2, words, size, across="center", upright=True)
        else:
            self.text(x + 3.0, (lower + upper) / 2, words, size)

    def _ticked(self, start: tuple[float, float], end: tuple[float, float]) -> None:
        self.line(start, end, 0.5)
        for x, y in (start, end):
            self.line((x - 2.0, y - 2.0), (x + 2.0, y + 2.0), 0.9)

    def to_bytes(self, kind: Format, dots_per_inch: int = 150) -> bytes:
        """The sheet as a file's content."""
        metadata = {
            "png": {"Software": None},
            "svg": {"Date": None, "Creator": "Baywright"},
            "pdf": {"CreationDate": None, "Creator": "Baywright", "Producer": None},
        }[kind]
        self._collect()
        target = io.BytesIO()
        with matplotlib.rc_context(SETTINGS):
            self._figure.savefig(target, format=kind, dpi=dots_per_inch, metadata=metadata)
        return target.getvalue()

    def onto(self, pages: PdfPages) -> None:
        """The sheet as the next page of a book, which is made under `SETTINGS`."""
        self._collect()
        pages.savefig(self._figure)  # type: ignore[no-untyped-call]

    def _collect(self) -> None:
        """Hand rectangles and lines to matplotlib in bulk: one by one, some thousands would take many seconds."""
        blanks = self._rectangles.pop(_BLANK, [])
        for hatch, rectangles in (*self._rectangles.items(), ("", blanks)):
            if rectangles:
                corners, fills, edges, widths = zip(*rectangles, strict=True)
                collection = PolyCollection(corners, facecolors=fills, edgecolors=edges, linewidths=widths, zorder=1)
                if hatch:
                    collection.set_hatch(hatch)
                self._axes.add_collection(collection, autolim=False)
        if self._lines:
            ends, line_widths, colours = zip(*self._lines, strict=True)
            lines = LineCollection(ends, linewidths=line_widths, colors=colours, zorder=2, capstyle="butt")
            self._axes.add_collection(lines, autolim=False)
        self._rectangles, self._lines = {"": []}, []
