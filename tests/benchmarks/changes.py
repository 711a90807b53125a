"""Prints how long it takes to weigh every place for a box, and to work out the difference of a change with its steps.

`python -m tests.benchmarks.changes [BOXES …]`. The arrangement is the planner's first plan, so that no search is timed.
"""

import random
import statistics
import sys
import time

from baywright.app.proposal import work_between
from baywright.model.arrangement import Arrangement
from baywright.model.project import Project
from baywright.planner import destinations, plan
from tests.benchmarks.workshops import workshop

ASKED = 9
"""Boxes for which every place is weighed."""


def arranged(boxes: int) -> Project:
    """A workshop in the first plan that is found."""
    project = workshop(boxes, drawers_per_bay=6)
    found: list[Arrangement] = []
    plan(
        project,
        stop=lambda: bool(found),
        progress=lambda better: found.append(better.arrangement) if better.arrangement else None,
    )
    return project.replace(arrangement=found[-1])


def traded(project: Project, share: float) -> Project:
    """The same run with a share of the boxes in each other's places: boxes of one size go round in circles."""
    chance = random.Random(7)
    placements = list(project.arrangement.placements)
    by_size: dict[str, list[int]] = {}
    for index in chance.sample(range(len(placements)), round(share * len(placements))):
        by_size.setdefault(project.box(placements[index].box_id).size_id, []).append(index)
    moved = list(placements)
    for circle in by_size.values():
        for index, there in zip(circle, [*circle[1:], circle[0]], strict=True):
            moved[index] = placements[index].replace(bay=placements[there].bay, row=placements[there].row)
    return project.replace(arrangement=project.arrangement.replace(placements=tuple(moved)))


def main(sizes: tuple[int, ...] = (20, 100, 300, 2000)) -> None:
    """Measures one workshop of each size."""
    print("boxes  bays  places  can be  all places ms (median, most)  a tenth traded s  everything traded s  steps")
    for boxes in sizes:
        project = arranged(boxes)
        chosen = project.boxes[:: max(1, boxes // ASKED)]
        times, found = [], destinations(project, chosen[0].id)
        for box in chosen:
            began = time.perf_counter()
            found = destinations(project, box.id)
            times.append(1000 * (time.perf_counter() - began))
        changes = []
        steps = 0
        for share in (0.1, 1.0):
            other = traded(project, share)
            began = time.perf_counter()
            steps = len(work_between(project, other).steps)
            changes.append(time.perf_counter() - began)
        legal = sum(not each.conflicts for each in found)
        print(
            f"{boxes:5} {project.arrangement.bay_count:5} {len(found):7} {legal:7}  "
            f"{statistics.median(times):20.0f}, {max(times):6.0f}  {changes[0]:16.2f}  {changes[1]:19.2f}  {steps:5}"
        )


if __name__ == "__main__":
    main(*([tuple(map(int, sys.argv[1:]))] if sys.argv[1:] else []))
