"""The demo's own catalogue of hardware is read whole, and the demo's order is chosen from it."""

from pathlib import Path

from baywright.app.importing import (
    propose_catalogue_matching,
    read_catalogue,
    read_catalogue_table,
    take_over_catalogue,
)
from baywright.making import manufacture
from baywright.model.catalogue import HardwareKind
from baywright.model.project import Project
from baywright.storage.projects import read_project


def _with_catalogue(project: Project, resources: Path) -> Project:
    table = read_catalogue_table(resources / "catalogue.csv")
    preview = read_catalogue(table, propose_catalogue_matching(table), project)
    assert preview.refused == ()
    return take_over_catalogue(preview).apply(project)


def test_every_row_is_taken_and_every_item_has_a_price(resources: Path) -> None:
    catalogue = _with_catalogue(Project(), resources).hardware.catalogue
    assert {item.kind for item in catalogue} == set(HardwareKind) - {HardwareKind.OTHER}
    assert all(item.price is not None and item.supplier for item in catalogue)


def test_the_demos_order_is_chosen_from_it(resources: Path) -> None:
    demo = read_project(resources / "demo.baywright")
    plain = demo.replace(hardware=demo.hardware.replace(catalogue=()))
    made = manufacture(_with_catalogue(plain, resources))
    assert made.hardware
    assert all(item.item_id and item.price is not None for item in made.hardware)
    runners = [item for item in made.hardware if item.kind is HardwareKind.RUNNER]
    assert all("Drawer runner 350 mm" in item.item_name for item in runners)
