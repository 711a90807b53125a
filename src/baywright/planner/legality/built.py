"""What stands already and must stay: bays keep their place, their width, their rows and their hole grid.

Laws: a built bay is judged by its panels, never by what is in its drawers; every measure that no longer matches is
named once, with what was built and what the document says now.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from baywright.model.length import format_length
from baywright.model.plan import Conflict, LimitKind
from baywright.model.project import Project
from baywright.workings import Workings, derive
from baywright.workings.layout import Layout

TOLERANCE_MM = 1e-6
"""What two measures of the same thing may differ by."""

_GRID = (
    ("pitch", "pitch of the hole rows"),
    ("first_row", "height of the first hole row"),
    ("upright_thickness", "thickness of the uprights"),
    ("upright_depth", "depth of the uprights"),
    ("front_setback", "set-back of the front hole column"),
    ("rear_setback", "set-back of the rear hole column"),
    ("base_upper_height", "height of the base"),
)
"""What built panels fix, by name in the workings and in words."""


@dataclass(frozen=True)
class Standing:
    """The bays that stand, as they were built."""

    numbers: tuple[int, ...]
    rows: int
    """Rows of the run that they were built in."""
    workings: Workings

    @property
    def fewest_bays(self) -> int:
        """So many bays there must be for every one of them."""
        return self.numbers[-1] + 1


def standing_bays(project: Project) -> Standing | None:
    """The bays that stand; None where none does."""
    if project.built is None:
        return None
    before = project.built.project
    return Standing(project.built.bays, before.arrangement.upright_rows, derive(before))


def built_rows(project: Project) -> int | None:
    """The rows of the run that bays were built in; None where none stands, or where each has rows of its own."""
    if project.built is None:
        return None
    before = project.built.project
    if all(before.limits.wish(number).rows is not None for number in project.built.bays):
        return None
    return before.arrangement.upright_rows


def built_conflicts(project: Project, workings: Workings, layout: Layout, rows: int) -> tuple[Conflict, ...]:
    """What in a run of `rows` rows, laid out like that, does not match the bays that stand."""
    standing = standing_bays(project)
    if standing is None:
        return ()
    return (*_grid(project, workings, standing), *_run(project, standing, rows), *_bays(project, standing, layout))


def _grid(project: Project, workings: Workings, standing: Standing) -> Iterator[Conflict]:
    """Measures of the construction that the panels that stand have otherwise."""
    before = standing.workings
    for name, words in _GRID:
        built, now = before.value(name), workings.value(name)
        if abs(built - now) > TOLERANCE_MM:
            yield _differs(project, words, built, now)
    if before.value("own_uprights") != workings.value("own_uprights"):
        was = "with uprights of their own" if before.value("own_uprights") else "with shared uprights"
        yield Conflict(
            kind=LimitKind.BUILT,
            message=f"The bays that stand were built {was}; the document has it the other way now.",
            mend="Set it back, or forget what is built.",
        )


def _differs(project: Project, words: str, built_mm: float, now_mm: float) -> Conflict:
    was, now = format_length(built_mm, project.unit), format_length(now_mm, project.unit)
    if was == now:
        was, now = f"{built_mm:.3f} mm", f"{now_mm:.3f} mm"
    return Conflict(
        kind=LimitKind.BUILT,
        message=f"The bays that stand were built with a {words} of {was}; the document says {now}.",
        mend="Set it back, or forget what is built.",
    )


def _run(project: Project, standing: Standing, rows: int) -> Iterator[Conflict]:
    """The rows of the run, as it is or as the limits fix it."""
    if built_rows(project) is None:
        return
    fixed = project.limits.upright_rows
    if rows != standing.rows or fixed not in (None, standing.rows):
        other = rows if rows != standing.rows else fixed
        yield Conflict(
            kind=LimitKind.BUILT,
            message=f"The bays that stand were built in a run of {standing.rows} rows; it would have {other} now.",
            mend=f"Keep {standing.rows} rows, or forget what is built.",
        )


def _bays(project: Project, standing: Standing, layout: Layout) -> Iterator[Conflict]:
    """Bays that would come to stand elsewhere, or with another width or other rows."""
    before = standing.workings.layout.bays
    mend = "Set back what changed it, or forget what is built."
    for number in standing.numbers:
        old = before[number]
        name = f"Bay {number + 1} stands"
        if number >= len(layout.bays):
            yield Conflict(
                kind=LimitKind.BUILT, message=f"{name}, but there are only {len(layout.bays)} bays now.",
                mend=f"Have at least {standing.fewest_bays} bays, or forget what is built.",
                needed=number + 1, available=len(layout.bays), unit="bays",
            )  # fmt: skip
            continue
        now = layout.bays[number]
        old_mm, now_mm = old.left_mm - standing.workings.layout.wall_left_mm, now.left_mm - layout.wall_left_mm
        if abs(old.clear_mm - now.clear_mm) > TOLERANCE_MM:
            was, would = (format_length(mm, project.unit) for mm in (old.clear_mm, now.clear_mm))
            message = f"{name} with a clear width of {was}; it would be {would} wide now."
        elif abs(old_mm - now_mm) > TOLERANCE_MM:
            was, would = (format_length(mm, project.unit) for mm in (old_mm, now_mm))
            message = f"{name} {was} from the left end of the space; it would be {would} from it now."
        elif old.rows != now.rows:
            message = f"{name} with {old.rows} rows; it would have {now.rows} now."
        else:
            continue
        yield Conflict(kind=LimitKind.BUILT, message=message, mend=mend)
