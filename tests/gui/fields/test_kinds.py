"""Kinds of values that are typed into cells and fields: prices, shares, readings. What is written reads back."""

from decimal import Decimal

import pytest

from baywright.gui.fields.kinds import PercentKind, PriceKind, ReadingsKind, TypedKind, read_typed, write_typed
from baywright.model.length import LengthUnit

MM, INCH = LengthUnit.MILLIMETRE, LengthUnit.INCH
PRICE = PriceKind(lambda: "EUR")


@pytest.mark.parametrize(
    ("kind", "value"),
    [
        (PRICE, Decimal("64.9")),
        (PRICE, Decimal("0.0345")),
        (PRICE, Decimal(1200)),
        (PercentKind(), Decimal("19")),
        (PercentKind(), Decimal("7.75")),
        (ReadingsKind(), (17.6, 17.4, 17.6)),
    ],
)
@pytest.mark.parametrize("unit", [MM, INCH])
def test_what_is_written_reads_back(kind: TypedKind, value: object, unit: LengthUnit) -> None:
    assert read_typed(kind, write_typed(kind, value, unit, exact=True), unit) == value


def test_a_price_is_typed_with_or_without_its_currency_and_may_be_missing() -> None:
    for text in ("64.90", "64,90", "€ 64.90", "64.90 EUR", " 64.9 "):
        assert read_typed(PRICE, text, MM) == Decimal("64.9")
    assert read_typed(PRICE, "  ", MM) is None
    assert write_typed(PRICE, Decimal("64.9"), MM).replace("\u00a0", " ") == "64.90 EUR"
    assert PRICE.empty_means == "no price"
    for text, words in (("dear", "not a price"), ("12 USD", "reckons in EUR"), ("1,234", "can be read as")):
        with pytest.raises(ValueError, match=words):
            read_typed(PRICE, text, MM)


def test_readings_keep_their_order_and_doubles() -> None:
    assert read_typed(ReadingsKind(), "17.6; 17.4 ; 17.6;", MM) == (17.6, 17.4, 17.6)
    assert write_typed(ReadingsKind(), (17.6, 17.4), MM) == "17.6 mm; 17.4 mm"
    with pytest.raises(ValueError, match="separated by semicolons"):
        read_typed(ReadingsKind(), " ; ", MM)


def test_a_share_is_typed_with_or_without_its_sign() -> None:
    assert read_typed(PercentKind(), "19 %", MM) == read_typed(PercentKind(), "19", MM) == Decimal(19)
    assert write_typed(PercentKind(), Decimal("7.50"), MM) == "7.5 %"
    with pytest.raises(ValueError, match="per cent"):
        read_typed(PercentKind(), "half", MM)
