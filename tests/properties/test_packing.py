"""Laws of order lines, whatever the catalogue offers and the owner sets by hand."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from baywright.making.hardware.need import Need, long
from baywright.making.hardware.packing import packed
from baywright.model.catalogue import Adjustment, CatalogueItem, HardwareKind, HardwareStock

PIN = HardwareKind.PIN


@st.composite
def stocks(draw: st.DrawFn) -> HardwareStock:
    count = draw(st.integers(0, 6))
    price = st.one_of(st.none(), st.integers(0, 2_000).map(lambda cents: Decimal(cents) / 100))
    items = [
        CatalogueItem(
            id=f"item-{n}", kind=draw(st.sampled_from([PIN, PIN, PIN, HardwareKind.GLUE])), price=draw(price),
            name=draw(st.sampled_from(["Pin", "Pin, small", "Pin, large", "Brass pin"])),
            length_mm=draw(st.sampled_from([16.0, 16.0, 20.0, None])),
            pack_size=draw(st.sampled_from([1.0, 4.0, 10.0, 25.0, 0.5])),
        )
        for n in range(count)
    ]  # fmt: skip
    ids = st.sampled_from([*(item.id for item in items), "item-99"])
    adjustment = Adjustment(
        number="SP", item_id=draw(st.one_of(st.none(), st.none(), ids)),
        spare=draw(st.sampled_from([None, 0.0, 7.0])), pack_size=draw(st.sampled_from([None, None, 10.0, 3.0])),
        price=draw(st.one_of(st.none(), price)), is_left_out=draw(st.sampled_from([False, False, False, True])),
    )  # fmt: skip
    return HardwareStock(catalogue=tuple(items), adjustments=(adjustment,))


@given(stocks(), st.sampled_from([1.0, 3.0, 36.0, 100.0, 2.75]))
def test_lines_hold_what_is_needed_and_no_pack_is_idle(stock: HardwareStock, needed: float) -> None:
    need = Need("SP", PIN, "Shelf pin", "", needed, measures=(long(16.0),), bays=((-1, needed),))
    lines, _ = packed([need], stock)
    adjustment = stock.adjustments[0]
    spare = need.allowance if adjustment.spare is None else adjustment.spare
    assert abs(sum(line.needed for line in lines) - needed) < 1e-6
    assert abs(sum(line.allowance for line in lines) - spare) < 1e-6
    assert abs(sum(amount for line in lines for _, amount in line.bays) - needed) < 1e-6
    assert len({line.number for line in lines}) == len(lines)
    for line in lines:
        held = line.packs * line.pack_size
        if line.is_left_out:
            assert (line.packs, line.cost) == (0, Decimal(0))
        else:
            assert held + 1e-6 >= line.needed + line.allowance > held - line.pack_size - 1e-6
        item = stock.item(line.item_id)
        if item is not None and adjustment.item_id is None:
            assert item.kind is PIN
            assert item.length_mm == 16.0


@given(stocks(), st.sampled_from([1.0, 3.0, 36.0, 100.0]))
def test_no_single_item_that_serves_would_be_cheaper(stock: HardwareStock, needed: float) -> None:
    plain = stock.replace(adjustments=())
    need = Need("SP", PIN, "Shelf pin", "", needed, spare=0.0, measures=(long(16.0),))
    lines, remarks = packed([need], plain)
    serving = [item for item in plain.catalogue if item.kind is PIN and item.length_mm == 16.0]
    priced = [(item.price, item.pack_size) for item in serving if item.price is not None]
    if priced:
        costs = [line.cost for line in lines]
        assert None not in costs
        least = min(price * int(-(-needed // size)) for price, size in priced)
        assert sum(cost for cost in costs if cost is not None) <= least
    elif not serving:
        assert [line.item_id for line in lines] == [""]
        assert bool(remarks) is any(item.kind is PIN for item in plain.catalogue)
