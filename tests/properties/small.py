"""Seeded workshops so small that trying everything ends: 7 boxes or fewer, few rows far apart.

Laws: the same seed gives the same workshop; every box is weighed, in tenths of a kilogram; `FEATURES` as in
`tests.properties.invented`.
"""

import random
from collections.abc import Set

from baywright.model.arrangement import Lock
from baywright.model.goals import USUAL_ORDER
from baywright.model.inventory import Box, BoxSize, BoxStatus, Use
from baywright.model.limits import BayWish, Limits
from baywright.model.project import Built, Project
from baywright.model.safety import Grip, Safety
from baywright.model.space import CeilingPoint, Space, Zone, ZoneEffect
from tests.oracle.wall import clear_mm, run_height_mm
from tests.properties.invented import FEATURES

MOST_BOXES = 7
MOST_BAYS = 3
MOST_ROWS = 9
WIDTHS_MM = (200.0, 300.0, 400.0)


def small_workshop(seed: int, features: Set[str] = FEATURES) -> Project:
    """A workshop with boxes that have no places yet."""
    chance = random.Random(seed)
    construction = Project().construction
    construction = construction.replace(
        hole_rows=construction.hole_rows.replace(pitch_mm=chance.choice([96, 100, 128])),
        drawers=construction.drawers.replace(clearance_mm=chance.randint(0, 40)),
        runners=construction.runners.replace(
            line_offset_mm=chance.choice([0, 14, 40, 60]),
            load_classes_kg=chance.choice([(35, 68), (25,)]) if "load" in features else (35, 68),
        ),
    )
    sizes = _sizes(chance, features)
    boxes = _boxes(chance, sizes, features)
    plain = Project(construction=construction, box_sizes=sizes, boxes=boxes)
    is_ample = chance.random() < 0.8  # the best plan is as hard to find, but there is one
    rows = MOST_ROWS if is_ample else chance.randint(4, MOST_ROWS)
    bays = MOST_BAYS if is_ample else chance.randint(1, MOST_BAYS)
    width = max(size.width_mm for size in sizes)
    length = bays * (clear_mm(plain, width) + 18) + 18 + chance.choice([0, 0, 100])
    height = run_height_mm(plain, rows) + chance.choice([0, 0, 40])
    return plain.replace(
        space=_space(chance, length, height, features),
        limits=_limits(chance, height, features),
        safety=_safety(random.Random(f"back {seed}")),
        goals=tuple(chance.sample(USUAL_ORDER, len(USUAL_ORDER))) if chance.random() < 0.5 else USUAL_ORDER,
    )


def _sizes(chance: random.Random, features: Set[str]) -> tuple[BoxSize, ...]:
    mixed = "widths" in features or "share" in features
    found = []
    for number in range(chance.randint(1, 3)):
        shares = "share" in features and chance.random() < 0.5
        found.append(
            BoxSize(
                id=f"size-{number}",
                name=f"Size {number}",
                width_mm=chance.choice(WIDTHS_MM) if mixed else 300,
                depth_mm=chance.choice([100.0, 200.0, 300.0]) if mixed else 200,
                height_mm=chance.randint(40, 330),
                may_turn="turn" in features and chance.random() < 0.5,
                most_abreast=chance.randint(1, 3) if shares else 1,
                most_behind=chance.randint(1, 3) if shares else 1,
            )
        )
    return tuple(found)


def _boxes(chance: random.Random, sizes: tuple[BoxSize, ...], features: Set[str]) -> tuple[Box, ...]:
    statuses = [BoxStatus.OWNED] * 5
    if "status" in features:
        statuses += [BoxStatus.WISHED, BoxStatus.ELSEWHERE]
    return tuple(
        Box(
            id=f"box-{n}",
            label=f"Box {n}",
            size_id=chance.choice(sizes).id,
            loaded_mass_kg=chance.randint(5, 225) / 10,
            use=chance.choice(list(Use)),
            group=chance.choice(["", "", "a", "b"]),
            status=chance.choice(statuses) if n else BoxStatus.OWNED,
        )
        for n in range(chance.choice([1, 2, 3, 4, 5, 5, 6, MOST_BOXES]))
    )


def _space(chance: random.Random, length: float, height: float, features: Set[str]) -> Space:
    zones = []
    if "zones" in features and chance.random() < 0.3:
        effect = chance.choice(list(ZoneEffect))
        top = round(height)
        bottoms = {ZoneEffect.END_BELOW: (top // 2, top), ZoneEffect.STAY_IN_FRONT: (0, top)}
        zones.append(
            Zone(
                id="zone",
                label="Zone",
                effect=effect,
                left_mm=chance.randint(0, round(length)),
                width_mm=chance.randint(20, 400),
                bottom_mm=chance.randint(*bottoms.get(effect, (0, 0))),
                height_mm=chance.randint(50, 400),
                depth_mm=chance.choice([10, 60, 110]) if effect is ZoneEffect.STAY_IN_FRONT else 0,
            )
        )
    ceiling = []
    if "ceiling" in features and chance.random() < 0.25:
        ceiling = [CeilingPoint(along_mm=x, height_mm=chance.randint(500, 1500)) for x in (0, round(length))]
    longer = chance.choice([0, 0, 200]) if zones else 0
    return Space(
        length_mm=length + longer, height_limit_mm=height, depth_mm=400, zones=tuple(zones), ceiling=tuple(ceiling)
    )


def _safety(chance: random.Random) -> Safety:
    """How boxes are lifted; a chance of its own, so that the workshops are the same with other habits."""
    if chance.random() < 0.5:
        return Safety()
    return Safety(
        set_down_height_mm=chance.choice([0.0, 600.0, 900.0, 1_500.0, 2_000.0]),
        grip=chance.choice(list(Grip)),
        lifts_a_minute=chance.choice([0.2, 1.0, 4.0, 13.0]),
        twist_degrees=chance.choice([0.0, 30.0, 90.0, 180.0]),
    )


def _limits(chance: random.Random, height: float, features: Set[str]) -> Limits:
    wishes = []
    if "wishes" in features and chance.random() < 0.35:
        wishes = [
            BayWish(
                box_width_mm=chance.choice([None, *WIDTHS_MM]) if "widths" in features else None,
                rows=chance.choice([None, None, 4, 6]),
                drawers=chance.choice([None, None, 1, 2]),
            )
            for _ in range(chance.randint(1, 2))
        ]
    others = chance.sample(WIDTHS_MM, 1) if "widths" in features and chance.random() < 0.3 else []
    worktop = "worktop" in features and chance.random() < 0.25
    least = chance.choice([None, height - 250]) if worktop else None
    return Limits(
        drawers_per_bay=chance.choice([None, None, 2, 3]),
        bays=tuple(wishes),
        other_box_widths_mm=tuple(others),
        worktop_least_mm=max(0.0, least) if least is not None else None,
        worktop_most_mm=chance.choice([None, height - 100]) if worktop else None,
        spare_rows=chance.choice([1, 4]) if "spare" in features and chance.random() < 0.25 else 0,
        shelf_bay_clear_width_mm=120 if "shelf" in features and chance.random() < 0.1 else None,
    )


def changed(project: Project, chance: random.Random) -> Project:
    """A planned workshop some months later: a box bought, sold or put elsewhere, one dragged, some locked,
    some bays built."""
    boxes = list(project.boxes)
    if len(boxes) < MOST_BOXES and chance.random() < 0.5:
        boxes.append(
            Box(
                id="new",
                label="New",
                size_id=chance.choice(project.box_sizes).id,
                loaded_mass_kg=chance.randint(5, 200) / 10,
                group=chance.choice(["", "a"]),
            )
        )
    if len(boxes) > 2 and chance.random() < 0.3:
        gone = chance.randrange(len(boxes))
        boxes[gone] = boxes[gone].replace(status=BoxStatus.ELSEWHERE)
    placements = []
    for p in project.arrangement.placements:
        row = max(0, p.row + chance.choice([-1, 0, 0, 0, 0, 0, 1]))
        placements.append(p.replace(row=row, lock=chance.choice([*[Lock.NONE] * 6, Lock.BAY, Lock.DRAWER])))
    bays = range(project.arrangement.bay_count)
    stand = sorted(chance.sample(bays, chance.randint(1, len(bays)))) if chance.random() < 0.3 else []
    return project.replace(
        built=Built(bays=tuple(stand), project=project) if stand else None,
        boxes=tuple(boxes),
        arrangement=project.arrangement.replace(placements=tuple(placements)),
        goals=tuple(chance.sample(USUAL_ORDER, len(USUAL_ORDER))) if chance.random() < 0.5 else USUAL_ORDER,
    )
