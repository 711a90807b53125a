"""Packs to buy: need and loss together, items of the catalogue, and what is set by hand."""

from decimal import Decimal

import pytest

from baywright.making.hardware.need import Need, long, thick
from baywright.making.hardware.packing import packed
from baywright.model.catalogue import Adjustment, CatalogueItem, ExtraItem, HardwareKind, HardwareStock
from baywright.model.making import HardwareItem

SCREWS = HardwareKind.WOOD_SCREW


def _need(needed: float = 231.0, pack: float = 200.0, **others: object) -> Need:
    values: dict[str, object] = {
        "number": "WS4x40", "kind": SCREWS, "name": "Wood screw", "specification": "4 × 40 mm", "needed": needed,
        "pack_size": pack, "measures": (thick(4.0, 0.25), long(40)), "spare": None, **others,
    }  # fmt: skip
    return Need(**values)  # type: ignore[arg-type]


def _item(name: str, pack: float, price: str | None, **measures: float) -> CatalogueItem:
    return CatalogueItem(
        id=name.lower().replace(" ", "-").replace(",", "").replace("×", "x"), kind=SCREWS, name=name,
        pack_size=pack, price=None if price is None else Decimal(price), supplier="Hardware shop",
        length_mm=measures.get("length", 40.0), diameter_mm=measures.get("diameter", 4.0),
    )  # fmt: skip


def _only(need: Need, **stock: object) -> HardwareItem:
    lines, remarks = packed([need], HardwareStock.model_validate(stock))
    assert remarks == []
    (line,) = lines
    return line


@pytest.mark.parametrize(("needed", "pack", "packs"), [(181, 200, 1), (182, 200, 2), (20, 1, 22)])
def test_need_and_loss_together_decide_the_packs(needed: int, pack: int, packs: int) -> None:
    """181 and 10 % (19, rounded up) are 200: one pack; one more piece needs a second."""
    assert _only(_need(needed, pack)).packs == packs


def test_noise_in_the_last_digit_costs_no_roll() -> None:
    assert _only(_need(0.1 + 0.2, 25.0, spare=24.7)).packs == 1


def test_nothing_needed_is_no_line() -> None:
    assert packed([_need(0.0)], HardwareStock()) == ([], [])


def test_without_a_catalogue_the_price_is_missing_and_not_zero() -> None:
    line = _only(_need())
    assert (line.item_id, line.price, line.cost) == ("", None, None)


def test_the_cheapest_item_that_serves_is_taken() -> None:
    """231 and 24 spare: two packs of 200 for 9.00 cost less than 255 pieces in three packs of 100 for 4.00."""
    catalogue = (_item("A", 100, "4.00"), _item("B", 200, "4.50"), _item("Shorter", 500, "1", length=30))
    line = _only(_need(), catalogue=catalogue)
    assert (line.item_id, line.item_name, line.packs, line.price) == ("b", "B", 2, Decimal("4.50"))
    assert (line.cost, line.supplier) == (Decimal("9.00"), "Hardware shop")


def test_packs_of_two_sizes_are_two_lines_that_say_so() -> None:
    """255 pieces: 200 + 100 for 7.50 beat 2 × 200 for 9.00 and 3 × 100 for 9.00; the first line is filled."""
    catalogue = (_item("Screw, small pack", 100, "3.00"), _item("Screw, large pack", 200, "4.50"))
    lines, remarks = packed([_need()], HardwareStock(catalogue=catalogue))
    assert remarks == []
    assert [(line.number, line.needed, line.allowance, line.pack_size, line.packs) for line in lines] == [
        ("WS4x40", 200, 0, 200, 1), ("WS4x40b", 31, 24, 100, 1),
    ]  # fmt: skip
    assert all("packs of two sizes cost least: 1 × 200 and 1 × 100 pieces" in line.note for line in lines)


def test_different_articles_are_not_mixed() -> None:
    catalogue = (_item("Brass screw", 100, "3.00"), _item("Steel screw", 200, "4.50"))
    assert _only(_need(), catalogue=catalogue).packs in (2, 3)


def test_why_no_item_serves_is_told_with_what_there_is() -> None:
    catalogue = (_item("A", 100, "1", length=30), _item("B", 100, "1", length=50), _item("C", 9, "1", diameter=5))
    lines, remarks = packed([_need()], HardwareStock(catalogue=catalogue))
    assert remarks == [
        "WS4x40: The catalogue has no wood screw of 4 mm diameter, 40 mm long: there are only 30 and 50 mm."
    ]
    assert lines[0].item_id == ""


def test_what_is_set_by_hand_beats_what_is_worked_out() -> None:
    catalogue = (_item("A", 100, "4.00"), _item("B", 200, "4.50"))
    adjustment = Adjustment(
        number="WS4x40", item_id="a", spare=0, price=Decimal(3), supplier="Friend", note="as agreed"
    )  # fmt: skip
    line = _only(_need(), catalogue=catalogue, adjustments=(adjustment,))
    assert (line.item_id, line.allowance, line.packs, line.cost) == ("a", 0, 3, Decimal(9))
    assert (line.supplier, line.note) == ("Friend", "as agreed")


def test_a_pack_size_set_by_hand_takes_no_price_of_another_pack() -> None:
    catalogue = (_item("A", 100, "4.00"), _item("B", 200, "4.50"))
    of_size = _only(_need(), catalogue=catalogue, adjustments=(Adjustment(number="WS4x40", pack_size=100),))
    assert (of_size.item_id, of_size.packs, of_size.price) == ("a", 3, Decimal(4))
    unknown = _only(_need(), catalogue=catalogue, adjustments=(Adjustment(number="WS4x40", pack_size=50),))
    assert (unknown.item_id, unknown.packs, unknown.price) == ("", 6, None)


def test_what_is_at_hand_stays_listed_and_costs_nothing() -> None:
    line = _only(_need(), adjustments=(Adjustment(number="WS4x40", is_left_out=True),))
    assert (line.is_left_out, line.needed, line.packs, line.cost) == (True, 231, 0, Decimal(0))


def test_leaving_out_a_need_of_two_packs_leaves_out_all_of_it() -> None:
    catalogue = (_item("Screw, small pack", 100, "3.00"), _item("Screw, large pack", 200, "4.50"))
    line = _only(_need(), catalogue=catalogue, adjustments=(Adjustment(number="WS4x40", is_left_out=True),))
    assert (line.needed, line.packs) == (231, 0)


def test_an_item_chosen_by_hand_that_does_not_serve_is_taken_and_told() -> None:
    stock = HardwareStock(
        catalogue=(_item("Short", 100, "1", length=30),), adjustments=(Adjustment(number="WS4x40", item_id="short"),)
    )
    lines, remarks = packed([_need()], stock)
    assert lines[0].item_id == "short"
    assert remarks == [
        "WS4x40: “Short” was chosen by hand, but its length is 30 mm; wanted is a wood screw of 4 mm diameter, "
        "40 mm long."
    ]


def test_an_item_of_another_kind_chosen_by_hand_is_told() -> None:
    pin = CatalogueItem(id="pin", kind=HardwareKind.PIN, name="Pin")
    stock = HardwareStock(catalogue=(pin,), adjustments=(Adjustment(number="WS4x40", item_id="pin"),))
    assert "but it is a shelf pin" in packed([_need()], stock)[1][0]


def test_an_item_that_left_the_catalogue_is_told_and_another_taken() -> None:
    stock = HardwareStock(catalogue=(_item("A", 100, "1"),), adjustments=(Adjustment(number="WS4x40", item_id="gone"),))
    lines, remarks = packed([_need()], stock)
    assert lines[0].item_id == "a"
    assert "not in the catalogue any more" in remarks[0]


def test_an_adjustment_without_its_line_is_told_and_kept() -> None:
    stock = HardwareStock(adjustments=(Adjustment(number="CB", spare=3),))
    lines, remarks = packed([_need()], stock)
    assert len(lines) == 1
    assert remarks == [
        "What was set by hand for CB has no effect now, for nothing of that number is needed. It is kept, in case it "
        "is again."
    ]


def test_lines_of_the_owners_own_come_last() -> None:
    extra = ExtraItem(id="extra-1", name="Castors", needed=4, pack_size=2, price=Decimal("7.5"))
    lines, _ = packed([_need()], HardwareStock(extras=(extra,)))
    assert [(line.number, line.is_extra, line.packs) for line in lines] == [("WS4x40", False, 2), ("extra-1", True, 2)]
    assert (lines[-1].item_id, lines[-1].cost) == ("extra-1", Decimal(15))


def test_the_mass_of_what_is_needed_is_told_where_an_item_has_one() -> None:
    line = _only(_need(), catalogue=(_item("A", 100, "1").replace(mass_kg=0.002),))
    assert line.mass_kg == pytest.approx(0.462)
    assert _only(_need()).mass_kg is None


def test_what_each_bay_uses_is_divided_among_the_lines() -> None:
    catalogue = (_item("Screw, small pack", 100, "3.00"), _item("Screw, large pack", 200, "4.50"))
    lines, _ = packed([_need(bays=((0, 154.0), (1, 77.0)))], HardwareStock(catalogue=catalogue))
    assert sum(amount for line in lines for _, amount in line.bays) == pytest.approx(231)
    assert lines[0].bays[0][1] == pytest.approx(2 * lines[0].bays[1][1])
