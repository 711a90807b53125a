"""Bays that stand beside a door: what clashes is told, never that they stand elsewhere than they do."""

from baywright.model.inventory import Box, BoxSize
from baywright.model.plan import PlanStatus
from baywright.model.project import Built, Project
from baywright.model.space import Zone, ZoneEffect
from baywright.planner import plan, why_not

LOW = BoxSize(id="low", name="Low", width_mm=396, depth_mm=297, height_mm=120)


def shop(boxes: int) -> Project:
    """A wall with a door at its left end, and room for two bays of 20 rows beside it."""
    plain = Project()
    door = Zone(id="door", label="Door", effect=ZoneEffect.KEEP_CLEAR, left_mm=0, width_mm=850)
    return plain.replace(
        space=plain.space.replace(length_mm=1_860.0, zones=(door,)),
        limits=plain.limits.replace(upright_rows=20),
        box_sizes=(LOW,),
        boxes=tuple(Box(id=f"low-{n}", label=f"Low {n}", size_id="low", loaded_mass_kg=1) for n in range(boxes)),
    )


def test_a_full_run_beside_a_door_is_not_said_to_stand_elsewhere() -> None:
    before = shop(6)
    answer = plan(before)
    assert answer.status is PlanStatus.PROVED_BEST
    assert answer.arrangement is not None
    stood = before.replace(arrangement=answer.arrangement)
    crowded = shop(12).replace(arrangement=answer.arrangement, built=Built(bays=(0,), project=stood))
    refused = why_not(crowded)
    assert refused is not None
    said = " ".join(conflict.message for conflict in refused.conflicts)
    assert "would be" not in said
    assert "rows needed" in said or "drawers needed" in said
