"""A part as it lies on the bench, to scale: face, worked ends and edges beside it, holes, mortises, grooves, bands.

Laws: FACE is up and x grows to the right; what is on the reverse is drawn as if the board were glass, with crosses and
broken lines; nothing is told by colour alone; words stand beside the outline, never on the work.
"""

from itertools import pairwise

from baywright.documents.drawings.words import figure, side_word
from baywright.documents.lettering import width_of
from baywright.documents.sketch import FAINT, INK, Look, Sketch
from baywright.model.machining import Groove, Hole, HolePurpose, Joint, Side
from baywright.model.making import Grain, Part

_BOARD, _CUT = "#f6f0e2", "white"
LEFT, RIGHT, ABOVE, BELOW = 66.0, 66.0, 26.0, 32.0
"""Room for words and measures round the outline, in points; worked ends and edges take more."""
_STRIP_GAP, _LEAST_STRIP, _MOST_SCALE = 29.0, 6.0, 2.4
_SMALL, _TINY = 6.6, 5.6
_USED = frozenset({HolePurpose.RUNNER, HolePurpose.PIN})
_LINE_LABEL_PITCH, _READABLE_MARK = 7.0, 4.4


class FacePicture:
    """A part drawn with the lower left corner of all it needs at (`left`, `lower`), no larger than a room in points."""

    def __init__(self, sheet: Sketch, part: Part, left: float, upper: float, room: tuple[float, float]) -> None:
        self._sheet, self._part = sheet, part
        worked = {hole.side for hole in part.machining.holes} | {joint.side for joint in part.machining.joints}
        self._worked = [side for side in (Side.START, Side.END, Side.FRONT, Side.REAR) if side in worked]
        self._is_far = part.machining.is_front_far
        self.scale = self._fitting(room)
        self._strip = max(_LEAST_STRIP, part.thickness_mm * self.scale)
        self._x0 = left + LEFT + self._beside(Side.START)
        above, below = (self._beside(side) for side in self._over_and_under())
        self._y0 = upper - ABOVE - above - part.width_mm * self.scale
        self.height = ABOVE + above + part.width_mm * self.scale + below + BELOW
        self._below = below
        self._least_mark = self._smallest_mark()

    def _over_and_under(self) -> tuple[Side, Side]:
        return (Side.FRONT, Side.REAR) if self._is_far else (Side.REAR, Side.FRONT)

    def _beside(self, side: Side) -> float:
        """Points that a worked end or edge takes beside the outline."""
        return self._strip_room if side in self._worked else 0.0

    @property
    def _strip_room(self) -> float:
        return _STRIP_GAP + max(_LEAST_STRIP, self._part.thickness_mm * self.scale)

    def _fitting(self, room: tuple[float, float]) -> float:
        """The largest scale, in points a mm, at which everything has room."""
        part = self._part
        across = sum(side in self._worked for side in (Side.START, Side.END))
        up = sum(side in self._worked for side in (Side.FRONT, Side.REAR))
        free_x = room[0] - LEFT - RIGHT - across * (_STRIP_GAP + _LEAST_STRIP)
        free_y = room[1] - ABOVE - BELOW - up * (_STRIP_GAP + _LEAST_STRIP)
        whole_x, whole_y = part.length_mm + across * part.thickness_mm, part.width_mm + up * part.thickness_mm
        return min(_MOST_SCALE, free_x / whole_x, free_y / whole_y)

    def _smallest_mark(self) -> float:
        """As large as ring and cross can be told apart, but so that marks of neighbouring rows do not touch."""
        rows = sorted({hole.x_mm for hole in self._part.machining.holes if hole.row is not None})
        step = min((b - a for a, b in pairwise(rows)), default=_READABLE_MARK / self.scale)
        return min(_READABLE_MARK, max(1.2, 0.6 * step * self.scale))

    # Places

    def _x(self, mm: float) -> float:
        return self._x0 + mm * self.scale

    def _y(self, from_front_mm: float) -> float:
        mm = self._part.width_mm - from_front_mm if self._is_far else from_front_mm
        return self._y0 + mm * self.scale

    def _strip_area(self, side: Side) -> tuple[float, float, float, float]:
        """Left, lower, width and height of the view of an end or edge, in points."""
        long, wide = self._part.length_mm * self.scale, self._part.width_mm * self.scale
        if side is Side.START:
            return self._x0 - _STRIP_GAP - self._strip, self._y0, self._strip, wide
        if side is Side.END:
            return self._x0 + long + _STRIP_GAP, self._y0, self._strip, wide
        is_over = side is self._over_and_under()[0]
        lower = self._y0 + wide + _STRIP_GAP if is_over else self._y0 - _STRIP_GAP - self._strip
        return self._x0, lower, long, self._strip

    def _place(self, side: Side, x: float, y: float) -> tuple[float, float]:
        """A place on any side; the inner flank of a strip is the face's."""
        part = self._part
        if side in (Side.FACE, Side.REVERSE):
            return self._x(x), self._y(y)
        left, lower, width, height = self._strip_area(side)
        share = y / part.thickness_mm
        if side is Side.START:
            return left + width * (1 - share), self._y(x)
        if side is Side.END:
            return left + width * share, self._y(x)
        is_over = side is self._over_and_under()[0]
        return self._x(x), lower + height * (share if is_over else 1 - share)

    # Drawing

    def draw(self) -> None:
        """The whole picture."""
        part, sheet = self._part, self._sheet
        long, wide = part.length_mm * self.scale, part.width_mm * self.scale
        sheet.rectangle(self._x0, self._y0, long, wide, fill=_BOARD, line=0.7)
        for side in self._worked:
            left, lower, width, height = self._strip_area(side)
            sheet.rectangle(left, lower, width, height, fill=_BOARD, line=0.7)
        for groove in part.machining.grooves:
            self._groove(groove)
        for joint in part.machining.joints:
            self._joint(joint)
        self._holes()
        self._bands()
        self._edge_words()
        self._row_words()
        self._line_words()
        self._measures()

    def _groove(self, groove: Groove) -> None:
        flank, run = (groove.offset_mm, groove.offset_mm + groove.width_mm), (groove.from_mm, groove.to_mm)
        xs, ys = (run, flank) if groove.is_along else (flank, run)
        left, right = self._x(xs[0]), self._x(xs[1])
        lower, upper = sorted((self._y(ys[0]), self._y(ys[1])))
        is_notch = groove.depth_mm >= self._part.thickness_mm - 1e-9
        if groove.side is Side.REVERSE:
            self._broken_box(left, lower, right, upper)
            return
        self._sheet.rectangle(
            left, lower, right - left, upper - lower, fill=_CUT, edge=INK if is_notch else FAINT, line=0.6,
            hatch="xxxxx" if is_notch else "/////",
        )  # fmt: skip

    def _joint(self, joint: Joint) -> None:
        x, y = self._place(joint.side, joint.x_mm, joint.y_mm)
        is_upright = (joint.side in (Side.START, Side.END)) == joint.is_along
        long, thick = joint.long_mm * self.scale / 2, joint.thick_mm * self.scale / 2
        if joint.side not in (Side.FACE, Side.REVERSE):
            thick = max(0.8, joint.thick_mm / self._part.thickness_mm * self._strip / 2)
        half_x, half_y = (thick, long) if is_upright else (long, thick)
        if joint.side is Side.REVERSE:
            self._broken_box(x - half_x, y - half_y, x + half_x, y + half_y)
            return
        self._sheet.rectangle(x - half_x, y - half_y, 2 * half_x, 2 * half_y, fill=_CUT, line=0.9)

    def _broken_box(self, left: float, lower: float, right: float, upper: float) -> None:
        corners = ((left, lower), (right, lower), (right, upper), (left, upper), (left, lower))
        for start, end in pairwise(corners):
            self._sheet.broken_line(start, end, 0.8)

    def _holes(self) -> None:
        groups: dict[tuple[Look, float], list[tuple[float, float]]] = {}
        for hole in self._part.machining.holes:
            size = max(self._least_mark, hole.diameter_mm * self.scale)
            groups.setdefault((look_of(hole), round(size, 2)), []).append(
                self._place(hole.side, hole.x_mm, hole.y_mm)
            )  # fmt: skip
        for (look, size), points in groups.items():
            self._sheet.marks(points, look, size)

    def _bands(self) -> None:
        long, wide = self._part.length_mm * self.scale, self._part.width_mm * self.scale
        x0, y0, x1, y1 = self._x0, self._y0, self._x0 + long, self._y0 + wide
        over, _ = self._over_and_under()
        for side in self._part.banded:
            if side in (Side.START, Side.END):
                x = x0 if side is Side.START else x1
                self._sheet.line((x, y0), (x, y1), 3.2)
            else:
                y = y1 if side is over else y0
                self._sheet.line((x0, y), (x1, y), 3.2)

    def _edge_words(self) -> None:
        part, sheet = self._part, self._sheet
        long, wide = part.length_mm * self.scale, part.width_mm * self.scale
        over, under = self._over_and_under()
        for side, y in ((over, self._y0 + wide + 17.0), (under, self._y0 - 8.0)):
            sheet.text(self._x0, y, self._named(side), _SMALL, room=max(long, 90.0))
        for side, x in ((Side.START, self._x0 - 8.0), (Side.END, self._x0 + long + 22.0)):
            words = self._named(side)
            if width_of(words, _SMALL) <= wide + 6.0:
                sheet.text(x, self._y0 + wide / 2, words, _SMALL, across="center", upright=True)
        self._grain(self._x0 + long, self._y0 + wide + 17.0)
        up = f"{side_word(part, Side.FACE)} up"
        middle, room = self._x0 + long / 2, long - 2 * max(58.0, width_of(self._named(over), _SMALL) + 8.0)
        if width_of(up, _SMALL, bold=True) <= room:
            sheet.text(middle, self._y0 + wide + 17.0, up, _SMALL, across="center", bold=True)

    def _named(self, side: Side) -> str:
        shaped = {edge.side: edge.form.value for edge in self._part.machining.shaped_edges}
        told = [side_word(self._part, side)]
        if side in self._part.banded:
            told.append("edging")
        if side in shaped:
            told.append(shaped[side])
        return ", ".join(told)

    def _grain(self, right: float, y: float) -> None:
        if self._part.grain is Grain.ANY:
            return
        left = right - 44.0
        if self._part.grain is Grain.LENGTH:
            ends = ((left, y), (right, y))
        else:
            ends = ((right - 4.0, y - 7.0), (right - 4.0, y + 7.0))
        self._sheet.arrow(*ends)
        beside = left if self._part.grain is Grain.LENGTH else right - 12.0
        self._sheet.text(beside - 3.0, y, "grain", _SMALL, across="right")

    def _row_words(self) -> None:
        """The numbers of the rows over the outline: all, or every fifth."""
        rows = {hole.row: hole.x_mm for hole in self._part.machining.holes if hole.row is not None}
        if not rows:
            return
        y = self._y0 + self._part.width_mm * self.scale + 6.0
        free = self._x0 - 100.0
        for row, x in sorted(rows.items()):
            wanted = len(rows) <= 12 or row == 1 or row % 5 == 0
            if wanted and self._x(x) - free >= width_of("00", _TINY) + 3.0:
                self._sheet.text(self._x(x), y, str(row), _TINY, across="center")
                free = self._x(x)
        self._sheet.text(self._x0 - 4.0, y, "row", _TINY, across="right")

    def _line_words(self) -> None:
        """How far each hole line lies behind the front edge, at the right of the outline."""
        lines = sorted({round(h.y_mm, 1) for h in self._part.machining.holes if h.row is not None}, key=self._y)
        x, last = self._x0 + self._part.length_mm * self.scale + 3.0, -1e9
        for line in lines:
            if self._y(line) - last >= _LINE_LABEL_PITCH:
                self._sheet.text(x, self._y(line), figure(line), _TINY)
                last = self._y(line)

    def _measures(self) -> None:
        part = self._part
        y = self._y0 - self._below - 22.0
        self._sheet.level_dimension(self._x0, self._x(part.length_mm), y, figure(part.length_mm))
        x = self._x0 - self._beside(Side.START) - 22.0
        upper = self._y0 + part.width_mm * self.scale
        self._sheet.height_dimension(x, self._y0, upper, figure(part.width_mm))


def look_of(hole: Hole) -> Look:
    """How a hole is drawn: what goes through filled, the reverse as a cross, what is in use bold."""
    if hole.depth_mm is None:
        return Look.DISC
    is_used = hole.purpose in _USED
    if hole.side is Side.REVERSE:
        return Look.BOLD_CROSS if is_used else Look.CROSS
    return Look.BOLD_RING if is_used else Look.RING
