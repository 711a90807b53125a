"""Materials, the boards cut from them, and measured batches."""

import pytest

from baywright.app.commands import Command, EditRefused, made
from baywright.app.edits.materials import (
    AddBatch,
    AddMaterial,
    AdoptMaterial,
    AssignRole,
    ChangeBatch,
    ChangeMaterial,
    RemoveBatch,
    RemoveMaterial,
    UseBatch,
)
from baywright.app.edits.stock import AddSheet
from baywright.model.project import Project
from baywright.model.stock import Batch, BoardRole, Material, Sheet
from baywright.workings.material import material_of

PLY = Material(id="ply-18", name="Plywood 18 mm", roles=(BoardRole.UPRIGHT, BoardRole.BASE))


def after(*commands: Command) -> Project:
    project = Project()
    for command in commands:
        project = made(command, project)
    return project


def refused(project: Project, command: Command) -> str:
    with pytest.raises(EditRefused) as trouble:
        made(command, project)
    return trouble.value.message


def test_a_material_takes_its_boards_over_from_others() -> None:
    other = Material(id="larch", name="Larch", roles=(BoardRole.UPRIGHT,))
    project = after(AddMaterial(PLY), AddMaterial(other))
    assert project.stock.materials[0].roles == (BoardRole.BASE,)
    assert material_of(project, BoardRole.UPRIGHT) == other
    assert "used twice" in refused(project, AddMaterial(PLY))


def test_a_board_is_given_to_one_material_or_left_to_a_usual_one() -> None:
    project = after(AddMaterial(PLY), AddMaterial(Material(id="larch", name="Larch")))
    given = made(AssignRole(BoardRole.BASE, "larch"), project)
    assert [material.roles for material in given.stock.materials] == [(BoardRole.UPRIGHT,), (BoardRole.BASE,)]
    left = made(AssignRole(BoardRole.BASE, None), given)
    assert material_of(left, BoardRole.BASE).id not in ("larch", "ply-18")
    assert "no longer" in refused(project, AssignRole(BoardRole.BASE, "oak"))


def test_a_material_that_was_taken_for_granted_is_put_into_stock_for_all_its_boards() -> None:
    granted = material_of(Project(), BoardRole.UPRIGHT)
    project = after(AdoptMaterial(granted.id))
    (material,) = project.stock.materials
    assert material.id == granted.id
    assert BoardRole.UPRIGHT in material.roles
    assert BoardRole.TOP not in material.roles  # which is thicker
    assert {role: material_of(project, role).id for role in BoardRole} == {
        role: material_of(Project(), role).id for role in BoardRole
    }
    assert made(AdoptMaterial(granted.id), project) == project
    assert "any more" in refused(project, AdoptMaterial("oak"))


def test_a_material_goes_only_when_no_sheet_is_of_it() -> None:
    project = after(AddMaterial(PLY), AddSheet(Sheet(id="full", material_id="ply-18")))
    assert "One line of sheets is of “Plywood 18 mm”" in refused(project, RemoveMaterial("ply-18"))
    assert after(AddMaterial(PLY), RemoveMaterial("ply-18")).stock.materials == ()


def test_a_measured_batch_is_in_force_from_the_first_and_as_chosen() -> None:
    thin, thick = (Batch(id=f"b-{mm}", name=f"{mm} mm", readings_mm=(mm / 10,)) for mm in (175, 182))
    project = after(AddMaterial(PLY), AddBatch("ply-18", thin), AddBatch("ply-18", thick))
    assert project.boards.upright_mm == 17.5
    assert made(UseBatch("ply-18", "b-182"), project).boards.upright_mm == 18.2
    assert made(UseBatch("ply-18", None), project).boards.upright_mm == 18.0
    changed = made(ChangeBatch("ply-18", "b-175", "readings_mm", (17.0, 18.0)), project)
    assert changed.boards.upright_mm == 17.5
    assert changed.stock.materials[0].batches[0].least_mm == 17.0
    removed = made(RemoveBatch("ply-18", "b-175"), project)
    assert removed.boards.upright_mm == 18.0
    assert "no longer there" in refused(removed, UseBatch("ply-18", "b-175"))
    assert "thickness" in ChangeMaterial("ply-18", "nominal_mm", 15).title
    refused(project, ChangeBatch("ply-18", "b-175", "readings_mm", ()))
    refused(project, AddBatch("ply-18", thin))


def test_fields_of_a_material_are_checked() -> None:
    project = after(AddMaterial(PLY))
    assert made(ChangeMaterial("ply-18", "has_grain", False), project).stock.materials[0].has_grain is False
    refused(project, ChangeMaterial("ply-18", "nominal_mm", 0))
    refused(project, ChangeMaterial("oak", "name", "Oak"))
