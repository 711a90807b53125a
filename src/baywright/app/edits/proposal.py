"""Taking in some boxes of a re-plan, with what must move for them."""

from collections.abc import Iterable
from dataclasses import dataclass

from baywright.app.commands import EditRefused, checked
from baywright.model.arrangement import Arrangement
from baywright.model.plan import Conflict
from baywright.model.project import Project
from baywright.planner import closed_up, report

MOST_TOLD = 3

_Known = frozenset[tuple[str, str, tuple[str, ...]]]


@dataclass(frozen=True)
class AcceptMoves:
    """Puts the chosen boxes where `target` has them, and those that stand in their way where it has those; all other
    boxes stay where they are.
    """

    target: Arrangement
    box_ids: tuple[str, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Accept part of the re-plan"

    def apply(self, project: Project) -> Project:
        """The project with those boxes moved; EditRefused where that alone breaks a limit that is kept now."""
        return self.taken(project)[0]

    def taken(self, project: Project) -> tuple[Project, tuple[str, ...]]:
        """The same, and the ids of all boxes that move."""
        if self.target.box_widths_mm != project.arrangement.box_widths_mm:
            raise EditRefused("This re-plan makes bays of other widths, so it can only be accepted as a whole.")
        known = _known(report(project).conflicts)
        moving = [box_id for box_id in dict.fromkeys(self.box_ids) if self._moves(project, box_id)]
        if not moving:
            raise EditRefused("The re-plan leaves these boxes where they are.")
        while True:
            moved = self._with(project, moving)
            new = [c for c in report(moved).conflicts if _key(c) not in known]
            more = next((box_id for c in new for box_id in c.box_ids if self._helps(project, box_id, moving)), None)
            if more is not None:
                moving.append(more)
            elif new:
                raise EditRefused(_refusal(new))
            else:
                return moved, tuple(moving)

    def _moves(self, project: Project, box_id: str) -> bool:
        return _spot(project.arrangement, box_id) != _spot(self.target, box_id)

    def _helps(self, project: Project, box_id: str, moving: list[str]) -> bool:
        return box_id not in moving and self._moves(project, box_id)

    def _with(self, project: Project, moving: list[str]) -> Project:
        chosen = set(moving)
        present, target = project.arrangement, self.target
        whole = all(box.id in chosen or not self._moves(project, box.id) for box in project.boxes)
        places = [
            (target if whole or box.id in chosen else present).placement_of(box.id) for box in project.boxes
        ]  # fmt: skip
        shape = target if whole else target.replace(
            bay_count=max(present.bay_count, target.bay_count),
            upright_rows=max(present.upright_rows, target.upright_rows),
        )  # fmt: skip
        placements = tuple(p for p in places if p is not None)
        return checked(
            lambda: project.replace(
                arrangement=shape.replace(placements=placements if whole else closed_up(placements))
            )
        )


def _spot(arrangement: Arrangement, box_id: str) -> tuple[int, int] | None:
    placement = arrangement.placement_of(box_id)
    return None if placement is None else (placement.bay, placement.row)


def _known(conflicts: Iterable[Conflict]) -> _Known:
    return frozenset(map(_key, conflicts))


def _key(conflict: Conflict) -> tuple[str, str, tuple[str, ...]]:
    return conflict.kind, conflict.message, conflict.box_ids


def _refusal(conflicts: list[Conflict]) -> str:
    told = " ".join(conflict.message for conflict in conflicts[:MOST_TOLD])
    more = f" (and {len(conflicts) - MOST_TOLD} more)" if len(conflicts) > MOST_TOLD else ""
    return f"These boxes alone cannot be moved. {told}{more} Accept the whole re-plan, or choose other boxes."
