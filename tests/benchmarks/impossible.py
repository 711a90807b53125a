"""Seeded requests that cannot be met, of every sort: too little wall, height or drawers, locks that clash, boxes that
cannot be combined, wishes that are too much, zones, boxes that no drawer takes.

A request is made by planning a workshop, then tightening one thing, step by step, until nothing fits any more.
"""

import random
from collections.abc import Callable
from math import ceil

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize, BoxStatus, Use
from baywright.model.limits import BayWish
from baywright.model.project import Project
from baywright.model.space import CeilingPoint, Zone, ZoneEffect
from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.search import settle
from baywright.planner.reasons.question import Questions, Reading

HEIGHTS = (75, 100, 120, 145, 170, 220, 270, 320)
MOST_BOXES = 60

Tighten = Callable[[Project, random.Random, int], Project]
"""A document tightened by so many steps."""


def impossible(seed: int) -> tuple[str, Project]:
    """The request of a seed, and the name of its sort. The same seed gives the same request."""
    chance = random.Random(seed)
    names = list(SORTS)
    for attempt in range(40):
        name = names[(seed + attempt) % len(names)]
        start = _planned(chance)
        for step in range(1, 30):
            project = SORTS[name](start, chance, step)
            if Questions(Budget(8.0)).has_plan(project) is False:
                return name, project
    raise AssertionError(f"Seed {seed} makes no impossible request.")


def _planned(chance: random.Random) -> Project:
    """A workshop whose boxes have places, and at times limits that leave it possible."""
    count = chance.randint(5, MOST_BOXES)
    heights = chance.sample(HEIGHTS, chance.randint(2, 6))
    sizes = tuple(BoxSize(id=f"box-{h}", name=f"Box {h}", width_mm=396, depth_mm=297, height_mm=h) for h in heights)
    boxes = tuple(
        Box(
            id=f"box-{n}",
            label=f"Box {n}",
            size_id=f"box-{chance.choice(heights)}",
            loaded_mass_kg=round(chance.uniform(1, 20), 1),
            use=chance.choice(list(Use)),
            status=BoxStatus.WISHED if chance.random() < 0.05 else BoxStatus.OWNED,
        )
        for n in range(1, count + 1)
    )
    plain = Project()
    project = plain.replace(
        space=plain.space.replace(
            length_mm=float(chance.randint(1_000, 12_000)), height_limit_mm=float(chance.randint(700, 1_500))
        ),
        limits=plain.limits.replace(drawers_per_bay=chance.choice([None, None, 5, 7, 9])),
        box_sizes=sizes,
        boxes=boxes,
    )
    return _placed(project)


def _placed(project: Project) -> Project:
    """As few bays as hold everything, on a wall that is long enough for them."""
    low, high = 1, len(project.boxes)
    while low < high:
        middle = (low + high) // 2
        if _try(project, middle) is not None:
            high = middle
        else:
            low = middle + 1
    found = _try(project, low)
    assert found is not None
    return found


def _try(project: Project, bays: int) -> Project | None:
    space = project.space.replace(length_mm=_wall(project, bays))
    fixed = project.replace(space=space)
    reading = Reading(fixed)
    if reading.findings:
        return None
    frame, answer = settle(reading.frame, Budget(2.0))
    if not answer.holds:
        return None
    placements = tuple(
        Placement(box_id=frame.problem.items[p.item].name, bay=frame.indices[p.kind][p.bay], row=p.row)
        for p in answer.places
    )
    arrangement = Arrangement(bay_count=frame.bays, upright_rows=frame.rows, placements=placements)
    return fixed.replace(arrangement=arrangement)


def _wall(project: Project, bays: int) -> float:
    reading = Reading(project)
    return float(round(bays * reading.workings.value("bay_pitch") + reading.workings.value("upright_thickness") + 1))


def _fewer_bays(project: Project, chance: random.Random, step: int) -> Project:
    bays = max(1, project.arrangement.bay_count - step)
    return project.replace(limits=project.limits.replace(bay_count=bays))


def _less_wall(project: Project, chance: random.Random, step: int) -> Project:
    length = max(300.0, project.space.length_mm - 150 * step)
    return project.replace(space=project.space.replace(length_mm=length))


def _less_height(project: Project, chance: random.Random, step: int) -> Project:
    height = max(250.0, project.space.height_limit_mm - 16 * step)
    return project.replace(space=project.space.replace(height_limit_mm=height))


def _fixed_rows(project: Project, chance: random.Random, step: int) -> Project:
    rows = max(1, project.arrangement.upright_rows - step)
    return project.replace(limits=project.limits.replace(upright_rows=rows))


def _fewer_drawers(project: Project, chance: random.Random, step: int) -> Project:
    most = max(len(project.arrangement.in_bay(bay)) for bay in range(project.arrangement.bay_count))
    return project.replace(limits=project.limits.replace(drawers_per_bay=max(1, most - step)))


def _own_drawers(project: Project, chance: random.Random, step: int) -> Project:
    bays = project.arrangement.bay_count
    wishes = tuple(BayWish(drawers=max(0, 4 - step // 3)) for _ in range(min(bays, 1 + step // 3)))
    return project.replace(limits=project.limits.replace(bays=wishes))


def _own_rows(project: Project, chance: random.Random, step: int) -> Project:
    wishes = tuple(
        BayWish(rows=max(3, project.arrangement.upright_rows - 2 * step))
        for _ in range(min(project.arrangement.bay_count, 1 + step // 4))
    )
    return project.replace(limits=project.limits.replace(bays=wishes))


def _own_width(project: Project, chance: random.Random, step: int) -> Project:
    wishes = tuple(BayWish(box_width_mm=396.0 + 60 * step) for _ in range(min(project.arrangement.bay_count, 1 + step)))
    return project.replace(limits=project.limits.replace(bays=wishes))


def _locked(project: Project, chance: random.Random, step: int) -> Project:
    """Boxes locked at rows that waste room, in a run no larger than it must be."""
    placements = list(project.arrangement.placements)
    for index in chance.sample(range(len(placements)), min(len(placements), 1 + step // 2)):
        p = placements[index]
        placements[index] = p.replace(row=max(0, p.row + chance.choice([-1, 1, 2])), lock=Lock.DRAWER)
    return project.replace(arrangement=project.arrangement.replace(placements=tuple(placements)))


def _held(project: Project, chance: random.Random, step: int) -> Project:
    """Boxes locked in bays where too many others are."""
    placements = list(project.arrangement.placements)
    bay = chance.randrange(project.arrangement.bay_count)
    for index in chance.sample(range(len(placements)), min(len(placements), 2 * step)):
        placements[index] = placements[index].replace(bay=bay, lock=Lock.BAY)
    return project.replace(arrangement=project.arrangement.replace(placements=tuple(placements)))


def _mixed_locks(project: Project, chance: random.Random, step: int) -> Project:
    fewer = project.replace(limits=project.limits.replace(upright_rows=project.arrangement.upright_rows))
    return _held(_locked(fewer, chance, step), chance, max(1, step // 2))


def _spare(project: Project, chance: random.Random, step: int) -> Project:
    return project.replace(limits=project.limits.replace(spare_rows=4 * step))


def _low_worktop(project: Project, chance: random.Random, step: int) -> Project:
    most = max(150.0, project.space.height_limit_mm - 30 * step)
    return project.replace(limits=project.limits.replace(worktop_most_mm=most))


def _high_worktop(project: Project, chance: random.Random, step: int) -> Project:
    least = project.space.height_limit_mm - 20 + 8 * step
    return project.replace(limits=project.limits.replace(worktop_least_mm=least))


def _zoned(effect: ZoneEffect) -> Tighten:
    def tighten(project: Project, chance: random.Random, step: int) -> Project:
        length = project.space.length_mm
        left = chance.uniform(0, length * 0.8)
        zone = Zone(
            id="zone",
            label="Window",
            effect=effect,
            left_mm=left,
            width_mm=max(50.0, min(length - left, 100.0 * step)),
            bottom_mm=max(0.0, project.space.height_limit_mm - 60 * step) if effect is ZoneEffect.END_BELOW else 0.0,
            height_mm=300.0,
            depth_mm=15.0 * step if effect is ZoneEffect.STAY_IN_FRONT else 0.0,
        )
        return project.replace(space=project.space.replace(zones=(zone,)))

    return tighten


def _sloping(project: Project, chance: random.Random, step: int) -> Project:
    height, length = project.space.height_limit_mm, project.space.length_mm
    points = (
        CeilingPoint(along_mm=0, height_mm=height),
        CeilingPoint(along_mm=length, height_mm=max(150.0, height - 50 * step)),
    )
    return project.replace(space=project.space.replace(ceiling=points))


def _shelf(project: Project, chance: random.Random, step: int) -> Project:
    return project.replace(limits=project.limits.replace(shelf_bay_clear_width_mm=100.0 * step))


def _size(project: Project, chance: random.Random, **changes: float) -> Project:
    index = chance.randrange(len(project.boxes))
    own = project.size_of(project.boxes[index]).replace(id="odd", name="Odd", **changes)
    boxes = list(project.boxes)
    boxes[index] = boxes[index].replace(size_id="odd")
    return project.replace(box_sizes=(*project.box_sizes, own), boxes=tuple(boxes))


def _wide(project: Project, chance: random.Random, step: int) -> Project:
    fixed = project.replace(limits=project.limits.replace(bay_box_width_mm=396.0))
    return _size(fixed, chance, width_mm=396.0 + 100 * step)


def _deep(project: Project, chance: random.Random, step: int) -> Project:
    return _size(project, chance, depth_mm=297.0 + 30 * step)


def _high(project: Project, chance: random.Random, step: int) -> Project:
    return _size(project, chance, height_mm=400.0 + 100 * step)


def _heavy(project: Project, chance: random.Random, step: int) -> Project:
    boxes = list(project.boxes)
    index = chance.randrange(len(boxes))
    boxes[index] = boxes[index].replace(loaded_mass_kg=40.0 + 10 * step)
    return project.replace(boxes=tuple(boxes))


def _full(project: Project, chance: random.Random, step: int) -> Project:
    """Just as many bays as hold the rows in sum, in which the boxes often cannot be combined."""
    reading = Reading(project)
    rows = [reading.grid.sizes[box.size_id].rows for box in project.boxes]
    each = max(rows) + 3 + step % 12
    bays = ceil(sum(rows) / each)
    return project.replace(
        space=project.space.replace(length_mm=_wall(project, bays + 2), height_limit_mm=2_500.0),
        limits=project.limits.replace(bay_count=bays, upright_rows=reading.grid.lowest + each, drawers_per_bay=None),
    )


def _two_at_once(project: Project, chance: random.Random, step: int) -> Project:
    first, second = chance.sample([_fewer_drawers, _locked, _spare, _fixed_rows, _held], 2)
    return second(first(project, chance, step), chance, step)


SORTS: dict[str, Tighten] = {
    "fewer bays": _fewer_bays,
    "less wall": _less_wall,
    "less height": _less_height,
    "fixed rows": _fixed_rows,
    "fewer drawers": _fewer_drawers,
    "drawers of a bay": _own_drawers,
    "rows of a bay": _own_rows,
    "width of a bay": _own_width,
    "locked to drawers": _locked,
    "locked to bays": _held,
    "both locks": _mixed_locks,
    "full to the last row": _full,
    "spare rows": _spare,
    "worktop too low": _low_worktop,
    "worktop too high": _high_worktop,
    "door": _zoned(ZoneEffect.KEEP_CLEAR),
    "window": _zoned(ZoneEffect.END_BELOW),
    "pipe": _zoned(ZoneEffect.STAY_IN_FRONT),
    "sloping ceiling": _sloping,
    "shelf bay": _shelf,
    "wide box": _wide,
    "deep box": _deep,
    "high box": _high,
    "heavy box": _heavy,
    "two at once": _two_at_once,
}
"""Every sort of request, by name."""
