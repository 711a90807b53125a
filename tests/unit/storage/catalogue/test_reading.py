"""Catalogue tables against a project: what would be taken over, what is refused with which words."""

from decimal import Decimal

import pytest

from baywright.model.catalogue import CatalogueItem, HardwareKind, HardwareStock
from baywright.model.length import LengthUnit
from baywright.model.project import Project
from baywright.storage.catalogue import reading
from baywright.storage.catalogue.cells import pack_size
from baywright.storage.catalogue.columns import (
    CatalogueColumn,
    CatalogueMatching,
    propose_catalogue_matching,
    with_catalogue_headings,
)
from baywright.storage.catalogue.kinds import kind_meant
from baywright.storage.catalogue.reading import CataloguePreview, read_catalogue
from baywright.storage.preview import CellFault
from baywright.storage.tables import table_from_text
from baywright.storage.trouble import TableError

HEADINGS = "Kind;Name;Length (mm);Diameter;Pack;Price (EUR);Supplier\n"


def _preview(text: str, project: Project | None = None) -> CataloguePreview:
    table = with_catalogue_headings(table_from_text(text))
    return read_catalogue(table, propose_catalogue_matching(table), project or Project())


def _only_fault(text: str) -> CellFault:
    result = _preview(text)
    assert (result.added, result.changed) == ((), ())
    (row,) = result.refused
    (fault,) = row.faults
    return fault


def test_a_row_becomes_an_item() -> None:
    text = (
        "Kind\tName\tLength (cm)\tThickness\tLoad\tPack\tPrice\tMass (g)\tSupplier\tOrder number\tNote\n"
        "Drawer runner\tRunner, 450 mm\t45\t12.7\t45 kg\t1 pair\t12,90\t900\tHardware shop\tR-45\tfull extension\n"
    )
    (taken,) = _preview(text).added
    assert taken.item == CatalogueItem(
        id="runner-450-mm", kind=HardwareKind.RUNNER, name="Runner, 450 mm", length_mm=450, thickness_mm=12.7,
        load_class_kg=45, pack_size=1, price=Decimal("12.90"), mass_kg=0.9, supplier="Hardware shop",
        order_number="R-45", note="full extension",
    )  # fmt: skip


def test_headings_in_another_language() -> None:
    text = "Art;Bezeichnung;Länge;Durchmesser;Packung;Preis;Lieferant\nHolzschraube;Schraube;40;4;200;9,50;Laden\n"
    (taken,) = _preview(text).added
    item = taken.item
    assert (item.kind, item.length_mm, item.diameter_mm, item.pack_size) == (HardwareKind.WOOD_SCREW, 40, 4, 200)
    assert (item.price, item.supplier) == (Decimal("9.5"), "Laden")


def test_bare_lengths_are_in_the_projects_unit() -> None:
    inches = Project(unit=LengthUnit.INCH)
    (taken,) = _preview("Kind;Name;Length\nfoot;Foot;4\n", inches).added
    assert taken.item.length_mm == pytest.approx(101.6)


def test_what_is_not_given_is_not_known() -> None:
    result = _preview(HEADINGS + "glue;White glue;;;;;\n")
    (taken,) = result.added
    assert (taken.item.price, taken.item.pack_size, taken.item.length_mm) == (None, 1, None)
    assert "1 item without a price." in result.remarks


@pytest.mark.parametrize(
    ("row", "why", "mend"),
    [
        ("hammer;Hammer;;;1;5;", "is no kind of hardware", "Write one of: runner,"),
        (";Hammer;;;1;5;", "has no kind", "Write one of: runner,"),
        ("glue;;;;1;5;", "has no name", "Write what it is called."),
        ("glue;Glue;tall;;1;5;", "“tall” is not a length", "Write for example"),
        ("glue;Glue;;;1;cheap;", "“cheap” is not a price", "Write for example"),
        ("glue;Glue;;;1;2,940;", "can be read as 2940 or as 2.94", "Write 2940 or 2.94."),
        ("glue;Glue;;;1;5 USD;", "reckons in EUR", ""),
        ("glue;Glue;;;0;5;", "must hold something", "Write for example 200"),
        ("glue;Glue;;;3 buckets;5;", "not the size of a pack", "Write for example 200"),
        ("glue;Glue;;;1;9999999;", "at most 1,000,000", "Correct the cell."),
    ],
)
def test_a_faulty_cell_refuses_its_row_and_says_why(row: str, why: str, mend: str) -> None:
    fault = _only_fault(HEADINGS + row)
    assert why in fault.why
    assert fault.mend.startswith(mend)
    assert fault.cell.endswith("2")


def test_all_faults_of_a_row_are_told_and_the_others_are_taken() -> None:
    result = _preview(HEADINGS + "glue;Glue;tall;wide;1;cheap;\nglue;Glue;;;1;5;\n")
    assert [fault.cell for fault in result.refused[0].faults] == ["C2", "D2", "F2"]
    assert [taken.number for taken in result.added] == [3]


def test_the_same_item_twice_is_refused_the_second_time() -> None:
    result = _preview(HEADINGS + "glue;Glue;;;1;5;\nglue; glue ;;;1;6;\n")
    assert "stands in row 2 already" in result.refused[0].faults[0].why


def test_items_that_are_there_are_changed_and_keep_what_the_table_does_not_say() -> None:
    before = CatalogueItem(
        id="mine", kind=HardwareKind.GLUE, name="Glue", price=Decimal(5), note="dries clear", order_number="G1"
    )  # fmt: skip
    other = CatalogueItem(id="same", kind=HardwareKind.GLUE, name="Fish glue", price=Decimal(9))
    project = Project(hardware=HardwareStock(catalogue=(before, other)))
    result = _preview(HEADINGS + "glue;GLUE;;;1;6.50;\nglue;Fish glue;;;;;\nglue;Bone glue;;;1;7;\n", project)
    (changed,) = result.changed
    assert changed.before == before
    assert changed.item == before.replace(price=Decimal("6.5"), name="GLUE")
    assert result.unchanged == 1
    assert [taken.item.name for taken in result.added] == ["Bone glue"]


def test_another_pack_is_another_item() -> None:
    result = _preview(HEADINGS + "screw;Screw;40;4;100;3;\nscrew;Screw;40;4;200;5;\n")
    assert [taken.item.id for taken in result.added] == ["screw", "screw-1"]


def test_items_that_can_never_be_chosen_are_told() -> None:
    result = _preview("Kind;Name;Price\nrunner;Runner;9\nglue;Glue;5\n")
    assert result.remarks == (
        "1 item of the kind “runner” (the first in row 2) can be chosen only by hand: a runner needs its length and "
        "thickness and load.",
    )


@pytest.mark.parametrize(
    ("columns", "why"),
    [
        ({CatalogueColumn.KIND: 0}, "No column gives the name"),
        ({CatalogueColumn.NAME: 0}, "No column gives the kind"),
        ({CatalogueColumn.KIND: 0, CatalogueColumn.NAME: 9}, "no column number 10 for “name”"),
    ],
)
def test_a_matching_that_says_too_little_is_refused(columns: dict[CatalogueColumn, int], why: str) -> None:
    table = table_from_text("glue;Glue")
    with pytest.raises(TableError, match=why):
        read_catalogue(table, CatalogueMatching(columns), Project())


def test_a_full_catalogue_takes_no_more(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(reading, "MOST_ITEMS", 1)
    result = _preview(HEADINGS + "glue;A;;;1;5;\nglue;B;;;1;5;\n")
    assert [taken.item.name for taken in result.added] == ["A"]
    assert "at most 1 items" in result.refused[0].faults[0].why


@pytest.mark.parametrize(
    ("text", "size"),
    [("200", 200), ("25 m", 25), ("750 ml", 0.75), ("0,5 l", 0.5), ("100 Stück", 100), ("1 pair", 1), ("1 000", 1000)],
)
def test_sizes_of_packs(text: str, size: float) -> None:
    assert pack_size(text) == size


def test_every_kind_is_known_by_its_own_name() -> None:
    assert [kind_meant(kind.value) for kind in HardwareKind] == list(HardwareKind)
    assert kind_meant("Drawer runners") is HardwareKind.RUNNER
    assert kind_meant("thing") is None


@pytest.mark.parametrize("heading", ["Price (CHF)", "price usd", "Preis in £", "GBP"])
def test_prices_in_another_currency_than_the_projects_are_refused(heading: str) -> None:
    fault = _only_fault(f"Kind;Name;Length;Diameter;{heading}\nscrew;A;40;4;12,50\n")
    assert "but this project reckons in EUR" in fault.why
    (taken,) = _preview("Kind;Name;Length;Diameter;Preis in €\nscrew;A;40;4;12,50\n").added
    assert taken.item.price == Decimal("12.5")


def test_a_pack_that_may_be_a_thousand_or_one_is_refused() -> None:
    fault = _only_fault(HEADINGS + "screw;A;40;4;1.000;12,50;\n")
    assert (fault.why, fault.mend) == ("“1.000” can be read as 1000 or as 1", "Write 1000 or 1.")
    assert [pack_size(text) for text in ("1 000", "1000 pieces", "2.500 l", "0.125", "1.5")] == [
        1000,
        1000,
        2.5,
        0.125,
        1.5,
    ]
