"""Small runs whose drilling can be worked out by hand."""

import pytest

from baywright.making import manufacture
from baywright.making.machining import hole_counts, joint_counts, runner_holes
from baywright.making.machining.lines import runner_holes_mm
from baywright.making.machining.places import LEAST_APART_MM, places_along
from baywright.model.arrangement import Placement
from baywright.model.catalogue import HardwareKind
from baywright.model.construction import (
    DrawerForm,
    Drilling,
    FrontEdge,
    Fronts,
    Jointing,
    Uprights,
)
from baywright.model.inventory import BoxStatus
from baywright.model.limits import BayWish, Limits
from baywright.model.machining import EdgeForm, HolePurpose, Side
from baywright.model.making import Manufacture, Part
from baywright.model.project import Project


def part(made: Manufacture, number: str) -> Part:
    return next(p for p in made.parts if p.number == number)


def uprights(made: Manufacture) -> list[Part]:
    return [each for each in made.parts if each.number.startswith("U")]


def system_screws(made: Manufacture) -> float:
    return sum(item.needed for item in made.hardware if item.kind is HardwareKind.SYSTEM_SCREW)


def changed(project: Project, **groups: dict[str, object]) -> Project:
    """The project with fields of its construction changed, group by group."""
    construction = project.construction
    for name, fields in groups.items():
        construction = construction.replace(**{name: getattr(construction, name).replace(**fields)})
    return project.replace(construction=construction)


def test_a_runner_is_screwed_on_at_37_and_whole_steps_of_32_behind() -> None:
    """350 mm: the last hole at most 25 mm before its rear end, 37 + 9 · 32 = 325; one in the middle, 37 + 4 · 32."""
    assert runner_holes_mm(350.0) == (37.0, 165.0, 325.0)
    assert runner_holes_mm(0.0) == ()
    assert len(runner_holes_mm(600.0)) == 4
    for length in range(100, 1000, 7):
        for hole in runner_holes_mm(float(length)):
            assert (hole - 37.0) % 32.0 == 0
            assert hole <= length - 25.0


def test_whole_rows_are_drilled_on_the_faces_where_bays_are(two_bays: Project) -> None:
    """33 rows; front line 37, rear line 380 − 37 = 343, the runner's lines 165 and 325 between them."""
    made = manufacture(two_bays)
    outer, inner = part(made, "U1").machining, part(made, "U2").machining
    rows = [hole for hole in outer.holes if hole.row]
    assert {hole.side for hole in rows} == {Side.FACE}
    assert sorted({hole.y_mm for hole in rows}) == [37.0, 165.0, 325.0, 343.0]
    assert len(rows) == 33 * 4
    assert (rows[0].x_mm, rows[-1].x_mm) == (16.0, 16.0 + 32 * 32)
    both = [hole for hole in inner.holes if hole.row]
    assert len(both) == 2 * 33 * 4
    assert outer.is_front_far
    assert not part(made, "U6").machining.is_front_far


def test_holes_that_face_each_other_are_less_deep(two_bays: Project) -> None:
    made = manufacture(two_bays)
    assert {hole.depth_mm for hole in part(made, "U1").machining.holes if hole.row} == {12.0}
    assert {hole.depth_mm for hole in part(made, "U2").machining.holes if hole.row} == {8.0}


def test_only_used_holes_are_drilled_where_that_is_chosen(two_bays: Project) -> None:
    """Four drawers a bay, three screws a runner; 12 holes on the outer upright, on the next twice as many."""
    project = changed(two_bays, hole_rows={"drilling": Drilling.USED_ONLY})
    made = manufacture(project)
    first = [hole for hole in part(made, "U1").machining.holes if hole.row]
    assert {hole.row for hole in first} == {1, 9, 17, 25}
    assert len(first) == 12
    assert {hole.purpose for hole in first} == {HolePurpose.RUNNER}
    whole = manufacture(two_bays)
    assert [line.runner_holes_mm for line in made.schedule] == [line.runner_holes_mm for line in whole.schedule]
    assert {line.runner_holes_mm for line in made.schedule} == {(37.0, 165.0, 325.0)}
    pins = [hole for p in made.parts for hole in p.machining.holes if hole.purpose is HolePurpose.PIN]
    assert len(pins) == 4 * 3


def test_room_for_a_wished_box_is_drilled_but_no_screw_counts(two_bays: Project) -> None:
    project = changed(two_bays, hole_rows={"drilling": Drilling.USED_ONLY})
    wished = project.replace(
        boxes=(*project.boxes[:-1], project.boxes[-1].replace(status=BoxStatus.WISHED))
    )  # fmt: skip
    before, after = manufacture(project), manufacture(wished)
    assert sum(h.row is not None for h in part(after, "U4").machining.holes) == sum(
        h.row is not None for h in part(before, "U4").machining.holes
    )
    assert (system_screws(before), runner_holes(before.parts)) == (48, 48)
    assert (system_screws(after), runner_holes(after.parts)) == (42, 42)


def test_uprights_drilled_alike_are_one_number_and_others_are_told_apart(two_bays: Project) -> None:
    """Three bays, the third's drawers one row higher: upright 2 and 3 differ."""
    placements = tuple(
        Placement(box_id=f"box-{n}", bay=(n - 1) % 3, row=12 * ((n - 1) // 3) + ((n - 1) % 3 == 2)) for n in range(1, 9)
    )
    project = changed(two_bays, hole_rows={"drilling": Drilling.USED_ONLY})
    project = project.replace(
        space=project.space.replace(length_mm=3000.0),
        arrangement=project.arrangement.replace(bay_count=3, placements=placements),
    )
    numbers = {p.number: p.note for p in manufacture(project).parts if p.number.startswith("U2")}
    assert set(numbers) == {"U2/1", "U2/2"}
    assert numbers["U2/1"].startswith("upright 2;")
    whole = changed(project, hole_rows={"drilling": Drilling.WHOLE_ROWS})
    assert [(p.number, p.quantity) for p in manufacture(whole).parts if p.number.startswith("U2")] == [("U2", 2)]


def test_whole_rows_are_the_same_part_wherever_drawers_hang(two_bays: Project) -> None:
    """A drawer two rows higher and a wished box change which holes are used, and so the schedule, but no upright."""
    placements = list(two_bays.arrangement.placements)
    placements[-1] = placements[-1].replace(row=placements[-1].row + 2)
    moved = two_bays.replace(arrangement=two_bays.arrangement.replace(placements=tuple(placements)))
    wished = moved.replace(boxes=(*moved.boxes[:-1], moved.boxes[-1].replace(status=BoxStatus.WISHED)))
    before, after, later = manufacture(two_bays), manufacture(moved), manufacture(wished)
    assert uprights(before) == uprights(after) == uprights(later)
    assert before.schedule != after.schedule
    assert (system_screws(before), system_screws(later)) == (48, 42)
    purposes = {hole.purpose for each in uprights(before) for hole in each.machining.holes if hole.row is not None}
    assert purposes == {HolePurpose.ROW, HolePurpose.PIN}


def test_a_hole_that_not_all_pieces_use_waits(two_bays: Project) -> None:
    """Of three bays with own uprights the middle one's upper boxes are only wished for: its uprights are those of the
    others, and what is screwed into one of them only counts as waiting."""
    placements = tuple(Placement(box_id=f"box-{n}", bay=(n - 1) // 2, row=12 * ((n - 1) % 2)) for n in range(1, 7))
    boxes = tuple(b.replace(status=BoxStatus.WISHED) if b.id == "box-4" else b for b in two_bays.boxes[:6])
    project = changed(two_bays, hole_rows={"drilling": Drilling.USED_ONLY})
    project = project.replace(
        space=project.space.replace(length_mm=3000.0), boxes=boxes,
        construction=project.construction.replace(uprights=Uprights.OWN),
        arrangement=project.arrangement.replace(bay_count=3, placements=placements),
    )  # fmt: skip
    made = manufacture(project)
    first, inner = (part(made, number) for number in ("U1/1", "U1/2"))
    assert (first.quantity, inner.quantity) == (1, 2)
    uses = [{(h.row, h.purpose) for h in each.machining.holes if h.row is not None} for each in (first, inner)]
    assert uses[0] == {(1, HolePurpose.RUNNER), (13, HolePurpose.RUNNER)}
    assert uses[1] == {(1, HolePurpose.RUNNER), (13, HolePurpose.ROW)}
    assert system_screws(made) == 5 * 2 * 3


def test_the_fourth_of_a_dozen_joints(two_bays: Project) -> None:
    """Four uprights, two ends each, three tenons of 6 × 40 in each: half of the mortises lie in base and top."""
    made = manufacture(two_bays)
    assert joint_counts(made.parts) == {(6, 40): 24}
    base = part(made, "B1").machining.joints
    assert len(base) == 12
    assert {joint.x_mm for joint in base} == {9.0, 486.4, 963.8, 2391.0}
    assert {(joint.depth_mm, joint.thick_mm, joint.is_along) for joint in base} == {(14.0, 6.0, False)}
    foot = [joint for joint in part(made, "U2").machining.joints if joint.side is Side.START]
    assert {(joint.depth_mm, joint.y_mm) for joint in foot} == {(26.0, 9.0)}
    assert {joint.x_mm for joint in foot} == {joint.y_mm for joint in base if joint.x_mm == 486.4}
    top = part(made, "T1").machining.joints
    head = [joint for joint in part(made, "U1").machining.joints if joint.side is Side.END]
    assert sorted(j.y_mm - 20.0 for j in top if j.x_mm == 9.0) == pytest.approx(sorted(j.x_mm for j in head))


@pytest.mark.parametrize(
    ("way", "purpose", "in_upright", "in_base"),
    [
        (Jointing.DOWEL, HolePurpose.DOWEL, 6, 12),
        (Jointing.POCKET_SCREW, HolePurpose.POCKET, 6, 0),
    ],
)
def test_other_ways_of_jointing(
    two_bays: Project, way: Jointing, purpose: HolePurpose, in_upright: int, in_base: int
) -> None:
    project = two_bays.replace(construction=two_bays.construction.replace(jointing=way))
    made = manufacture(project)
    counts = [
        sum(hole.purpose is purpose for hole in part(made, number).machining.holes) for number in ("U1", "B1")
    ]  # fmt: skip
    assert counts == [in_upright, in_base]
    assert not any(p.machining.joints for p in made.parts)


def test_a_drawer_side_by_hand(two_bays: Project) -> None:
    """Bottom 9 mm with 0.2 mm of play in a groove 8 mm over the lower edge, 6 mm deep; the runner's line at 14 mm lies
    before the groove, so that of 15 mm only 9 are wood there and pilot holes stop at 7."""
    side = part(manufacture(two_bays), "D1")
    (groove,) = side.machining.grooves
    assert (groove.offset_mm, groove.width_mm, groove.depth_mm) == pytest.approx((8.0, 9.2, 6.0))
    pilots = [hole for hole in side.machining.holes if hole.purpose is HolePurpose.RUNNER]
    assert [(hole.x_mm, hole.y_mm, hole.side) for hole in pilots] == [
        (x, 14.0, Side.REVERSE) for x in (37.0, 165.0, 325.0)
    ]
    assert {hole.depth_mm for hole in pilots} == {7.0}
    corners = [hole for hole in side.machining.holes if hole.purpose is HolePurpose.SCREW]
    assert {hole.x_mm for hole in corners} == {7.5, 342.5}
    assert min(hole.y_mm for hole in corners) - 2.25 >= 17.2 + LEAST_APART_MM
    assert (side.quantity, side.mirrored) == (16, 8)


def test_front_panels_make_front_and_rear_rails_differ(two_bays: Project) -> None:
    project = changed(two_bays, drawers={"fronts": Fronts.OVERLAY, "form": DrawerForm.FULL_BOX})
    made = manufacture(project)
    front, rear = part(made, "D2/1"), part(made, "D2/2")
    assert (front.quantity, rear.quantity) == (8, 8)
    assert sum(hole.depth_mm is None for hole in front.machining.holes) == 4
    assert not any(hole.depth_mm is None for hole in rear.machining.holes)
    panels = {panel.number for panel in made.fronts}
    assert panels == {p.number for p in made.parts if p.number.startswith("F1")}


def test_own_uprights_are_bolted_together_and_outer_ones_are_not(two_bays: Project) -> None:
    project = two_bays.replace(construction=two_bays.construction.replace(uprights=Uprights.OWN))
    made = manufacture(project)
    assert sum(n for (purpose, _), n in hole_counts(made.parts).items() if purpose is HolePurpose.BOLT) == 2 * 2 * 4
    assert not any(hole.purpose is HolePurpose.BOLT for hole in part(made, "U1/1").machining.holes)


def test_a_lower_top_is_fastened_to_the_face_of_the_higher_upright(two_bays: Project) -> None:
    project = two_bays.replace(limits=Limits(bays=(BayWish(rows=20),)))
    made = manufacture(project)
    higher = next(p for p in made.parts if p.number.startswith("U2") and p.length_mm == 1056)
    on_faces = [joint for joint in higher.machining.joints if joint.side in (Side.FACE, Side.REVERSE)]
    assert {joint.x_mm for joint in on_faces} == {640 + 13.5}
    assert {joint.meets for joint in on_faces} == {"T1"}


def test_a_rounded_top_says_so(two_bays: Project) -> None:
    project = changed(two_bays, top={"front_edge": FrontEdge.ROUNDED, "front_edge_size_mm": 5.0})
    (edge,) = part(manufacture(project), "T1").machining.shaped_edges
    assert (edge.side, edge.form, edge.size_mm) == (Side.FRONT, EdgeForm.ROUNDED, 5.0)


def test_what_cannot_be_drilled_is_named_with_what_to_do(two_bays: Project) -> None:
    near = manufacture(changed(two_bays, hole_rows={"front_setback_mm": 40.0}))
    assert any("40 mm" in r and "front set-back" in r and "37 mm" in r for r in near.remarks)
    tight = manufacture(changed(two_bays, hole_rows={"pitch_mm": 8.0, "hole_diameter_mm": 6.0}))
    assert any("(U1)" in r and "two hole rows" in r for r in tight.remarks)
    beside = manufacture(changed(two_bays, runners={"line_offset_mm": 59.0}))
    assert any("(D1)" in r and "there is room for 0 of 3" in r for r in beside.remarks)
    assert not any("(U" in r or "(D" in r for r in manufacture(two_bays).remarks)


def test_places_keep_their_distance_and_there_are_fewer_where_there_is_no_room() -> None:
    assert places_along(0.0, 380.0, 3, 20.0) == [50.0, 190.0, 330.0]
    moved = places_along(0.0, 380.0, 3, 20.0, [(45.0, 52.0)])
    assert moved[0] == pytest.approx(45.0 - 3.0 - 10.0) or moved[0] == pytest.approx(52.0 + 3.0 + 10.0)
    assert places_along(0.0, 20.0, 3, 10.0) == [9.0]
    assert places_along(0.0, 5.0, 1, 10.0) == []
