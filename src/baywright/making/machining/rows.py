"""The holes of one face of an upright: hole rows, runner fixings, shelf pins.

Laws: a hole that a runner or a shelf of the present plan uses is told from one that only waits; with whole rows every
line that the runners of the bay use goes through every row, so that a drawer can hang elsewhere without new holes;
else only what is used is drilled, and room that is kept for a wished box counts as used. A line that comes too near to
a runner's line, to the front or rear edge or to the rail at the rear is left out and told.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from baywright.making.drawers import Drawers, Kinds, drawer_kinds
from baywright.making.frame import Span
from baywright.making.machining.lines import runner_holes_mm
from baywright.making.machining.places import LEAST_APART_MM
from baywright.making.shelves import shelf_count
from baywright.model.construction import Drilling
from baywright.model.machining import HolePurpose
from baywright.model.project import Project
from baywright.workings import Workings

LEAST_WALL_MM = 2.0
"""Wood that stays between a hole and an edge, or in front of a hole that does not go through: our judgement."""

SYSTEM_MARGIN_MM = 2.0
"""Wood between the grounds of two holes that face each other."""


@dataclass(frozen=True)
class FaceRows:
    """What one face of an upright gets; rows count from 0 at the bottom, lines lie in mm behind the front edge."""

    rows: int = 0
    waiting: tuple[float, ...] = ()
    """Lines that every row has; empty where only used holes are drilled."""
    runners: tuple[tuple[int, tuple[float, ...]], ...] = ()
    """Rows with a runner, and the lines that it is screwed on at."""
    kept: tuple[tuple[int, tuple[float, ...]], ...] = ()
    """The same for runners that a wished box will need."""
    shelves: tuple[int, ...] = ()
    pin_lines: tuple[float, ...] = ()

    @property
    def lines(self) -> frozenset[float]:
        """Every line that any hole of this face is on."""
        used = [lines for _, lines in (*self.runners, *self.kept)]
        return frozenset([*self.waiting, *self.pin_lines, *(line for lines in used for line in lines)])

    def holes(self) -> dict[tuple[int, float], HolePurpose]:
        """Every hole by row and line."""
        found = {(row, line): HolePurpose.ROW for row in range(self.rows) for line in self.waiting}
        found.update({(row, line): HolePurpose.ROW for row, lines in self.kept for line in lines})
        found.update({(row, line): HolePurpose.PIN for row in self.shelves for line in self.pin_lines})
        found.update({(row, line): HolePurpose.RUNNER for row, lines in self.runners for line in lines})
        return {place: purpose for place, purpose in found.items() if place[0] < self.rows}


class RowPlan:
    """Which face of which upright gets which holes."""

    def __init__(
        self, project: Project, workings: Workings, kinds: Kinds, *, behind_mm: float, runner_from_mm: float
    ) -> None:
        """`behind_mm` is what the rail at the rear takes of the uprights' depth; runners begin at `runner_from_mm`."""
        self.project, self.workings = project, workings
        self._made, self._from_mm = kinds, runner_from_mm
        rows = project.construction.hole_rows
        self.diameter_mm = rows.hole_diameter_mm
        self._is_whole = rows.drilling is Drilling.WHOLE_ROWS
        radius = self.diameter_mm / 2
        self.depth_mm = depth = workings.value("upright_depth")
        self._least, self._most = (
            radius + LEAST_WALL_MM,
            depth - radius - max(LEAST_WALL_MM, behind_mm + LEAST_APART_MM),
        )
        self._set_lines = (rows.front_setback_mm, depth - rows.rear_setback_mm)
        self.left_out: set[float] = set()
        """Lines that cannot be drilled."""
        self.too_near: set[tuple[float, float]] = set()
        """Set lines that lie too near to another line, which goes before."""
        self.outer_rows = 0
        """How many rows lie so near to an end of the uprights that they cannot be drilled."""
        first = workings.value("first_row")
        if first < radius + LEAST_WALL_MM - 1e-9:
            self.outer_rows = 2
        self._drawers = self._with_wished()
        self._known: dict[Span, FaceRows] = {}

    def _with_wished(self) -> Kinds:
        arranged: Drawers = self.project.arrangement.drawers
        return drawer_kinds(self.project, self.workings, arranged)

    def beside(self, span: Span | None) -> FaceRows:
        """The holes of a face that looks into that span; none where no bay is."""
        if span is None:
            return FaceRows()
        if span not in self._known:
            self._known[span] = self._shelf_face(span) if span.bay is None else self._drawer_face(span, span.bay)
        return self._known[span]

    def runner_lines(self, kind: str) -> tuple[float, ...]:
        """Lines on which the runners of a kind of bay are screwed to the uprights."""
        length = self.workings.at_kind("runner_length", kind)
        return self._clear([self._from_mm + hole for hole in runner_holes_mm(length)])

    def _drawer_face(self, span: Span, bay: int) -> FaceRows:
        usual = self.runner_lines(span.kind)
        runners = tuple(
            (row, self.runner_lines(kind))
            for (b, row), kind in sorted(self._made.items())
            if b == bay and row < span.rows
        )
        kept = tuple(
            (row, self.runner_lines(kind))
            for (b, row), kind in sorted(self._drawers.items())
            if b == bay and row < span.rows and (b, row) not in self._made
        )
        waiting = self._merged([*usual, *(line for _, lines in runners for line in lines)]) if self._is_whole else ()
        return FaceRows(span.rows, waiting, runners, kept)

    def _shelf_face(self, span: Span) -> FaceRows:
        lines = self._merged([])
        pins = (lines[0], lines[-1]) if len(lines) > 1 else ()
        count = shelf_count(self.project, self.workings)
        return FaceRows(
            span.rows, lines if self._is_whole else (), shelves=tuple(sorted(set(shelf_rows(span.rows, count)))),
            pin_lines=pins,
        )  # fmt: skip

    def _clear(self, lines: Sequence[float]) -> tuple[float, ...]:
        """Those of the lines that leave wood before and behind them."""
        kept = tuple(line for line in lines if self._least - 1e-9 <= line <= self._most + 1e-9)
        self.left_out |= set(lines) - set(kept)
        return kept

    def _merged(self, runner_lines: Sequence[float]) -> tuple[float, ...]:
        """The runner's lines and the set ones; of two that are too near to each other, the runner's or front one."""
        found = sorted(set(runner_lines))
        for line in self._clear(self._set_lines):
            near = [other for other in found if abs(other - line) < self.diameter_mm + LEAST_APART_MM - 1e-9]
            if not near:
                found.append(line)
            elif min(abs(other - line) for other in near) > 1e-6:
                self.too_near.add((line, near[0]))
        return tuple(sorted(found))


def shelf_rows(rows: int, count: int) -> list[int]:
    """The hole rows, from 0, on which `count` adjustable shelves begin, evenly spread over a bay of `rows` rows."""
    return [min(rows - 1, round((shelf + 1) * rows / (count + 1))) for shelf in range(count)] if rows > 0 else []
