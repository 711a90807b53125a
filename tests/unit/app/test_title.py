"""The undo menu says what was done to what."""

import pytest

from baywright.app.commands import Command, SetField
from baywright.app.edits.arrangement import ClearArrangement, PlaceBox, SetLock, UnplaceBoxes
from baywright.app.edits.inventory import (
    AddBoxes,
    DuplicateBoxes,
    EditBox,
    EditBoxSize,
    RemoveBoxes,
    RemoveBoxSize,
)
from baywright.app.edits.materials import ChangeMaterial, RemoveMaterial
from baywright.app.edits.stock import ChangeBar, ChangeSheet
from baywright.app.edits.title import LONGEST_NAME, title_of
from baywright.app.session import Session
from baywright.model.arrangement import Lock
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project
from baywright.model.stock import Bar, Material, Sheet, Stock

SIZE = BoxSize(id="low", name="Euro 120", width_mm=396, depth_mm=297, height_mm=120)
SHOP = Project(
    box_sizes=(SIZE,),
    boxes=(Box(id="pumps", label="Pumps", size_id="low"), Box(id="tubes", label="Tubes", size_id="low")),
    stock=Stock(
        materials=(Material(id="ply", name="Plywood"),),
        sheets=(Sheet(id="full", material_id="ply", name="full sheet"), Sheet(id="left", material_id="ply")),
        bars=(Bar(id="band", name="birch band"),),
    ),
)


@pytest.mark.parametrize(
    ("command", "title"),
    [
        (EditBox("pumps", "loaded_mass_kg", 3.0), "Change mass of “Pumps”"),
        (EditBox("pumps", "label", "Air pumps"), "Change label of “Pumps”"),
        (EditBox("nobody", "label", "Air pumps"), "Change label of box"),
        (EditBoxSize("low", "height_mm", 130.0), "Change height of size “Euro 120”"),
        (RemoveBoxSize("low"), "Delete size “Euro 120”"),
        (AddBoxes((Box(id="bells", label="Bells", size_id="low"),)), "Add “Bells”"),
        (RemoveBoxes(("pumps",)), "Delete “Pumps”"),
        (RemoveBoxes(("pumps", "tubes")), "Delete 2 boxes"),
        (DuplicateBoxes(("pumps",), 3), "Duplicate “Pumps”"),
        (PlaceBox("pumps", 0, 3), "Move “Pumps”"),
        (UnplaceBoxes(("pumps",)), "Take “Pumps” out of its drawer"),
        (UnplaceBoxes(("pumps", "tubes")), "Take 2 boxes out of their drawers"),
        (SetLock(("pumps",), Lock.BAY), "Lock “Pumps” in bay"),
        (SetLock(("pumps",), Lock.NONE), "Unlock “Pumps”"),
        (SetField("space.length_mm", 2000.0), "Change length of the space"),
        (SetField("construction.drawers.clearance_mm", 9.0), "Change clearance of the drawers"),
        (SetField("limits.drawers_per_bay", 9), "Change drawers per bay"),
        (SetField("name", "Shop"), "Change name"),
        (ClearArrangement(), "Clear arrangement"),
        (ChangeMaterial("ply", "has_grain", False), "Change grain of “Plywood”"),
        (RemoveMaterial("ply"), "Remove “Plywood”"),
        (ChangeSheet("full", "price", 3), "Change price of “full sheet”"),
        (ChangeSheet("left", "length_mm", 300.0), "Change length of sheet"),
        (ChangeSheet("gone", "price", 3), "Change price of sheet"),
        (ChangeBar("band", "price", 3), "Change price of “birch band”"),
        (SetField("stock.rules.kerf_mm", 3.0), "Change kerf of the saw"),
    ],
)
def test_it_says_of_what(command: Command, title: str) -> None:
    assert title_of(command, SHOP) == title


def test_a_long_name_is_shortened() -> None:
    long = SHOP.replace(boxes=(SHOP.boxes[0].replace(label="Pedals, cranks, chainrings and bottom brackets"),))
    title = title_of(PlaceBox("pumps", 0, 0), long)
    assert title.startswith("Move “Pedals, cranks")
    assert title.endswith("…”")
    assert len(title) <= len("Move “”") + LONGEST_NAME


def test_the_name_is_the_one_before_the_edit() -> None:
    session = Session(SHOP)
    session.do(EditBox("pumps", "label", "Air pumps"))
    assert session.undo_title == "Change label of “Pumps”"
