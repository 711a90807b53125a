"""Whether the document still agrees with the bays that stand as built, and how to mend it where it does not.

Laws: what is drilled stays drilled. Where the panels of a bay that stands are no longer those of the document, no place
of that bay can be named for sure, so nothing is asked for; where only the drawers differ that are made already, that
is told and the holes are used as they are.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from baywright.model.length import format_length
from baywright.model.project import Project
from baywright.planner.legality.built import built_conflicts
from baywright.planner.replanning.wall import read_wall
from baywright.workings import Workings, derive

_DRAWERS = ("drawer_outside_width", "drawer_outside_depth")
"""What drawers that hang already measure, bay by bay."""
_ALL_DRAWERS = (
    "drawer_side_height",
    "drawer_side_thickness",
    "drawer_bottom_thickness",
    "groove_offset",
    "line_offset",
)
"""The same, for all drawers alike."""
_SAME_MM = 1e-3
_MEND = "Set it back, make new drawers, or forget what is built."


@dataclass(frozen=True)
class Disagreement:
    """Something that is not as it was built, in words; `about_panels` where it leaves no hole certain."""

    text: str
    about_panels: bool


def disagreements(project: Project) -> tuple[Disagreement, ...]:
    """Where a document and the bays that stand as built contradict each other; empty where nothing is built."""
    if project.built is None:
        return ()
    if not project.arrangement.bay_count:
        return (Disagreement("Bays stand as built, but nothing is arranged. Plan the run again.", True),)
    now, then = derive(project), derive(project.built.project)
    panels = built_conflicts(project, now, now.layout, project.arrangement.upright_rows)
    return (
        *(Disagreement(f"{conflict.message} {conflict.mend}", True) for conflict in panels),
        *_off_rows(project, project.built.bays, then),
        *_drawers(project, project.built.bays, now, then),
    )


def _off_rows(project: Project, bays: tuple[int, ...], then: Workings) -> Iterator[Disagreement]:
    """Drawers that would need a hole where the bay that stands has none."""
    for bay, row in sorted(read_wall(project).drawers):
        if bay in bays and row >= (rows := then.layout.bays[bay].rows):
            text = (
                f"A drawer is placed at row {row + 1} of bay {bay + 1}, which stands with {rows} hole rows. Put its "
                f"box at row {rows} or lower, or into another bay."
            )
            yield Disagreement(text, True)


def _drawers(project: Project, bays: tuple[int, ...], now: Workings, then: Workings) -> Iterator[Disagreement]:
    """Measures by which drawers that are made already differ from those that the document would make."""
    rails = ("drawer_rail_height",) if now.value("tray") or then.value("tray") else ()  # else they are as the sides
    pairs = [(name, "", then.value(name), now.value(name)) for name in (*_ALL_DRAWERS, *rails)]
    pairs += [
        (name, f" of bay {bay + 1}", _in_bay(then, name, bay), _in_bay(now, name, bay))
        for name in _DRAWERS
        for bay in bays
        if bay < len(now.layout.bays)
    ]
    for name, where, built_mm, now_mm in pairs:
        if abs(built_mm - now_mm) > _SAME_MM:
            label = now.entry(name).label
            was, would = (format_length(mm, project.unit) for mm in (built_mm, now_mm))
            text = f"{label[:1].upper()}{label[1:]}{where}: {was} as built, {would} in the document. {_MEND}"
            yield Disagreement(text, False)


def _in_bay(workings: Workings, name: str, bay: int) -> float:
    return workings.at_kind(name, workings.kind_of(workings.layout.bays[bay]))
