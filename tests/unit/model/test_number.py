"""What a comma, a point and a blank mean in a number."""

from fractions import Fraction

import pytest

from baywright.model.number import AmbiguousNumberError, NumberError, even_blanks, parse_number


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("007", Fraction(7)),
        ("2.940", Fraction(294, 100)),
        ("0,940", Fraction(94, 100)),
        ("2,9405", Fraction(29405, 10000)),
        ("2940,125", Fraction(2940125, 1000)),
        ("12 345 678,9", Fraction(123456789, 10)),
        ("1.234.567", Fraction(1234567)),
    ],
)
def test_read_exactly(text: str, value: Fraction) -> None:
    assert parse_number(text) == value


@pytest.mark.parametrize(
    "text", ["", ".", ",", "5.", "1 23", "1 2345", "0 940", "1,23,456", "1.234,567.8", "+5", "-5", "1_000"]
)
def test_refused(text: str) -> None:
    with pytest.raises(NumberError):
        parse_number(text)


@pytest.mark.parametrize("text", ["1,000", "12,500", "999,999"])
def test_thousands_or_decimals_is_never_guessed(text: str) -> None:
    with pytest.raises(AmbiguousNumberError, match="can be read as"):
        parse_number(text)


def test_blanks_of_every_kind() -> None:
    assert even_blanks("\u00a0 1\t\u20092 \n") == "1 2"
