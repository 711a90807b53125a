"""Dimensions against sums of the trade.

Sources: the numbers of the four-bay wall are common practice, a worked example without a published source. The
32 mm panel values are common practice too (two woodworking reference pages, read second-hand; arithmetic
recomputed): H = 32·n + 2·s with n pitches and s the start of the row, D = 37 + 37 + 32·m.
"""

import pytest

from baywright.model.construction import Construction, Uprights
from baywright.model.inventory import BoxSize
from baywright.model.project import Project
from baywright.model.space import Space
from baywright.workings import derive


def four_bay_wall(uprights: Uprights) -> Project:
    plain = Construction()
    return Project(
        space=Space(length_mm=2310, depth_mm=450, height_limit_mm=1200),
        construction=plain.replace(
            uprights=uprights,
            boards=plain.boards.replace(drawer_side_mm=18),
            drawers=plain.drawers.replace(lateral_play_mm=0),
            runners=plain.runners.replace(thickness_mm=14),
        ),
        box_sizes=(BoxSize(id="box", name="Box", width_mm=396, depth_mm=297, height_mm=105),),
    )


def test_a_drawer_for_a_396_mm_box_takes_460_between_the_uprights() -> None:
    workings = derive(four_bay_wall(Uprights.SHARED))
    assert workings.value("drawer_outside_width") == 432
    assert workings.value("bay_clear_width") == 460


def test_own_uprights_make_the_bay_496_and_four_fit_2310_mm() -> None:
    workings = derive(four_bay_wall(Uprights.OWN))
    assert workings.value("bay_pitch") == 496
    assert workings.value("bays_that_fit") == 4
    assert workings.value("room_for_run") / workings.value("bay_pitch") == pytest.approx(4.66, abs=0.005)


def test_shared_uprights_leave_exactly_362_clear() -> None:
    wall = four_bay_wall(Uprights.SHARED)
    shaped = wall.replace(arrangement=wall.arrangement.replace(bay_count=4, upright_rows=32))
    assert derive(shaped).value("left_over_clear_width") == 362
    assert derive(shaped).value("run_length") == 2310


@pytest.mark.parametrize(
    ("pitches", "start", "height"),
    [(66, 9.5, 2131), (23, 19, 774), (24, 8, 784), (24, 9, 786), (24, 9.5, 787), (20, 9, 658), (60, 9, 1938)],
)
def test_panel_heights_of_the_32_mm_grid(pitches: int, start: float, height: float) -> None:
    plain = Project()
    rows = plain.construction.hole_rows.replace(first_row_rule="set", first_row_mm=start)
    shaped = plain.replace(
        construction=plain.construction.replace(hole_rows=rows),
        arrangement=plain.arrangement.replace(bay_count=1, upright_rows=pitches + 1),
    )
    assert derive(shaped).value("upright_height") == height


@pytest.mark.parametrize(("columns_pitches", "depth"), [(11, 426), (12, 458), (13, 490), (15, 554)])
def test_panel_depths_of_the_32_mm_grid(columns_pitches: int, depth: float) -> None:
    plain = Project()
    shaped = plain.replace(
        space=plain.space.replace(depth_mm=depth),
        construction=plain.construction.replace(top=plain.construction.top.replace(overhang_front_mm=0)),
    )
    assert derive(shaped).value("hole_columns_apart") == 32 * columns_pitches


@pytest.mark.parametrize(("need", "rows"), [(150, 5), (200, 7), (250, 8), (350, 11)])
def test_drawer_openings_in_whole_rows(need: float, rows: int) -> None:
    plain = Project()
    drawers = plain.construction.drawers.replace(clearance_mm=0, groove_offset_mm=8)
    size = BoxSize(id="box", name="Box", width_mm=396, depth_mm=297, height_mm=need - 8 - 9)
    shaped = plain.replace(construction=plain.construction.replace(drawers=drawers), box_sizes=(size,))
    workings = derive(shaped)
    assert workings.value("need_height", "box") == need
    assert workings.value("opening_rows", "box") == rows
    assert workings.value("opening_height", "box") == 32 * rows
