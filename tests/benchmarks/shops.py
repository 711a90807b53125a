"""Seeded shops whose walls are nearly full, by how they are made: every bay is first filled on paper, then emptied.

So each has a plan, and with 95 % of the rows taken there is none with a bay less. Boxes are Euro boxes of six heights;
two in five belong to a group of about four; some are locked where the filling on paper put them.
"""

import random
from dataclasses import dataclass

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize, Use
from baywright.model.limits import BayWish, Limits
from baywright.model.project import Project
from baywright.model.space import Space
from baywright.workings import derive

HEIGHTS_MM = (75, 120, 170, 220, 270, 320)
ROWS = 32
LOW_ROWS = 24
TRIES = 5_000


@dataclass(frozen=True)
class Wanted:
    """What a shop is to be like; `fill` is the share of usable rows that boxes take."""

    bays: int
    boxes: int
    fill: float = 0.95
    low_bays: int = 0
    locked_share: float = 0.0
    box_width_mm: float = 396.0
    drawers_per_bay: int | None = None


def shop(wanted: Wanted, seed: int) -> Project:
    """A shop of that kind; as many boxes as wanted, or as near as full bays allow."""
    chance = random.Random(seed)
    sizes = tuple(
        BoxSize(id=f"euro-{h}", name=f"Euro {h}", width_mm=wanted.box_width_mm, depth_mm=297, height_mm=h)
        for h in HEIGHTS_MM
    )
    plain = Project(box_sizes=sizes, limits=Limits(upright_rows=ROWS, drawers_per_bay=wanted.drawers_per_bay))
    plain = plain.replace(space=_wall(plain, wanted))
    low = set(chance.sample(range(wanted.bays), wanted.low_bays))
    boxes, placements = _filled(plain, wanted, low, chance)
    wishes = tuple(BayWish(rows=LOW_ROWS if bay in low else None) for bay in range(max(low, default=-1) + 1))
    return plain.replace(
        name=f"{len(boxes)} boxes in {wanted.bays} bays",
        limits=Limits(drawers_per_bay=wanted.drawers_per_bay, bays=wishes),
        boxes=tuple(boxes),
        arrangement=Arrangement(bay_count=wanted.bays, upright_rows=ROWS, placements=tuple(placements))
        if placements
        else Arrangement(),
    )


def mixed_shop(seed: int) -> Project:
    """Up to 100 boxes in 8 to 20 bays, 95 % full, some bays lower than the others, one box in twelve locked."""
    chance = random.Random(1_000 + seed)
    bays = chance.randint(8, 20)
    boxes = chance.randint(4 * bays, 5 * bays)
    wanted = Wanted(bays, boxes, low_bays=chance.randint(1, 3), locked_share=1 / 12)
    return shop(wanted, seed)


def _wall(plain: Project, wanted: Wanted) -> Space:
    """Just as long and as high as the bays and their uprights need."""
    sample = plain.replace(
        boxes=(Box(id="sample", label="Sample", size_id=plain.box_sizes[0].id),),
        arrangement=Arrangement(bay_count=wanted.bays, upright_rows=ROWS),
    )
    workings = derive(sample)
    return plain.space.replace(
        length_mm=workings.value("bays_run_length") + 1, height_limit_mm=workings.value("unit_height") + 1
    )


def _filled(plain: Project, wanted: Wanted, low: set[int], chance: random.Random) -> tuple[list[Box], list[Placement]]:
    workings = derive(plain)
    rows_of = {size.id: round(workings.value("opening_rows", size.id)) for size in plain.box_sizes}
    lowest = round(workings.value("lowest_start_row"))
    most = wanted.drawers_per_bay or ROWS
    boxes: list[Box] = []
    placements: list[Placement] = []
    for bay in range(wanted.bays):
        usable = (LOW_ROWS if bay in low else ROWS) - lowest
        left = wanted.boxes - len(boxes)
        count = max(1, round(left / (wanted.bays - bay) * (LOW_ROWS / ROWS if bay in low else 1)))
        row = lowest
        for size_id in _stack(rows_of, usable, min(count, most), most, wanted.fill, chance):
            box = _box(len(boxes) + 1, size_id, max(1, wanted.boxes // 10), chance)
            boxes.append(box)
            if chance.random() < wanted.locked_share:
                lock = chance.choice([Lock.BAY, Lock.DRAWER])
                placements.append(Placement(box_id=box.id, bay=bay, row=row, lock=lock))
            row += rows_of[size_id]
    return boxes, placements


def _stack(
    rows_of: dict[str, int], usable: int, count: int, most: int, fill: float, chance: random.Random
) -> list[str]:
    """About `count` sizes, at most `most`, that take about that share of the usable rows, and no more."""
    least = usable if fill >= 1 else round(fill * usable) - 1
    best: list[str] = []
    taken = 0
    for trial in range(TRIES):
        number = count + (trial > TRIES // 2) * chance.choice([-1, 0, 1])
        chosen = [chance.choice(list(rows_of)) for _ in range(min(most, max(1, number)))]
        rows = sum(rows_of[size_id] for size_id in chosen)
        if taken < rows <= usable:
            best, taken = chosen, rows
        if taken >= least and chance.random() < 0.5:
            break
    return best


def _box(number: int, size_id: str, groups: int, chance: random.Random) -> Box:
    return Box(
        id=f"box-{number}",
        label=f"Box {number}",
        size_id=size_id,
        loaded_mass_kg=round(chance.uniform(1, 22), 1),
        use=chance.choice(list(Use)),
        group=f"group {chance.randint(1, groups)}" if chance.random() < 0.4 else "",
    )
