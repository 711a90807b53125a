"""Edits of the catalogue, of lines of the order, and of lines of the owner's own."""

from decimal import Decimal

import pytest

from baywright.app.commands import Command, EditRefused, SetField
from baywright.app.edits.hardware import (
    AddCatalogueItems,
    AddExtra,
    AdjustItem,
    ChangeCatalogueItem,
    ChangeExtra,
    ClearAdjustments,
    ImportCatalogue,
    RemoveCatalogueItems,
    RemoveExtras,
)
from baywright.app.edits.title import title_of
from baywright.model.catalogue import Adjustment, CatalogueItem, ExtraItem, HardwareKind
from baywright.model.project import Project

GLUE = CatalogueItem(id="glue", kind=HardwareKind.GLUE, name="Glue", price=Decimal(5))
OIL = CatalogueItem(id="oil", kind=HardwareKind.FINISH, name="Oil")
CASTORS = ExtraItem(id="extra-1", name="Castors", needed=4)


def _after(*commands: Command) -> Project:
    project = Project()
    for command in commands:
        project = command.apply(project)
    return project


def test_items_are_added_changed_and_removed() -> None:
    project = _after(
        AddCatalogueItems((GLUE, OIL)), ChangeCatalogueItem("oil", "price", "12.5"), RemoveCatalogueItems(("glue",))
    )
    assert project.hardware.catalogue == (OIL.replace(price=Decimal("12.5")),)


def test_a_line_is_adjusted_field_by_field_and_all_taken_back() -> None:
    project = _after(AddCatalogueItems((GLUE,)), AdjustItem("GL", "spare", 0.2), AdjustItem("GL", "item_id", "glue"))
    assert project.hardware.adjustments == (Adjustment(number="GL", spare=0.2, item_id="glue"),)
    project = AdjustItem("GL", "item_id", None).apply(AdjustItem("GL", "spare", None).apply(project))
    assert project.hardware.adjustments == ()


def test_a_line_left_out_can_be_put_back() -> None:
    project = _after(AdjustItem("GL", "is_left_out", True))
    assert project.hardware.adjustment("GL") == Adjustment(number="GL", is_left_out=True)
    assert AdjustItem("GL", "is_left_out", False).apply(project).hardware.adjustments == ()


def test_spare_pack_and_item_count_for_the_whole_need_of_two_lines() -> None:
    project = _after(AdjustItem("WS4x40b", "spare", 5), AdjustItem("WS4x40b", "price", 2), AdjustItem("WF", "spare", 1))
    assert project.hardware.adjustments == (
        Adjustment(number="WS4x40", spare=5), Adjustment(number="WS4x40b", price=Decimal(2)),
        Adjustment(number="WF", spare=1),
    )  # fmt: skip


def test_what_was_set_by_hand_is_forgotten_line_by_line() -> None:
    project = _after(AdjustItem("GL", "spare", 1), AdjustItem("FI", "note", "matt"), ClearAdjustments(("GL",)))
    assert [each.number for each in project.hardware.adjustments] == ["FI"]


def test_removing_an_item_keeps_what_else_was_set_for_its_line() -> None:
    project = _after(
        AddCatalogueItems((GLUE, OIL)), AdjustItem("GL", "item_id", "glue"), AdjustItem("GL", "spare", 1),
        AdjustItem("FI", "item_id", "oil"), RemoveCatalogueItems(("glue", "oil")),
    )  # fmt: skip
    assert project.hardware.adjustments == (Adjustment(number="GL", spare=1),)


def test_extras_are_added_changed_and_removed() -> None:
    project = _after(AddExtra(CASTORS), ChangeExtra("extra-1", "needed", 6))
    assert project.hardware.extras == (CASTORS.replace(needed=6),)
    assert RemoveExtras(("extra-1",)).apply(project).hardware.extras == ()


def test_an_import_adds_and_changes_in_one_step() -> None:
    project = _after(AddCatalogueItems((GLUE,)), ImportCatalogue((OIL,), (GLUE.replace(price=Decimal(6)),)))
    assert [item.price for item in project.hardware.catalogue] == [Decimal(6), None]


def test_prices_are_set_like_any_field() -> None:
    project = _after(SetField("pricing.currency", "CHF"), SetField("pricing.vat_percent", "7.7"))
    assert (project.pricing.currency, project.pricing.vat_percent) == ("CHF", Decimal("7.7"))


@pytest.mark.parametrize(
    ("command", "why"),
    [
        (AddCatalogueItems((GLUE,)), "“glue” is used twice"),
        (ChangeCatalogueItem("gone", "name", "X"), "no longer in the catalogue"),
        (ChangeCatalogueItem("glue", "price", -1), "must be at least 0"),
        (ImportCatalogue((), (OIL,)), "has changed since the table was read"),
        (AdjustItem("GL", "item_id", "gone"), "not in the catalogue"),
        (AdjustItem("GL", "number", "X"), "no field “number”"),
        (AdjustItem("GL", "colour", "red"), "no field “colour”"),
        (AdjustItem("GL", "pack_size", 0), "must be over 0"),
        (AddExtra(CASTORS), "“extra-1” is used twice"),
        (ChangeExtra("gone", "needed", 1), "no longer there"),
        (ChangeExtra("extra-1", "needed", -1), "must be at least 0"),
        (SetField("pricing.currency", "euro"), "urrency"),
        (SetField("pricing.vat_percent", 101), "must be at most 100"),
    ],
)
def test_what_cannot_be_is_refused_with_a_reason(command: Command, why: str) -> None:
    with pytest.raises(EditRefused, match=why):
        command.apply(_after(AddCatalogueItems((GLUE,)), AddExtra(CASTORS)))


@pytest.mark.parametrize(
    ("command", "title"),
    [
        (AddCatalogueItems((GLUE,)), "Add “Glue”"),
        (AddCatalogueItems((GLUE, OIL)), "Add 2 items"),
        (ChangeCatalogueItem("glue", "load_class_kg", 3), "Change load class of item"),
        (RemoveCatalogueItems(("a", "b")), "Remove 2 items"),
        (ImportCatalogue((GLUE,), (OIL,)), "Import 2 catalogue items"),
        (AdjustItem("GL", "spare", 3), "Change spare of GL"),
        (AdjustItem("GL", "is_left_out", True), "Leave GL out of the order"),
        (AdjustItem("GL", "is_left_out", False), "Put GL back on the order"),
        (ClearAdjustments(("GL",)), "Work GL out again"),
        (AddExtra(CASTORS), "Add “Castors” to the order"),
        (ChangeExtra("extra-1", "pack_size", 2), "Change pack size of added line"),
        (RemoveExtras(("extra-1",)), "Remove added line"),
    ],
)
def test_every_edit_has_a_name_in_the_undo_menu(command: Command, title: str) -> None:
    assert command.title == title


def test_once_the_document_is_known_edits_say_of_what() -> None:
    project = _after(AddCatalogueItems((GLUE,)), AddExtra(CASTORS))
    assert title_of(ChangeCatalogueItem("glue", "price", 1), project) == "Change price of “Glue”"
    assert title_of(ChangeExtra("extra-1", "pack_size", 1), project) == "Change pack size of “Castors”"
    assert title_of(ChangeExtra("gone", "needed", 1), project) == "Change needed of added line"
