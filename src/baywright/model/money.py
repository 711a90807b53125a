"""Money: prices as they were entered, in the project's one currency.

Laws: decimal, never binary, so that cents add up; a price that nobody entered is None, which is not zero.
"""

from decimal import Decimal
from typing import Annotated

from pydantic import Field, StringConstraints

from baywright.model.base import Frozen

Price = Annotated[Decimal, Field(ge=0, le=1_000_000, max_digits=12, decimal_places=4)]
"""A price in the project's currency: 0 to a million."""


class Pricing(Frozen):
    """What the prices of the project mean."""

    currency: Annotated[str, StringConstraints(pattern=r"^[A-Z]{3}$")] = "EUR"
    """The currency's three letters of ISO 4217."""
    vat_percent: Annotated[Decimal, Field(ge=0, le=100, max_digits=5, decimal_places=2)] = Decimal(0)
    """Value added tax, in per cent; 0 where none is reckoned."""
    prices_include_vat: bool = True
    """Whether the prices that were entered have the tax in them already."""
