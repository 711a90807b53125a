"""Runner pairs that are screwed on already and would have to carry more than they are rated for after a change.

Laws: a pair is taken to be of the class that its drawer was ordered with; one that is screwed on elsewhere takes its
class along. A rated load is the maker's: the data sheet decides.
"""

from collections.abc import Iterator

from baywright.making.drawers import drawer_kinds, drawers_to_make
from baywright.making.loads import Loads, runner_loads
from baywright.model.difference import Difference
from baywright.model.project import Project
from baywright.workings import derive


def upgrade_remarks(before: Project, after: Project, difference: Difference) -> tuple[str, ...]:
    """One sentence for every drawer whose runners must be stronger than the pair that is to hold it."""
    there, then = _loads(before), _loads(after)
    came_from = {(m.after.bay, m.after.row): (m.before.bay, m.before.row) for m in difference.runners}
    new = {(place.bay, place.row) for place in difference.new_drawers}
    return tuple(_remarks(there, then, came_from, new))


def _loads(project: Project) -> Loads:
    workings = derive(project)
    drawers = drawers_to_make(project)
    return runner_loads(project, workings, drawers, drawer_kinds(project, workings, drawers))


def _remarks(
    there: Loads, then: Loads, came_from: dict[tuple[int, int], tuple[int, int]], new: set[tuple[int, int]]
) -> Iterator[str]:
    for place, load in then.items():
        pair = there.get(came_from.get(place, place))
        if place in new or pair is None or pair.class_kg is None or load.class_kg is None:
            continue
        if load.class_kg > pair.class_kg:
            bay, row = place
            yield (
                f"The drawer at bay {bay + 1} row {row + 1} needs runners rated for {load.class_kg:g} kg a pair; the "
                f"pair that it would hang on was ordered for {pair.class_kg:g} kg. Put stronger runners there, or a "
                "lighter box."
            )
