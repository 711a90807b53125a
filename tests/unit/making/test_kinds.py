"""Runs whose bays are not all alike: what is cut, bought and scheduled for them."""

import pytest

from baywright.making import manufacture
from baywright.making.frame import frame_of, neighbours
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.construction import Back, Construction, Rear, Top, Uprights
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.limits import BayWish, Limits
from baywright.model.making import Manufacture, Part
from baywright.model.project import Project
from baywright.model.space import Space, Zone, ZoneEffect
from baywright.workings import derive

SIZES = (
    BoxSize(id="full", name="Full", width_mm=400, depth_mm=300, height_mm=120),
    BoxSize(id="half", name="Half", width_mm=190, depth_mm=300, height_mm=120, most_abreast=2),
    BoxSize(id="wide", name="Wide", width_mm=600, depth_mm=300, height_mm=120),
)


def box(number: int, size_id: str, mass_kg: float = 5.0, status: BoxStatus = BoxStatus.OWNED) -> Box:
    return Box(id=f"box-{number}", label=f"Box {number}", size_id=size_id, loaded_mass_kg=mass_kg, status=status)


def run(
    boxes: tuple[Box, ...], placements: tuple[Placement, ...], *, own: bool = False, back: Back = Back.FULL_BACK,
    zones: tuple[Zone, ...] = (), bays: tuple[BayWish, ...] = (), bay_count: int = 3,
) -> Project:  # fmt: skip
    return Project(
        space=Space(length_mm=5000, depth_mm=420, height_limit_mm=1400, zones=zones),
        construction=Construction(
            uprights=Uprights.OWN if own else Uprights.SHARED, rear=Rear(kind=back), top=Top(overhang_side_mm=15)
        ),
        limits=Limits(bay_box_width_mm=400, bays=bays, shelf_bay=False),
        box_sizes=SIZES,
        boxes=boxes,
        arrangement=Arrangement(bay_count=bay_count, upright_rows=30, placements=placements),
    )


def at(number: int, bay: int, row: int, **more: int) -> Placement:
    return Placement(box_id=f"box-{number}", bay=bay, row=row, **more)  # type: ignore[arg-type]


def of(made: Manufacture, number: str) -> Part:
    return next(part for part in made.parts if part.number.partition("/")[0] == number)


def test_boxes_that_share_a_drawer_share_its_runners_and_its_parts() -> None:
    project = run((box(1, "half", 20), box(2, "half", 20)), (at(1, 0, 4), at(2, 0, 4, abreast=1)))
    made = manufacture(project)
    assert of(made, "D3").quantity == 1
    assert [(line.drawer, line.place_in_drawer) for line in made.schedule] == [
        (1, "1 from the left"), (1, "2 from the left"),
    ]  # fmt: skip
    assert {line.load_class_kg for line in made.schedule} == {45.0}  # 40 kg of boxes and the drawer


def test_for_a_wished_box_no_drawer_is_made_yet() -> None:
    project = run((box(1, "full"), box(2, "full", status=BoxStatus.WISHED)), (at(1, 0, 4), at(2, 0, 10)))
    made = manufacture(project)
    assert of(made, "D3").quantity == 1
    assert [line.box_id for line in made.schedule] == ["box-1"]


def test_a_wider_bay_has_wider_drawers() -> None:
    project = run(
        (box(1, "full"), box(2, "wide")), (at(1, 0, 4), at(2, 1, 4)), bays=(BayWish(), BayWish(box_width_mm=600))
    )
    made = manufacture(project)
    assert of(made, "D2-a").length_mm == of(made, "D2").length_mm + 200
    assert of(made, "D3-a").width_mm == of(made, "D3").width_mm
    assert "600 mm" in of(made, "D3-a").note


def test_a_drawer_in_front_of_a_pipe_has_a_shorter_runner() -> None:
    pipe = Zone(id="pipe", label="Pipe", effect=ZoneEffect.STAY_IN_FRONT, left_mm=0, width_mm=200, bottom_mm=200,
                height_mm=100, depth_mm=60)  # fmt: skip
    project = run((box(1, "full"), box(2, "full")), (at(1, 0, 3), at(2, 0, 20)), zones=(pipe,))
    made = manufacture(project)
    assert of(made, "D1-a").length_mm < of(made, "D1").length_mm
    assert len([item for item in made.hardware if item.name.startswith("Drawer runner")]) == 2


@pytest.mark.parametrize("back", list(Back))
@pytest.mark.parametrize("own", [False, True])
def test_a_step_in_height_has_two_tops_and_two_heights_of_uprights(own: bool, back: Back) -> None:
    project = run((box(1, "full"),), (at(1, 0, 4),), own=own, back=back, bays=(BayWish(rows=20),))
    made = manufacture(project)
    low, high = of(made, "T1"), of(made, "T1b")
    w = derive(project)
    assert low.length_mm + high.length_mm == pytest.approx(w.value("run_length") + 2 * 15)
    assert "over bay 1" in low.note
    assert "over bays 2 to 3" in high.note
    assert of(made, "U1-20").length_mm == 640
    assert of(made, "U3").length_mm == 960
    if back is Back.FULL_BACK:
        area = sum(p.quantity * p.length_mm * p.width_mm for p in made.parts if p.name == "Back")
        assert area == pytest.approx(low_area(project) + high_area(project))


def low_area(project: Project) -> float:
    left, right = derive(project).layout.stretches[0].left_mm, derive(project).layout.stretches[0].right_mm
    return (right - left) * (640 + 18)


def high_area(project: Project) -> float:
    left, right = derive(project).layout.stretches[1].left_mm, derive(project).layout.stretches[1].right_mm
    return (right - left) * (960 + 18)


@pytest.mark.parametrize("own", [False, True])
def test_a_door_in_the_wall_makes_two_runs_of_one(own: bool) -> None:
    door = Zone(id="door", label="Door", effect=ZoneEffect.KEEP_CLEAR, left_mm=1100, width_mm=900)
    project = run((box(1, "full"),), (at(1, 0, 4),), own=own, zones=(door,))
    made = manufacture(project)
    frame = frame_of(project, derive(project))
    assert len(frame.sections_mm) == 2
    assert len([part for part in made.parts if part.name == "Top"]) == 2
    assert sum(part.length_mm for part in made.parts if part.name == "Plinth, front") == pytest.approx(
        sum(right - left for left, right in frame.sections_mm)
    )
    assert neighbours(derive(project).layout) == {(0, 1)}
    bolts = [item for item in made.hardware if item.name == "Connecting bolt"]
    assert [item.needed for item in bolts] == ([4] if own else [])


def test_bays_that_are_alike_are_one_line_however_their_places_add_up() -> None:
    project = run((box(1, "full"),), (at(1, 0, 4),), own=True, bay_count=8)
    boards = project.construction.boards.replace(upright_mm=17.6, drawer_side_mm=14.9)
    made = manufacture(project.replace(construction=project.construction.replace(boards=boards)))
    assert [(part.number, part.quantity) for part in made.parts if part.name == "Base"] == [("B1", 8)]
