"""Dimensions against sums of the trade.

Sources: the numbers of the four-bay wall are common practice, a worked example without a published source. The
32 mm panel values are common practice too (two woodworking reference pages, read second-hand; arithmetic
recomputed): H = 32·n + 2·s with n pitches and s the start of the row, D = 37 + 37 + 32·m.
"""

import pytest

from baywright.checks.fit import CLEARANCE_OVER_MM, CLEARANCE_UNDER_MM
from baywright.model.construction import Construction, Uprights
from baywright.model.inventory import BoxSize
from baywright.model.project import Project
from baywright.model.space import Space
from baywright.workings import Workings, derive


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
    assert _panel(pitches, start).value("upright_height") == height


def _panel(pitches: int, start: float) -> Workings:
    """The workings of a run whose uprights have a row more than `pitches`, the first one at `start`."""
    plain = Project()
    rows = plain.construction.hole_rows.replace(first_row_rule="set", first_row_mm=start)
    return derive(
        plain.replace(
            construction=plain.construction.replace(hole_rows=rows),
            arrangement=plain.arrangement.replace(bay_count=1, upright_rows=pitches + 1),
        )
    )


@pytest.mark.parametrize(("pitches", "start", "inches"), [(66, 9.5, 83.90), (23, 19, 30.472)])
def test_the_same_panels_in_inches(pitches: int, start: float, inches: float) -> None:
    """V2 and V1: the pages cut an 84 in panel to 83.9 in; 2,131 and 774 mm."""
    assert _panel(pitches, start).value("upright_height") / 25.4 == pytest.approx(inches, abs=0.005)


@pytest.mark.parametrize(("row", "height"), [(0, 9), (1, 41), (24, 777)])
def test_holes_of_a_balanced_panel(row: int, height: float) -> None:
    """V1: y = s + 32·k with s half of 18 mm; 9 mm are left over the last of 25 holes in 786 mm."""
    panel = _panel(24, 9)
    assert panel.value("first_row") + panel.value("pitch") * row == height
    assert panel.value("upright_height") - (panel.value("first_row") + panel.value("pitch") * 24) == 9


def test_33_pitches_of_a_full_overlay() -> None:
    """V2 and V1: 1,056 mm from the first hole to the last."""
    panel = _panel(33, 16)
    assert panel.value("upright_height") - 2 * panel.value("first_row") == 1056


@pytest.mark.parametrize(("thickness", "start"), [(16, 8), (18, 9), (19, 9.5)])
def test_half_a_boards_thickness_is_a_rule_of_the_first_row(thickness: float, start: float) -> None:
    """V2: inset or half overlay, balanced: the row begins at half the panel's thickness."""
    plain = Project()
    rows = plain.construction.hole_rows.replace(first_row_rule="half_base_thickness")
    boards = plain.construction.boards.replace(base_mm=thickness)
    shaped = plain.replace(construction=plain.construction.replace(hole_rows=rows, boards=boards))
    assert derive(shaped).value("first_row") == start


def test_holes_stand_37_mm_behind_the_front_edge() -> None:
    """V2: front row 37 mm from the front edge, 5 mm holes, 32 mm apart."""
    rows = Project().construction.hole_rows
    assert (rows.front_setback_mm, rows.pitch_mm) == (37, 32)


@pytest.mark.parametrize(("clear", "outside"), [(450, 424.6), (400, 374.6)])
def test_a_drawer_is_25_4_mm_narrower_than_its_opening(clear: float, outside: float) -> None:
    """V1: runners of 12.7 mm a side (V2); with up to 0.8 mm more clearance a side (MEM 90 %) 423.0 to 424.6 mm will do
    in 450 mm.
    """
    plain = Project()
    drawers = plain.construction.drawers.replace(lateral_play_mm=0)
    box = BoxSize(id="box", name="Box", width_mm=outside - 2 * 15, depth_mm=297, height_mm=105)
    shaped = plain.replace(construction=plain.construction.replace(drawers=drawers), box_sizes=(box,))
    assert shaped.construction.runners.thickness_mm == 12.7
    workings = derive(shaped)
    assert workings.value("drawer_outside_width") == pytest.approx(outside)
    assert workings.value("bay_clear_width") == pytest.approx(clear)
    assert clear - 2 * (12.7 + CLEARANCE_OVER_MM) == pytest.approx(outside - 1.6)
    assert clear - 2 * (12.7 - CLEARANCE_UNDER_MM) == pytest.approx(outside)


def test_lengths_of_runners_to_be_had() -> None:
    """MEM 85 %: 250 to 700 mm by 50, usual ratings 35 to 45 kg and heavy ones from 68 kg."""
    runners = Project().construction.runners
    assert runners.lengths_mm == tuple(range(250, 701, 50))
    assert runners.load_classes_kg == (35, 45, 68)


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
