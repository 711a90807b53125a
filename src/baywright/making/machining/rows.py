"""The holes of one face of an upright: hole rows, runner fixings, shelf pins.

Laws: with whole rows every line that the runners of the bay use goes through every row, so that a drawer can hang
elsewhere without new holes, and the holes that runners use now are not told from others: a part stays what it is when
the plan changes. Else only what is used is drilled, room that is kept for a wished box counts as used, and a runner's
holes are told from those that only wait. A line that comes too near to a runner's line, to the front or rear edge or
to the rail at the rear is left out and told, and so are rows without wood to the uprights' ends.
"""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import ceil

from baywright.making.drawers import Kinds, drawer_kinds
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

RowLines = tuple[tuple[int, tuple[float, ...]], ...]
"""Rows with a runner, and the lines that it is screwed on at."""


@dataclass(frozen=True)
class FaceRows:
    """What one face of an upright gets; rows count from 0 at the bottom, lines lie in mm behind the front edge."""

    rows: int = 0
    outer: int = 0
    """How many rows at either end are left out."""
    waiting: tuple[float, ...] = ()
    """Lines that every row has; empty where only used holes are drilled."""
    runners: RowLines = ()
    """Where only used holes are drilled: the runners'."""
    kept: RowLines = ()
    """And those that the runners of a wished box will need."""
    shelves: tuple[int, ...] = ()
    pin_lines: tuple[float, ...] = ()

    @property
    def lines(self) -> frozenset[float]:
        """Every line that any hole of this face is on."""
        used = [lines for _, lines in (*self.runners, *self.kept)]
        return frozenset([*self.waiting, *self.pin_lines, *(line for lines in used for line in lines)])

    @cached_property
    def places(self) -> frozenset[tuple[int, float]]:
        """Row and line of every hole, whatever it is for."""
        return frozenset(self.holes)

    @cached_property
    def holes(self) -> dict[tuple[int, float], HolePurpose]:
        """Every hole by row and line."""
        found = {(row, line): HolePurpose.ROW for row in range(self.rows) for line in self.waiting}
        found.update({(row, line): HolePurpose.ROW for row, lines in self.kept for line in lines})
        found.update({(row, line): HolePurpose.PIN for row in self.shelves for line in self.pin_lines})
        found.update({(row, line): HolePurpose.RUNNER for row, lines in self.runners for line in lines})
        return {place: purpose for place, purpose in found.items() if self.is_drilled(place[0])}

    def is_drilled(self, row: int) -> bool:
        """Whether the face has that row, and wood enough about it."""
        return self.outer <= row < self.rows - self.outer


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
        first, pitch = workings.value("first_row"), workings.value("pitch")
        self.outer_rows = max(0, ceil((radius + LEAST_WALL_MM - 1e-6 - first) / pitch))
        """How many rows lie so near to an end of the uprights that they cannot be drilled."""
        self._hung, self._kept = self._by_bay()
        self._lines: dict[str, tuple[float, ...]] = {}
        self._known: dict[tuple[object, ...], FaceRows] = {}

    def _by_bay(self) -> tuple[dict[int, list[tuple[int, str]]], dict[int, list[tuple[int, str]]]]:
        """Rows and kinds of the drawers that are made, and of those that wished boxes will need, by their bay."""
        hung, kept = defaultdict(list), defaultdict(list)
        for (bay, row), kind in sorted(self._made.items()):
            hung[bay].append((row, kind))
        wished = {place: boxes for place, boxes in self.project.arrangement.drawers.items() if place not in self._made}
        for (bay, row), kind in sorted(drawer_kinds(self.project, self.workings, wished).items()):
            kept[bay].append((row, kind))
        return hung, kept

    def beside(self, span: Span | None) -> FaceRows:
        """The holes of a face that looks into that span; none where no bay is. Faces that are alike are one value."""
        if span is None:
            return FaceRows()
        runners, kept = self.runners(span), self._lines_in(span, self._kept)
        if self._is_whole:
            lines: tuple[float, ...] = tuple(sorted({line for _, used in (*runners, *kept) for line in used}))
            runners, kept = (), ()
        else:
            lines = ()
        alike = span.rows, span.kind, span.bay is None, lines, runners, kept
        if alike not in self._known:
            face = self._shelf_face(span) if span.bay is None else self._drawer_face(span, lines, runners, kept)
            self._known[alike] = face
        return self._known[alike]

    def runners(self, span: Span) -> RowLines:
        """The rows of a span on which runners of drawers that are made hang, and the lines they are screwed on at."""
        return tuple((row, lines) for row, lines in self._lines_in(span, self._hung) if lines)

    def runner_lines(self, kind: str) -> tuple[float, ...]:
        """Lines on which the runners of a kind of bay are screwed to the uprights."""
        if kind not in self._lines:
            length = self.workings.at_kind("runner_length", kind)
            self._lines[kind] = self._clear([self._from_mm + hole for hole in runner_holes_mm(length)])
        return self._lines[kind]

    def _lines_in(self, span: Span, drawers: Mapping[int, Sequence[tuple[int, str]]]) -> RowLines:
        if span.bay is None:
            return ()
        least, most = self.outer_rows, span.rows - self.outer_rows
        return tuple((row, self.runner_lines(kind)) for row, kind in drawers.get(span.bay, ()) if least <= row < most)

    def _drawer_face(self, span: Span, lines: Sequence[float], runners: RowLines, kept: RowLines) -> FaceRows:
        usual = self.runner_lines(span.kind)
        waiting = self._merged([*usual, *lines]) if self._is_whole else ()
        return FaceRows(span.rows, self.outer_rows, waiting, runners, kept)

    def _shelf_face(self, span: Span) -> FaceRows:
        lines = self._merged([])
        pins = (lines[0], lines[-1]) if len(lines) > 1 else ()
        count = shelf_count(self.project, self.workings)
        return FaceRows(
            span.rows, self.outer_rows, lines if self._is_whole else (),
            shelves=tuple(sorted(set(shelf_rows(span.rows, count)))), pin_lines=pins,
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
    return [round((rows - 1) * (shelf + 1) / (count + 1)) for shelf in range(count)] if rows > 0 else []
