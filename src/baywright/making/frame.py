"""Where the uprights stand along the run: the one place that lays bays, uprights and joints side by side.

Laws: all x in mm from the outer face of the leftmost upright, growing to the right; the spans and uprights together
fill exactly the run length of the workings; joints may only lie where `joints_mm` says.
"""

from dataclasses import dataclass
from enum import Enum

from baywright.model.construction import Uprights
from baywright.model.project import Project
from baywright.workings import Workings


class Role(Enum):
    """What an upright is for: its part number, its name, and what must be drilled where."""

    LEFT = ("U1", "Upright, left", "runner rows on the right face")
    INNER = ("U2", "Upright, inner", "runner rows on both faces")
    RIGHT = ("U3", "Upright, right", "runner rows on the left face; mirrors U1")
    BEFORE_SHELVES = ("U4", "Upright, drawers and shelves", "runner rows on the left face, shelf-pin rows on the right")
    SHELVES_LEFT = ("U5", "Upright, left of the shelves", "shelf-pin rows on the right face")
    SHELVES_RIGHT = ("U6", "Upright, right of the shelves", "shelf-pin rows on the left face")

    def __init__(self, number: str, title: str, drilling: str) -> None:
        self.number = number
        self.title = title
        self.drilling = drilling


@dataclass(frozen=True)
class StandingUpright:
    """One upright: the x of its left face, and its role."""

    left_mm: float
    role: Role


@dataclass(frozen=True)
class Span:
    """The clear room between two uprights; `bay` counts drawer bays from 0 and is None for the shelf bay."""

    left_mm: float
    width_mm: float
    bay: int | None


@dataclass(frozen=True)
class Frame:
    """Uprights and spans of a run from left to right."""

    uprights: tuple[StandingUpright, ...]
    spans: tuple[Span, ...]
    upright_mm: float
    """Thickness of an upright."""
    carcasses_mm: tuple[tuple[float, float], ...]
    """Left and right end of each carcass; a run with shared uprights is one carcass."""

    @property
    def length_mm(self) -> float:
        """Length of the whole run, from the outer face of the first upright to that of the last."""
        return self.carcasses_mm[-1][1] if self.carcasses_mm else 0.0

    @property
    def middles_mm(self) -> tuple[float, ...]:
        """The x of the middle of every upright."""
        return tuple(upright.left_mm + self.upright_mm / 2 for upright in self.uprights)

    @property
    def joints_mm(self) -> tuple[float, ...]:
        """Where boards that run through may be joined: over the middles of the inner uprights, or, with own
        uprights, where two carcasses meet, so that each board bears on a whole upright.
        """
        if len(self.carcasses_mm) > 1:
            return tuple(right for _, right in self.carcasses_mm[:-1])
        return self.middles_mm[1:-1]

    def upright_at(self, x_mm: float) -> str:
        """How people find the joint at `x_mm`: “upright 3”, or “uprights 4 and 5” where two carcasses meet."""
        near = [n for n, middle in enumerate(self.middles_mm, 1) if abs(middle - x_mm) <= self.upright_mm / 2 + 1e-6]
        return f"upright {near[0]}" if len(near) == 1 else f"uprights {' and '.join(map(str, near))}"


def frame_of(project: Project, workings: Workings) -> Frame:
    """The frame of a project's run, from the dimensions of its workings."""
    bays = round(workings.value("bay_count"))
    clear = workings.value("bay_clear_width")
    shelf_clear = workings.value("shelf_bay_clear_width")
    upright = project.construction.boards.upright_mm
    widths: list[tuple[float, int | None]] = [(clear, bay) for bay in range(bays)]
    if shelf_clear > 0:
        widths.append((shelf_clear, None))
    if project.construction.uprights is Uprights.OWN:
        return _own(widths, upright)
    return _shared(widths, upright)


def _shared(widths: list[tuple[float, int | None]], upright_mm: float) -> Frame:
    if not widths:
        return Frame((), (), upright_mm, ())
    uprights, spans, x = [], [], 0.0
    before: int | str | None = "end"
    for width, bay in widths:
        uprights.append(StandingUpright(x, _shared_role(before, bay)))
        spans.append(Span(x + upright_mm, width, bay))
        x += upright_mm + width
        before = bay
    uprights.append(StandingUpright(x, Role.SHELVES_RIGHT if before is None else Role.RIGHT))
    return Frame(tuple(uprights), tuple(spans), upright_mm, ((0.0, x + upright_mm),))


def _shared_role(before: int | str | None, bay: int | None) -> Role:
    if before == "end":
        return Role.SHELVES_LEFT if bay is None else Role.LEFT
    return Role.BEFORE_SHELVES if bay is None else Role.INNER


def _own(widths: list[tuple[float, int | None]], upright_mm: float) -> Frame:
    uprights, spans, carcasses, x = [], [], [], 0.0
    for width, bay in widths:
        left, right = (Role.LEFT, Role.RIGHT) if bay is not None else (Role.SHELVES_LEFT, Role.SHELVES_RIGHT)
        end = x + width + 2 * upright_mm
        uprights += [StandingUpright(x, left), StandingUpright(end - upright_mm, right)]
        spans.append(Span(x + upright_mm, width, bay))
        carcasses.append((x, end))
        x = end
    return Frame(tuple(uprights), tuple(spans), upright_mm, tuple(carcasses))
