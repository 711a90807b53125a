"""Front panels, box stops and end panels of small runs, counted and measured by hand."""

import pytest

from baywright.making import manufacture
from baywright.making.fronts import front_panels
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.construction import (
    Boards,
    Construction,
    Drawers,
    Edging,
    EdgingKind,
    EndPanels,
    FrontEdge,
    Fronts,
    Top,
    Uprights,
)
from baywright.model.inventory import Box, BoxSize
from baywright.model.limits import BayWish, Limits
from baywright.model.making import FrontPanel, Part
from baywright.model.project import Project
from baywright.model.space import Space
from baywright.model.stock import Batch, BoardRole, Material, Stock
from baywright.workings import derive

LOW = BoxSize(id="low", name="Low", width_mm=400, depth_mm=290, height_mm=120)
HIGH = BoxSize(id="high", name="High", width_mm=400, depth_mm=200, height_mm=220)


def run(
    *places: tuple[int, int, str], bays: int = 2, rows: int = 20, fronts: Fronts = Fronts.INSET, **changes: object
) -> Project:
    """Boxes at (bay, row) of a size each, on a wall of 2,400 mm without a shelf bay."""
    boxes = tuple(Box(id=f"box-{n}", label=f"{n}", size_id=size) for n, (_, _, size) in enumerate(places))
    placements = tuple(Placement(box_id=f"box-{n}", bay=bay, row=row) for n, (bay, row, _) in enumerate(places))
    return Project(
        space=Space(length_mm=2400, depth_mm=400),
        construction=Construction(drawers=Drawers(fronts=fronts)).replace(**changes),
        limits=Limits(shelf_bay=False, bay_box_width_mm=400),
        box_sizes=(LOW, HIGH),
        boxes=boxes,
        arrangement=Arrangement(bay_count=bays, upright_rows=rows, placements=placements),
    )


def panels(project: Project) -> dict[tuple[int, int], FrontPanel]:
    return {(panel.bay, panel.row): panel for panel in front_panels(project, derive(project))}


def part(project: Project, number: str) -> Part:
    return next(part for part in manufacture(project).parts if part.number == number)


def test_a_front_reaches_up_to_the_next_drawer() -> None:
    """Base 98; row k's lower edge at 98 + 16 + 32 k − 14. Two rows to spare above the first: no room for one more."""
    found = panels(run((0, 0, "low"), (0, 7, "low")))
    assert (found[0, 0].bottom_mm, found[0, 0].top_mm) == (98 + 2, 100 + 7 * 32 - 2)
    assert found[0, 7].bottom_mm == 100 + 7 * 32 + 2


def test_where_one_more_drawer_could_hang_above_a_front_closes_only_its_own_opening() -> None:
    """Five rows for the low box; five more are free under the next, enough for another low one."""
    found = panels(run((0, 0, "low"), (0, 10, "high")))
    assert found[0, 0].top_mm == 100 + 5 * 32 - 2
    assert found[0, 10].top_mm == 98 + 20 * 32 - 2  # 10 rows from row 10 on less 2 mm: no room for one more


def test_the_highest_front_reaches_to_under_the_top_and_the_lowest_down_to_the_base() -> None:
    found = panels(run((0, 2, "low"), (0, 12, "high")))
    assert found[0, 2].bottom_mm == 100 + 2 * 32 + 2, "a row further up would be free under it: not the lowest place"
    assert found[0, 12].top_mm == 98 + 640 - 2


def test_overlay_fronts_meet_over_shared_uprights_and_cover_the_ends() -> None:
    """Uprights 18: bay 1 clear from 18 to 477.4, bay 2 from 495.4 to 954.8."""
    found = panels(run((0, 0, "low"), (1, 0, "low"), fronts=Fronts.OVERLAY))
    first, second = found[0, 0], found[1, 0]
    assert (first.left_mm, first.right_mm) == pytest.approx((2, 486.4 - 2))
    assert (second.left_mm, second.right_mm) == pytest.approx((486.4 + 2, 972.8 - 2))
    own = panels(run((0, 0, "low"), (1, 0, "low"), fronts=Fronts.OVERLAY, uprights=Uprights.OWN))
    assert own[1, 0].left_mm - own[0, 0].right_mm == pytest.approx(4)


def test_an_overlay_front_beside_a_shelf_bay_leaves_it_half_the_upright() -> None:
    project = run((1, 0, "low"), fronts=Fronts.OVERLAY)
    project = project.replace(limits=project.limits.replace(shelf_bay=True))
    assert panels(project)[1, 0].right_mm == pytest.approx(954.8 + 9 - 2)


def test_equal_fronts_are_one_line_the_highest_first() -> None:
    project = run((0, 0, "high"), (0, 8, "low"), (1, 0, "high"), (1, 8, "low"), rows=13)
    made = manufacture(project)
    lines = [(p.number, p.quantity, p.length_mm, p.width_mm) for p in made.parts if p.number.startswith("F")]
    assert [(number, quantity) for number, quantity, *_ in lines] == [("F1", 2), ("F1-2", 2)]
    assert lines[0][2:] == pytest.approx((455.4, 8 * 32 + 2 - 4))
    assert {panel.number for panel in made.fronts} == {"F1", "F1-2"}
    assert part(project, "F1").cut_width_mm == pytest.approx(8 * 32 + 2 - 4 - 2), "edged all round by 1 mm"


def test_no_fronts_without_drawers_that_hang() -> None:
    project = run((0, 0, "low"))
    shallow = project.replace(space=project.space.replace(depth_mm=200))
    assert front_panels(shallow, derive(shallow)) == ()
    assert front_panels(run((0, 0, "low"), fronts=Fronts.NONE), derive(project)) == ()


def test_a_box_stop_only_where_there_is_room_behind_the_box() -> None:
    """Runner 350, so 320 inside: the low box leaves 25 mm behind itself and its air, a deep one hardly any."""
    drawers = Drawers(has_box_stop=True)
    project = run((0, 0, "low"), (0, 6, "high"), fronts=Fronts.NONE, drawers=drawers)
    made = manufacture(project)
    stop = part(project, "D4")
    assert (stop.quantity, stop.length_mm, stop.width_mm, stop.thickness_mm) == (2, 403, 20, 15)
    assert [line.box_stop_mm for line in made.schedule] == [295, 205]
    assert "1 at 205 mm, 1 at 295 mm" in stop.note
    deep = project.replace(box_sizes=(LOW.replace(depth_mm=310), HIGH))
    assert [line.box_stop_mm for line in manufacture(deep).schedule] == [None, 205]


def test_end_panels_stand_on_the_floor_and_reach_under_the_top() -> None:
    project = run((0, 0, "low"), end_panels=EndPanels(left=True, right=True), top=Top(overhang_side_mm=10))
    left, right, top = (part(project, number) for number in ("E1L", "E1R", "T1"))
    assert (left.quantity, left.length_mm, left.width_mm) == (1, 98 + 640, 380)
    assert (right.bays, left.bays) == ((1,), (0,))
    assert left.cut_width_mm == 379
    assert top.length_mm == pytest.approx(972.8 + 2 * 28)


def test_an_end_panel_is_as_high_as_the_bay_that_it_stands_beside() -> None:
    project = run((0, 0, "low"), end_panels=EndPanels(left=True, right=True))
    project = project.replace(limits=project.limits.replace(bays=(BayWish(), BayWish(rows=12))))
    assert part(project, "E1R-12").length_mm == 98 + 12 * 32


def test_measured_boards_that_break_the_drawers_are_told_and_never_crash() -> None:
    """A batch of 5 mm for the sides: a groove 6 mm deep cuts through. One of 60 mm for the bottom fits in no rail."""

    def batch(role: BoardRole, mm: float) -> Material:
        readings = Batch(id="b", name="B", readings_mm=(mm,))
        return Material(
            id=f"m-{role.value.replace('_', '-')}", name="M", roles=(role,), batches=(readings,), batch_id="b"
        )

    thin = run((0, 0, "low")).replace(stock=Stock(materials=(batch(BoardRole.DRAWER_SIDE, 5.0),)))
    assert any("would cut through sides that are 5 mm thick" in remark for remark in manufacture(thin).remarks)
    thick = run((0, 0, "low")).replace(stock=Stock(materials=(batch(BoardRole.DRAWER_BOTTOM, 60.0),)))
    assert any("does not fit in the drawer's rails" in remark for remark in manufacture(thick).remarks)


@pytest.mark.parametrize(
    ("size", "edging", "words"),
    [
        (20.0, EdgingKind.NONE, "does not fit on a top 27 mm thick"),
        (3.0, EdgingKind.BAND, "goes through the edging, which is 1 mm thick"),
        (3.0, EdgingKind.NONE, ""),
    ],
)
def test_a_front_edge_that_cannot_be_so_is_told(size: float, edging: EdgingKind, words: str) -> None:
    project = run(
        (0, 0, "low"),
        boards=Boards(top_mm=27),
        edging=Edging(kind=edging),
        top=Top(front_edge=FrontEdge.ROUNDED, front_edge_size_mm=size),
    )
    found = [remark for remark in manufacture(project).remarks if "rounding" in remark]
    assert [words in remark for remark in found] == ([True] if words else [])
