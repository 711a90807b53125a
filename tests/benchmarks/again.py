"""How long planning again takes: nothing changed, a box bought, a tenth of the boxes changed, a run that is full.

`python -m tests.benchmarks replan [BOXES BAYS …] | destinations [BOXES]`; rows are Markdown.
"""

import random
import time
from collections.abc import Callable
from statistics import median

from baywright.model.goals import Goal
from baywright.model.inventory import Box
from baywright.model.project import Project
from baywright.planner import destinations, plan
from tests.benchmarks.measuring import heading, measured, middle_and_most, row, seconds
from tests.benchmarks.shops import Wanted, shop

SIZES = ((20, 4), (100, 20), (300, 60))
ROOMY, FULL = 0.85, 1.0
ASKED = 25


def planned(wanted: Wanted, seed: int = 1) -> Project:
    """A shop in the planner's own arrangement, its shape fixed by the wall."""
    project = shop(wanted, seed)
    arrangement = plan(project).arrangement
    assert arrangement is not None
    return project.replace(arrangement=arrangement)


def unchanged(project: Project) -> Project:
    """The same."""
    return project


def one_more(project: Project) -> Project:
    """One box bought, of a middling size."""
    size = sorted(project.box_sizes, key=lambda size: size.height_mm)[1]
    return project.replace(boxes=(*project.boxes, Box(id="new", label="New", size_id=size.id, loaded_mass_kg=9)))


def tenth_changed(project: Project) -> Project:
    """A tenth of the boxes changed: every third of them one size lower, one size higher, or sold for another."""
    chance = random.Random(5)
    sizes = [size.id for size in sorted(project.box_sizes, key=lambda size: size.height_mm)]
    boxes = list(project.boxes)
    for turn, number in enumerate(chance.sample(range(len(boxes)), max(1, len(boxes) // 10))):
        box = boxes[number]
        step = (-1, 1, 0)[turn % 3]
        size = sizes[min(len(sizes) - 1, max(0, sizes.index(box.size_id) + step))]
        boxes[number] = box.replace(id=f"new-{number}" if step == 0 else box.id, size_id=size)
    return _with_boxes(project, boxes)


def tenth_traded(project: Project) -> Project:
    """A tenth of the boxes sold and as many of the same sizes bought, in another order: the run stays full."""
    chance = random.Random(5)
    boxes = list(project.boxes)
    for number in chance.sample(range(len(boxes)), max(1, len(boxes) // 10)):
        boxes[number] = boxes[number].replace(id=f"new-{number}", loaded_mass_kg=round(chance.uniform(1, 22), 1))
    chance.shuffle(boxes)
    return _with_boxes(project, boxes)


def _with_boxes(project: Project, boxes: list[Box]) -> Project:
    there = {box.id for box in boxes}
    placements = tuple(p for p in project.arrangement.placements if p.box_id in there)
    return project.replace(boxes=tuple(boxes), arrangement=project.arrangement.replace(placements=placements))


CHANGES: tuple[tuple[str, float, Callable[[Project], Project]], ...] = (
    ("nothing", ROOMY, unchanged),
    ("one box more", ROOMY, one_more),
    ("a tenth changed", ROOMY, tenth_changed),
    ("full, a tenth traded", FULL, tenth_traded),
)


def replan(*numbers: int) -> None:
    """Boxes and bays, in pairs: how soon the fewest moves are proved, and everything."""
    pairs = list(zip(numbers[::2], numbers[1::2], strict=True)) or list(SIZES)
    print(heading("boxes / bays", "changed", "moves", "moves proved s", "all goals s", "not proved"))
    for boxes, bays in pairs:
        for name, fill, change in CHANGES:
            project = change(planned(Wanted(bays, boxes, fill=fill)))
            measure = measured(project, keep=True)
            moves = next((g for g in measure.result.goals if g.goal is Goal.MOVES), None)
            told = "–" if moves is None else f"{moves.value:g}"
            proved = seconds(measure.proved_s.get(Goal.MOVES))
            print(row(f"{boxes} / {bays}", name, told, proved, seconds(measure.all_s), measure.gaps), flush=True)


def where_to(boxes: int = 100) -> None:
    """Every place for a box, with what it changes or why not: times of some boxes."""
    project = planned(Wanted(boxes // 5, boxes, fill=ROOMY))
    times, places = [], []
    for box in random.Random(3).sample(project.boxes, min(ASKED, boxes)):
        began = time.process_time()
        found = destinations(project, box.id)
        times.append(time.process_time() - began)
        places.append(len(found))
    print(heading("boxes", "places weighed", "s: median / 95th percentile / most"))
    print(row(boxes, f"{median(places):g}", middle_and_most(times)))
