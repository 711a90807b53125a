"""Prices as people type and read them."""

from decimal import Decimal

import pytest

from baywright.model.money import MoneyError, format_money, parse_money, to_coin


def _shown(amount: str, currency: str = "EUR") -> str:
    return format_money(Decimal(amount), currency).replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("amount", "text"),
    [
        ("0", "0.00 EUR"), ("12.5", "12.50 EUR"), ("1234.5", "1 234.50 EUR"), ("1234567.891", "1 234 567.89 EUR"),
        ("2.005", "2.01 EUR"), ("0.0345", "0.0345 EUR"), ("0.3", "0.30 EUR"), ("-3.5", "−3.50 EUR"),
    ],
)  # fmt: skip
def test_money_for_reading(amount: str, text: str) -> None:
    assert _shown(amount) == text


def test_currencies_have_decimals_of_their_own() -> None:
    assert _shown("1234.5", "JPY") == "1 235 JPY"
    assert _shown("1.5", "KWD") == "1.500 KWD"


def test_a_missing_price_is_not_zero() -> None:
    assert format_money(None, "EUR") == "no price"


def test_blanks_in_money_do_not_break() -> None:
    assert " " not in format_money(Decimal("1234.5"), "EUR")


@pytest.mark.parametrize(
    ("text", "amount"),
    [
        ("12", "12"), ("12.50", "12.5"), ("12,50", "12.5"), ("1 234,50", "1234.5"), ("1.234,50", "1234.5"),
        ("€ 12.50", "12.5"), ("12.50€", "12.5"), ("12.50 EUR", "12.5"), ("EUR 7", "7"), ("0,0345", "0.0345"),
        ("1\u00a0234.50\u00a0EUR", "1234.5"), ("0", "0"), ("100", "100"),
    ],
)  # fmt: skip
def test_money_as_typed(text: str, amount: str) -> None:
    read = parse_money(text, "EUR")
    assert read == Decimal(amount)
    assert str(read) == amount.rstrip() if "." in amount else str(read.to_integral_value()) == amount


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", "missing"), ("cheap", "not a price"), ("-3", "not a price"), ("2,940", "can be read as"),
        ("1.23456", "more than 4 decimals"), ("12 CHF", "reckons in EUR"), ("£3", "in GBP"),
        ("9" * 90, "90 characters"), ("1e3", "not a price"),
    ],
)  # fmt: skip
def test_what_is_no_price_is_told(text: str, why: str) -> None:
    with pytest.raises(MoneyError, match=why):
        parse_money(text, "EUR")


def test_what_is_shown_can_be_typed_again() -> None:
    for amount in ("0", "12.5", "1234.5", "999999.99"):
        assert parse_money(format_money(Decimal(amount), "EUR"), "EUR") == Decimal(amount)


def test_halves_of_a_coin_are_rounded_up() -> None:
    assert to_coin(Decimal("0.125"), "EUR") == Decimal("0.13")


def test_a_price_that_a_spreadsheet_worked_out_is_rounded_where_that_is_asked_for() -> None:
    assert parse_money("10.924369747899159", is_rounded=True) == Decimal("10.9244")
    assert parse_money("0.00005", is_rounded=True) == Decimal("0.0001")
