"""Money: prices as they were entered, in the project's one currency; how people type and read them.

Laws: decimal, never binary, so that cents add up; a price that nobody entered is None, which is not zero. A sum is
rounded to the currency's smallest coin, halves up. What can be read in two ways is refused.
"""

import math
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from typing import Annotated

from pydantic import Field, StringConstraints

from baywright.model.base import Frozen
from baywright.model.number import LONGEST_TEXT, AmbiguousNumberError, NumberError, even_blanks, parse_number

Price = Annotated[Decimal, Field(ge=0, le=1_000_000, max_digits=12, decimal_places=4)]
"""A price in the project's currency: 0 to a million."""

CURRENCY_PATTERN = r"^[A-Za-z]{3}$"
MISSING = "no price"
"""What stands where a price is missing."""

FINEST_DECIMALS = 4
_ACCEPTED = "Write for example 12, 12.50, 12,50 or 1 234.50."
_SIGNS = {"€": "EUR", "£": "GBP", "$": "", "¥": ""}
"""Signs of currencies and their letters, where only one currency has the sign."""
_WITHOUT_DECIMALS = frozenset(
    {"BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "VND", "VUV", "XAF", "XOF", "XPF"}
)
"""Currencies without a smaller coin (ISO 4217, minor unit 0; from memory)."""
_WITH_THREE = frozenset({"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"})
"""Currencies divided into a thousand (ISO 4217, minor unit 3; from memory)."""
_BLANK = "\u00a0"
"""A blank at which no line ends."""


class Pricing(Frozen):
    """What the prices of the project mean."""

    currency: Annotated[str, StringConstraints(pattern=CURRENCY_PATTERN, to_upper=True)] = "EUR"
    """The currency's three letters of ISO 4217; small ones are taken for capitals."""
    vat_percent: Annotated[Decimal, Field(ge=0, le=100, max_digits=5, decimal_places=2)] = Decimal(0)
    """Value added tax, in per cent; 0 where none is reckoned."""
    prices_include_vat: bool = True
    """Whether the prices that were entered have the tax in them already."""


class MoneyError(ValueError):
    """Text that is no price; the message says what is wrong and what is accepted."""


def decimals_of(currency: str) -> int:
    """How many decimals an amount in that currency is written with."""
    return 0 if currency in _WITHOUT_DECIMALS else 3 if currency in _WITH_THREE else 2


def to_coin(amount: Decimal, currency: str) -> Decimal:
    """The amount rounded to the currency's smallest coin, halves up."""
    return amount.quantize(Decimal(1).scaleb(-decimals_of(currency)), rounding=ROUND_HALF_UP)


def format_money(amount: Decimal | None, currency: str) -> str:
    """The amount for reading, e.g. `1 234.50 EUR`, rounded to the smallest coin; `no price` where there is none.

    The blanks do not break. A price finer than the smallest coin (0.0345 a screw) keeps its decimals.
    """
    if amount is None:
        return MISSING
    least = decimals_of(currency)
    finer = amount.quantize(Decimal(1).scaleb(-FINEST_DECIMALS), rounding=ROUND_HALF_UP)
    is_unit_price = 0 < abs(finer) < 1 and finer != to_coin(finer, currency)
    shown = finer.normalize() if is_unit_price else to_coin(amount, currency)
    decimals = max(least, -int(shown.as_tuple().exponent)) if is_unit_price else least
    text = f"{abs(shown):,.{decimals}f}".replace(",", _BLANK)
    return f"{'−' if shown < 0 else ''}{text}{_BLANK}{currency}"


def parse_money(text: str, currency: str = "", *, is_rounded: bool = False) -> Decimal:
    """The price that `text` says, such as `12.50`, `12,50`, `1 234,50`, `€ 12.50` or `12.50 EUR`.

    Raises `MoneyError` where the text is no price, can be read in two ways, is finer than four decimals (unless
    `is_rounded`, for prices that a spreadsheet worked out), or names another currency than `currency` (empty: any).
    """
    if len(text) > LONGEST_TEXT:
        raise MoneyError(f"A text of {len(text)} characters is not a price. {_ACCEPTED}")
    plain = even_blanks(text)
    if not plain:
        raise MoneyError(f"A price is missing. {_ACCEPTED}")
    amount, named = _divided(plain)
    if named and currency and named != currency:
        raise MoneyError(f"“{text.strip()}” is in {named}, but this project reckons in {currency}; convert it first.")
    try:
        value = parse_number(amount)
    except AmbiguousNumberError as trouble:
        raise MoneyError(str(trouble)) from None
    except NumberError:
        raise MoneyError(f"“{text.strip()}” is not a price. {_ACCEPTED}") from None
    finest = value * 10**FINEST_DECIMALS
    if is_rounded:
        finest = Fraction(math.floor(finest + Fraction(1, 2)))
    if finest.denominator != 1:
        raise MoneyError(f"“{text.strip()}” has more than {FINEST_DECIMALS} decimals. {_ACCEPTED}")
    return Decimal(finest.numerator).scaleb(-FINEST_DECIMALS).normalize() + Decimal(0)


def _divided(text: str) -> tuple[str, str]:
    """The number in a price and the currency that stands before or after it, if any."""
    for sign, letters in _SIGNS.items():
        if text.startswith(sign) or text.endswith(sign):
            return text.strip(f"{sign} "), letters
    if len(text) > 3 and text[-3:].isalpha() and text[-4] in " 0123456789":
        return text[:-3].strip(), text[-3:].upper()
    if len(text) > 3 and text[:3].isalpha() and text[3] in " 0123456789":
        return text[3:].strip(), text[:3].upper()
    return text, ""
