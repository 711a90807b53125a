"""Drilling against rules from outside the project; each with its mark for how far the source was read."""

import pytest

from baywright.making import manufacture
from baywright.making.hardware.fasteners import dowel_size, in_joint
from baywright.making.machining.lines import FIRST_HOLE_MM, STEP_MM, runner_holes_mm
from baywright.making.machining.meeting import clearance_mm, pilot_mm
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.machining import HolePurpose, Side
from baywright.model.project import Project
from baywright.model.space import Space

INCH_MM = 25.4

SCREWS = {4.0: (0.164, 0.131), 5.0: (0.190, 0.152)}
"""Diameter and root diameter in inches of the nearest wood screws, No. 8 and No. 10 (NDS 2018, table L3; V2)."""


@pytest.fixture(scope="module")
def workshop() -> Project:
    size = BoxSize(id="euro", name="Euro", width_mm=396, depth_mm=297, height_mm=120)
    boxes = tuple(Box(id=f"box-{n}", label=f"Box {n}", size_id="euro", loaded_mass_kg=9.0) for n in range(8))
    places = tuple(Placement(box_id=f"box-{n}", bay=n // 4, row=6 * (n % 4)) for n in range(8))
    return Project(
        space=Space(depth_mm=446.0), box_sizes=(size,), boxes=boxes,
        arrangement=Arrangement(bay_count=2, upright_rows=30, placements=places),
    )  # fmt: skip


@pytest.mark.parametrize("screw_mm", [4.0, 5.0])
def test_pilot_holes_lie_between_the_lead_holes_for_soft_and_for_hard_wood(screw_mm: float) -> None:
    """NDS 2018: 70 % of the root diameter for specific gravities under 0.6, 90 % from there on (V2). Birch plywood is
    about 0.68; a pilot hole between both is common practice."""
    diameter, root = SCREWS[screw_mm]
    root_mm = screw_mm * root / diameter
    assert 0.7 * root_mm <= pilot_mm(screw_mm) <= 0.9 * root_mm
    assert clearance_mm(screw_mm) > screw_mm
    assert abs(diameter * INCH_MM - screw_mm) < 0.2


@pytest.mark.parametrize("thickness_mm", [16.0, 18.0, 19.0, 25.0])
def test_dowels_are_a_third_to_half_of_the_board_and_leave_a_wall_of_their_radius(thickness_mm: float) -> None:
    """Common practice of the trade (V2): 18 mm takes 8 mm with walls of 5 mm."""
    diameter, _ = dowel_size(thickness_mm)
    assert thickness_mm / 3 - 1e-9 <= diameter <= thickness_mm / 2
    assert (thickness_mm - diameter) / 2 >= diameter / 2
    assert dowel_size(18.0)[0] == 8


def test_a_joint_of_450_mm_takes_four_fasteners() -> None:
    """One about every 150 mm and one more: 450 / 152.4 = 2.95, so 3 + 1 (trade, V2)."""
    assert in_joint(450.0) == 4


@pytest.mark.parametrize(("steps", "depth_mm"), [(11, 426.0), (12, 458.0), (13, 490.0), (15, 554.0)])
def test_an_upright_of_balanced_depth_has_its_rear_line_on_the_runners_grid(steps: int, depth_mm: float) -> None:
    """32 mm system: depth = 2 · 37 + 32 · m puts the rear line m steps behind the front one (V2 and arithmetic)."""
    assert depth_mm - 37.0 == FIRST_HOLE_MM + STEP_MM * steps
    for length in range(250, 701, 50):
        assert all((hole - (depth_mm - 37.0)) % STEP_MM == 0 for hole in runner_holes_mm(float(length)))


def test_screws_keep_the_distances_of_the_timber_code(workshop: Project) -> None:
    """NDS 2018, 12.5.1, for fasteners of 1/4 inch and more, from memory: 1.5 diameters to an edge, 4 between two. Ours
    are thinner and keep them too, in every edge and end."""
    for part in manufacture(workshop).parts:
        screws = [h for h in part.machining.holes if h.purpose is HolePurpose.SCREW and h.depth_mm is not None]
        for hole in screws:
            diameter = 4.0 if hole.diameter_mm == pilot_mm(4.0) else 5.0
            if hole.side not in (Side.FACE, Side.REVERSE):
                assert min(hole.y_mm, part.thickness_mm - hole.y_mm) >= 1.5 * diameter, part.number
            for other in screws:
                if other is not hole and other.side is hole.side:
                    apart = ((hole.x_mm - other.x_mm) ** 2 + (hole.y_mm - other.y_mm) ** 2) ** 0.5
                    assert apart >= 4 * diameter, part.number
