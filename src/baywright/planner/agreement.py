"""Whether the document still agrees with the bays that stand as built, and how to mend it where it does not.

Laws: what is drilled stays drilled. Where the hole rows of a bay that stands are no longer those of the document, no
place of that bay can be named, so nothing is asked of it; where only something else differs, that is told and the
holes are used as they are.
"""

from collections.abc import Callable
from dataclasses import dataclass

from baywright.model.length import format_length
from baywright.model.project import Project
from baywright.planner.wall import read_wall
from baywright.workings import Workings, derive

_HOLES = ("pitch", "first_row", "front_setback", "rear_setback")
"""What says where the holes are, beside the number of rows."""
_BODY = ("upright_depth", "upright_thickness", "base_upper_height", "line_offset")
"""What else is fixed once a bay stands, or once its drawers are made."""
_BY_BAY = ("bay_clear_width", "drawer_outside_depth", "drawer_side_height", "drawer_side_thickness")
"""The same, bay by bay."""
_SAME_MM = 1e-3
_MEND = "Set it back, or forget that these bays are as built."


@dataclass(frozen=True)
class Disagreement:
    """Something that is not as it was built, in words; `about_holes` where it makes the hole rows uncertain."""

    text: str
    about_holes: bool


def disagreements(project: Project) -> tuple[Disagreement, ...]:
    """Where a document and the bays that stand as built contradict each other; empty where nothing is built."""
    built = project.built
    if built is None:
        return ()
    return tuple(_Comparison(project, built.project, built.bays).found())


class _Comparison:
    def __init__(self, project: Project, as_built: Project, bays: tuple[int, ...]) -> None:
        self._project, self._as_built = project, as_built
        self._now, self._then = derive(project), derive(as_built)
        self._there = tuple(bay for bay in bays if bay < project.arrangement.bay_count)
        self._gone = tuple(bay for bay in bays if bay >= project.arrangement.bay_count)

    def found(self) -> list[Disagreement]:
        found = [Disagreement(self._fewer(bay), True) for bay in self._gone]
        found += self._measures(_HOLES, True) + self._measures(_BODY, False)
        found += self._rows() + self._off_rows()
        for name in _BY_BAY:
            found += self._by_bay(name)
        return found

    def _fewer(self, bay: int) -> str:
        count = self._project.arrangement.bay_count
        there = "1 bay" if count == 1 else f"{count} bays"
        return f"Bay {bay + 1} stands as built, but the arrangement has only {there}. Plan again, or forget that it is."

    def _measures(self, names: tuple[str, ...], about_holes: bool) -> list[Disagreement]:
        return [
            Disagreement(self._differs(name, self._then.value(name), self._now.value(name), ""), about_holes)
            for name in names
            if abs(self._then.value(name) - self._now.value(name)) > _SAME_MM
        ]

    def _differs(self, name: str, built_mm: float, now_mm: float, where: str) -> str:
        length, label = self._length, self._now.entry(name).label
        return (
            f"{label[:1].upper()}{label[1:]}{where}: {length(built_mm)} as built, {length(now_mm)} in the document. "
            f"{_MEND}"
        )

    @property
    def _length(self) -> Callable[[float], str]:
        return lambda length_mm: format_length(length_mm, self._project.unit)

    def _rows(self) -> list[Disagreement]:
        found = []
        for bay in self._there:
            built, now = self._then.layout.bays[bay].rows, self._now.layout.bays[bay].rows
            if built != now:
                text = f"Bay {bay + 1} stands with {built} hole rows; the document gives it {now}. {_MEND}"
                found.append(Disagreement(text, True))
        return found

    def _off_rows(self) -> list[Disagreement]:
        """Drawers that would need a hole where the bay that stands has none."""
        found = []
        for bay, row in sorted(read_wall(self._project).drawers):
            if bay in self._there and row >= (rows := self._then.layout.bays[bay].rows):
                text = (
                    f"A drawer is placed at row {row + 1} of bay {bay + 1}, which stands with {rows} hole rows. "
                    f"Put its box at row {rows} or lower, or into another bay."
                )
                found.append(Disagreement(text, True))
        return found

    def _by_bay(self, name: str) -> list[Disagreement]:
        found = []
        for bay in self._there:
            built, now = _in_bay(self._then, name, bay), _in_bay(self._now, name, bay)
            if abs(built - now) > _SAME_MM:
                found.append(Disagreement(self._differs(name, built, now, f" of bay {bay + 1}"), False))
        return found


def _in_bay(workings: Workings, name: str, bay: int) -> float:
    return workings.at_kind(name, workings.kind_of(workings.layout.bays[bay]))
