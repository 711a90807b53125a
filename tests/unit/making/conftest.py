"""Small runs whose parts can be counted by hand."""

import pytest

from baywright.model.arrangement import Arrangement, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project


@pytest.fixture
def two_bays() -> Project:
    """Two bays of four drawers each and a shelf bay on a wall of 2,400 mm, all else as in a new project."""
    sizes = (
        BoxSize(id="low", name="Low", width_mm=400, depth_mm=300, height_mm=120),
        BoxSize(id="high", name="High", width_mm=400, depth_mm=300, height_mm=220),
    )
    boxes = tuple(
        Box(id=f"box-{n}", label=f"Box {n}", size_id="low" if n % 2 else "high", loaded_mass_kg=10.0 + n)
        for n in range(1, 9)
    )
    placements = tuple(
        Placement(box_id=f"box-{n}", bay=(n - 1) // 4, row=8 * ((n - 1) % 4) + (n - 1) // 4) for n in range(1, 9)
    )
    arrangement = Arrangement(bay_count=2, upright_rows=33, placements=placements)
    return Project(name="Two bays", box_sizes=sizes, boxes=boxes, arrangement=arrangement)
