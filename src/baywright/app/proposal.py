"""A re-plan that is shown before it is taken in: the document, what it would become, and all that this asks for.

Laws: the work is counted from how the run stands: from what is as built, where something is, else from the document
before; boxes are told to move against the document, for that is what the owner sees.
"""

from dataclasses import dataclass
from functools import cached_property

from baywright.making import part_changes, upgrade_remarks
from baywright.model.difference import BoxMove, Difference, PartChange, Place, Step, StepKind
from baywright.model.plan import PlanResult
from baywright.model.project import Project
from baywright.planner import difference, disagreements

MOST_NAMES = 4


@dataclass(frozen=True)
class Proposal:
    """What the planner proposes for a document."""

    before: Project
    """The document as it is."""
    after: Project
    """The document with the arrangement that is proposed."""
    result: PlanResult

    @cached_property
    def moves(self) -> tuple[BoxMove, ...]:
        """Every box, also a wished one, that would have another place than in the document, in its order."""
        were, are = self.before.arrangement.placements_by_box, self.after.arrangement.placements_by_box
        pairs = [(box.id, were.get(box.id), are.get(box.id)) for box in self.before.boxes]
        moves = [
            BoxMove(
                box_id=box_id,
                before=None if old is None else Place(bay=old.bay, row=old.row),
                after=None if new is None else Place(bay=new.bay, row=new.row),
            )
            for box_id, old, new in pairs
        ]
        return tuple(move for move in moves if move.before != move.after)

    @cached_property
    def difference(self) -> Difference:
        """The work from how the run stands to what is proposed."""
        return work_of(self.before, self.after)


def work_of(before: Project, after: Project) -> Difference:
    """The work from how the run of `before` stands, as built or else as it is arranged, to `after`."""
    return work_between(before if before.built is None else before.built.project, after)


def work_to(project: Project) -> Difference | None:
    """The work from the bays that stand as built to the present document; None where nothing is as built."""
    return None if project.built is None else work_between(project.built.project, project)


def work_between(before: Project, after: Project) -> Difference:
    """The whole difference of two documents: boxes, runners, drawers, parts and steps."""
    found = difference(before, after)
    if any(each.about_panels for each in disagreements(after)):
        return found  # before the panels are settled, no part can be asked for
    to_cut, idle = part_changes(before, after)
    steps = tuple(step for step in found.steps if step.kind is not StepKind.CUT)
    return found.replace(
        parts_to_cut=to_cut,
        parts_idle=idle,
        steps=(*((_cut(to_cut),) if to_cut else ()), *steps),
        remarks=(*found.remarks, *upgrade_remarks(before, after, found)),
    )


def _cut(parts: tuple[PartChange, ...]) -> Step:
    counts: dict[str, int] = {}
    for part in parts:
        counts[part.name] = counts.get(part.name, 0) + part.quantity
    named = [f"{count} × {name}" for name, count in counts.items()]
    more = f" and {len(named) - MOST_NAMES} more kinds of parts" if len(named) > MOST_NAMES else ""
    return Step(kind=StepKind.CUT, text=f"Cut what is new: {', '.join(named[:MOST_NAMES])}{more}.")
