"""The uprights on the bench: which face is FACE, their hole rows, and what is where along their edges.

Laws: FACE of an outer upright looks into its bay; of one with bays on both sides it is the side with more holes, the
left one at a tie. FACE on the left means that the front edge lies near. Holes that face each other leave wood between
their grounds.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from baywright.making.frame import Frame, Role, StandingUpright
from baywright.making.machining.bench import Rows, Work
from baywright.making.machining.places import Interval
from baywright.making.machining.rows import LEAST_WALL_MM, SYSTEM_MARGIN_MM, FaceRows, RowPlan
from baywright.model.construction import HoleRows
from baywright.model.machining import Groove, Hole, Side
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.workings import Workings

_SAME_MM = 1e-6
_RIGHT_IS_FACE = frozenset({Role.LEFT, Role.SHELVES_LEFT})
_LEFT_IS_FACE = frozenset({Role.RIGHT, Role.SHELVES_RIGHT})

Fixings = Mapping[tuple[int, int], tuple[tuple[float, ...], ...]]
"""By a drawer's bay and row: for each upright beside it, how far behind the front edge its runner is screwed on."""


@dataclass
class UprightWork:
    """One standing upright with its work; `left` and `right` are the rows of its two faces."""

    standing: StandingUpright
    work: Work
    left: FaceRows
    right: FaceRows
    has_face_right: bool

    @property
    def lines(self) -> frozenset[float]:
        """Every line that a hole of either face may be on."""
        return self.left.lines | self.right.lines

    @property
    def middle_mm(self) -> float:
        """Where its middle stands along the run."""
        return self.standing.left_mm + self.work.part.thickness_mm / 2

    @property
    def right_mm(self) -> float:
        """Where its right face stands along the run."""
        return self.standing.left_mm + self.work.part.thickness_mm

    def side(self, *, is_right: bool) -> Side:
        """Its right or left side."""
        return Side.FACE if is_right == self.has_face_right else Side.REVERSE

    def under_face_mm(self, along_mm: float) -> float:
        """How deep under FACE a place along the run lies in it."""
        return self.right_mm - along_mm if self.has_face_right else along_mm - self.standing.left_mm

    def blocked(self, diameter_mm: float) -> list[Interval]:
        """What the hole rows take of its depth."""
        return [(line - diameter_mm / 2, line + diameter_mm / 2) for line in sorted(self.lines)]


def upright_works(
    project: Project, workings: Workings, frame: Frame, plan: RowPlan, parts: Sequence[Part]
) -> list[UprightWork]:
    """The uprights of the frame from left to right, with their hole rows; those without a part are left out."""
    usual = round(workings.value("upright_rows"))
    by_number = {part.number: part for part in parts}
    maker = _RowMaker(project, workings)
    found = []
    for index, standing in enumerate(frame.uprights):
        role, rows = standing.role, standing.rows
        part = by_number.get(role.number if rows == usual else f"{role.number}-{rows}")
        if part is None:
            continue
        left, right = plan.beside(standing.before), plan.beside(standing.after)
        is_inner = role not in _RIGHT_IS_FACE | _LEFT_IS_FACE
        has_face_right = role in _RIGHT_IS_FACE or (is_inner and maker.count(right) > maker.count(left))
        work = Work(
            part, is_front_far=has_face_right, place=f"upright {index + 1}", bays=standing.bays,
            left_mm=standing.left_mm,
        )  # fmt: skip
        face, reverse = (right, left) if has_face_right else (left, right)
        work.rows = maker.rows(face, reverse, part.thickness_mm)
        found.append(UprightWork(standing, work, left, right, has_face_right))
    return found


def fixings_of(uprights: Sequence[UprightWork], plan: RowPlan) -> Fixings:
    """Where the runners of every drawer that is made are screwed to the uprights that stand beside it."""
    found: dict[tuple[int, int], list[tuple[float, ...]]] = {}
    for upright in uprights:
        for span in filter(None, (upright.standing.before, upright.standing.after)):
            for row, lines in plan.runners(span):
                found.setdefault((span.number, row), []).append(lines)
    return {place: tuple(lines) for place, lines in found.items()}


class _RowMaker:
    """Makes the holes of two faces once for all uprights that have the same."""

    def __init__(self, project: Project, workings: Workings) -> None:
        self._grid = _Grid(project.construction.hole_rows, workings.value("first_row"), workings.value("pitch"))
        self._made: dict[tuple[FaceRows, FaceRows], Rows] = {}

    def count(self, face: FaceRows) -> int:
        """How many holes a face has."""
        return len(face.places)

    def rows(self, face: FaceRows, reverse: FaceRows, thickness_mm: float) -> Rows:
        """The holes of both faces of an upright."""
        if (face, reverse) not in self._made:
            front = _row_holes(Side.FACE, face, reverse, self._grid, thickness_mm)
            rear = _row_holes(Side.REVERSE, reverse, face, self._grid, thickness_mm)
            self._made[face, reverse] = Rows((face.places, reverse.places), front + rear)
        return self._made[face, reverse]


@dataclass(frozen=True)
class _Grid:
    """How rows are drilled."""

    setting: HoleRows
    first_mm: float
    pitch_mm: float


@lru_cache(maxsize=256)  # uprights that an edit leaves as they are need not be drilled again
def _row_holes(side: Side, face: FaceRows, other: FaceRows, grid: _Grid, thickness_mm: float) -> tuple[Hole, ...]:
    """The holes of one face, less deep where one of the other face comes near."""
    diameter = grid.setting.hole_diameter_mm
    behind: dict[int, list[float]] = {}
    for row, line in other.holes:
        behind.setdefault(row, []).append(line)
    reach = diameter + SYSTEM_MARGIN_MM - _SAME_MM
    depth = min(grid.setting.hole_depth_mm, thickness_mm - LEAST_WALL_MM)
    shallow = min(depth, (thickness_mm - SYSTEM_MARGIN_MM) / 2)
    near_rows = range(-int(reach // grid.pitch_mm), int(reach // grid.pitch_mm) + 1)
    holes = []
    for (row, line), purpose in sorted(face.holes.items()):
        x = grid.first_mm + grid.pitch_mm * row
        is_met = any(abs(line - b) < reach for step in near_rows for b in behind.get(row + step, ()))
        holes.append(
            Hole(side=side, x_mm=x, y_mm=line, diameter_mm=diameter, depth_mm=shallow if is_met else depth,
                 purpose=purpose, row=row + 1)
        )  # fmt: skip
    return tuple(holes)


def notch(upright: UprightWork, from_mm: float, to_mm: float, deep_mm: float) -> None:
    """Cuts a notch out of the rear edge, for a rail that lies flush in it: a groove through the whole thickness."""
    part = upright.work.part
    upright.work.grooves.append(
        Groove(side=Side.FACE, is_along=True, offset_mm=part.width_mm - deep_mm, width_mm=deep_mm,
               depth_mm=part.thickness_mm, from_mm=from_mm, to_mm=to_mm)
    )  # fmt: skip
