"""Seeded workshops of any size for measuring."""

import random

from baywright.model.inventory import Box, BoxSize, Use
from baywright.model.project import Project

HEIGHTS = (75, 120, 170, 220, 270, 320)


def workshop(boxes: int, seed: int = 1, drawers_per_bay: int | None = None) -> Project:
    """So many Euro boxes of mixed heights, masses and uses before a wall that is long enough for them."""
    chance = random.Random(seed)
    plain = Project()
    # 100 m of wall, the most a project may have, hold 211 bays: the largest workshops need higher ones.
    is_large = boxes > 500
    sizes = tuple(BoxSize(id=f"euro-{h}", name=f"Euro {h}", width_mm=396, depth_mm=297, height_mm=h) for h in HEIGHTS)
    inventory = tuple(
        Box(
            id=f"box-{n}",
            label=f"Box {n}",
            size_id=f"euro-{chance.choice(HEIGHTS)}",
            loaded_mass_kg=round(chance.uniform(1, 22), 1),
            use=chance.choice(list(Use)),
        )
        for n in range(1, boxes + 1)
    )
    return plain.replace(
        name=f"{boxes} boxes",
        space=plain.space.replace(
            length_mm=min(100_000, 2_000 + boxes * 150), height_limit_mm=3000 if is_large else 1200
        ),
        limits=plain.limits.replace(drawers_per_bay=None if is_large else drawers_per_bay),
        box_sizes=sizes,
        boxes=inventory,
    )
