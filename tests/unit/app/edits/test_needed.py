"""The materials that the run needs, put into the stock by one edit; several edits as one."""

import pytest

from baywright.app.commands import EditRefused, SetField, made
from baywright.app.edits.materials import RemoveMaterial
from baywright.app.edits.needed import AddNeeded, Several, is_all_there, roles_needed
from baywright.app.edits.stock import RemoveSheet
from baywright.model.construction import Back, Fronts
from baywright.model.project import Project
from baywright.model.stock import BoardRole


def test_the_construction_says_which_boards_there_are() -> None:
    project = Project()
    assert BoardRole.BACK not in roles_needed(project)
    assert BoardRole.FRONT not in roles_needed(project)
    changed = made(SetField("construction.rear.kind", Back.FULL_BACK), project)
    changed = made(SetField("construction.drawers.fronts", Fronts.INSET), changed)
    changed = made(SetField("construction.end_panels.left", True), changed)
    roles = roles_needed(changed)
    assert {BoardRole.BACK, BoardRole.FRONT, BoardRole.END_PANEL} <= set(roles)
    assert BoardRole.BRACE not in roles


def test_every_board_has_a_material_with_a_sheet_afterwards() -> None:
    project = Project()
    roles = roles_needed(project)
    assert not is_all_there(project, roles)
    stocked = made(AddNeeded(roles), project)
    assert is_all_there(stocked, roles)
    assert sorted(sheet.material_id for sheet in stocked.stock.sheets) == sorted(m.id for m in stocked.stock.materials)
    assert all(sheet.price is None for sheet in stocked.stock.sheets)
    assert len({material.nominal_mm for material in stocked.stock.materials}) == len(stocked.stock.materials)
    assert made(AddNeeded(roles), stocked) == stocked


def test_several_edits_are_made_together_or_not_at_all() -> None:
    project = made(AddNeeded(roles_needed(Project())), Project())
    material = project.stock.materials[0]
    sheets = tuple(sheet.id for sheet in project.stock.sheets if sheet.material_id == material.id)
    both = Several((RemoveSheet(sheets), RemoveMaterial(material.id)), "Remove it")
    assert material not in made(both, project).stock.materials
    with pytest.raises(EditRefused, match="Remove them or give them another"):
        made(Several((RemoveMaterial(material.id), RemoveSheet(sheets)), "Remove it"), project)
