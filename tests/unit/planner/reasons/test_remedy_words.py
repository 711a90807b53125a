"""What changes are called: a lock that is loosened says where the box may then stand."""

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project
from baywright.planner import why_not

HIGH = BoxSize(id="high", name="High", width_mm=396, depth_mm=297, height_mm=270)
"""Takes 10 rows: 17 seat + 270 + 12 clearance = 299 mm."""


def test_a_lock_loosened_to_the_bay_says_that_any_row_of_it_will_do() -> None:
    plain = Project()
    shop = plain.replace(
        limits=plain.limits.replace(bay_count=1, upright_rows=20),
        box_sizes=(HIGH,),
        boxes=tuple(Box(id=f"high-{n}", label=f"High {n}", size_id="high", loaded_mass_kg=n) for n in (1, 2)),
        arrangement=Arrangement(
            bay_count=1, upright_rows=20, placements=(Placement(box_id="high-1", bay=0, row=4, lock=Lock.DRAWER),)
        ),
    )
    answer = why_not(shop)
    assert answer is not None
    assert "Let “High 1” stand at any row of bay 1." in [repair.text for repair in answer.repairs]
