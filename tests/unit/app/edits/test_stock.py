"""Sheets, offcuts and bars as people enter them."""

from decimal import Decimal

import pytest

from baywright.app.commands import Command, EditRefused, made
from baywright.app.edits.materials import AddMaterial
from baywright.app.edits.stock import AddBar, AddSheet, ChangeBar, ChangeSheet, RemoveBar, RemoveSheet
from baywright.model.project import Project
from baywright.model.stock import Bar, Material, Sheet

SHEET = Sheet(id="full", material_id="ply", price=Decimal("48.5"))
OFFCUT = Sheet(id="left", material_id="ply", length_mm=800, width_mm=400, quantity=2, is_owned=True)


def stocked() -> Project:
    project = Project()
    for command in (AddMaterial(Material(id="ply", name="Plywood")), AddSheet(SHEET), AddSheet(OFFCUT)):
        project = made(command, project)
    return project


def refused(project: Project, command: Command) -> str:
    with pytest.raises(EditRefused) as trouble:
        made(command, project)
    return trouble.value.message


def test_sheets_are_added_changed_and_removed() -> None:
    project = stocked()
    assert project.stock.sheets == (SHEET, OFFCUT)
    assert (AddSheet(SHEET).title, AddSheet(OFFCUT).title) == ("Add sheet", "Add offcut")
    changed = made(ChangeSheet("full", "price", Decimal("51.90")), project)
    assert changed.stock.sheets[0].price == Decimal("51.90")
    assert made(RemoveSheet(("full", "left")), project).stock.sheets == ()
    assert RemoveSheet(("full", "left")).title == "Remove 2 sheets"


def test_what_cannot_be_is_refused_in_words() -> None:
    project = stocked()
    assert "used twice" in refused(project, AddSheet(SHEET))
    assert "not there" in refused(project, AddSheet(SHEET.replace(id="other", material_id="oak")))
    assert "not there" in refused(project, ChangeSheet("full", "material_id", "oak"))
    assert "Length" in refused(project, ChangeSheet("full", "length_mm", 0))
    assert "Price" in refused(project, ChangeSheet("full", "price", Decimal(-1)))
    assert "no longer" in refused(project, ChangeSheet("gone", "price", None))
    assert "no longer" in refused(project, ChangeBar("gone", "price", None))


def test_bars_are_added_changed_and_removed() -> None:
    bar = Bar(id="strip", length_mm=2400)
    project = made(AddBar(bar), Project())
    assert made(ChangeBar("strip", "quantity", 3), project).stock.bars[0].quantity == 3
    assert made(RemoveBar(("strip",)), project).stock.bars == ()
    assert "used twice" in refused(project, AddBar(bar))
