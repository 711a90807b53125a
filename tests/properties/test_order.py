"""The hardware order against the drawings: every hole and mortise has its fastener, and no fastener is without one."""

from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.making import manufacture
from baywright.making.frame import frame_of
from baywright.making.hardware.fittings import wall_fixing_count
from baywright.model.catalogue import HardwareKind
from baywright.model.construction import Back, Drilling, EdgingKind, EndPanels, Fronts, Jointing
from baywright.model.machining import HolePurpose
from baywright.model.making import Manufacture
from baywright.model.project import Project
from baywright.workings import derive
from tests.properties.test_parts import projects


@st.composite
def built(draw: st.DrawFn) -> Project:
    """A run with choices of jointing, fronts, ends, drilling and edging besides those of parts."""
    project = draw(projects())
    construction = project.construction
    return project.replace(construction=construction.replace(
        jointing=draw(st.sampled_from(Jointing)),
        drawers=construction.drawers.replace(fronts=draw(st.sampled_from(Fronts)), has_box_stop=draw(st.booleans())),
        hole_rows=construction.hole_rows.replace(drilling=draw(st.sampled_from(Drilling))),
        end_panels=EndPanels(left=draw(st.booleans()), right=draw(st.booleans())),
        edging=construction.edging.replace(kind=draw(st.sampled_from(EdgingKind))),
    ))  # fmt: skip


def _ordered(made: Manufacture, kind: HardwareKind) -> float:
    return sum(item.needed for item in made.hardware if item.kind is kind)


def _drawn(made: Manufacture, purpose: HolePurpose, *, through: bool | None = None, start: str = "") -> int:
    return sum(
        part.quantity
        for part in made.parts
        if part.number.startswith(start)
        for hole in part.machining.holes
        if hole.purpose is purpose and (through is None or (hole.depth_mm is None) is through)
    )


@given(built())
@settings(max_examples=30)
def test_order_and_drawings_agree(project: Project) -> None:
    made = manufacture(project)
    in_uprights = 2 * sum({(line.bay, line.drawer): len(line.runner_holes_mm) for line in made.schedule}.values())
    in_sides = _drawn(made, HolePurpose.RUNNER, start="D")
    assert _ordered(made, HardwareKind.SYSTEM_SCREW) == in_uprights
    assert _ordered(made, HardwareKind.WOOD_SCREW) == in_sides + _drawn(made, HolePurpose.SCREW, through=True)
    assert 2 * _ordered(made, HardwareKind.DOWEL) == _drawn(made, HolePurpose.DOWEL)
    assert _ordered(made, HardwareKind.POCKET_SCREW) == _drawn(made, HolePurpose.POCKET)
    assert 2 * _ordered(made, HardwareKind.CONNECTOR) == _drawn(made, HolePurpose.BOLT)
    mortises = sum(part.quantity * len(part.machining.joints) for part in made.parts)
    assert 2 * _ordered(made, HardwareKind.TENON) == mortises
    if project.construction.rear.kind is not Back.FULL_BACK:
        assert _ordered(made, HardwareKind.WALL_FIXING) == _drawn(made, HolePurpose.WALL)
    workings = derive(project)
    count = wall_fixing_count(project, workings, frame_of(project, workings))
    assert _ordered(made, HardwareKind.WALL_FIXING) == count, "the check of the fixing counts what is ordered"
    numbers = [item.number for item in made.hardware]
    assert len(set(numbers)) == len(numbers)


@given(built())
@settings(max_examples=15)
def test_what_bays_use_is_what_is_needed(project: Project) -> None:
    for item in manufacture(project).hardware:
        if item.bays:
            assert abs(sum(amount for _, amount in item.bays) - item.needed) < 1e-6
