"""The work on a part as lines of a table: every hole, groove, joint and shaped edge with its place and measures."""

from collections.abc import Callable
from dataclasses import dataclass

from baywright.gui.elevation.captions import short_length
from baywright.gui.parts.line import SIDES
from baywright.gui.tables.column import Column
from baywright.model.length import LengthUnit
from baywright.model.machining import Groove, Hole, Joint, Machining, ShapedEdge, Side

Feature = Hole | Groove | Joint | ShapedEdge
NOT_DRAWN = "Nothing is drilled, grooved or shaped in this part."
_ORDER = list(SIDES)


@dataclass(frozen=True)
class WorkLine:
    """One piece of work; lengths in mm, None where it has none."""

    feature: Feature
    what: str
    side: Side
    x_mm: float | None
    y_mm: float | None
    size: tuple[float, ...]
    depth_mm: float | None
    goes_through: bool = False
    row: int | None = None
    note: str = ""


def work_lines(machining: Machining) -> list[tuple[str, WorkLine]]:
    """All the work on a part, side by side in their order, from the front and from the start."""
    lines = [
        *(_of_hole(hole) for hole in machining.holes),
        *(_of_groove(groove) for groove in machining.grooves),
        *(_of_joint(joint) for joint in machining.joints),
        *(_of_edge(edge) for edge in machining.shaped_edges),
    ]
    lines.sort(key=lambda line: (_ORDER.index(line.side), line.what, line.y_mm or 0.0, line.x_mm or 0.0))
    return [(str(number), line) for number, line in enumerate(lines)]


def _of_hole(hole: Hole) -> WorkLine:
    through = hole.depth_mm is None
    return WorkLine(
        hole, hole.purpose.value, hole.side, hole.x_mm, hole.y_mm, (hole.diameter_mm,), hole.depth_mm, through, hole.row
    )


def _of_groove(groove: Groove) -> WorkLine:
    x, y = (groove.from_mm, groove.offset_mm) if groove.is_along else (groove.offset_mm, groove.from_mm)
    note = "along the length" if groove.is_along else "across"
    size = (groove.to_mm - groove.from_mm, groove.width_mm)
    return WorkLine(groove, "groove", groove.side, x, y, size, groove.depth_mm, note=note)


def _of_joint(joint: Joint) -> WorkLine:
    note = f"meets {joint.meets}" if joint.meets else ""
    size = (joint.long_mm, joint.thick_mm)
    return WorkLine(joint, "loose tenon", joint.side, joint.x_mm, joint.y_mm, size, joint.depth_mm, note=note)


def _of_edge(edge: ShapedEdge) -> WorkLine:
    note = "both corners" if edge.is_both else "the corner at the face"
    return WorkLine(edge, f"{edge.form.value} edge", edge.side, None, None, (edge.size_mm,), None, note=note)


def work_columns(unit: Callable[[], LengthUnit]) -> tuple[Column[WorkLine], ...]:
    """The columns of the table of work."""

    def length(value: float | None) -> str:
        return "" if value is None else short_length(value, unit())

    return (
        Column("Work", lambda x: x.what, lambda x: x.what, "What is done"),
        Column("Side", lambda x: SIDES[x.side], lambda x: _ORDER.index(x.side), "On which side of the part"),
        Column("x", lambda x: length(x.x_mm), lambda x: x.x_mm, "From the start, along the length", is_number=True),
        Column("y", lambda x: length(x.y_mm), lambda x: x.y_mm,
               "From the front edge; on an end or edge from the face", is_number=True),
        Column("Size", lambda x: size_words(x, unit()), lambda x: x.size, "Diameter, or length × width"),
        Column("Depth", lambda x: "through" if x.goes_through else length(x.depth_mm), lambda x: x.depth_mm,
               "How deep; through where it goes through", is_number=True),
        Column("Row", lambda x: "" if x.row is None else str(x.row), lambda x: x.row, "Hole row, from 1 at the bottom",
               is_number=True),
        Column("Note", lambda x: x.note, lambda x: x.note),
    )  # fmt: skip


def size_words(line: WorkLine, unit: LengthUnit) -> str:
    """The measures of a piece of work: ⌀ of a hole, length × width of a groove or mortise."""
    words = " × ".join(short_length(value, unit) for value in line.size)
    return f"⌀ {words}" if isinstance(line.feature, Hole) else words


def work_summary(machining: Machining) -> str:
    """All the work in a sentence: how many of what."""
    counts: dict[str, int] = {}
    for _, line in work_lines(machining):
        counts[line.what] = counts.get(line.what, 0) + 1
    if not counts:
        return NOT_DRAWN
    return "; ".join(f"{count} × {what}" for what, count in counts.items()) + "."
