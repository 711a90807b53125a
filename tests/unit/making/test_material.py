"""Names, densities and masses of boards; sizes to cut."""

import pytest

from baywright.making.drawers import empty_drawer_kg, parts_of_kind
from baywright.making.loads import runner_load
from baywright.making.manufacture import manufacture
from baywright.making.material import board_name, density_kg_m3, mass_kg, material_of
from baywright.making.piece import ALL_ROUND, piece
from baywright.model.construction import Construction, Edging, EdgingKind
from baywright.model.machining import Side
from baywright.model.making import Grain
from baywright.model.material import MATERIALS
from baywright.model.project import Project
from baywright.model.safety import BoardMaterial, Safety
from baywright.model.stock import Batch, BoardRole, Material, Stock
from baywright.workings import derive

OAK = Material(id="oak", name="Oak 20 mm", kind=BoardMaterial.RED_OAK, nominal_mm=20.0, roles=(BoardRole.TOP,))


def test_measured_thicknesses_are_in_the_name() -> None:
    assert board_name(BoardMaterial.BIRCH_PLYWOOD, 18.0) == "birch plywood 18 mm"
    assert board_name(BoardMaterial.BIRCH_PLYWOOD, 17.6) == "birch plywood 17.6 mm"


def test_boards_that_nobody_named_are_of_the_kind_that_all_are_of_one_for_each_thickness() -> None:
    project = Project(stock=Stock(materials=(OAK,)), safety=Safety(board_material=BoardMaterial.FIBREBOARD))
    assert material_of(project, BoardRole.TOP) is OAK
    upright, base, bottom = (
        material_of(project, role) for role in (BoardRole.UPRIGHT, BoardRole.BASE, BoardRole.DRAWER_BOTTOM)
    )
    assert upright == base != bottom
    assert upright.name == "medium-density fibreboard 18 mm"
    assert upright.id == "medium-density-fibreboard-18"
    assert not upright.has_grain


def test_a_material_that_is_taken_for_granted_is_never_one_that_the_owner_keeps_for_other_boards() -> None:
    named = Material(id="birch-plywood-18", name="Only for the plinth", roles=(BoardRole.PLINTH,))
    project = Project(stock=Stock(materials=(named,)))
    assert material_of(project, BoardRole.UPRIGHT).id not in {"birch-plywood-18"}


def test_the_owners_density_comes_first_and_an_unknown_one_is_none() -> None:
    assert density_kg_m3(OAK) == MATERIALS[BoardMaterial.RED_OAK].density_kg_m3
    assert density_kg_m3(OAK.replace(density_kg_m3=651)) == 651
    assert density_kg_m3(OAK.replace(kind=BoardMaterial.OTHER)) is None


def test_mass_is_volume_times_density() -> None:
    """A square metre of 18 mm is 0.018 m³; two of them 0.036 m³; birch plywood 680 kg/m³: 24.48 kg."""
    board = piece(Project(), BoardRole.UPRIGHT, "X", "board", 2, 1000, 1000)
    assert board.mass_kg == pytest.approx(12.24)
    assert mass_kg([board]) == pytest.approx(24.48)
    assert mass_kg([board, board.replace(mass_kg=None)]) is None


def test_a_board_is_cut_smaller_by_the_edging_on_each_covered_edge() -> None:
    edging = Edging(kind=EdgingKind.LIPPING, thickness_mm=8.0)
    project = Project(construction=Construction(edging=edging))
    board = piece(project, BoardRole.TOP, "X", "board", 1, 1000, 500, banded=(Side.FRONT, Side.START))
    assert (board.length_mm, board.width_mm) == (1000, 500)
    assert (board.cut_length_mm, board.cut_width_mm) == (992, 492)
    assert (board.edged_length_mm, board.edging_strips) == (1500, 2)
    bare = project.replace(construction=Construction(edging=edging.replace(kind=EdgingKind.NONE)))
    board = piece(bare, BoardRole.TOP, "X", "board", 1, 1000, 500, banded=ALL_ROUND)
    assert (board.cut_length_mm, board.cut_width_mm, board.banded) == (1000, 500, ())


def test_a_part_tells_the_measured_and_the_nominal_thickness() -> None:
    batch = Batch(id="first", name="First", readings_mm=(19.2, 19.4))
    oak = OAK.replace(batches=(batch,), batch_id="first")
    board = piece(Project(stock=Stock(materials=(oak,))), BoardRole.TOP, "X", "board", 1, 1000, 500)
    assert (board.thickness_mm, board.nominal_mm, board.material) == (19.3, 20.0, "Oak 20 mm")
    assert "19.3 mm thick, called 20 mm" in board.note


def test_a_material_without_grain_leaves_the_part_free_to_turn() -> None:
    plain = Project(safety=Safety(board_material=BoardMaterial.PARTICLEBOARD))
    assert piece(plain, BoardRole.TOP, "X", "board", 1, 1000, 500).grain is Grain.ANY


def test_the_drawer_that_is_reckoned_with_weighs_what_its_parts_weigh() -> None:
    sides = Material(id="s", name="S", kind=BoardMaterial.RED_OAK, roles=(BoardRole.DRAWER_SIDE,))
    for project in (Project(), Project(stock=Stock(materials=(sides,)))):
        workings = derive(project)
        parts = parts_of_kind(project, workings, "", [0])
        assert empty_drawer_kg(workings) == pytest.approx(mass_kg(parts))
        assert 1.0 < (empty_drawer_kg(workings) or 0.0) < 3.0


def test_what_drawers_of_unknown_boards_weigh_is_not_known_and_told(two_bays: Project) -> None:
    project = two_bays.replace(safety=Safety(board_material=BoardMaterial.OTHER))
    workings = derive(project)
    assert empty_drawer_kg(workings) is None
    assert "Not known" in workings.entry("drawer_side_density").note
    made = manufacture(project, workings)
    assert {part.mass_kg for part in made.parts} == {None}
    assert any("is not known" in remark for remark in made.remarks)
    assert runner_load(project.construction.runners, [1.0], None).class_kg == 68.0
