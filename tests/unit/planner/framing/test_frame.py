"""From a document to numbers: bays that differ, boxes that differ in load, locks, and back with how boxes stand."""

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.limits import BayWish
from baywright.model.project import Project
from baywright.model.space import CeilingPoint, Zone, ZoneEffect
from baywright.planner import plan, report
from baywright.planner.distribution.problem import Place
from baywright.planner.framing.frame import Framer
from tests.oracle.measure import faults

SMALL = BoxSize(id="small", name="Small", width_mm=190, depth_mm=300, height_mm=100, most_abreast=2)
LARGE = BoxSize(id="large", name="Large", width_mm=390, depth_mm=300, height_mm=100)


def shop(*size_ids: str, masses: dict[int, float] | None = None) -> Project:
    boxes = tuple(
        Box(id=f"box-{n}", label=f"Box {n}", size_id=size_id, loaded_mass_kg=(masses or {}).get(n))
        for n, size_id in enumerate(size_ids)
    )
    project = Project(box_sizes=(SMALL, LARGE), boxes=boxes)
    return project.replace(limits=project.limits.replace(bay_box_width_mm=390))


def placed(project: Project, *placements: Placement, bays: int = 2, rows: int = 20) -> Project:
    return project.replace(arrangement=Arrangement(bay_count=bays, upright_rows=rows, placements=placements))


def test_bays_that_are_alike_are_one_kind() -> None:
    frame = Framer(shop("large", "large")).frame(3, 20)
    assert frame.indices == ((0, 1, 2),)
    assert len(frame.problem.shapes) == 1
    assert frame.problem.teams == ()


def test_wishes_make_kinds_of_their_own() -> None:
    project = shop("large")
    wishes = (BayWish(rows=10), BayWish(drawers=2))
    frame = Framer(project.replace(limits=project.limits.replace(bays=wishes))).frame(4, 20)
    assert frame.indices == ((0,), (1,), (2, 3))
    assert [kind.rows for kind in frame.problem.kinds] == [10, 20, 20]
    assert [kind.drawers for kind in frame.problem.kinds] == [None, 2, None]


def test_a_low_ceiling_makes_bays_lower() -> None:
    project = shop("large")
    ceiling = (CeilingPoint(along_mm=400, height_mm=500), CeilingPoint(along_mm=600, height_mm=1500))
    frame = Framer(project.replace(space=project.space.replace(ceiling=ceiling))).frame(3, 20)
    assert [(bays, kind.rows) for bays, kind in zip(frame.indices, frame.problem.kinds, strict=True)] == [
        ((0,), 11),
        ((1, 2), 20),
    ]


def test_in_front_of_a_zone_a_box_too_deep_may_not_start() -> None:
    project = shop("large")
    pipe = Zone(
        id="pipe", label="Pipe", effect=ZoneEffect.STAY_IN_FRONT, left_mm=0, width_mm=300, bottom_mm=300,
        height_mm=50, depth_mm=60,
    )  # fmt: skip
    frame = Framer(project.replace(space=project.space.replace(zones=(pipe,)))).frame(2, 20)
    before, beside = (frame.problem.shapes[0].spans[kind] for kind in range(2))
    assert frame.indices == ((0,), (1,))
    assert before is not None
    assert beside is not None
    assert beside.barred == ()
    edge = 98 + 16 - 14  # base, first row, line offset
    crossed = tuple(row for row in range(20) if edge + 32 * row < 350 and edge + 32 * (row + 5) > 300)
    assert before.barred == tuple(row for row in crossed if before.lowest <= row <= before.highest)
    assert len(before.barred) == 6


def test_boxes_too_heavy_to_share_are_a_shape_of_their_own() -> None:
    problem = Framer(shop("small", "small", "small", masses={0: 10, 1: 60, 2: 12})).frame(1, 20).problem
    assert [item.shape for item in problem.items] == [0, 1, 0]
    assert [team.shapes for team in problem.teams] == [(0, 0)]


def test_a_box_too_heavy_for_any_drawer_has_no_place() -> None:
    problem = Framer(shop("large", masses={0: 67})).frame(1, 20).problem
    assert problem.homeless() == (0,)


def test_a_locked_drawer_blocks_its_rows_unless_others_may_share_it() -> None:
    large = placed(shop("large", "small"), Placement(box_id="box-0", bay=0, row=4, lock=Lock.DRAWER))
    frame = Framer(large).frame(2, 20)
    assert [item.name for item in frame.problem.items] == ["box-1"]
    assert frame.problem.kinds[0].blocked == ((4, 9),)
    small = placed(shop("small", "small"), Placement(box_id="box-0", bay=0, row=4, lock=Lock.DRAWER))
    frame = Framer(small).frame(2, 20)
    assert [item.name for item in frame.problem.items] == ["box-0", "box-1"]
    assert frame.problem.kinds[0].blocked == ()
    span = frame.problem.span(0, 0)
    assert span is not None
    assert (span.lowest, span.highest) == (4, 4)
    assert frame.problem.span(0, 1) is None
    assert frame.problem.drawer_span([0, 1], 0) == span


def test_boxes_kept_elsewhere_are_left_out_and_wished_ones_are_not() -> None:
    project = shop("large", "large", "large")
    boxes = tuple(
        box.replace(status=status)
        for box, status in zip(project.boxes, (BoxStatus.OWNED, BoxStatus.ELSEWHERE, BoxStatus.WISHED), strict=True)
    )
    project = placed(
        project.replace(boxes=boxes),
        Placement(box_id="box-0", bay=0, row=0),
        Placement(box_id="box-1", bay=0, row=5, lock=Lock.DRAWER),
    )
    framer = Framer(project)
    assert [item.name for item in framer.frame(1, 20).problem.items] == ["box-0", "box-2"]
    assert framer.pinned == ()


def test_boxes_that_share_are_told_how_they_stand() -> None:
    framer = Framer(shop("small", "small", "small"))
    frame = framer.frame(1, 20)
    arrangement = framer.arrangement(frame, [Place(0, 0, 0, 0), Place(1, 0, 0, 0), Place(2, 0, 0, 5)])
    assert [(p.row, p.abreast, p.behind) for p in arrangement.placements] == [(0, 0, 0), (0, 1, 0), (5, 0, 0)]


def test_boxes_that_stand_well_already_stay_as_they_stand() -> None:
    project = placed(
        shop("small", "small"),
        Placement(box_id="box-0", bay=0, row=0, abreast=1),
        Placement(box_id="box-1", bay=0, row=0, abreast=0),
    )
    framer = Framer(project)
    arrangement = framer.arrangement(framer.frame(1, 20), [Place(0, 0, 0, 0), Place(1, 0, 0, 0)])
    assert [p.abreast for p in arrangement.placements] == [1, 0]


def test_shared_drawers_save_bays_and_are_well_in_millimetres() -> None:
    project = shop(*["small"] * 6)
    project = project.replace(space=project.space.replace(height_limit_mm=700, length_mm=520))
    result = plan(project)
    assert result.arrangement is not None
    done = project.replace(arrangement=result.arrangement)
    assert (done.arrangement.bay_count, len(done.arrangement.drawers)) == (1, 3)
    assert faults(done) == []
    assert report(done).conflicts == ()


def test_the_run_as_it_stands_is_a_frame_only_where_the_limits_allow_it() -> None:
    project = placed(shop("large"), Placement(box_id="box-0", bay=1, row=3))
    frame = Framer(project).present_frame()
    assert frame is not None
    assert (frame.bays, frame.rows, frame.widths) == (2, 20, (390, 390))
    fixed = project.replace(limits=project.limits.replace(bay_count=3))
    assert Framer(fixed).present_frame() is None
    higher = project.replace(limits=project.limits.replace(worktop_least_mm=1000))
    assert Framer(higher).present_frame() is None
