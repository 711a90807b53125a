"""Rules for counts and sizes of fasteners."""

import pytest

from baywright.making import manufacture
from baywright.making.hardware.fasteners import (
    SYSTEM_SCREW_LENGTHS_MM,
    WOOD_SCREW_LENGTHS_MM,
    face_screw,
    in_drawer_corner,
    in_joint,
    in_runner,
    tenon_size,
    through_screw,
    wall_fixings,
)
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project


@pytest.mark.parametrize(
    ("joint_mm", "count"), [(40, 1), (60, 2), (100, 2), (101, 2), (250, 2), (251, 3), (400, 3), (401, 4), (580, 5)]
)
def test_tenons_in_a_joint(joint_mm: float, count: int) -> None:
    assert in_joint(joint_mm) == count


@pytest.mark.parametrize("joint_mm", [101.0, 250.0, 380.0, 555.0, 1000.0])
def test_tenons_are_never_farther_apart_than_the_rule(joint_mm: float) -> None:
    assert (joint_mm - 100) / (in_joint(joint_mm) - 1) <= 150


@pytest.mark.parametrize(("height_mm", "count"), [(60, 2), (90, 2), (91, 3), (140, 3), (141, 4)])
def test_screws_in_a_drawer_corner(height_mm: float, count: int) -> None:
    assert in_drawer_corner(height_mm) == count


@pytest.mark.parametrize(
    ("board_mm", "size"), [(12, (4, 20)), (15, (5, 30)), (18, (6, 40)), (21, (6, 40)), (24, (8, 40)), (40, (10, 50))]
)
def test_tenons_are_about_a_third_of_the_board(board_mm: float, size: tuple[int, int]) -> None:
    assert tenon_size(board_mm) == size


@pytest.mark.parametrize("thickness_mm", [9.0, 15.0, 18.0, 27.0, 40.0])
def test_a_screw_through_a_board_holds_in_the_next(thickness_mm: float) -> None:
    diameter, length = through_screw(thickness_mm)
    assert length - thickness_mm >= 6 * diameter


@pytest.mark.parametrize(("thickness_mm", "length_mm"), [(15, 13), (15.1, 13), (18, 16), (22, 20), (12, 10), (9, 10)])
def test_a_screw_into_a_face_stops_short_of_the_other(thickness_mm: float, length_mm: int) -> None:
    assert face_screw(thickness_mm, WOOD_SCREW_LENGTHS_MM) == length_mm


def test_system_screws_stop_at_their_longest() -> None:
    assert face_screw(30, SYSTEM_SCREW_LENGTHS_MM) == 16


@pytest.mark.parametrize(("length_mm", "count"), [(250, 3), (400, 3), (450, 4), (600, 4), (700, 5)])
def test_screws_in_a_runner_member(length_mm: float, count: int) -> None:
    assert in_runner(length_mm) == count


@pytest.mark.parametrize(("length_mm", "count"), [(300, 2), (800, 2), (801, 3), (2400, 5)])
def test_wall_fixings_along_a_rail(length_mm: float, count: int) -> None:
    assert wall_fixings(length_mm) == count


@pytest.mark.parametrize(("side_mm", "comes_through"), [(12.0, False), (10.0, True), (9.0, True)])
def test_runner_screws_that_would_come_through_a_thin_side_are_told(side_mm: float, comes_through: bool) -> None:
    plain = Project()
    boards = plain.construction.boards.replace(drawer_side_mm=side_mm)
    size = BoxSize(id="box", name="Box", width_mm=300, depth_mm=200, height_mm=100)
    project = plain.replace(
        construction=plain.construction.replace(boards=boards),
        box_sizes=(size,),
        boxes=(Box(id="box-1", label="Box", size_id="box", loaded_mass_kg=1),),
        arrangement=Arrangement(bay_count=1, upright_rows=10, placements=(Placement(box_id="box-1", bay=0, row=0),)),
    )
    notes = " ".join(item.note for item in manufacture(project).hardware)
    assert ("bolt the runners on instead" in notes) is comes_through
