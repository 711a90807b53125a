"""The carcass frame of the run: uprights with what each is for, the clear spans between them, what lies over them.

Laws: places come from the layout of the workings and from nowhere else; all x in mm from where the leftmost upright's
outer face stands when nothing is in its way; joints of boards that run through may only lie where `joints_mm` says.
"""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from itertools import groupby, pairwise
from operator import attrgetter

from baywright.model.construction import Uprights
from baywright.model.project import Project
from baywright.workings import BayPlace, Layout, Stretch, UprightPlace, Workings

SHELF_BAY = -1
"""What stands for the number of the shelf bay in lists of bays."""


class Role(Enum):
    """What an upright is for: its part number, its name, and what must be drilled where."""

    LEFT = ("U1", "Upright, left", "runner rows on the right face")
    INNER = ("U2", "Upright, inner", "runner rows on both faces")
    RIGHT = ("U3", "Upright, right", "runner rows on the left face")
    BEFORE_SHELVES = ("U4", "Upright, drawers and shelves", "runner rows on the left face, shelf-pin rows on the right")
    SHELVES_LEFT = ("U5", "Upright, left of the shelves", "shelf-pin rows on the right face")
    SHELVES_RIGHT = ("U6", "Upright, right of the shelves", "shelf-pin rows on the left face")

    def __init__(self, number: str, title: str, drilling: str) -> None:
        self.number = number
        self.title = title
        self.drilling = drilling


@dataclass(frozen=True)
class Span:
    """The clear room between two uprights; `bay` counts drawer bays from 0 and is None for the shelf bay."""

    left_mm: float
    width_mm: float
    bay: int | None
    rows: int
    kind: str = ""
    """The bay's kind in the workings."""

    @property
    def number(self) -> int:
        """The bay's number, -1 for the shelf bay."""
        return SHELF_BAY if self.bay is None else self.bay


@dataclass(frozen=True)
class StandingUpright:
    """One upright: the x of its left face, its role, its hole rows, and the spans on its left and right."""

    left_mm: float
    role: Role
    rows: int
    before: Span | None = None
    after: Span | None = None

    @property
    def bays(self) -> tuple[int, ...]:
        """The bays beside it (-1: the shelf bay)."""
        return tuple(span.number for span in (self.before, self.after) if span is not None)


@dataclass(frozen=True)
class Frame:
    """Uprights and spans of a run from left to right."""

    uprights: tuple[StandingUpright, ...]
    spans: tuple[Span, ...]
    upright_mm: float
    """Thickness of an upright."""
    carcasses_mm: tuple[tuple[float, float], ...]
    """Left and right end of each carcass: a section of the run, or with own uprights a bay."""
    stretches: tuple[Stretch, ...]
    """What one top lies on."""
    own_uprights: bool

    @property
    def length_mm(self) -> float:
        """Length of the whole run, to the outer face of the last upright."""
        return self.carcasses_mm[-1][1] if self.carcasses_mm else 0.0

    @property
    def sections_mm(self) -> tuple[tuple[float, float], ...]:
        """Left and right end of each part of the run that stands in one piece."""
        found: list[tuple[float, float]] = []
        for left, right in self.carcasses_mm:
            if found and left - found[-1][1] < 1e-6:
                found[-1] = (found[-1][0], right)
            else:
                found.append((left, right))
        return tuple(found)

    @property
    def middles_mm(self) -> tuple[float, ...]:
        """The x of the middle of every upright."""
        return tuple(upright.left_mm + self.upright_mm / 2 for upright in self.uprights)

    @property
    def joints_mm(self) -> tuple[float, ...]:
        """Where boards that run through may be joined: over the middles of the inner uprights, or, with own
        uprights, where two carcasses meet, so that each board bears on a whole upright.
        """
        if self.own_uprights:
            return tuple(right for _, right in self.carcasses_mm[:-1])
        return self.middles_mm[1:-1]

    def upright_at(self, x_mm: float) -> str:
        """How people find the joint at `x_mm`: “upright 3”, or “uprights 4 and 5” where two carcasses meet."""
        near = [n for n, middle in enumerate(self.middles_mm, 1) if abs(middle - x_mm) <= self.upright_mm / 2 + 1e-6]
        return f"upright {near[0]}" if len(near) == 1 else f"uprights {' and '.join(map(str, near))}"

    def bays_over(self, left_mm: float, right_mm: float) -> tuple[int, ...]:
        """The bays that a board from one place to another lies over, from the left."""
        return tuple(s.number for s in self.spans if left_mm < s.left_mm + s.width_mm / 2 < right_mm)


def frame_of(project: Project, workings: Workings) -> Frame:
    """The frame of a project's run, from the layout of its workings."""
    layout = workings.layout
    own = project.construction.uprights is Uprights.OWN
    spans = [
        Span(bay.left_mm, bay.clear_mm, bay.number, bay.rows, workings.kind_of(bay)) for bay in layout.bays
    ]  # fmt: skip
    if layout.shelf is not None:
        spans.append(Span(layout.shelf.left_mm, layout.shelf.clear_mm, None, layout.shelf.rows))
    upright_mm = project.boards.upright_mm
    from_left = sorted(spans, key=lambda span: span.left_mm)
    uprights = tuple(_standing(upright, from_left, upright_mm) for upright in layout.uprights)
    return Frame(uprights, tuple(spans), upright_mm, layout.carcasses_mm, layout.stretches, own)


def _standing(upright: UprightPlace, spans: Sequence[Span], upright_mm: float) -> StandingUpright:
    """An upright with its role, by what stands on either side of it."""
    next_one = bisect_left(spans, upright.left_mm + upright_mm - 1e-6, key=attrgetter("left_mm"))
    near = spans[max(0, next_one - 1) : next_one + 1]
    before = next((s for s in near if abs(s.left_mm + s.width_mm - upright.left_mm) < 1e-6), None)
    after = next((s for s in near if abs(s.left_mm - upright.left_mm - upright_mm) < 1e-6), None)
    return StandingUpright(upright.left_mm, _role(before, after), upright.rows, before, after)


def _role(before: Span | None, after: Span | None) -> Role:
    if before is None:
        return Role.SHELVES_LEFT if after is not None and after.bay is None else Role.LEFT
    if after is None:
        return Role.SHELVES_RIGHT if before.bay is None else Role.RIGHT
    return Role.BEFORE_SHELVES if after.bay is None else Role.INNER


def neighbours(layout: Layout) -> set[tuple[int, int]]:
    """Pairs of drawer bays, left and right, with one shared upright between them."""
    found = set()
    for _, members in groupby(layout.bays, key=lambda bay: bay.section):
        bays: list[BayPlace] = list(members)
        found |= {(left.number, right.number) for left, right in pairwise(bays)}
    return found
