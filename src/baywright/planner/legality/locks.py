"""Whether what is locked can stay at all: each locked box by itself, and any of them against each other.

Laws: boxes locked to one row of one bay share a drawer, and must be allowed to; where the widths of bays are yet to be
chosen, a box is judged by the widest that its bay may have.
"""

from collections import defaultdict
from collections.abc import Sequence
from itertools import pairwise

from baywright.model.arrangement import Lock, Placement
from baywright.model.inventory import Box
from baywright.model.plan import Conflict, LimitKind
from baywright.model.project import Project
from baywright.planner.framing.bay import Face, faces
from baywright.planner.framing.fitting import Fitting
from baywright.planner.framing.grid import Grid
from baywright.planner.framing.widths import WidthChoice
from baywright.planner.legality.content import Contents, names
from baywright.workings import derive


def lock_conflicts(project: Project, grid: Grid, bays: int, rows: int) -> tuple[Conflict, ...]:
    """The clashes of locks in a run of at most that many bays and rows."""
    placed = {box.id for box in project.boxes_to_place}
    locked = [p for p in project.arrangement.placements if p.lock is not Lock.NONE and p.box_id in placed]
    return _Locks(project, grid, bays, rows).conflicts(locked) if locked else ()


class _Locks:
    """The run as it may be at most, and the locks in it."""

    def __init__(self, project: Project, grid: Grid, bays: int, rows: int) -> None:
        self._project = project
        self._grid = grid
        self._bays = bays
        workings = derive(project)
        choice = WidthChoice(project, workings)
        self._faces = faces(project, workings, choice.widest(bays), rows)
        if len(choice.widths) > 1:  # what a bay stands under and before depends on the widths chosen
            own = (project.limits.wish(bay).rows or rows for bay in range(bays))
            self._faces = [Face(row, face.box_width_mm) for row, face in zip(own, self._faces, strict=True)]
        self._contents = Contents(Fitting(project, workings), workings)

    def conflicts(self, locked: Sequence[Placement]) -> tuple[Conflict, ...]:
        """Every clash, bay by bay."""
        found = [c for p in locked for c in self._alone(p)]
        by_bay: dict[int, list[Placement]] = defaultdict(list)
        for p in locked:
            if p.bay < self._bays:
                by_bay[p.bay].append(p)
        for bay, here in sorted(by_bay.items()):
            found += self._in_bay(bay, here)
        return tuple(found)

    def _alone(self, p: Placement) -> list[Conflict]:
        box, bays = self._project.box(p.box_id), self._bays
        name, mend = f"“{box.label}” is locked", "Unlock the box."
        if p.bay >= bays:
            there = "there is only 1 bay" if bays == 1 else f"there are only {bays} bays"
            return [Conflict(
                kind=LimitKind.LOCK, message=f"{name} in bay {p.bay + 1}; {there}.", mend=mend,
                box_ids=(box.id,), needed=p.bay + 1, available=bays, unit="bays",
            )]  # fmt: skip
        face = self._faces[p.bay]
        if p.lock is Lock.BAY:
            return self._held(box, p.bay, face)
        at = f"{name} at row {p.row + 1} of bay {p.bay + 1}"
        if p.row < self._grid.lowest:
            return [Conflict(
                kind=LimitKind.LOCK, box_ids=(box.id,), mend=mend,
                message=f"{at}; the lowest row a drawer can use is {self._grid.lowest + 1}, or it would meet the base.",
            )]  # fmt: skip
        highest = self._grid.highest(box.size_id, face.rows)
        if p.row > highest:
            reach = (
                f"the highest row for its size is {highest + 1}"
                if highest >= self._grid.lowest
                else "it fits at no row"
            )
            return [Conflict(
                kind=LimitKind.LOCK, box_ids=(box.id,), mend=mend,
                message=f"{at}; with {face.rows} rows {reach}, or it would meet the top.",
            )]  # fmt: skip
        spot = self._contents.spot(face, p.bay, p.row, self._rows_of(box))
        return [_locked(c) for c in self._contents.as_could_be([box], spot)]

    def _held(self, box: Box, bay: int, face: Face) -> list[Conflict]:
        """A box locked to a bay that has no drawer for it at any row."""
        rows = range(self._grid.lowest, self._grid.highest(box.size_id, face.rows) + 1)
        if face.rows and not rows:
            return [Conflict(
                kind=LimitKind.LOCK, box_ids=(box.id,), mend="Unlock the box.",
                message=f"“{box.label}” is locked in bay {bay + 1}; with {face.rows} rows it fits at no row there.",
            )]  # fmt: skip
        first: list[Conflict] = []
        for row in rows:
            found = self._contents.as_could_be([box], self._contents.spot(face, bay, row, self._rows_of(box)))
            if not found:
                return []
            first = first or [_locked(c) for c in found]
        return first

    def _in_bay(self, bay: int, here: Sequence[Placement]) -> list[Conflict]:
        """Locked drawers of one bay against each other, and their number."""
        drawers: dict[int, list[Box]] = defaultdict(list)
        for p in sorted(here, key=lambda p: (p.row, p.box_id)):
            if p.lock is Lock.DRAWER:
                drawers[p.row].append(self._project.box(p.box_id))
        found = []
        for row, boxes in drawers.items():
            if len(boxes) > 1:
                rows = max(map(self._rows_of, boxes))
                spot = self._contents.spot(self._faces[bay], bay, row, rows)
                found += [_locked(c, f"Unlock {names(boxes[:1])}.") for c in self._contents.as_could_be(boxes, spot)]
        for (lower, under), (upper, over) in pairwise(drawers.items()):
            if (clash := self._pair(bay, (lower, under), (upper, over))) is not None:
                found.append(clash)
        limit = self._project.limits.drawers_in(bay)
        needed = self._drawers_needed(here)
        if limit is not None and needed > limit:
            found.append(_too_many(bay, here, needed, limit))
        return found

    def _drawers_needed(self, here: Sequence[Placement]) -> int:
        """The drawers that what is locked in a bay takes at least."""
        rows = {p.row for p in here if p.lock is Lock.DRAWER}
        held = [p for p in here if p.lock is Lock.BAY]
        if any(self._most_together(p) > 1 for p in here):
            return len(rows)  # boxes that are free in their row may come into these drawers
        return len(rows) + len(held)

    def _most_together(self, p: Placement) -> int:
        size = self._project.size_of(self._project.box(p.box_id))
        return max(size.most_abreast, size.most_behind)

    def _rows_of(self, box: Box) -> int:
        return self._grid.sizes[box.size_id].rows

    def _pair(self, bay: int, lower: tuple[int, list[Box]], upper: tuple[int, list[Box]]) -> Conflict | None:
        first, second = max(lower[1], key=self._rows_of), upper[1][0]
        rows, there = self._rows_of(first), upper[0] - lower[0]
        if rows <= there:
            return None
        return Conflict(
            kind=LimitKind.LOCK,
            message=f"“{first.label}” and “{second.label}” are locked at rows {lower[0] + 1} and {upper[0] + 1} of bay "
            f"{bay + 1}; “{first.label}” takes {rows} row{'s' if rows != 1 else ''}, {there} "
            f"{'is' if there == 1 else 'are'} between them.",
            mend=f"Unlock “{second.label}” or “{first.label}”.",
            box_ids=(first.id, second.id), needed=rows, available=there, unit="rows",
        )  # fmt: skip


def _locked(conflict: Conflict, mend: str = "Unlock the box.") -> Conflict:
    """A finding about a locked drawer, as one about the lock."""
    return conflict.replace(kind=LimitKind.LOCK, message=f"Locked: {conflict.message}", mend=mend)


def _too_many(bay: int, here: Sequence[Placement], needed: int, limit: int) -> Conflict:
    return Conflict(
        kind=LimitKind.LOCK,
        message=f"{needed} boxes are locked in bay {bay + 1}; a bay may have {limit} drawer{'s' * (limit != 1)}."
        if needed == len(here) else
        f"What is locked in bay {bay + 1} takes {needed} drawers; it may have {limit}.",
        mend="Unlock one of them, or allow more drawers in a bay.",
        box_ids=tuple(p.box_id for p in here), needed=needed, available=limit, unit="drawers",
    )  # fmt: skip
